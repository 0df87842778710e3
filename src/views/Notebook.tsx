/** The shop notebook: one page, in the order of the work. */
import { lazy, memo, Suspense, useCallback, useState } from 'react';
import { useBench, useUnhurriedBench } from '../store/useBench.ts';
import { useRested } from '../store/useRested.ts';
import { Measure } from './measure/Measure.tsx';
import { Later } from './parts/Later.tsx';
import { Terms } from './terms/Terms.tsx';
import { useNotebookPlace } from './useNotebookPlace.ts';

const Answers = lazy(async () => {
  const { Answers } = await import('./Answers.tsx');
  return { default: Answers };
});

export function Notebook() {
  const bench = useBench();
  const typed = useRested(bench);
  const unhurried = useUnhurriedBench();
  const [whole, setWhole] = useState(false);
  const onThere = useCallback(() => setWhole(true), []);
  useNotebookPlace(whole && unhurried?.surveySeen != null);
  if (typed === null || unhurried === null) {
    return <p className="opening">This job holds no bore with a survey.</p>;
  }
  return (
    <Terms>
      <section id="measure" data-section="measure" aria-labelledby="measure-head">
        <Typed bench={typed} />
      </section>
      <Later>
        <Suspense fallback={<p className="opening">Fetching the rest of the notebook…</p>}>
          <Answers bench={unhurried} onThere={onThere} />
        </Suspense>
      </Later>
    </Terms>
  );
}

const Typed = memo(Measure);
