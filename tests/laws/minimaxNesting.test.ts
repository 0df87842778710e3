/**
 * What points may do to minimax circles and cylinders: inscribed within least-squares within
 * circumscribed; zones within zones; points within change nothing; each contact moves the optimum
 * by its multiplier.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { lastPlace } from './generated.ts';
import { CIRCLES, CYLINDERS, circleOf, cylinderOf } from './minimaxSets.ts';
import { type Claimed, type Criterion, heightOf, seenFrom } from './optimum.ts';

const sets = fc
  .record({ seed: fc.integer(), count: fc.integer({ min: 8, max: 40 }), round: fc.boolean() })
  .map(({ seed, count, round }) => {
    const columns = round ? circleOf({ seed, count }) : cylinderOf({ seed, count: count + 12 });
    return { columns, round, random: seededRandom(seed + 1) };
  });

type Fitted = Claimed & { conditioning: number };

function fitted(columns: Float64Array[], criterion: Criterion): Fitted {
  const [x, y, z] = columns;
  const fit = z === undefined ? CIRCLES[criterion](x!, y!) : CYLINDERS[criterion](x!, y!, z);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return fit;
}

function leastSquares(columns: Float64Array[]) {
  const [x, y, z] = columns;
  const fit = z === undefined ? fitCircle(x!, y!) : fitCylinder(x!, y!, z);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return { ...fit, multipliers: [] };
}

const optimum = (fit: Claimed, criterion: Criterion) =>
  criterion === 'minimum-zone' ? fit.deviation.range : fit.diameter / 2;

/** Range of the distances from a feature's axis. */
function rangeAbout(columns: Float64Array[], fit: Claimed): number {
  const heights = seenFrom(columns, fit).map((point) => heightOf(point, 0, []));
  return Math.max(...heights) - Math.min(...heights);
}

const added = (columns: Float64Array[], point: readonly number[]) =>
  columns.map((column, d) => Float64Array.from([...column, point[d]!]));

const pointAt = (columns: Float64Array[], row: number) => columns.map((column) => column[row]!);

/** A point moved out square to the axis of a feature. */
function movedOut(fit: Claimed, point: readonly number[], by: number): number[] {
  const from = fit.axis?.point ?? fit.center!;
  const along = fit.axis?.direction ?? [0, 0];
  const q = point.map((p, d) => p - from[d]!);
  const s = q.reduce((sum, v, d) => sum + v * along[d]!, 0);
  const across = q.map((v, d) => v - s * along[d]!);
  const length = Math.hypot(...across);
  return point.map((p, d) => p + (by * across[d]!) / length);
}

function somewhere(random: Random, columns: Float64Array[]): number {
  return Math.floor(random.uniform() * columns[0]!.length);
}

/** What the proof of an optimum allows a length, see optimum.ts. */
const grainOf = (columns: Float64Array[]) => 64 * lastPlace(columns);

describe('of one set of points', () => {
  it('the inscribed is no larger than the least-squares, nor that than the circumscribed', () => {
    fc.assert(
      fc.property(sets, ({ columns }) => {
        const inner = fitted(columns, 'maximum-inscribed').diameter;
        const middle = leastSquares(columns).diameter;
        const outer = fitted(columns, 'minimum-circumscribed').diameter;
        expect(inner).toBeLessThanOrEqual(middle + grainOf(columns));
        expect(middle).toBeLessThanOrEqual(outer + grainOf(columns));
      }),
    );
  });

  it('the zone is no wider than the range about any other axis', () => {
    fc.assert(
      fc.property(sets, ({ columns }) => {
        const zone = fitted(columns, 'minimum-zone').deviation.range - grainOf(columns);
        expect(zone).toBeLessThanOrEqual(rangeAbout(columns, leastSquares(columns)));
        for (const criterion of ['maximum-inscribed', 'minimum-circumscribed'] as const) {
          expect(zone).toBeLessThanOrEqual(rangeAbout(columns, fitted(columns, criterion)));
        }
      }),
    );
  });
});

describe('one point more', () => {
  it('strictly within changes neither the zone nor the circumscribed', () => {
    fc.assert(
      fc.property(sets, ({ columns, random }) => {
        for (const criterion of ['minimum-zone', 'minimum-circumscribed'] as const) {
          const before = fitted(columns, criterion);
          const { deviation, diameter } = before;
          // A wall point turned or moved to a deviation well inside the bounds.
          const row = somewhere(random, columns);
          const point = pointAt(columns, row);
          const seen = seenFrom(columns, before)[row]!;
          const now = Math.hypot(seen.u, seen.v) - diameter / 2;
          const wanted = deviation.min + (0.1 + 0.8 * random.uniform()) * deviation.range;
          const after = fitted(added(columns, movedOut(before, point, wanted - now)), criterion);
          // Few contacts let an axis slip, by what the proof of an optimum allows.
          const corner =
            criterion === 'minimum-zone' || before.contacts.length > 2 * columns.length - 2;
          const slip = corner ? 0 : columns.length === 2 ? 2e-10 : 2e-9;
          // A diameter is off twice as much as the radius, and both answers may be.
          const near = 4 * grainOf(columns) * before.conditioning + slip;
          expect(Math.abs(after.diameter - diameter)).toBeLessThan(near);
          expect(Math.abs(after.deviation.range - deviation.range)).toBeLessThan(near);
          expect(after.contacts).toEqual(before.contacts);
        }
      }),
    );
  });

  it('anywhere makes no zone narrower, no circumscribed smaller, no inscribed larger', () => {
    fc.assert(
      fc.property(sets, ({ columns, random }) => {
        const least = leastSquares(columns);
        const point = pointAt(columns, somewhere(random, columns));
        const more = added(columns, movedOut(least, point, 0.1 * random.normal()));
        const grain = grainOf(more);
        for (const criterion of ['minimum-zone', 'minimum-circumscribed'] as const) {
          const before = optimum(fitted(columns, criterion), criterion);
          expect(optimum(fitted(more, criterion), criterion)).toBeGreaterThan(before - grain);
        }
        const inner = fitted(columns, 'maximum-inscribed').diameter / 2;
        expect(fitted(more, 'maximum-inscribed').diameter / 2).toBeLessThan(inner + grain);
      }),
    );
  });

  it('outside makes a zone wider and a circumscribed larger, by no more than it stands out', () => {
    fc.assert(
      fc.property(sets, ({ columns, random }) => {
        for (const criterion of ['minimum-zone', 'minimum-circumscribed'] as const) {
          const before = fitted(columns, criterion);
          const row = before.contacts[before.multipliers.findIndex((m) => m > 0)]!;
          const out = 0.02 * (0.1 + random.uniform());
          const more = added(columns, movedOut(before, pointAt(columns, row), out));
          const grown = optimum(fitted(more, criterion), criterion) - optimum(before, criterion);
          expect(grown).toBeGreaterThan(0);
          expect(grown).toBeLessThan(out + grainOf(more));
        }
      }),
    );
  });

  it('a part of the points has no wider zone', () => {
    fc.assert(
      fc.property(sets, ({ columns, random, round }) => {
        const keep = Array.from(columns[0]!, () => random.uniform() < 0.8);
        if (keep.filter(Boolean).length < (round ? 6 : 14)) return;
        const part = columns.map((column) => column.filter((_, i) => keep[i]!));
        const all = fitted(columns, 'minimum-zone').deviation.range;
        expect(fitted(part, 'minimum-zone').deviation.range).toBeLessThan(all + grainOf(columns));
      }),
    );
  });
});

describe('the multiplier of a contact', () => {
  // A move of 1e-6 mm: the second change is about (1e-6 times the conditioning)^2 / radius, under
  // 1e-12 mm * 1e4 / 10, and rounding is 1e-13 mm; both beside a change of 1e-6 mm times it.
  const MOVE = 1e-6;

  for (const criterion of ['minimum-zone', 'maximum-inscribed', 'minimum-circumscribed'] as const) {
    it(`is what moving it outward by one does to the optimum: ${criterion}`, () => {
      fc.assert(
        fc.property(sets, ({ columns }) => {
          const before = fitted(columns, criterion);
          if (before.conditioning > 100) return;
          before.contacts.forEach((row, k) => {
            const [out, inward] = [MOVE, -MOVE].map((by) => {
              const point = movedOut(before, pointAt(columns, row), by);
              const moved = columns.map((column, d) =>
                column.map((v, i) => (i === row ? point[d]! : v)),
              );
              return optimum(fitted(moved, criterion), criterion);
            }) as [number, number];
            const told = before.multipliers[k]!;
            const change = (out - inward) / (2 * MOVE);
            // Where another point takes over in between, both sides are bounds only.
            const bend = Math.abs(out + inward - 2 * optimum(before, criterion)) / MOVE;
            expect(Math.abs(change - told)).toBeLessThan(1e-3 + bend);
          });
        }),
        { numRuns: 30 },
      );
    });
  }
});
