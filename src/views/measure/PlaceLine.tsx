/** A row or column of the table in words, and how it is taken away. */
import { useState } from 'react';
import { removeClock, removeDepth } from '../../job/edits.ts';
import { attempt } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import type { Laid } from '../../store/tables.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import type { Picked } from './picked.ts';

export interface PlaceLineProps {
  readonly bench: Bench;
  readonly laid: Laid;
  readonly picked: Picked;
  onDone(): void;
}

export function PlaceLine({ bench, laid, picked, onDone }: PlaceLineProps) {
  const { bore, survey } = bench;
  const [why, setWhy] = useState<string | null>(null);
  const { table } = laid;
  const cells =
    picked.kind === 'depth'
      ? (table.rows[picked.row]?.cells ?? [])
      : table.rows.flatMap(({ cells: all }) => all[picked.column] ?? []);
  const count = cells.reduce((sum, { readings }) => sum + readings.length, 0);
  const name =
    picked.kind === 'depth'
      ? `Depth ${table.rows[picked.row]?.depthText ?? ''} from face ${survey.plan.face}`
      : `Clock position ${table.clocks[picked.column]?.text ?? ''}`;
  const remove = () => {
    const refusal = attempt((now) =>
      picked.kind === 'depth'
        ? removeDepth(now, bore.id, survey.id, picked.row)
        : removeClock(now, bore.id, survey.id, picked.column),
    );
    setWhy(refusal);
    if (refusal !== null) return;
    const itsReadings =
      count === 0 ? '' : count === 1 ? ', with its reading' : `, with its ${count} readings`;
    tellTakenOut(`${name} is out of the table${itsReadings}.`);
    onDone();
  };
  return (
    <div className="cell-line" role="status">
      <p>
        <b>{name}</b>:{' '}
        {count === 0 ? 'no readings' : count === 1 ? '1 reading' : `${count} readings`}
      </p>
      <p>
        <button type="button" className="link-button" onClick={remove}>
          take it out of the table
        </button>{' '}
        <button type="button" className="link-button" onClick={onDone}>
          keep it
        </button>
      </p>
      {why !== null && <p className="fault">{why}</p>}
    </div>
  );
}
