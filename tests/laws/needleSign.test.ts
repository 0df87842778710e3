/**
 * A swept needle whose sense was said wrongly is found where diameters show an oval, and is not suspected otherwise.
 * Seeds 1 to 20: bores made by formula, diameters with 0.01 mm, sweeps with 0.005 mm (1 sd), noise seeded.
 */
import { describe, expect, it } from 'vitest';
import { design } from '../../src/bore/design.ts';
import { needlesTurned } from '../../src/bore/needleSign.ts';
import { learnSmoothness } from '../../src/bore/smoothness.ts';
import type { Sighting } from '../../src/bore/types.ts';
import { seededRandom } from '../../src/num/random.ts';
import { clocks, depthsWithin, IDEAL, lobe, round, sum } from '../fixtures/bores.ts';
import { SPINDLE } from '../fixtures/simulated.ts';

const LENGTH = 50;
const RADIUS = 30;

/** @param really sense in which the needle turns, beside +1 as it is said to */
function turned(seed: number, oval: number, really: 1 | -1): number[] {
  const random = seededRandom(seed);
  const truth = sum(round(RADIUS), lobe(2, oval, 3 * random.uniform()));
  const [x, y] = [0.3 * random.normal(), 0.3 * random.normal()];
  const across: Sighting[] = depthsWithin(3, LENGTH).flatMap((z) =>
    clocks(6).map((theta) => ({
      row: 0,
      instrument: 'two-point' as const,
      theta,
      z,
      value: IDEAL['two-point'](truth, theta, z) + 0.01 * random.normal(),
      sd: 0.01,
      sdStated: false,
      setup: -1,
    })),
  );
  const swept: Sighting[] = depthsWithin(3, LENGTH).flatMap((z) =>
    clocks(8, 2 * Math.PI).map((theta) => ({
      row: 0,
      instrument: 'sweep' as const,
      theta,
      z,
      value:
        really * (truth(theta, z) - RADIUS + x * Math.sin(theta) + y * Math.cos(theta)) +
        0.005 * random.normal(),
      sd: 0.005,
      sdStated: false,
      setup: 0,
    })),
  );
  const d = design([...across, ...swept], [SPINDLE], LENGTH);
  return needlesTurned(d, learnSmoothness(d, RADIUS), RADIUS);
}

const SEEDS = Array.from({ length: 20 }, (_, i) => i + 1);
const found = (oval: number, really: 1 | -1) =>
  SEEDS.filter((seed) => turned(seed, oval, really).length > 0).length;

describe('a needle that turns the other way', () => {
  it('with an oval of 0.02 mm per side it is found in each of 20 bores', () => {
    expect(found(0.02, -1)).toBe(20);
  });

  it('a needle that turns as said is suspected in none', () => {
    expect(found(0.02, 1)).toBe(0);
  });

  it('in round bores it cannot be told, and nothing is said', () => {
    expect(found(0, -1)).toBe(0);
  });

  it('sweeps alone have nothing to be held against', () => {
    const only = design(
      [
        {
          row: 0,
          instrument: 'sweep',
          theta: 0,
          z: 5,
          value: 0,
          sd: 0.005,
          sdStated: false,
          setup: 0,
        },
      ],
      [SPINDLE],
      LENGTH,
    );
    const usual = { lobe: 0.03, size: 0.03, length: 25, local: 0.004, noise: 1, fixed: true };
    expect(needlesTurned(only, usual, RADIUS)).toEqual([]);
  });
});
