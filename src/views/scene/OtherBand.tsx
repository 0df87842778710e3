/** Over the drawing while it shows the other reading of the same numbers: what it is, and the ways on from it. */
import { otherSides } from '../../figures/otherWords.ts';
import { setWornSide } from '../../job/edits.ts';
import { leaveOther, showOther, useOther } from '../../store/other.ts';
import { useJob } from '../../store/useJob.ts';
import type { Worked } from '../plan/worked.ts';
import './otherBand.css';

export function OtherBand({ bench }: { readonly bench: Worked }) {
  const { bore, survey, boreSeen, surveySeen } = bench;
  const { asked, shown } = useOther();
  const edit = useJob((state) => state.edit);
  if (asked === null) return null;
  const sides = otherSides(surveySeen, survey.wornSide, boreSeen.facts.load);
  const now = sides.find(({ wornSide }) => wornSide === asked.wornSide);
  if (now === undefined) return null;
  return (
    <div className="other-band" role="status">
      <p>
        {shown === null ? (
          'Working out the other reading of the same numbers…'
        ) : (
          <>
            <b>Shown: the other reading of the same numbers, {now.words}</b> – not what the plan
            uses.
          </>
        )}
      </p>
      <p className="other-ways">
        <button type="button" className="plain-button" onClick={() => leaving(leaveOther)}>
          back
        </button>
        {sides
          .filter((side) => side !== now)
          .map(({ wornSide, words }) => (
            <button
              key={wornSide}
              type="button"
              className="plain-button"
              aria-label={`show it ${words}`}
              onClick={() => showOther({ ...asked, wornSide })}
            >
              at {wornSide} instead
            </button>
          ))}
        <button
          type="button"
          className="plain-button"
          aria-label={`it is so: ${now.words}`}
          onClick={() =>
            leaving(() => edit((job) => setWornSide(job, bore.id, survey.id, asked.wornSide)))
          }
        >
          it is so
        </button>
      </p>
    </div>
  );
}

/** The band goes; the focus goes back to where it was called from. */
function leaving(act: () => void): void {
  act();
  document.querySelector<HTMLElement>('[data-other]')?.focus({ preventScroll: true });
}
