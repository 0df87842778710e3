/** Room for the scene: fetches it when it is wanted, and says so plainly where it cannot be drawn. */
import { Component, type KeyboardEvent, lazy, type ReactNode, Suspense, useMemo } from 'react';
import type { Theme } from '../../figures/colour.ts';
import { homeTurn } from '../../figures/framing.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { useSession } from '../../store/session.ts';
import { useStill } from './useStill.ts';

const Scene = lazy(() => import('./Scene.tsx'));

interface Props {
  readonly figure: PieceFigure;
  readonly theme: Theme;
  /** What the drawing shows, for whoever cannot see it. */
  readonly words: string;
}

const NO_SCENE =
  'This browser draws nothing in three dimensions (it has no WebGL). The flat map shows all the same wear.';

function canDraw(): boolean {
  return document.createElement('canvas').getContext('webgl2') !== null;
}

/** Radians a key press turns the piece by. */
const KEY_TURN = 0.12;
const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-KEY_TURN, 0],
  ArrowRight: [KEY_TURN, 0],
  ArrowUp: [0, KEY_TURN],
  ArrowDown: [0, -KEY_TURN],
};

function onKey(event: KeyboardEvent): void {
  const { look, turn, view, away, roll } = useSession.getState();
  if (event.key === 'Escape' || event.key === 'Home') look({ turn: null });
  const way = KEYS[event.key];
  if (way === undefined) return;
  event.preventDefault();
  const from = turn ?? homeTurn(view === 'half', away, roll);
  const elevation = Math.min(1.4, Math.max(-1.4, from.elevation + way[1]));
  look({ turn: { azimuth: from.azimuth + way[0], elevation } });
}

export function Stage({ figure, theme, words }: Props) {
  const still = useStill();
  const drawable = useMemo(canDraw, []);
  if (!drawable) return <p className="drawing-stage drawing-wait">{NO_SCENE}</p>;
  return (
    <div
      className="drawing-stage"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is turned by keys
      tabIndex={0}
      aria-label={`${words} Arrow keys turn it, Home turns it back.`}
      onKeyDown={onKey}
    >
      <Guard>
        <Suspense fallback={<p className="drawing-wait">Fetching the drawing…</p>}>
          <Scene figure={figure} theme={theme} still={still} />
        </Suspense>
      </Guard>
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
