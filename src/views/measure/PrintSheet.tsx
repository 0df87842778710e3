/** A reading sheet for this survey, to be filled in by hand. */
import { ReadingSheet } from '../../drawings/ReadingSheet.tsx';
import { readingSheet } from '../../figures/readingSheet.ts';
import type { Bench } from '../../store/bench.ts';
import { PrintOn } from '../parts/PrintOn.tsx';

export function PrintSheet({ bench: { job, bore, survey } }: { readonly bench: Bench }) {
  return (
    <p className="facts">
      Print a reading sheet to fill in by hand{' '}
      <PrintOn units={job.units}>
        {(paper) => <ReadingSheet sheet={readingSheet(job, bore, survey)} paper={paper} />}
      </PrintOn>
    </p>
  );
}
