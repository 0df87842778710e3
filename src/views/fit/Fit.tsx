/** Fit: whether the bushing goes in, holds, and lets the pin turn; fetched once the rest of the notebook is there. */
import { lazy, Suspense } from 'react';
import { isOfBushing } from '../../job/measuredAt.ts';
import type { Bench } from '../../store/bench.ts';

const FitParts = lazy(() => import('./FitParts.tsx'));

export function Fit({ bench }: { readonly bench: Bench }) {
  const { boreSeen, surveySeen, bore } = bench;
  return (
    <>
      <h2 id="fit-head">Fit</h2>
      {bore.kind !== 'bore' ? (
        <p>The fit is told of a bore and its bushings: choose a bore above.</p>
      ) : boreSeen === null || surveySeen === null ? (
        <p className="soft">Working it out…</p>
      ) : surveySeen.surface === null ? (
        <p className="soft">The fit follows the first readings that can be used.</p>
      ) : surveySeen.target === null && !isOfBushing(bore, bench.survey) ? (
        <p>
          Give the bushing’s outside diameter under Measure, or choose a size under Plan: the fit
          follows.
        </p>
      ) : (
        <Suspense fallback={<p className="soft">Fetching the fit…</p>}>
          <FitParts bench={{ ...bench, boreSeen, surveySeen }} />
        </Suspense>
      )}
    </>
  );
}
