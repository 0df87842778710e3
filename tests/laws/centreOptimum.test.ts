/**
 * The two free centres against linear programmes solved by highs, on walls made from formulas of wear (constructed; they
 * share nothing with the surface's prior), and the proof that each answer carries with it.
 */
import { describe, expect, it } from 'vitest';
import { freeAxes, freeAxis } from '../../src/bore/centre.ts';
import { wallPlaces } from '../../src/bore/removal.ts';
import { makeGrid } from '../../src/bore/surface.ts';
import type { Grid, WearSurface } from '../../src/bore/types.ts';
import { leastHinges } from '../../src/num/leastHinges.ts';
import { seededRandom } from '../../src/num/random.ts';
import { anyBore } from '../fixtures/simulated.ts';
import {
  greatestCut,
  leastGreatest,
  leastMeanMetal,
  leastMetalWithin,
  meanMetal,
  spotsOf,
} from './centreLinear.ts';

/** The bar: mean metal and greatest cut, mm. */
const BAR = 1e-6;

function coarse(length: number): Grid {
  return {
    theta: Float64Array.from({ length: 48 }, (_, i) => (2 * Math.PI * i) / 48),
    z: Float64Array.from({ length: 17 }, (_, i) => (length * i) / 16),
  };
}

/** A worn wall off its reference axis and leaning, a size between its least and its greatest, and where it is a seat. */
function seatOf(seed: number, gridOf: (length: number) => Grid) {
  const random = seededRandom(seed + 7000);
  const bore = anyBore(seed);
  const grid = gridOf(bore.length);
  const columns = grid.theta.length;
  const u = (most: number) => most * (2 * random.uniform() - 1);
  const [x, y, leanX, leanY] = [u(0.2), u(0.2), u(0.003), u(0.003)];
  const mean = Float64Array.from({ length: columns * grid.z.length }, (_, k) => {
    const [theta, z] = [grid.theta[k % columns]!, grid.z[Math.floor(k / columns)]!];
    const off = (x + leanX * z) * Math.sin(theta) + (y + leanY * z) * Math.cos(theta);
    return bore.truth(theta, z) + off;
  });
  const surface = { grid, mean } as unknown as WearSurface;
  const sorted = mean.slice().sort();
  const radius = sorted[Math.floor((0.1 + 0.85 * random.uniform()) * (sorted.length - 1))]!;
  const from = 0.3 * random.uniform() * bore.length;
  const seats = seed % 2 === 0 ? [{ from: 0, to: bore.length }] : [{ from, to: 0.9 * bore.length }];
  const hole = { from: 0.4 * bore.length, to: 0.6 * bore.length, theta: u(3), width: 8 };
  const places = wallPlaces(surface, seats, seed % 3 === 0 ? [hole] : []);
  const spotsAt = (axis: Parameters<typeof spotsOf>[2]) =>
    spotsOf(surface, radius, axis, (k) => places[k] === 1);
  return { surface, radius, places, spotsAt };
}

const SEEDS = Array.from({ length: 200 }, (_, i) => i + 1);

describe('the centre with the least metal off', () => {
  it('is the optimum of the linear programme about it, on 200 walls', () => {
    for (const seed of SEEDS) {
      const { surface, radius, places, spotsAt } = seatOf(seed, coarse);
      const spots = spotsAt(freeAxis(surface, radius, places));
      const above = meanMetal(spots) - leastMeanMetal(spots);
      expect(Math.abs(above), `seed ${seed}`).toBeLessThan(BAR);
    }
  });

  it('is so on the grid that is used, and from the size before as from afar', () => {
    for (const seed of [3, 4]) {
      const { surface, radius, places, spotsAt } = seatOf(seed, makeGrid);
      const radii = [radius - 0.03, radius - 0.015, radius];
      for (const axis of [
        freeAxis(surface, radius, places),
        freeAxes(surface, radii, places).at(-1)!,
      ]) {
        const spots = spotsAt(axis);
        expect(Math.abs(meanMetal(spots) - leastMeanMetal(spots))).toBeLessThan(BAR);
      }
    }
  });
});

describe('the centre with the least greatest cut', () => {
  it('is the minimax of the linear programme about it, on 200 walls', () => {
    for (const seed of SEEDS) {
      const { surface, radius, places, spotsAt } = seatOf(seed, coarse);
      const spots = spotsAt(freeAxis(surface, radius, places, 'least-cut'));
      const above = greatestCut(spots) - Math.max(0, leastGreatest(spots));
      expect(Math.abs(above), `seed ${seed}`).toBeLessThan(BAR);
    }
  });

  it('takes the least metal that this cut allows, on 20 walls', () => {
    for (const seed of SEEDS.slice(0, 20)) {
      const { surface, radius, places, spotsAt } = seatOf(seed, coarse);
      const spots = spotsAt(freeAxis(surface, radius, places, 'least-cut'));
      const least = leastMetalWithin(spots, greatestCut(spots));
      expect(Math.abs(meanMetal(spots) - least), `seed ${seed}`).toBeLessThan(BAR);
    }
  });

  it('of an even oval stands in its middle along the long way too, where no cut tells', () => {
    const grid = coarse(40);
    const mean = Float64Array.from(
      { length: 48 * 17 },
      (_, k) =>
        30 +
        0.1 * Math.cos((4 * Math.PI * (k % 48)) / 48) +
        0.05 * Math.cos((2 * Math.PI * (k % 48)) / 48),
    );
    const axis = freeAxis({ grid, mean } as unknown as WearSurface, 30.02, undefined, 'least-cut');
    // The short way lies across 3 o'clock: x is held by the cut, y by the metal alone, in whose flat it is in the middle.
    expect(axis.x).toBeCloseTo(0, 6);
    expect(axis.y).toBeCloseTo(0.05, 4);
    expect(axis.leanX).toBeCloseTo(0, 6);
    expect(axis.leanY).toBeCloseTo(0, 6);
  });
});

describe('a least sum of hinges', () => {
  const TIE = 1e-9;

  /** Hinges at random, of weights that sum to 1. */
  function hingesOf(seed: number, count: number, unknowns: number) {
    const random = seededRandom(seed);
    const weight = Float64Array.from({ length: count }, () => 0.2 + random.uniform());
    const all = weight.reduce((a, b) => a + b, 0);
    return {
      slope: Float64Array.from({ length: count * unknowns }, () => 2 * random.uniform() - 1),
      height: Float64Array.from({ length: count }, () => random.uniform() - 0.7),
      weight: weight.map((w) => w / all),
      count,
      unknowns,
    };
  }

  it('proves itself: shares from 0 to 1 by which the slopes balance, and no gap to what they bound', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const unknowns = 1 + (seed % 5);
      const hinges = hingesOf(seed, seed % 2 === 0 ? 90 : 2500, unknowns);
      const near = new Float64Array(unknowns);
      const { x, value, held, shares } = leastHinges(hinges, near, TIE);
      expect(held.length).toBeLessThanOrEqual(unknowns);
      const pull = new Float64Array(unknowns);
      let bound = 0;
      let sum = 0;
      shares().forEach((share, k) => {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
        let height = hinges.height[k]!;
        for (let j = 0; j < unknowns; j++) {
          pull[j]! += hinges.weight[k]! * share * hinges.slope[k * unknowns + j]!;
          height += hinges.slope[k * unknowns + j]! * x[j]!;
        }
        bound += hinges.weight[k]! * share * hinges.height[k]!;
        sum += hinges.weight[k]! * Math.max(0, height);
      });
      expect(sum).toBeCloseTo(value, 12);
      // What the tie pulls, and gradients below 1e-14 that count as none; 1e-12 is what forces are known to.
      const tied = TIE * Math.max(...x.map(Math.abs)) + 2e-12;
      expect(Math.max(...pull.map(Math.abs))).toBeLessThan(tied);
      const reach = x.reduce((a, v) => a + Math.abs(v), 0);
      expect(Math.abs(value - bound)).toBeLessThan(tied * (reach + unknowns));
    }
  });

  it('takes the x nearest to the one asked for where all give the same', () => {
    const flat = { ...hingesOf(3, 50, 2), height: new Float64Array(50).fill(-5) };
    expect([...leastHinges(flat, [0.3, -0.4], TIE, [0.1, 0.1]).x]).toEqual([
      expect.closeTo(0.3, 5),
      expect.closeTo(-0.4, 5),
    ]);
  });
});
