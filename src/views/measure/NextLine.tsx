/** The one reading that would settle most, and what a set-up more would do; a tap goes to its cell. */
import { useState } from 'react';
import { flushSync } from 'react-dom';
import { sayNext, saySetup } from '../../figures/nextWords.ts';
import type { Bench } from '../../store/bench.ts';
import { goToWanted } from '../../store/wanted.ts';
import { Words } from '../parts/Words.tsx';

export function NextLine({ bench: { surveySeen, survey, job } }: { readonly bench: Bench }) {
  const [why, setWhy] = useState<string | null>(null);
  // Its room is kept while it is worked out, so that what stands below does not jump.
  const awaited = surveySeen === null && survey.readings.length > 0;
  const [next] = surveySeen?.next.readings ?? [];
  const [setup] = surveySeen?.next.setups ?? [];
  if (awaited) return <div className="next-line" data-awaited="true" />;
  if (next === undefined && setup === undefined) return null;
  const go = () => {
    if (next === undefined) return;
    const place = { gauge: next.gauge, theta: next.clocks[0]!, z: next.depths[0]! };
    // The row may be new: it has to be there before it can be gone to.
    const gone = flushSync(() => goToWanted(place));
    setWhy(gone.why);
    document.querySelector<HTMLElement>(`[data-cell="${gone.cell}"]`)?.focus();
  };
  const said = next && sayNext(next, job.units);
  return (
    <div className="next-line">
      {said && (
        <p>
          Next:{' '}
          <button type="button" className="link-button" onClick={go}>
            <Words text={said.place} />
          </button>{' '}
          <Words text={said.worth} />
        </p>
      )}
      {setup && (
        <p className="soft">
          <Words text={saySetup(setup, job.units)} />
        </p>
      )}
      {why !== null && (
        <p className="fault" role="status">
          {why}
        </p>
      )}
    </div>
  );
}
