/** The shop notebook: one page, in the order of the work. */
import { useBench } from '../store/useBench.ts';
import { Measure } from './measure/Measure.tsx';
import { Plan } from './plan/Plan.tsx';
import { Read } from './read/Read.tsx';
import { Show } from './show/Show.tsx';
import { useNotebookPlace } from './useNotebookPlace.ts';

export function Notebook() {
  const bench = useBench();
  useNotebookPlace(bench?.surveySeen != null);
  if (bench === null) return <p className="opening">This job holds no bore with a survey.</p>;
  return (
    <>
      <section id="measure" data-section="measure" aria-labelledby="measure-head">
        <Measure bench={bench} />
      </section>
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
}
