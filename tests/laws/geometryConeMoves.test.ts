/**
 * Laws of the least-squares cone: what moves, turns, mirrors, scales or shuffles the points does
 * the same to the answer and nothing else. Tolerances as in geometryMoves.test.ts: moved
 * coordinates are rounded anew, and eight units in their last place times the conditioning leave
 * room for the few roundings of the move itself.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCone } from '../../src/geometry/cone.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { seededRandom } from '../../src/num/random.ts';
import { dot, lastPlace, randomDirection, unit, type Vector } from './generated.ts';
import { knownCone } from './generatedCone.ts';
import { mapped, movesWithItsPoints, shuffled } from './solidMoves.ts';

const cones = fc
  .record({
    seed: fc.integer(),
    count: fc.integer({ min: 20, max: 60 }),
    form: fc.double({ min: 0, max: 0.02, noNaN: true }),
    halfAngle: fc.double({ min: 0.001, max: 1.2, noNaN: true }),
  })
  .map(({ seed, count, form, halfAngle }) => {
    const random = seededRandom(seed);
    const radius = 10 + 90 * random.uniform();
    const length = Math.min(radius * (0.5 + 2 * random.uniform()), radius / Math.tan(halfAngle));
    return knownCone(random, {
      point: [0, 0, 0].map(() => 50 * random.normal()) as Vector,
      direction: randomDirection(random),
      radius,
      halfAngle,
      length,
      places: Array.from({ length: count }, (_, i) => ({
        angle: i,
        z: i < 2 ? i - 0.5 : random.uniform() - 0.5,
      })),
      form: form * length * Math.sin(halfAngle),
      tail: 1,
    }).columns;
  });

function cone(columns: Float64Array[]) {
  const fit = fitCone(columns[0]!, columns[1]!, columns[2]!);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return { ...fit, near: 8 * lastPlace(columns) * fit.conditioning };
}

type Answer = ReturnType<typeof cone>;

/** Distance along the axis between the outermost points. */
function lengthOf(columns: Float64Array[], { axis }: Answer): number {
  const along = Array.from(columns[0]!, (_, i) =>
    dot(
      columns.map((column) => column[i]!),
      axis.direction,
    ),
  );
  return Math.max(...along) - Math.min(...along);
}

describe('a cone', () => {
  const same = (columns: Float64Array[], rows: number[][], shift: number[], scale: number) => {
    const before = cone(columns);
    const moved = mapped(columns, rows, shift);
    const after = cone(moved);
    const near = before.near * scale + after.near;
    const turned = unit(rows.map((row) => dot(row, before.axis.direction)) as Vector);
    const lean = Math.hypot(...turned.map((v, d) => v - after.axis.direction[d]!));
    const angle = (2 * near) / lengthOf(moved, after);
    expect(lean).toBeLessThan(angle);
    expect(Math.abs(after.halfAngle - before.halfAngle)).toBeLessThan(angle);
    rows.forEach((row, d) => {
      const place = shift[d]! + dot(row, before.axis.point);
      expect(Math.abs(after.axis.point[d]! - place)).toBeLessThan(near);
    });
    expect(Math.abs(after.diameter - scale * before.diameter)).toBeLessThan(near);
    for (const key of ['min', 'max', 'range'] as const) {
      expect(Math.abs(after.deviation[key] - scale * before.deviation[key])).toBeLessThan(near);
    }
  };
  const few = { numRuns: 60 };

  movesWithItsPoints(cones, same, few);

  it('does not ask for the order of its points, nor how often each was read', () => {
    fc.assert(
      fc.property(cones, fc.integer(), (columns, seed) => {
        const before = cone(columns);
        const twice = columns.map((c) => Float64Array.from([...c, ...c]));
        for (const other of [cone(shuffled(columns, seed)), cone(twice)]) {
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

  it('names the rows of its least and greatest deviation, and lies closer than a cylinder', () => {
    fc.assert(
      fc.property(cones, (columns) => {
        const fit = cone(columns);
        const { point, direction } = fit.axis;
        const all = Array.from(columns[0]!, (_, i) => {
          const q = columns.map((column, d) => column[i]! - point[d]!);
          const along = dot(q, direction);
          const out = Math.hypot(...q.map((v, d) => v - along * direction[d]!));
          return (
            (out - fit.diameter / 2) * Math.cos(fit.halfAngle) - along * Math.sin(fit.halfAngle)
          );
        });
        const { min, max, range } = fit.deviation;
        expect(Math.abs(all[fit.contacts[0]]! - Math.min(...all))).toBeLessThan(fit.near);
        expect(Math.abs(all[fit.contacts[1]]! - Math.max(...all))).toBeLessThan(fit.near);
        expect(Math.abs(Math.min(...all) - min)).toBeLessThan(fit.near);
        expect(Math.abs(Math.max(...all) - max)).toBeLessThan(fit.near);
        expect(range).toBe(max - min);
        // Nothing of a constant is left over.
        const mean = all.reduce((s, v) => s + v, 0) / all.length;
        expect(Math.abs(mean)).toBeLessThan(fit.near);
        const cylinder = fitCylinder(columns[0]!, columns[1]!, columns[2]!);
        if (cylinder.status !== 'ok') return;
        const round = Array.from(columns[0]!, (_, i) => {
          const q = columns.map((column, d) => column[i]! - cylinder.axis.point[d]!);
          const along = dot(q, cylinder.axis.direction);
          const out = q.map((v, d) => v - along * cylinder.axis.direction[d]!);
          return Math.hypot(...out) - cylinder.diameter / 2;
        });
        expect(dot(all, all)).toBeLessThan(dot(round, round) + fit.near ** 2 * all.length);
      }),
      few,
    );
  });
});
