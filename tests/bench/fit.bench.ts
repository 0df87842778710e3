import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { onePinOf } from '../../src/evaluate/onePin.ts';
import { evaluate } from '../../src/evaluate.ts';
import { setFit, setPinDiameter } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { orchardLiftClevis } from '../../src/practice/demos/orchardLiftClevis.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';
import type { Bench } from './bench.ts';

const VARIANTS = 4;

/** The whole fit of the bore's newest survey but one, each time of a job that differs from the one before. */
function changing(bore: number, survey: number, variant: (nth: number) => Job) {
  const ready = Array.from({ length: VARIANTS }, (_, nth) => {
    const job = variant(nth);
    return { job, evaluation: evaluate(job) };
  });
  let nth = 0;
  return () => {
    nth = (nth + 1) % VARIANTS;
    const { job, evaluation } = ready[nth]!;
    const of = evaluation.bores[bore]!;
    return [
      fitOfSurvey(job, of, of.surveys[survey]!, null, evaluation.parts),
      onePinOf(job, evaluation, null),
    ];
  };
}

const winch = slipwayWinch();
const clevis = orchardLiftClevis();

export const benches: readonly Bench[] = [
  {
    name: 'the fit of a bushing, once a temperature has changed',
    bar: 33,
    prepare: () =>
      changing(0, 2, (nth) =>
        setFit(winch, 'f1', 'heat', { boss: { text: String(280 + nth), unit: 'F' } }),
      ),
  },
  {
    name: 'the fit of a bushing that does not touch everywhere, once the pin has changed',
    bar: 33,
    prepare: () =>
      changing(0, 0, (nth) =>
        setPinDiameter(winch, 'f1', 0, { text: (1.49 + nth / 1e4).toFixed(4), unit: 'in' }),
      ),
  },
  {
    name: 'the fit of two bushings, with another bore on their pin',
    bar: 33,
    prepare: () =>
      changing(1, 0, (nth) =>
        setPinDiameter(clevis, 'f1', 0, { text: (37.9 + nth / 1e3).toFixed(3), unit: 'mm' }),
      ),
  },
];
