import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { onePinOf } from '../../src/evaluate/onePin.ts';
import { evaluate } from '../../src/evaluate.ts';
import { setFit } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { orchardLiftClevis } from '../../src/practice/demos/orchardLiftClevis.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';
import type { Bench } from './bench.ts';

/** The whole fit of one survey, of a job that changes each time; `anew`: its readings have changed too. */
function changing(
  of: Job,
  place: readonly [number, number],
  anew: boolean,
  to: (nth: number) => Job,
) {
  const evaluation = evaluate(of);
  const bore = evaluation.bores[place[0]]!;
  const survey = bore.surveys[place[1]]!;
  let nth = 0;
  return () => {
    nth = (nth + 1) % 50;
    const job = to(nth);
    return [
      fitOfSurvey(job, bore, anew ? { ...survey } : survey, null, evaluation.parts),
      onePinOf(job, evaluation, null),
    ];
  };
}

const winch = slipwayWinch();
const clevis = orchardLiftClevis();
const warmed = (job: Job, bore: string) => (nth: number) =>
  setFit(job, bore, 'heat', { boss: { text: String(280 + nth), unit: 'F' } });

export const benches: readonly Bench[] = [
  {
    name: 'the fit of a bushing, once a temperature has changed',
    bar: 33,
    prepare: () => changing(winch, [0, 2], false, warmed(winch, 'f1')),
  },
  {
    name: 'the fit of a bushing that does not touch everywhere, once a reading has changed',
    bar: 33,
    prepare: () => changing(winch, [0, 0], true, warmed(winch, 'f1')),
  },
  {
    name: 'the fit of two bushings, with another bore on their pin, once a temperature has changed',
    bar: 33,
    prepare: () => changing(clevis, [1, 0], false, warmed(clevis, 'f2')),
  },
];
