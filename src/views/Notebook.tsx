/** The shop notebook: one page, in the order of the work. */
import { memo } from 'react';
import type { Bench } from '../store/bench.ts';
import { useBench, useUnhurriedBench } from '../store/useBench.ts';
import { Measure } from './measure/Measure.tsx';
import { Plan } from './plan/Plan.tsx';
import { Read } from './read/Read.tsx';
import { Show } from './show/Show.tsx';
import { Terms } from './terms/Terms.tsx';
import { useNotebookPlace } from './useNotebookPlace.ts';

export function Notebook() {
  const bench = useBench();
  const unhurried = useUnhurriedBench();
  useNotebookPlace(unhurried?.surveySeen != null);
  if (bench === null || unhurried === null) {
    return <p className="opening">This job holds no bore with a survey.</p>;
  }
  return (
    <Terms>
      <section id="measure" data-section="measure" aria-labelledby="measure-head">
        <Typed bench={bench} />
      </section>
      <Answers bench={unhurried} />
    </Terms>
  );
}

const Typed = memo(Measure);

/** What follows from the readings: longer to draw than the table, and never in its way. */
const Answers = memo(function Answers({ bench }: { readonly bench: Bench }) {
  return (
    <>
      <section id="read" data-section="read" aria-labelledby="read-head">
        <Read bench={bench} />
      </section>
      <section id="plan" data-section="plan" aria-labelledby="plan-head">
        <Plan bench={bench} />
      </section>
      <section id="show" data-section="show" aria-labelledby="show-head">
        <Show bench={bench} />
      </section>
    </>
  );
});
