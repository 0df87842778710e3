/** The way that is chosen, or else the one that is advised, in full: what is done, with what, and the usual cautions. */

import type { WayRow } from '../../figures/wayTable.ts';
import { lengthMm } from '../../job/units.ts';
import { Words } from '../parts/Words.tsx';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly row: WayRow;
  onChoose(row: WayRow): void;
}

/** Half of the last digit that a target is written with, mm. */
const SAME = 1e-3;

export function WayDetail({ bench, row, onChoose }: Props) {
  const { decisions } = bench.bore;
  const chosen = decisions.way === row.name;
  const off = row.ownTarget === null ? 0 : row.ownTarget - lengthMm(decisions.target);
  return (
    <section className="way-detail" aria-label={row.title}>
      <h4>
        {chosen ? 'Chosen' : 'Advised'}: {row.title}
      </h4>
      <p>
        <Words text={[row.done, row.needs].filter((part) => part !== '').join(' ')} />
      </p>
      <ul className="cautions">
        {row.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        <li>
          Local codes, the maker of the machine and licensed practice come before anything said
          here.
        </li>
      </ul>
      {chosen && !(Math.abs(off) <= SAME) && (
        <p>
          The target is not this way’s size now.{' '}
          <button type="button" className="plain-button" onClick={() => onChoose(row)}>
            take {row.cells.target.text} as the target
          </button>
        </p>
      )}
      {!chosen && (
        <button type="button" className="plain-button" onClick={() => onChoose(row)}>
          choose it
        </button>
      )}
    </section>
  );
}
