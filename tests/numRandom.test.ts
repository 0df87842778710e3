/** Seeded random numbers and the downhill simplex. */
import { describe, expect, it } from 'vitest';
import { nelderMead } from '../src/num/minimise.ts';
import { randomFromState, seededRandom } from '../src/num/random.ts';

describe('random numbers', () => {
  // The algorithm as published, worked by a separate program in whole-number arithmetic; the
  // first is by hand: rotl(2 * 5, 7) * 9.
  it('follow xoshiro128** from the state 1, 2, 3, 4', () => {
    const { bits } = randomFromState([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, bits)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]);
  });

  // Published outputs of splitmix64 for the seed 1234567: 6457827717110365317 and
  // 3203168211198807973, cut into halves, the lower first.
  it('are seeded by splitmix64', () => {
    const halves = [6457827717110365317n, 3203168211198807973n].flatMap((word) => [
      Number(word & 0xffffffffn),
      Number(word >> 32n),
    ]) as [number, number, number, number];
    const expected = randomFromState(halves);
    const seeded = seededRandom(1234567);
    for (let i = 0; i < 20; i++) expect(seeded.bits()).toBe(expected.bits());
  });

  it('repeat for the same seed and differ for another', () => {
    const draw = (seed: number) => Array.from({ length: 5 }, seededRandom(seed).normal);
    expect(draw(3)).toEqual(draw(3));
    expect(draw(3)).not.toEqual(draw(4));
    expect(draw(-1)).not.toEqual(draw(1));
    expect(() => seededRandom(Number.NaN)).toThrow(RangeError);
  });

  it('have the moments they say, within four standard errors of 100,000 draws', () => {
    const { uniform, normal } = seededRandom(5);
    const count = 100_000;
    const moments = (draw: () => number) => {
      let [first, second, fourth] = [0, 0, 0];
      for (let i = 0; i < count; i++) {
        const v = draw();
        first += v / count;
        second += v ** 2 / count;
        fourth += v ** 4 / count;
      }
      return [first, second, fourth] as const;
    };
    const near = (value: number, wanted: number, variance: number) =>
      expect(Math.abs(value - wanted)).toBeLessThan(4 * Math.sqrt(variance / count));
    const flat = moments(uniform);
    near(flat[0], 1 / 2, 1 / 12);
    near(flat[1], 1 / 3, 4 / 45);
    near(flat[2], 1 / 5, 16 / 225);
    const bell = moments(normal);
    near(bell[0], 0, 1);
    near(bell[1], 1, 2);
    near(bell[2], 3, 96);
  });
});

describe('the downhill simplex', () => {
  // H. H. Rosenbrock, The Computer Journal 3, 1960, 175-184.
  it('finds the bottom of the curved valley', () => {
    const valley = ([x, y]: number[]) => 100 * (y! - x! * x!) ** 2 + (1 - x!) ** 2;
    const found = nelderMead(valley, [-1.2, 1], 0.5, { maxIterations: 500, tolerance: 1e-8 });
    expect(found.x[0]).toBeCloseTo(1, 7);
    expect(found.x[1]).toBeCloseTo(1, 7);
    expect(found.iterations).toBeLessThan(200);
  });

  it('takes a step for each variable, and one variable alone', () => {
    const bowl = ([x, y]: number[]) => (x! - 3) ** 2 + ((y! - 1e-4) * 1e4) ** 2;
    const limits = { maxIterations: 500, tolerance: 1e-8 };
    const { x } = nelderMead(bowl, [0, 0], [1, 1e-4], limits);
    expect(x[0]).toBeCloseTo(3, 6);
    expect(x[1]! * 1e4).toBeCloseTo(1, 6);
    expect(nelderMead(([v]) => (v! + 2) ** 2, [5], 1, limits).x[0]).toBeCloseTo(-2, 7);
    expect(nelderMead(() => 7, [], 1, limits)).toEqual({ x: [], value: 7, iterations: 0 });
  });

  it('keeps out of where the function is not a number, and keeps to its limit', () => {
    const half = ([x]: number[]) => Math.sqrt(x!) + 1;
    const found = nelderMead(half, [4], 1, { maxIterations: 60, tolerance: 1e-6 });
    expect(found.x[0]).toBeGreaterThanOrEqual(0);
    expect(found.value).toBeLessThan(1.01);
    const nowhere = nelderMead(() => Number.NaN, [1, 2], 1, { maxIterations: 9, tolerance: 1e-6 });
    expect(nowhere).toEqual({ x: [1, 2], value: Number.POSITIVE_INFINITY, iterations: 9 });
  });

  it('draws no random numbers', () => {
    const f = ([x, y]: number[]) => Math.cos(x!) + (y! - x!) ** 2;
    const run = () => nelderMead(f, [1, 1], 0.3, { maxIterations: 300, tolerance: 1e-9 });
    expect(run()).toEqual(run());
  });
});
