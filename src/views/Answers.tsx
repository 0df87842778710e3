/** What follows from the readings: fetched once the table can be typed into, longer to draw, and never in its way. */
import { memo, useEffect } from 'react';
import type { Bench } from '../store/bench.ts';
import { useRested } from '../store/useRested.ts';
import { Fit } from './fit/Fit.tsx';
import { Plan } from './plan/Plan.tsx';
import { Read } from './read/Read.tsx';
import { Show } from './show/Show.tsx';

interface AnswersProps {
  readonly bench: Bench;
  /** Called once the sections stand on the page. */
  onThere(): void;
}

const Told = memo(Read);
const Fitted = memo(Fit);
const Shown = memo(Show);

export const Answers = memo(function Answers({ bench, onThere }: AnswersProps) {
  const rested = useRested(bench);
  useEffect(onThere, [onThere]);
  return (
    <>
      <section id="read" data-section="read" aria-labelledby="read-head">
        <Told bench={rested} />
      </section>
      <section id="plan" data-section="plan" aria-labelledby="plan-head">
        <Plan bench={bench} />
      </section>
      <section id="fit" data-section="fit" aria-labelledby="fit-head">
        <Fitted bench={rested} />
      </section>
      <section id="show" data-section="show" aria-labelledby="show-head">
        <Shown bench={rested} />
      </section>
    </>
  );
});
