/** Cases in which the surface, its sd or its name once promised too much, or did not come back at all. */
import { describe, expect, it } from 'vitest';
import { design } from '../../src/bore/design.ts';
import { condition } from '../../src/bore/posterior.ts';
import { depthMeans, profileOf } from '../../src/bore/profile.ts';
import { learnSmoothness } from '../../src/bore/smoothness.ts';
import { thin } from '../../src/bore/thin.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  bell,
  clocks,
  crescent,
  depthsWithin,
  type JobParts,
  jobOf,
  lobe,
  MOUTHS,
  measure,
  round,
  type Shape,
  sum,
  type Taken,
  typedIn,
} from '../fixtures/bores.ts';

const LENGTH = 50;
const NOISE = 0.005;
const WORN = sum(round(32.5), lobe(2, 0.075, 0.4), bell('lorentzian', 0.1, 16));
const taken = measure(
  WORN,
  'two-point',
  clocks(6),
  depthsWithin(5, LENGTH),
  NOISE,
  seededRandom(7),
);
const survey = (parts: JobParts, memory?: Memory, pace?: 'quick' | 'settled') =>
  evaluate(jobOf(parts), memory, pace).bores[0]!.surveys[0]!;

it('a reading stated to repeat exactly (sd 0) does not stop the evaluation', () => {
  expect(survey({ taken, length: LENGTH, sd: 0 }).status).toBe('ok');
});

it('the first readings typed into an empty survey have a believable quick answer', () => {
  const memory: Memory = new Map();
  const parts = { length: LENGTH, nominal: 65, sd: NOISE };
  survey({ ...parts, taken: [] }, memory, 'quick');
  const quick = survey({ ...parts, taken }, memory, 'quick').surface!;
  // At the least as long a smoothness as the shortest that would be believed: a tenth of the bore (it is 0.5 mm).
  expect(quick.smoothness.length).toBeGreaterThan(0.1 * LENGTH);
});

it('a worn side stated later is in the answer, memory or not', () => {
  const job = jobOf({
    taken,
    length: LENGTH,
    nominal: 65,
    feature: { decisions: { target: typedIn('mm', 65.2) } },
  });
  const memory: Memory = new Map();
  evaluate(job, memory);
  const bore = job.features[0]!;
  const said = {
    ...job,
    features: [{ ...bore, surveys: [{ ...bore.surveys[0]!, wornSide: '6:00' }] }],
  };
  expect(evaluate(said, memory)).toEqual(evaluate(said));
});

describe('one-sided wear read across', () => {
  const held = (c: number) =>
    Array.from({ length: 16 }, (_, i) => {
      const random = seededRandom(500 + i);
      const truth = sum(
        round(32.5),
        crescent(0.1 + 0.3 * random.uniform(), c, 2 * Math.PI * random.uniform()),
        bell('lorentzian', 0.1, 15),
      );
      const read = measure(truth, 'two-point', clocks(6), depthsWithin(5, LENGTH), NOISE, random);
      const s = survey({ taken: read, length: LENGTH, sd: NOISE }).surface!;
      const columns = s.grid.theta.length;
      return (
        s.mean.filter(
          (r, k) =>
            Math.abs(r - truth(s.grid.theta[k % columns]!, s.grid.z[Math.floor(k / columns)]!)) <=
            2 * s.sd[k]!,
        ).length / s.mean.length
      );
    });
  it.each([0.02, 0.05, 0.1])(
    'lies within 2 sd, worn alike at all depths, part smaller by %f mm per side',
    (c) => {
      const share = held(c);
      expect(share.reduce((a, b) => a + b, 0) / share.length).toBeGreaterThanOrEqual(0.9);
    },
  );
});

const told = (read: readonly Taken[]) => {
  const d = design(
    read.map((t, row) => ({
      row,
      instrument: t.gauge,
      theta: t.theta,
      z: t.z,
      value: t.value,
      sd: NOISE,
      sdStated: true,
      setup: -1,
    })),
    [],
    LENGTH,
  );
  return profileOf(depthMeans(condition(d, learnSmoothness(d, 32.5), 32.5)!), LENGTH)!.shape;
};
const tell = (shape: Shape, count: number, seed: number) =>
  told(
    measure(
      sum(round(32.5), lobe(2, 0.05, 0.7), shape),
      'two-point',
      clocks(6),
      depthsWithin(count, LENGTH),
      NOISE,
      seededRandom(seed),
    ),
  );

it.each([5, 9])(
  'a straight bore is called something else in at most 5 of 100 surveys, %i depths',
  (count) => {
    const shapes = Array.from({ length: 100 }, (_, i) => tell(round(0), count, 1001 + i));
    expect(shapes.filter((s) => s !== 'straight' && s !== 'not-told').length).toBeLessThanOrEqual(
      5,
    );
  },
);

it.each(MOUTHS.flatMap((kind) => [7, 9].map((count) => ({ kind, count }))))(
  'a $kind mouth at A is told from mouths at both ends, $count depths',
  ({ kind, count }) => {
    const shapes = Array.from({ length: 20 }, (_, i) => tell(bell(kind, 0.11, 15), count, 1 + i));
    expect(shapes.filter((s) => s === 'bell-at-A').length).toBeGreaterThanOrEqual(18);
  },
);

it('many set-ups with many readings each are drawn together, and it ends', () => {
  // Every set-up keeps cells of its own: 30 of them with 24 readings can never come down to 640.
  const many = Array.from({ length: 30 }, (_, setup) =>
    Array.from({ length: 24 }, (_, i) => ({
      row: 0,
      instrument: 'sweep' as const,
      theta: (2 * Math.PI * i) / 24,
      z: setup * 1.6,
      value: 0,
      sd: NOISE,
      sdStated: true,
      setup,
    })),
  ).flat();
  const drawn = thin(many, LENGTH);
  expect(drawn.length).toBeGreaterThan(0);
  expect(drawn.length).toBeLessThanOrEqual(many.length);
});

describe('what shows the side', () => {
  const swept = (depths: readonly number[]) => {
    const job = jobOf({ taken, length: LENGTH, nominal: 65, sd: NOISE });
    const needle = { id: 'needle', kind: 'sweep' as const, name: 'Indicator' };
    const bore = job.features[0]!;
    const as = bore.surveys[0]!;
    const added = depths.flatMap((z) =>
      Array.from({ length: 12 }, (_, hour) => ({
        id: `n${z} ${hour}`,
        face: 'A' as const,
        depth: typedIn('mm', z),
        clock: String(hour || 12),
        gauge: 'needle',
        value: typedIn('mm', 0.02 * Math.cos((Math.PI * hour) / 6)),
      })),
    );
    const surveys = [{ ...as, readings: [...as.readings, ...added] }];
    const decisions = { target: typedIn('mm', 65.1), centre: { rule: 'partner' as const } };
    return evaluate({
      ...job,
      gauges: [...job.gauges, needle],
      features: [{ ...bore, surveys, decisions }],
    }).bores[0]!.surveys[0]!;
  };

  it('is not a lone sweep, whose centre is its own; sweeps at two depths in one set-up are', () => {
    expect(swept([10]).target!.assumed).toContain('both sides alike');
    expect(swept([10]).sections.every(({ circle }) => circle === null)).toBe(true);
    expect(swept([10, 40]).target!.assumed).toBeNull();
  });

  it('a centre that cannot be worked out here says so', () => {
    expect(swept([10]).notes.some(({ text }) => text.includes('partner bore'))).toBe(true);
  });
});
