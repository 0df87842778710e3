/** Where the drawing stands: loaded after the notebook can be used, and foldable where room is short. */
import { Component, lazy, memo, type ReactNode, Suspense } from 'react';
import type { Bench } from '../store/bench.ts';
import { usePage } from '../store/page.ts';
import { useTheme } from '../store/theme.ts';
import { useUnhurriedBench } from '../store/useBench.ts';
import { Icon } from '../views/parts/Icon.tsx';
import { whenIdle } from '../views/parts/whenIdle.ts';
import type { Worked } from '../views/plan/worked.ts';
import { SectionLinks } from '../views/SectionLinks.tsx';
import { OtherBand } from '../views/scene/OtherBand.tsx';

const Drawing = lazy(async () => {
  await whenIdle(1500);
  const { ComparedDrawing } = await import('../views/compare/ComparedDrawing.tsx');
  return { default: ComparedDrawing };
});

const OutsideDrawing = lazy(async () => {
  const { OutsideDrawing } = await import('../views/map/OutsideDrawing.tsx');
  return { default: OutsideDrawing };
});

export function DrawingPane() {
  const hidden = usePage((page) => page.drawingHidden);
  const change = usePage((page) => page.change);
  return (
    <aside className="drawing-pane" aria-label="Drawing of the bore" data-hidden={hidden}>
      <div className="drawing-room" hidden={hidden}>
        {!hidden && (
          <Guard>
            <Suspense fallback={<Wait text="Fetching the drawing…" />}>
              <DrawingNow />
            </Suspense>
          </Guard>
        )}
      </div>
      <div className="drawing-handle">
        <SectionLinks />
        <button
          type="button"
          className="fold-button"
          aria-expanded={!hidden}
          onClick={() => change({ drawingHidden: !hidden })}
        >
          <Icon name={hidden ? 'down' : 'up'} />{' '}
          {hidden ? <span className="wide-only">show </span> : 'fold'}
          {hidden ? 'drawing' : <span className="wide-only"> drawing</span>}
        </button>
      </div>
    </aside>
  );
}

function DrawingNow() {
  return <DrawingOf bench={useUnhurriedBench()} />;
}

/** Stays as it is while a new answer waits for its turn. */
const DrawingOf = memo(function DrawingOf({ bench }: { readonly bench: Bench | null }) {
  if (bench === null) return <Wait text="No bore is open." />;
  const { boreSeen, surveySeen, bore } = bench;
  if (boreSeen === null || surveySeen === null) return <Wait text="Working it out…" />;
  if (surveySeen.surface === null) {
    return <Wait text="The drawing comes with the first readings." />;
  }
  if (bore.kind === 'pin' || bore.kind === 'bushing-outside') {
    return <OutsideShown bench={{ ...bench, boreSeen, surveySeen }} />;
  }
  return <Shown bench={{ ...bench, boreSeen, surveySeen }} />;
});

function OutsideShown({ bench }: { readonly bench: Worked }) {
  const theme = useTheme(({ shown }) => shown);
  return <OutsideDrawing bench={bench} theme={theme} />;
}

function Shown({ bench }: { readonly bench: Worked }) {
  const theme = useTheme(({ shown }) => shown);
  return (
    <>
      <OtherBand bench={bench} />
      <Drawing bench={bench} theme={theme} />
    </>
  );
}

function Wait({ text }: { readonly text: string }) {
  return <p className="drawing-wait">{text}</p>;
}

/** A drawing that cannot be had leaves the notebook whole. */
class Guard extends Component<{ readonly children: ReactNode }, { failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <Wait text="The drawing could not be made here. The notebook holds every figure of it." />
    );
  }
}
