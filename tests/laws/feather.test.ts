/** The feathered envelope against every pair of places, on random grids. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feather, leastBeyond } from '../../src/bore/feather.ts';
import type { Field, Grid } from '../../src/bore/types.ts';
import { seededRandom } from '../../src/num/random.ts';

interface Case {
  readonly grid: Grid;
  readonly radius: number;
  readonly slope: number;
  readonly limit: Field;
}

/** Odd and even numbers of columns, uneven depths, limits of which many are 0 and some are none at all. */
const wall: fc.Arbitrary<Case> = fc
  .record({
    columns: fc.integer({ min: 3, max: 17 }),
    rows: fc.integer({ min: 1, max: 9 }),
    radius: fc.double({ min: 5, max: 80, noNaN: true }),
    slope: fc.double({ min: 1e-4, max: 0.2, noNaN: true }),
    seed: fc.integer(),
  })
  .map(({ columns, rows, radius, slope, seed }) => {
    const random = seededRandom(seed);
    const z = new Float64Array(rows);
    for (let i = 1; i < rows; i++) z[i] = z[i - 1]! + 0.2 + 5 * random.uniform();
    const theta = Float64Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns);
    const limit = Float64Array.from({ length: columns * rows }, () => {
      const draw = random.uniform();
      if (draw < 0.3) return 0;
      return draw > 0.93 ? Number.POSITIVE_INFINITY : 0.3 * random.uniform();
    });
    return { grid: { theta, z }, radius, slope, limit };
  });

/** Straight on the wall rolled flat, the shorter way round. */
function distance({ grid: { theta, z }, radius }: Case, a: number, b: number): number {
  const columns = theta.length;
  const turn = Math.abs(theta[a % columns]! - theta[b % columns]!);
  const arc = radius * Math.min(turn, 2 * Math.PI - turn);
  return Math.hypot(arc, z[Math.floor(a / columns)]! - z[Math.floor(b / columns)]!);
}

/** Rounding of a few sums of figures below 1 mm. */
const ROUNDING = 1e-12;

describe('the feathered envelope', () => {
  it('is the least of all cones, place by place', () => {
    fc.assert(
      fc.property(wall, (one) => {
        const found = feather(one.limit, one.grid, one.radius, one.slope);
        for (let p = 0; p < found.length; p++) {
          let least = Number.POSITIVE_INFINITY;
          for (let q = 0; q < found.length; q++) {
            least = Math.min(least, one.limit[q]! + one.slope * distance(one, p, q));
          }
          if (least === Number.POSITIVE_INFINITY) expect(found[p]).toBe(least);
          else expect(Math.abs(found[p]! - least)).toBeLessThan(ROUNDING);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('is nowhere steeper than the slope, and nothing larger is', () => {
    fc.assert(
      fc.property(wall, (one) => {
        const found = feather(one.limit, one.grid, one.radius, one.slope);
        let steep = 0;
        for (let p = 0; p < found.length; p++) {
          if (!Number.isFinite(found[p]!)) continue;
          let held = found[p]! > one.limit[p]! - ROUNDING;
          for (let q = 0; q < found.length; q++) {
            const rise = one.slope * distance(one, p, q);
            if (!(found[p]! - found[q]! < rise + ROUNDING)) steep++;
            // Held down by a limit: there, or by one from which the slope leads up to here.
            if (found[q]! > one.limit[q]! - ROUNDING && found[p]! > found[q]! + rise - ROUNDING) {
              held = true;
            }
          }
          expect(held).toBe(true);
        }
        expect(steep).toBe(0);
      }),
      { numRuns: 200 },
    );
  });

  it('takes nothing away from a limit that is gentle enough, and nothing beside a forbidden place at slope 0', () => {
    const grid: Grid = {
      theta: Float64Array.from({ length: 40 }, (_, i) => (2 * Math.PI * i) / 40),
      z: Float64Array.from({ length: 11 }, (_, i) => 2 * i),
    };
    // 0.1 mm up and down in half a turn of a 30 mm bore: 0.1 / 15 at its steepest. Constructed.
    const gentle = Float64Array.from(
      { length: 440 },
      (_, k) => 0.05 * (1 + Math.cos(grid.theta[k % 40]!)),
    );
    expect(feather(gentle, grid, 15, 0.1 / 15)).toEqual(gentle);
    expect(Math.max(...feather(gentle, grid, 15, 0))).toBeLessThan(ROUNDING);
  });
});

describe('blending out past an edge', () => {
  it('keeps what is marked and adds the least that is not too steep', () => {
    fc.assert(
      fc.property(wall, fc.integer(), (one, seed) => {
        const random = seededRandom(seed);
        const marked = Uint8Array.from(one.limit, () => (random.uniform() < 0.5 ? 1 : 0));
        const kept = feather(
          one.limit.map((l) => Math.min(l, 1)),
          one.grid,
          one.radius,
          one.slope,
        );
        const found = leastBeyond(kept, marked, one.grid, one.radius, one.slope);
        found.forEach((g, p) => {
          let least = marked[p] === 1 ? kept[p]! : 0;
          for (let q = 0; q < found.length; q++) {
            if (marked[q] === 1) {
              least = Math.max(least, kept[q]! - one.slope * distance(one, p, q));
            }
          }
          expect(Math.abs(g - least)).toBeLessThan(ROUNDING);
          expect(g).toBeLessThan(kept[p]! + ROUNDING);
        });
      }),
      { numRuns: 200 },
    );
  });
});
