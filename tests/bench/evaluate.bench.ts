import { evaluate, type Memory } from '../../src/evaluate.ts';
import { setReading } from '../../src/job/readingEdits.ts';
import type { Job } from '../../src/job/schema.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  bell,
  clocks,
  depthsWithin,
  fading,
  jobOf,
  lobe,
  measure,
  round,
  sum,
  typedIn,
} from '../fixtures/bores.ts';
import type { Bench } from './bench.ts';

const LENGTH = 50;
const WORN = sum(round(32.5), lobe(2, 0.075, 0.4, fading(60)), bell('lorentzian', 0.1, 16));

function surveyed(pairs: number, depths: number): Job {
  const places = depthsWithin(depths, LENGTH);
  return jobOf({
    taken: measure(WORN, 'two-point', clocks(pairs), places, 0.005, seededRandom(1)),
    length: LENGTH,
    nominal: 65,
    feature: { decisions: { target: typedIn('mm', 65.2, 3) } },
  });
}

/**
 * One reading typed over, then everything worked out anew: surface, profile, target, removal, zones.
 *
 * @param pace `quick`: the smoothness stays as it was learned before, as while someone types; `settled`: learned anew
 */
function typing(pairs: number, depths: number, pace: 'quick' | 'settled', bar?: number): Bench {
  return {
    name: `reading edit to evaluation, ${pairs} x ${depths}, ${pace}`,
    ...(bar === undefined ? {} : { bar }),
    prepare: () => {
      const memory: Memory = new Map();
      let job = surveyed(pairs, depths);
      evaluate(job, memory);
      const middle = `r${Math.floor((pairs * depths) / 2)}`;
      let turn = 0;
      return () => {
        turn++;
        // A value never typed before, so that nothing can be remembered of it.
        const value = typedIn('mm', 65 + 1e-4 * (turn % 997), 4);
        job = setReading(job, 'b', 's', middle, { value });
        return evaluate(job, memory, pace);
      };
    },
  };
}

/**
 * A reading moved to a depth where none was: all that is not known is worked out anew, and nothing of the design, factor or
 * standard deviations can be kept.
 */
function moving(pairs: number, depths: number, bar: number): Bench {
  return {
    name: `reading moved to evaluation, ${pairs} x ${depths}, quick`,
    bar,
    prepare: () => {
      const memory: Memory = new Map();
      let job = surveyed(pairs, depths);
      evaluate(job, memory);
      let turn = 0;
      return () => {
        turn++;
        const depth = typedIn('mm', 20 + 1e-3 * (turn % 997), 4);
        job = setReading(job, 'b', 's', `r${Math.floor((pairs * depths) / 2)}`, { depth });
        return evaluate(job, memory, 'quick');
      };
    },
  };
}

/** A step of the target while it is dragged: the shape is kept, and all that hangs on the size follows. */
function dragging(pairs: number, depths: number, bar: number): Bench {
  return {
    name: `a step of the target to evaluation, ${pairs} x ${depths}, quick`,
    bar,
    prepare: () => {
      const memory: Memory = new Map();
      const job = surveyed(pairs, depths);
      evaluate(job, memory);
      let turn = 0;
      return () => {
        turn++;
        // To and fro, as a hand does, by sizes never asked before.
        const target = typedIn('mm', 65.2 + 0.1 * Math.sin(turn), 6);
        const features = job.features.map((one) => ({
          ...one,
          decisions: { ...one.decisions, target },
        }));
        return evaluate({ ...job, features }, memory, 'quick');
      };
    },
  };
}

export const benches: Bench[] = [
  typing(6, 5, 'quick'),
  typing(6, 5, 'settled'),
  typing(12, 8, 'quick', 16),
  typing(12, 8, 'settled'),
  typing(36, 16, 'quick', 60),
  typing(36, 16, 'settled'),
  dragging(12, 8, 33),
  // Bars of what the standard deviations may take to follow; they come with the rest.
  moving(12, 8, 60),
  moving(36, 16, 400),
];
