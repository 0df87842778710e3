/** A reading sheet for this survey, sent to the printer; nothing else of the page is printed with it. */
import { useEffect, useState } from 'react';
import { createPortal } from 'react-dom';
import { ReadingSheet } from '../../drawings/ReadingSheet.tsx';
import { PAPERS, type Paper } from '../../figures/paper.ts';
import { readingSheet } from '../../figures/readingSheet.ts';
import type { Bench } from '../../store/bench.ts';
import './print.css';

const NAMES: Readonly<Record<Paper, string>> = { letter: 'on letter', a4: 'on A4' };

export function PrintSheet({ bench: { job, bore, survey } }: { readonly bench: Bench }) {
  const [paper, setPaper] = useState<Paper | null>(null);
  useEffect(() => {
    if (paper === null) return;
    const done = () => setPaper(null);
    window.addEventListener('afterprint', done);
    window.print();
    return () => window.removeEventListener('afterprint', done);
  }, [paper]);
  // The paper of the units' country comes first.
  const papers: Paper[] = job.units === 'in' ? ['letter', 'a4'] : ['a4', 'letter'];
  return (
    <p className="facts">
      Print a reading sheet to fill in by hand{' '}
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
            <ReadingSheet sheet={readingSheet(job, bore, survey)} paper={paper} />
          </div>,
          document.body,
        )}
    </p>
  );
}
