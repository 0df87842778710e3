/** A file let go anywhere on the page is opened. True while one hangs over it. */
import { useEffect, useState } from 'react';
import { openFile } from '../store/files.ts';

export function useDroppedFiles(): boolean {
  const [dropping, setDropping] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files') !== true) return;
      event.preventDefault();
      setDropping(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setDropping(false);
    };
    const drop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      setDropping(false);
      if (file === undefined) return;
      event.preventDefault();
      void openFile(file);
    };
    document.addEventListener('dragover', over);
    document.addEventListener('dragleave', leave);
    document.addEventListener('drop', drop);
    return () => {
      document.removeEventListener('dragover', over);
      document.removeEventListener('dragleave', leave);
      document.removeEventListener('drop', drop);
    };
  }, []);
  return dropping;
}
