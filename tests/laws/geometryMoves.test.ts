/**
 * Laws of the least-squares fits: what moves, turns, mirrors, scales or shuffles the points does
 * the same to the answer and nothing else.
 *
 * Moved coordinates are rounded anew, by half a unit in their last place; the conditioning of the
 * fit says what that does to the answer. Eight units of it leave room for the few roundings of the
 * move itself.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  cross,
  dot,
  knownCircle,
  knownCylinder,
  lastPlace,
  randomDirection,
  unit,
  type Vector,
} from './generated.ts';
import { mapped, movesWithItsPoints, shuffled } from './solidMoves.ts';

const TURN = 2 * Math.PI;

const circles = fc
  .record({
    seed: fc.integer(),
    count: fc.integer({ min: 6, max: 60 }),
    arc: fc.double({ min: 1.5, max: TURN, noNaN: true }),
    form: fc.double({ min: 0, max: 0.02, noNaN: true }),
  })
  .map(({ seed, count, arc, form }) => {
    const random = seededRandom(seed);
    const radius = 10 + 90 * random.uniform();
    const center: [number, number] = [50 * random.normal(), 50 * random.normal()];
    return knownCircle(random, { count, center, radius, arc, form: form * radius, tail: 1 })
      .columns;
  });

const cylinders = fc
  .record({
    seed: fc.integer(),
    count: fc.integer({ min: 20, max: 60 }),
    form: fc.double({ min: 0, max: 0.02, noNaN: true }),
  })
  .map(({ seed, count, form }) => {
    const random = seededRandom(seed);
    const radius = 10 + 90 * random.uniform();
    return knownCylinder(random, {
      point: [0, 0, 0].map(() => 50 * random.normal()) as Vector,
      direction: randomDirection(random),
      radius,
      length: radius * (0.5 + 2 * random.uniform()),
      places: Array.from({ length: count }, (_, i) => ({
        angle: i,
        z: i < 2 ? i - 0.5 : random.uniform() - 0.5,
      })),
      form: form * radius,
      tail: 1,
    }).columns;
  });

const angles = fc.double({ min: -10, max: 10, noNaN: true });
const shifts = fc.double({ min: -1000, max: 1000, noNaN: true });
const scales = fc.double({ min: 0.001, max: 1000, noNaN: true });

function circle(columns: Float64Array[]) {
  const fit = fitCircle(columns[0]!, columns[1]!);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return { ...fit, near: 8 * lastPlace(columns) * fit.conditioning };
}

function cylinder(columns: Float64Array[]) {
  const fit = fitCylinder(columns[0]!, columns[1]!, columns[2]!);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return { ...fit, near: 8 * lastPlace(columns) * fit.conditioning };
}

describe('a circle', () => {
  const same = (columns: Float64Array[], rows: number[][], shift: number[], scale: number) => {
    const before = circle(columns);
    const after = circle(mapped(columns, rows, shift));
    const near = before.near * scale + after.near;
    rows.forEach((row, d) => {
      expect(Math.abs(after.center[d]! - shift[d]! - dot(row, before.center))).toBeLessThan(near);
    });
    expect(Math.abs(after.diameter - scale * before.diameter)).toBeLessThan(near);
    for (const key of ['min', 'max', 'range'] as const) {
      expect(Math.abs(after.deviation[key] - scale * before.deviation[key])).toBeLessThan(near);
    }
    expect(after.conditioning / before.conditioning).toBeCloseTo(1, 6);
  };

  it('turns and moves with its points', () => {
    fc.assert(
      fc.property(circles, angles, shifts, shifts, (columns, angle, dx, dy) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        same(
          columns,
          [
            [c, -s],
            [s, c],
          ],
          [dx, dy],
          1,
        );
      }),
    );
  });

  it('is mirrored with its points', () => {
    fc.assert(
      fc.property(circles, (columns) =>
        same(
          columns,
          [
            [0, 1],
            [1, 0],
          ],
          [0, 0],
          1,
        ),
      ),
    );
  });

  it('grows with its points: a change of unit is only that', () => {
    fc.assert(
      fc.property(circles, scales, (columns, k) =>
        same(
          columns,
          [
            [k, 0],
            [0, k],
          ],
          [0, 0],
          k,
        ),
      ),
    );
  });

  it('does not change by a digit when the unit changes by a power of two', () => {
    fc.assert(
      fc.property(circles, fc.integer({ min: -300, max: 300 }), (columns, power) => {
        const k = 2 ** power;
        const before = circle(columns);
        const after = circle(
          mapped(
            columns,
            [
              [k, 0],
              [0, k],
            ],
            [0, 0],
          ),
        );
        expect(after.center).toEqual(before.center.map((v) => v * k));
        expect(after.diameter).toBe(before.diameter * k);
      }),
    );
  });

  it('does not ask for the order of its points, nor how often each was read', () => {
    fc.assert(
      fc.property(circles, fc.integer(), (columns, seed) => {
        const before = circle(columns);
        const twice = columns.map((c) => Float64Array.from([...c, ...c]));
        for (const other of [circle(shuffled(columns, seed)), circle(twice)]) {
          const near = before.near + other.near;
          expect(Math.abs(other.center[0] - before.center[0])).toBeLessThan(near);
          expect(Math.abs(other.center[1] - before.center[1])).toBeLessThan(near);
          expect(Math.abs(other.diameter - before.diameter)).toBeLessThan(near);
        }
      }),
    );
  });

  it('leaves deviations that sum to nothing, alone and against both directions', () => {
    fc.assert(
      fc.property(circles, (columns) => {
        const { center, diameter, near } = circle(columns);
        const out = columns.map((column, d) => column.map((v) => v - center[d]!));
        const length = out[0]!.map((v, i) => Math.hypot(v, out[1]![i]!));
        const deviation = length.map((v) => v - diameter / 2);
        // Each term moves by no more than the answer does.
        const bound = near * deviation.length;
        expect(Math.abs(deviation.reduce((s, v) => s + v, 0))).toBeLessThan(bound);
        for (const side of out) {
          const part = dot(
            deviation,
            side.map((v, i) => v / length[i]!),
          );
          expect(Math.abs(part)).toBeLessThan(bound);
        }
      }),
    );
  });
});

describe('a cylinder', () => {
  const same = (columns: Float64Array[], rows: number[][], shift: number[], scale: number) => {
    const before = cylinder(columns);
    const after = cylinder(mapped(columns, rows, shift));
    const near = before.near * scale + after.near;
    const turned = unit(rows.map((row) => dot(row, before.axis.direction)) as Vector);
    const lean = Math.hypot(...cross(turned, after.axis.direction));
    expect(lean * before.diameter * scale).toBeLessThan(8 * near);
    rows.forEach((row, d) => {
      const moved = shift[d]! + dot(row, before.axis.point);
      expect(Math.abs(after.axis.point[d]! - moved)).toBeLessThan(near);
    });
    expect(Math.abs(after.diameter - scale * before.diameter)).toBeLessThan(near);
    for (const key of ['min', 'max', 'range'] as const) {
      expect(Math.abs(after.deviation[key] - scale * before.deviation[key])).toBeLessThan(near);
    }
  };
  const few = { numRuns: 60 };

  movesWithItsPoints(cylinders, same, few);

  it('does not ask for the order of its points, nor how often each was read', () => {
    fc.assert(
      fc.property(cylinders, fc.integer(), (columns, seed) => {
        const before = cylinder(columns);
        const twice = columns.map((c) => Float64Array.from([...c, ...c]));
        for (const other of [cylinder(shuffled(columns, seed)), cylinder(twice)]) {
          const near = before.near + other.near;
          expect(Math.abs(other.diameter - before.diameter)).toBeLessThan(near);
          other.axis.point.forEach((v, d) => {
            expect(Math.abs(v - before.axis.point[d]!)).toBeLessThan(near);
          });
        }
      }),
      few,
    );
  });

  it('points the same way for the same axis: its largest component is positive', () => {
    fc.assert(
      fc.property(cylinders, (columns) => {
        const { direction } = cylinder(columns).axis;
        const largest = Math.max(...direction.map(Math.abs));
        expect(Math.max(...direction)).toBe(largest);
        expect(Math.hypot(...direction)).toBeCloseTo(1, 14);
      }),
      few,
    );
  });
});
