/** More rows and columns for the table, typed where the table ends. */
import { useState } from 'react';
import { goAllRound, opposites } from '../../job/allRound.ts';
import { addClock, addDepth } from '../../job/edits.ts';
import { attempt } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import { Field } from '../parts/Field.tsx';
import { Words } from '../parts/Words.tsx';

export function AddPlaces({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const [why, setWhy] = useState<string | null>(null);
  const add = (change: Parameters<typeof attempt>[0]) => setWhy(attempt(change));
  return (
    <p className="facts add-places">
      Add a depth{' '}
      <Field
        label="Depth to add"
        value=""
        placeholder={job.units === 'in' ? '1.25' : '20'}
        onEnter={(text) =>
          add((now) => addDepth(now, bore.id, survey.id, { text, unit: job.units }))
        }
      />{' '}
      <Words text={`${job.units} or a clock position`} />{' '}
      <span className="unbroken">
        <Field
          label="Clock position to add"
          value=""
          placeholder="1:30"
          onEnter={(text) => add((now) => addClock(now, bore.id, survey.id, text))}
        />
        .
      </span>
      {opposites(job, bore, survey).length > 0 && (
        <>
          {' '}
          This gauge tells opposite sides apart:{' '}
          <button
            type="button"
            className="link-button"
            onClick={() => add((now) => goAllRound(now, bore.id, survey.id))}
          >
            go all round the clock
          </button>
        </>
      )}
      {why !== null && (
        <span className="fault" role="status">
          {why}
        </span>
      )}
    </p>
  );
}
