/** Minimum-zone cones: on sets with a known answer, against an LP library, and by law. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCone } from '../../src/geometry/cone.ts';
import { minimumZoneCone } from '../../src/geometry/minimaxCone.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  cross,
  dot,
  lastPlace,
  randomDirection,
  squareTo,
  unit,
  type Vector,
} from './generated.ts';
import { KINDS, made } from './minimaxKinds.ts';
import { checkKnown } from './minimaxKnown.ts';
import { linearStep, sequentialLinear } from './minimaxLinear.ts';
import { faults } from './optimum.ts';
import { movesWithItsPoints } from './solidMoves.ts';

const TURN = 2 * Math.PI;
const SETS = 20;

/** Wall readings all round a cone, its half-angle between 0.01 and 0.4, some 0.1 mm deep. */
function coneOf({ seed, count }: { seed: number; count: number }): Float64Array[] {
  const random = seededRandom(seed);
  const radius = 20 + 60 * random.uniform();
  const angle = 0.01 + 0.39 * random.uniform();
  const length = radius * (0.8 + random.uniform());
  const direction = randomDirection(random);
  const [first, second] = squareTo(direction);
  const center = [0, 0, 0].map(() => 50 * random.normal());
  const points = Array.from({ length: count }, (_, i) => {
    const t = ((7 * i + random.uniform()) / count) * TURN;
    const s = length * (i < 3 ? i / 2 - 0.5 : random.uniform() - 0.5);
    const e = 0.02 * random.normal() + 0.03 * Math.cos(2 * t + s / radius);
    const across = radius + s * Math.tan(angle) + e * Math.cos(angle);
    const along = s - e * Math.sin(angle);
    return { u: across * Math.cos(t), v: across * Math.sin(t), s: along };
  });
  return center.map((c, d) =>
    Float64Array.from(
      points,
      ({ u, v, s }) => c + u * first[d]! + v * second[d]! + s * direction[d]!,
    ),
  );
}

function cone(columns: readonly Float64Array[]) {
  const [x, y, z] = columns as [Float64Array, Float64Array, Float64Array];
  const fit = minimumZoneCone(x, y, z);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return { ...fit, grain: 64 * lastPlace([...columns]) };
}

describe('cones with a known answer', () => {
  KINDS.forEach((kind, seed) => {
    if (kind.feature !== 'cone') return;
    it(`${kind.criterion}, ${kind.name}: ${SETS} sets`, () => {
      const random = seededRandom(seed);
      for (let set = 0; set < SETS; set++) {
        const { asked, known } = made(random, kind);
        const [x, y, z] = known.columns as [Float64Array, Float64Array, Float64Array];
        checkKnown(asked, known, minimumZoneCone(x, y, z));
      }
    });
  });
});

// How the tolerances come about stands in minimaxOracle.test.ts.
describe('cones by an LP library', () => {
  it('are what linear programmes arrive at from the least-squares cone: 40 sets', () => {
    for (let seed = 0; seed < 40; seed++) {
      const columns = coneOf({ seed, count: 30 + seed });
      const [x, y, z] = columns as [Float64Array, Float64Array, Float64Array];
      const ours = cone(columns);
      expect(faults(columns, 'minimum-zone', ours)).toEqual([]);
      const size = ours.deviation.range;
      const { gain } = linearStep(columns, 'minimum-zone', 5, { ...ours.axis, ...ours }, size);
      expect(Math.abs(gain)).toBeLessThan(1e-9 * size);
      const least = fitCone(x, y, z);
      if (least.status !== 'ok') throw new Error(least.status);
      const start = { ...least.axis, halfAngle: least.halfAngle };
      const options = { trust: 5, steps: 100 };
      const other = sequentialLinear(columns, 'minimum-zone', 5, start, options);
      const better = other.value - size;
      expect(better).toBeGreaterThan(-1e-9 * size);
      expect(better).toBeLessThan((ours.contacts.length >= 7 ? 1e-9 : 1e-5) * size);
    }
  });
});

describe('a cone', () => {
  const sets = fc
    .record({ seed: fc.integer(), count: fc.integer({ min: 20, max: 60 }) })
    .map(coneOf);
  const few = { numRuns: 50 };

  const same = (columns: Float64Array[], rows: number[][], shift: number[], scale: number) => {
    const before = cone(columns);
    const moved = rows.map((row, d) =>
      columns[0]!.map(
        (_, i) =>
          shift[d]! +
          dot(
            row,
            columns.map((column) => column[i]!),
          ),
      ),
    );
    const after = cone(moved);
    const grain = before.grain * scale + after.grain;
    const near = before.grain * scale * before.conditioning + after.grain * after.conditioning;
    const turned = unit(rows.map((row) => dot(row, before.axis.direction)) as Vector);
    const lean = Math.hypot(...cross(turned, after.axis.direction));
    expect(lean * before.diameter * scale).toBeLessThan(8 * near);
    expect(dot(turned, after.axis.direction)).toBeGreaterThan(0);
    const wider = Math.abs(after.halfAngle - before.halfAngle);
    expect(wider * before.diameter * scale).toBeLessThan(8 * near);
    rows.forEach((row, d) => {
      const point = shift[d]! + dot(row, before.axis.point);
      expect(Math.abs(after.axis.point[d]! - point)).toBeLessThan(near);
    });
    expect(Math.abs(after.diameter - scale * before.diameter)).toBeLessThan(near);
    expect(Math.abs(after.deviation.range - scale * before.deviation.range)).toBeLessThan(grain);
    expect(after.contacts).toEqual(before.contacts);
  };

  movesWithItsPoints(sets, same, few);

  it('has a zone no wider than the least-squares cone, nor than with one point more', () => {
    fc.assert(
      fc.property(sets, (columns) => {
        const [x, y, z] = columns as [Float64Array, Float64Array, Float64Array];
        const { deviation, grain } = cone(columns);
        const least = fitCone(x, y, z);
        if (least.status !== 'ok') throw new Error(least.status);
        expect(deviation.range).toBeLessThan(least.deviation.range + grain);
        const fewer = columns.map((column) => column.slice(0, -1));
        expect(cone(fewer).deviation.range).toBeLessThan(deviation.range + grain);
      }),
      few,
    );
  });

  it('points where it widens', () => {
    fc.assert(
      fc.property(sets, (columns) => {
        const { axis, halfAngle } = cone(columns);
        expect(halfAngle).toBeGreaterThan(0);
        // Distances from the axis rise along it.
        const seen = columns[0]!.map((_, i) =>
          dot(
            columns.map((column, d) => column[i]! - axis.point[d]!),
            axis.direction,
          ),
        );
        const across = columns[0]!.map((_, i) => {
          const q = columns.map((column, d) => column[i]! - axis.point[d]!) as Vector;
          return Math.hypot(...cross(q, axis.direction));
        });
        const mean = across.reduce((s, v) => s + v, 0) / across.length;
        const slope = dot(
          seen,
          across.map((v) => v - mean),
        );
        expect(slope).toBeGreaterThan(0);
      }),
      few,
    );
  });
});

describe('points that tell no cone', () => {
  const of = (points: readonly (readonly number[])[]) =>
    minimumZoneCone(
      points.map((p) => p[0]!),
      points.map((p) => p[1]!),
      points.map((p) => p[2]!),
    );

  it('are too few, on a line, in a plane, or not finite; unequal columns are refused', () => {
    const few = { status: 'too-few-points', needed: 6 };
    expect(of([])).toEqual({ ...few, found: 0 });
    expect(of(new Array(50).fill([1, 2, 3]))).toEqual({ ...few, found: 1 });
    expect(of([0, 1, 2, 5, 6, 7, 8].map((s) => [1 + s, 2 - s, 3 * s]))).toEqual({
      status: 'on-a-line',
    });
    const ring = Array.from({ length: 12 }, (_, i) => [9 * Math.cos(i), 9 * Math.sin(i), 0]);
    expect(of(ring)).toEqual({ status: 'in-a-plane' });
    const bad = ring.map((p, i) => (i === 7 ? [1, Number.NaN, 2] : p));
    expect(of(bad)).toEqual({ status: 'not-finite', row: 7 });
    expect(() => minimumZoneCone([1, 2, 3], [1, 2], [1, 2, 3])).toThrow(RangeError);
  });

  it('are not those of an exact cone, which leaves a range of rounding', () => {
    const random = seededRandom(51);
    for (let set = 0; set < 20; set++) {
      const angle = 0.02 + 0.5 * random.uniform();
      const points = Array.from({ length: 30 }, (_, i) => {
        const [t, s] = [2.4 * i, 20 * (i < 3 ? i / 2 : random.uniform())];
        const r = 30 + s * Math.tan(angle);
        return [r * Math.cos(t), r * Math.sin(t), s];
      });
      const columns = [0, 1, 2].map((d) => Float64Array.from(points, (p) => p[d]!));
      const fit = cone(columns);
      expect(fit.deviation.range).toBeLessThan(fit.grain);
      expect(Math.abs(fit.halfAngle - angle)).toBeLessThan(1e-12);
    }
  });
});
