/** Room for the scene: fetches it when it is wanted, and says so plainly where it cannot be drawn. */
import { Component, type KeyboardEvent, lazy, type ReactNode, Suspense, useRef } from 'react';
import type { Theme } from '../../figures/colour.ts';
import { homeTurn } from '../../figures/framing.ts';
import { sceneWords } from '../../figures/sceneWords.ts';
import type { Units } from '../../figures/steps.ts';
import { useSession } from '../../store/session.ts';
import { CutHandle, type CutHold } from './CutHandle.tsx';
import { NO_SCENE } from './canDraw.ts';
import { StageKey } from './StageKey.tsx';
import { useOverlaid } from './useOverlaid.ts';
import { useSceneSaid } from './useSceneSaid.ts';
import type { Shows } from './useShown.ts';
import { useStill } from './useStill.ts';
import './stage.css';

const Scene = lazy(() => import('./Scene.tsx'));

interface Props extends Shows {
  readonly units: Units;
  readonly theme: Theme;
}

/** Radians a key press turns the piece by, and how far it rolls it. */
const KEY_TURN = 0.12;
const KEY_ROLL = 0.05;
const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-KEY_TURN, 0],
  ArrowRight: [KEY_TURN, 0],
  ArrowUp: [0, KEY_TURN],
  ArrowDown: [0, -KEY_TURN],
};
const ROLL_KEYS: Readonly<Record<string, number>> = { ']': KEY_ROLL, '[': -KEY_ROLL };

const HOW =
  'Arrow keys turn it, Home turns it back; the right bracket rolls it out, the left bracket rolls it up.';

function onKey(event: KeyboardEvent): void {
  const { look, turn, view, away, roll } = useSession.getState();
  if (event.key === 'Escape' || event.key === 'Home') look({ turn: null });
  const rolled = ROLL_KEYS[event.key];
  if (rolled !== undefined) {
    event.preventDefault();
    const from = view === 'half' ? 0 : roll;
    const next = Math.min(1, Math.max(0, Math.round((from + rolled) * 100) / 100));
    look({ roll: next, view: next > 0 ? 'flat' : 'rim', turn: null });
  }
  const way = KEYS[event.key];
  if (way === undefined) return;
  event.preventDefault();
  const from = turn ?? homeTurn(view === 'half', away, roll);
  const elevation = Math.min(1.4, Math.max(-1.4, from.elevation + way[1]));
  look({ turn: { azimuth: from.azimuth + way[0], elevation } });
}

export function Stage({ bore, survey, piece, units, theme }: Props) {
  const still = useStill();
  const overlaid = useOverlaid({ bore, survey, piece, units });
  const words = sceneWords(piece, useSceneSaid({ bore, survey, piece, units }, overlaid));
  const hold = useRef<CutHold>({ element: null, thetaUnder: null });
  return (
    <div className="drawing-stage">
      <div
        className="stage-turned"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is turned by keys
        tabIndex={0}
        aria-label={`${words.join(' ')} ${HOW}`}
        onKeyDown={onKey}
      >
        <Guard>
          <Suspense fallback={<p className="drawing-wait">Fetching the drawing…</p>}>
            <Scene {...{ overlaid, theme, still, hold }} />
          </Suspense>
        </Guard>
      </div>
      <CutHandle hold={hold} />
      <StageKey overlaid={overlaid} />
    </div>
  );
}

/** A scene that fails, or cannot be fetched, leaves the map and the notebook whole. */
class Guard extends Component<{ readonly children: ReactNode }, { failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return <p className="drawing-wait">{NO_SCENE}</p>;
  }
}
