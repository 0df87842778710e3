/** What the drawing shows besides the wall: switched here, else as the section that is read wants it. */

import { sceneWords } from '../../figures/sceneWords.ts';
import type { Units } from '../../figures/steps.ts';
import { clockText } from '../../job/clock.ts';
import { type Overlay, useSession } from '../../store/session.ts';
import { Disclosure } from '../parts/Disclosure.tsx';
import { STEP_OF_CUT, snappedCut } from './cut.ts';
import { OVERLAYS } from './overlays.ts';
import { useOverlaid } from './useOverlaid.ts';
import { useSceneSaid } from './useSceneSaid.ts';
import { type Shows, useShown } from './useShown.ts';
import { useWhyNotPressed } from './useWhyNotPressed.ts';

export interface LaidOf extends Shows {
  readonly units: Units;
}

export function LaidOver(of: LaidOf) {
  return (
    <div className="laid-over">
      <Disclosure label="Also show, in the drawing" button="Also show" buttonClass="plain-button">
        {() => <Choices {...of} />}
      </Disclosure>
    </div>
  );
}

function Choices(of: LaidOf) {
  const { shown, possible } = useShown(of);
  const why = useWhyNotPressed(of);
  const overlays = useSession((session) => session.overlays);
  const look = useSession((session) => session.look);
  const offered = (one: Overlay) => possible[one] && (one !== 'pressure' || why === null);
  return (
    <>
      <fieldset aria-label="What the drawing shows">
        {OVERLAYS.map(({ overlay, name }) => (
          <label key={overlay} data-possible={offered(overlay)}>
            <input
              type="checkbox"
              checked={shown[overlay]}
              disabled={!offered(overlay)}
              onChange={(event) =>
                look({ overlays: { ...overlays, [overlay]: event.target.checked } })
              }
            />
            {name}
          </label>
        ))}
      </fieldset>
      {why !== null && <p className="laid-words">{why}</p>}
      <div className="laid-foot">
        <CutStepper />
        <button
          type="button"
          className="plain-button"
          disabled={Object.keys(overlays).length === 0}
          onClick={() => look({ overlays: {} })}
        >
          Go with the page
        </button>
      </div>
      <InWords {...of} />
    </>
  );
}

/** Moves the cut line an hour at a time. */
function CutStepper() {
  const cut = useSession((session) => session.cut);
  const look = useSession((session) => session.look);
  const move = (hours: number) => look({ cut: snappedCut(cut + 4 * hours * STEP_OF_CUT) });
  return (
    <div className="cut-stepper">
      <button
        type="button"
        className="plain-button"
        aria-label="Cut line an hour back"
        onClick={() => move(-1)}
      >
        −
      </button>
      <output>cut at {clockText(cut)}</output>
      <button
        type="button"
        className="plain-button"
        aria-label="Cut line an hour on"
        onClick={() => move(1)}
      >
        +
      </button>
    </div>
  );
}

/** The drawing in words, for whoever would rather read it. */
function InWords(of: LaidOf) {
  const said = useSceneSaid(of, useOverlaid(of));
  return <p className="laid-words">{sceneWords(of.piece, said).join(' ')}</p>;
}
