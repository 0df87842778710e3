import { fitAsked } from '../../src/evaluate/fit.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { setFit, setPinDiameter } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { orchardLiftClevis } from '../../src/practice/demos/orchardLiftClevis.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';
import type { Bench } from './bench.ts';

/** The whole fit of one survey, in the worker, each time of a job that has just been changed. */
function changing(job: Job, survey: string, bore: string, change: (nth: number) => Job) {
  const memory: Memory = new Map();
  evaluate(job, memory, 'settled');
  let nth = 0;
  return () => {
    nth++;
    return fitAsked(change(nth), { bore, survey }, memory);
  };
}

const winch = slipwayWinch();
const clevis = orchardLiftClevis();
const inch = (text: string) => ({ text, unit: 'in' as const });

export const benches: readonly Bench[] = [
  {
    name: 'fit anew once a temperature has changed',
    bar: 33,
    prepare: () =>
      changing(winch, 's3', 'f1', (nth) =>
        setFit(winch, 'f1', 'heat', { boss: { text: String(280 + (nth % 50)), unit: 'F' } }),
      ),
  },
  {
    name: 'fit anew once the pin has changed',
    bar: 33,
    prepare: () =>
      changing(winch, 's3', 'f1', (nth) =>
        setPinDiameter(winch, 'f1', 0, inch((1.49 + (nth % 80) / 1e4).toFixed(4))),
      ),
  },
  {
    name: 'fit anew, two bushings and another bore on the pin',
    bar: 33,
    prepare: () =>
      changing(clevis, 's2', 'f2', (nth) =>
        setPinDiameter(clevis, 'f1', 0, { text: (37.9 + (nth % 80) / 1e3).toFixed(3), unit: 'mm' }),
      ),
  },
];
