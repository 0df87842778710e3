/** A bore squeezed: closed forms of constructed bores, the two limits, and what the log teaches. */
import { describe, expect, it } from 'vitest';
import { learnRange, springShares, upsetShares } from '../../src/assembly/learned.ts';
import { coldReadings, planSqueeze, type SqueezeAsked } from '../../src/assembly/squeeze.ts';
import { seededRandom } from '../../src/num/random.ts';

const COLUMNS = 120;
const THETA = Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS);
const DEPTHS = Float64Array.from({ length: 9 }, (_, i) => 5 * i);

function asked(
  radius: (theta: number, z: number) => number,
  goal: number,
  upset = 0.1,
): SqueezeAsked {
  return {
    grid: { theta: THETA, z: DEPTHS },
    radius: Float64Array.from({ length: COLUMNS * DEPTHS.length }, (_, k) =>
      radius(THETA[k % COLUMNS]!, DEPTHS[Math.floor(k / COLUMNS)]!),
    ),
    seated: [...DEPTHS].map(() => true),
    goal,
    upset,
  };
}

/** Mean diameter 50, an oval that is 0.3 wider along `way` than across it at the rim and 0.1 at the bottom. */
const WAY = Math.PI / 6;
const oval = (theta: number, z: number) =>
  25 + (0.075 - (0.05 * z) / 40) * Math.cos(2 * (theta - WAY));

describe('how far', () => {
  it('a pure oval closes until its long way is at the goal; its other way opens as much, its mean stays', () => {
    const plan = planSqueeze(asked(oval, 50.02))!;
    expect(plan.jaws).toBeCloseTo(WAY, 6);
    for (const { z, before, close, bent } of plan.rows) {
      const wide = 0.15 - (0.1 * z) / 40;
      expect(before.largest).toBeCloseTo(50 + wide, 6);
      expect(close).toBeCloseTo(Math.max(0, wide - 0.02), 6);
      expect(bent.mean).toBeCloseTo(before.mean, 9);
      expect(bent.largest).toBeLessThanOrEqual(50.02 + 1e-9);
      expect(bent.least).toBeCloseTo(before.least + close, 6);
    }
  });

  it('the rim wants more than the bottom, and the jaws grip where at least half of the most is wanted', () => {
    const plan = planSqueeze(asked(oval, 50.02))!;
    expect(plan.most.z).toBe(0);
    // 0.13 at the rim; half of it where 0.15 - z / 400 = 0.085, at 26.
    expect(plan.grip).toEqual({ from: 0, to: 25 });
  });

  it('with upset the way across the jaws is the same, and the mean lies below it by the upset', () => {
    const plan = planSqueeze(asked(oval, 50.02, 0.05))!;
    for (const { bent, upset, close, short } of plan.rows) {
      const drawn = close + short > 0 ? 0.05 : 0;
      expect(upset.mean).toBeCloseTo(bent.mean - drawn, 9);
      expect(upset.largest).toBeLessThanOrEqual(bent.largest + 1e-9);
      expect(upset.least).toBeLessThanOrEqual(bent.least + 1e-9);
    }
  });

  it('where the mean itself is over the goal, bending alone leaves it round and so much over', () => {
    const plan = planSqueeze(asked(oval, 49.95))!;
    const rim = plan.rows[0]!;
    expect(rim.close).toBeCloseTo(0.15, 6);
    expect(rim.short).toBeCloseTo(0.05, 6);
    expect(rim.bent.largest - rim.bent.least).toBeLessThan(1e-6);
  });

  it('nothing is squeezed that is under the goal, or where no seat is known', () => {
    expect(planSqueeze(asked(oval, 50.15))).toBeNull();
    const one = asked(oval, 50);
    expect(planSqueeze({ ...one, seated: one.seated.map(() => false) })).toBeNull();
    expect(planSqueeze({ ...one, radius: one.radius.map(() => Number.NaN) })).toBeNull();
  });

  it('a bore worn to one side closes as its diameters do', () => {
    // A crescent w deep on one side: diameters as of an oval bore; largest 50 + w.
    const crescent = (theta: number) => 25 + 0.2 * Math.max(0, -Math.cos(theta));
    // Their mean is 50 + 2 w / pi = 50.127: 50.15 can be had by bending.
    const plan = planSqueeze(asked(crescent, 50.15))!;
    expect(plan.jaws).toBeCloseTo(0, 6);
    expect(plan.most.before.largest).toBeCloseTo(50.2, 9);
    expect(plan.most.bent.largest).toBeLessThanOrEqual(50.15 + 1e-9);
  });

  it('on any bore: never past the goal where it can be met, and no less would do', () => {
    const next = seededRandom(7).uniform;
    for (let run = 0; run < 200; run++) {
      const lobes = [2, 4, 6].map((n) => ({ n, a: 0.1 * next(), at: 6 * next() }));
      const shape = (theta: number) =>
        25 + lobes.reduce((sum, { n, a, at }) => sum + (a / n) * Math.cos(n * theta - at), 0);
      const goal = 50 + 0.15 * (next() - 0.4);
      const one = asked(shape, goal, 0.1 * next());
      const plan = planSqueeze(one);
      if (plan === null) continue;
      const { close, short, bent, upset, before } = plan.rows[0]!;
      expect(bent.largest).toBeLessThanOrEqual(goal + short + 1e-6);
      expect(bent.largest).toBeLessThanOrEqual(before.largest + 1e-9);
      expect(upset.mean).toBeLessThanOrEqual(bent.mean + 1e-12);
      if (short > 0 || close < 1e-6) continue;
      // Brute force over a fine ladder: the first J that meets the goal.
      const largest = (j: number) =>
        Math.max(
          ...[...THETA].map(
            (theta) =>
              shape(theta) + shape(theta + Math.PI) - j * Math.cos(2 * (theta - plan.jaws)),
          ),
        );
      expect(largest(close - 1e-5)).toBeGreaterThan(goal);
    }
  });
});

describe('what to measure cold', () => {
  it('lies between bending alone and the most upset, wider by what is not known', () => {
    const one = asked(oval, 50.02, 0.04);
    const plan = planSqueeze(one)!;
    const [along, , across] = coldReadings(one, plan, [0], 0, 0) as [never, never, never];
    // 0.13 closed at the rim: along the jaws 50.02 either way, across them 49.85 + 0.13, less twice the upset.
    expect(along).toMatchObject({ z: 0 });
    expect((along as { least: number }).least).toBeCloseTo(50.02, 6);
    expect((along as { most: number }).most).toBeCloseTo(50.02, 6);
    expect((across as { most: number }).most).toBeCloseTo(49.98, 6);
    expect((across as { least: number }).least).toBeCloseTo(49.9, 6);
    const wider = coldReadings(one, plan, [0], 0.03, 0.01)[0]!;
    expect(wider.most - wider.least).toBeCloseTo(2 * (0.03 + 0.01), 6);
  });
});

describe('what the log teaches', () => {
  const log = (asked: number, came: number) => ({
    asked,
    came,
    meanBefore: 50,
    meanAfter: 50 - 0.05 * asked,
  });

  it('one squeeze widens what is usual to hold it', () => {
    const shares = springShares([log(0.4, 0.2)]);
    expect(shares).toEqual([0.5]);
    expect(learnRange(shares, { least: 0.1, most: 0.3 })).toEqual({
      least: 0.1,
      most: 0.5,
      count: 1,
    });
  });

  it('three stand alone: the mean of them, two standard deviations of a next one', () => {
    // Values 0.2, 0.3, 0.4: mean 0.3, sd 0.1; of a next one 0.1 sqrt(4 / 3).
    const found = learnRange([0.2, 0.3, 0.4], { least: 0, most: 9 })!;
    expect(found.count).toBe(3);
    expect(found.least).toBeCloseTo(0.3 - 0.2 * Math.sqrt(4 / 3), 12);
    expect(found.most).toBeCloseTo(0.3 + 0.2 * Math.sqrt(4 / 3), 12);
  });

  it('what tells nothing teaches nothing', () => {
    const none = { asked: Number.NaN, came: 0.1, meanBefore: Number.NaN, meanAfter: 50 };
    expect(springShares([none])).toEqual([]);
    expect(upsetShares([none])).toEqual([]);
    expect(learnRange([], null)).toBeNull();
    expect(upsetShares([log(0.4, 0.2)])[0]).toBeCloseTo(0.0004, 12);
  });
});
