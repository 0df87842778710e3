/** Readings in doubt, under the table: what is likely, and two ways to answer. Nothing is changed unasked. */
import { type Doubt, sayDoubts } from '../../figures/checkWords.ts';
import { setLeftOut, setReading } from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';

export function Doubts({ bench }: { readonly bench: Bench }) {
  const { job, surveySeen } = bench;
  const doubts = surveySeen === null ? [] : sayDoubts(surveySeen, job.units);
  if (doubts.length === 0) return null;
  return (
    <ul className="doubts" aria-label="Readings in doubt">
      {doubts.map((doubt) => (
        <DoubtLine key={`${doubt.rows.join(' ')} ${doubt.text}`} bench={bench} doubt={doubt} />
      ))}
    </ul>
  );
}

interface DoubtLineProps {
  readonly bench: Bench;
  readonly doubt: Doubt;
}

function DoubtLine({ bench, doubt }: DoubtLineProps) {
  const { job, bore, survey } = bench;
  const { rows, place, text, suggested } = doubt;
  const edit = useJob((state) => state.edit);
  const ids = rows.flatMap((row) => survey.readings[row]?.id ?? []);
  const use = (meant: string) => (now: Job) =>
    ids.reduce(
      (done, id) =>
        setReading(done, bore.id, survey.id, id, { value: { text: meant, unit: job.units } }),
      now,
    );
  const leaveOut = (now: Job) =>
    ids.reduce((done, id) => setLeftOut(done, bore.id, survey.id, id, true), now);
  return (
    <li>
      <span className="doubt-mark" aria-hidden="true">
        ?
      </span>
      <div>
        <p>{text}</p>
        <p className="doubt-answers">
          {suggested !== null && (
            <button
              type="button"
              className="plain-button"
              aria-label={`use ${suggested} for ${place}`}
              onClick={() => edit(use(suggested))}
            >
              use {suggested}
            </button>
          )}
          <button
            type="button"
            className="plain-button"
            aria-label={`${rows.length === 1 ? 'leave it out' : 'leave them out'}: ${place}`}
            onClick={() => edit(leaveOut)}
          >
            {rows.length === 1 ? 'leave it out' : 'leave them out'}
          </button>
        </p>
      </div>
    </li>
  );
}
