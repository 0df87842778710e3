/** Whether the notebook itself is being printed: what is folded opens for it. */
import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // A sheet of its own hides the notebook, which then stays as it is.
    const before = () => {
      if (document.querySelector('body > .print-sheet') === null)
        flushSync(() => setPrinting(true));
    };
    const after = () => setPrinting(false);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}
