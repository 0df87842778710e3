/** Over the drawing while two stages are compared: the way from one to the other, what changed, and the way back. */

import { leaveCompare } from '../../store/compare.ts';
import { type Session, useSession } from '../../store/session.ts';
import type { Pair } from './useCompared.ts';
import './compare.css';

export function CompareBand({ pair }: { readonly pair: Pair | null }) {
  const compared = useSession((session) => session.compared);
  if (pair === null) return null;
  return (
    <section className="compare-band" aria-label="Two stages compared">
      {pair.why === null ? (
        <>
          {compared === 'sweep' ? <Sweep pair={pair} /> : <Changed pair={pair} />}
          <Kinds compared={compared} />
        </>
      ) : (
        <p role="status">{pair.why}</p>
      )}
      <button type="button" className="plain-button" onClick={back}>
        back
      </button>
    </section>
  );
}

/** The band goes; the focus goes back to where it was called from. */
function back(): void {
  leaveCompare();
  document.querySelector<HTMLElement>('.stage-compare button')?.focus({ preventScroll: true });
}

function Sweep({ pair: { before, after, fromHere } }: { readonly pair: Pair }) {
  const sweep = useSession((session) => session.sweep);
  const look = useSession((session) => session.look);
  const percent = Math.round(100 * (fromHere ? sweep : 1 - sweep));
  const said =
    percent === 0
      ? before.name
      : percent === 100
        ? after.name
        : `${percent} % of the way from ${before.name} to ${after.name}`;
  return (
    <div className="compare-sweep">
      <EndButton name={before.name} at={fromHere ? 0 : 1} />
      <input
        type="range"
        aria-label={`From ${before.name} to ${after.name}`}
        aria-valuetext={said}
        min={0}
        max={100}
        step={1}
        value={percent}
        onChange={(event) => {
          const share = Number(event.target.value) / 100;
          look({ sweep: fromHere ? share : 1 - share });
        }}
      />
      <EndButton name={after.name} at={fromHere ? 1 : 0} />
    </div>
  );
}

function EndButton({ name, at }: { readonly name: string; readonly at: number }) {
  const here = useSession((session) => session.sweep === at);
  const look = useSession((session) => session.look);
  return (
    <button
      type="button"
      className="compare-end"
      aria-pressed={here}
      onClick={() => look({ sweep: at })}
    >
      {name}
    </button>
  );
}

function Changed({ pair: { before, after } }: { readonly pair: Pair }) {
  return (
    <p>
      What changed from <b>{before.name}</b> to <b>{after.name}</b>, per side.
    </p>
  );
}

const KINDS = [
  { kind: 'sweep', text: 'sweep' },
  { kind: 'change', text: 'what changed' },
] as const;

function Kinds({ compared }: { readonly compared: Session['compared'] }) {
  const look = useSession((session) => session.look);
  return (
    <fieldset className="compare-kinds" aria-label="Shown of the two stages">
      {KINDS.map(({ kind, text }) => (
        <button
          key={kind}
          type="button"
          className="plain-button"
          aria-pressed={compared === kind}
          onClick={() => look({ compared: kind })}
        >
          {text}
        </button>
      ))}
    </fieldset>
  );
}
