/** Show: the story of the bore for the person who pays; fetched once the rest of the notebook is there. */
import { lazy, Suspense } from 'react';
import type { Bench } from '../../store/bench.ts';

const ShownStory = lazy(async () => {
  const { ShownStory } = await import('./ShownStory.tsx');
  return { default: ShownStory };
});

export function Show({ bench }: { readonly bench: Bench }) {
  const { boreSeen, surveySeen } = bench;
  return (
    <>
      <h2 id="show-head">Show</h2>
      {bench.bore.kind !== 'bore' ? (
        <p>
          The story is told of a bore: choose one above. What this part shows stands under Read.
        </p>
      ) : boreSeen === null || surveySeen === null ? (
        <p className="soft">Working it out…</p>
      ) : (
        <Suspense fallback={<p className="soft">Fetching the story…</p>}>
          <ShownStory bench={{ ...bench, boreSeen, surveySeen }} />
        </Suspense>
      )}
    </>
  );
}
