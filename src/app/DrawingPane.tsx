/** Where the drawing stands: loaded after the notebook can be used, and foldable where room is short. */
import { Component, lazy, type ReactNode, Suspense } from 'react';
import { otherSides } from '../figures/otherWords.ts';
import { leaveOther, showOther, useOther } from '../store/other.ts';
import { usePage } from '../store/page.ts';
import { useTheme } from '../store/theme.ts';
import { useBench } from '../store/useBench.ts';
import { Icon } from '../views/parts/Icon.tsx';
import { SectionLinks } from '../views/SectionLinks.tsx';
import { OtherBand } from '../views/scene/OtherBand.tsx';

const idle = () =>
  new Promise<void>((resolve) => {
    // Safari has no requestIdleCallback; a turn of the clock lets the notebook paint first.
    if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: 1500 });
    else setTimeout(resolve, 200);
  });
const Drawing = lazy(async () => {
  await idle();
  const { Drawing } = await import('../views/scene/Drawing.tsx');
  return { default: Drawing };
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
          <Icon name={hidden ? 'down' : 'up'} /> {hidden ? 'show drawing' : 'fold drawing'}
        </button>
      </div>
    </aside>
  );
}

function DrawingNow() {
  const bench = useBench();
  const theme = useTheme(({ shown }) => shown);
  const other = useOther(({ shown }) => shown);
  if (bench === null) return <Wait text="No bore is open." />;
  const { boreSeen, surveySeen, job } = bench;
  if (boreSeen === null || surveySeen === null) return <Wait text="Working it out…" />;
  if (surveySeen.surface === null) {
    return <Wait text="The drawing comes with the first readings." />;
  }
  const { bore, survey } = bench;
  const [side] = otherSides(surveySeen, survey.wornSide, boreSeen.facts.load);
  const asking = side && { bore: bore.id, survey: survey.id, wornSide: side.wornSide };
  return (
    <>
      <OtherBand bench={{ ...bench, boreSeen, surveySeen }} />
      <Drawing
        bore={boreSeen}
        survey={other ?? surveySeen}
        units={job.units}
        theme={theme}
        other={
          asking === undefined
            ? null
            : {
                shown: other !== null,
                toggle: () => (other === null ? showOther(asking) : leaveOther()),
              }
        }
      />
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
