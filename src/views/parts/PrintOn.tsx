/** Buttons that send one page to the printer; nothing else of the product is printed with it. */
import { type ReactNode, useEffect, useState } from 'react';
import { createPortal } from 'react-dom';
import { PAPERS, type Paper } from '../../figures/paper.ts';
import type { Units } from '../../job/schema.ts';
import './print.css';

const NAMES: Readonly<Record<Paper, string>> = { letter: 'on letter', a4: 'on A4' };

export interface PrintOnProps {
  readonly units: Units;
  /** The page as it stands on that paper, edge to edge. */
  children(paper: Paper): ReactNode;
}

export function PrintOn({ units, children }: PrintOnProps) {
  const [paper, setPaper] = useState<Paper | null>(null);
  useEffect(() => {
    if (paper === null) return;
    const done = () => setPaper(null);
    window.addEventListener('afterprint', done);
    window.print();
    return () => window.removeEventListener('afterprint', done);
  }, [paper]);
  // The paper of the units' country comes first.
  const papers: Paper[] = units === 'in' ? ['letter', 'a4'] : ['a4', 'letter'];
  return (
    <>
      {papers.map((one) => (
        <button
          key={one}
          type="button"
          className="link-button sheet-button"
          onClick={() => setPaper(one)}
        >
          {NAMES[one]}
        </button>
      ))}
      {paper !== null &&
        createPortal(
          <div className="print-sheet">
            <style>{`@page { size: ${PAPERS[paper].width}mm ${PAPERS[paper].height}mm; margin: 0; }`}</style>
            {children(paper)}
          </div>,
          document.body,
        )}
    </>
  );
}
