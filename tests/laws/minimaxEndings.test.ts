/** What minimax circles and cylinders say of points that tell no feature, or tell it exactly. */
import { describe, expect, it } from 'vitest';
import { failureInWords } from '../../src/geometry/ending.ts';
import { seededRandom } from '../../src/num/random.ts';
import { lastPlace, randomDirection, squareTo, type Vector } from './generated.ts';
import { CIRCLES, CRITERIA, CYLINDERS } from './minimaxSets.ts';
import { faults } from './optimum.ts';

const TURN = 2 * Math.PI;
const NEVER = Number.NaN;

const ring = (count: number, radius: number, arc = TURN) =>
  Array.from({ length: count }, (_, i) => {
    const t = (i / (arc === TURN ? count : count - 1)) * arc;
    return [radius * Math.cos(t), radius * Math.sin(t)] as const;
  });

const circle = (criterion: keyof typeof CIRCLES, points: readonly (readonly number[])[]) =>
  CIRCLES[criterion](
    points.map((p) => p[0]!),
    points.map((p) => p[1]!),
  );

const cylinder = (criterion: keyof typeof CYLINDERS, points: readonly (readonly number[])[]) =>
  CYLINDERS[criterion](
    points.map((p) => p[0]!),
    points.map((p) => p[1]!),
    points.map((p) => p[2]!),
  );

const tube = (count: number, radius: number, arc = TURN) =>
  ring(count, radius, arc).flatMap(([x, y]) => [0, 5, 12].map((z) => [x, y, z] as const));

describe('points that tell no circle', () => {
  for (const criterion of CRITERIA) {
    it(`${criterion}: none, one, two, one many times`, () => {
      const needed = { status: 'too-few-points', needed: 3 };
      expect(circle(criterion, [])).toEqual({ ...needed, found: 0 });
      expect(circle(criterion, [[1, 2]])).toEqual({ ...needed, found: 1 });
      expect(
        circle(criterion, [
          [1, 2],
          [2, 2],
        ]),
      ).toEqual({ ...needed, found: 2 });
      expect(circle(criterion, new Array(50).fill([1, 2]))).toEqual({ ...needed, found: 1 });
    });

    it(`${criterion}: on one line, however it lies`, () => {
      const line = (dx: number, dy: number) =>
        [0, 1, 2.5, 7, 7.5].map((s) => [3 + s * dx, 4 + s * dy]);
      for (const points of [line(1, 0), line(0, 1), line(1, 1), line(0.3, -0.7)]) {
        expect(circle(criterion, points)).toEqual({ status: 'on-a-line' });
      }
    });

    it(`${criterion}: a row that is not finite is named, the first of them`, () => {
      const points = ring(8, 10).map((p) => [...p]);
      points[6]![0] = Number.POSITIVE_INFINITY;
      expect(circle(criterion, points)).toEqual({ status: 'not-finite', row: 6 });
      points[4]![1] = NEVER;
      expect(circle(criterion, points)).toEqual({ status: 'not-finite', row: 4 });
    });

    it(`${criterion}: columns that differ in length are refused`, () => {
      expect(() => CIRCLES[criterion]([1, 2, 3], [1, 2])).toThrow(RangeError);
    });
  }

  it('inscribed in points that leave half a turn open: nothing holds it', () => {
    for (const arc of [1, 2, 3, Math.PI]) {
      const points = ring(30, 40, arc).map(([x, y], i) => [x * (1 + 1e-4 * (i % 3)), y]);
      const found = circle('maximum-inscribed', points);
      expect(found).toEqual({ status: 'not-all-round' });
      expect(failureInWords(found as { status: 'not-all-round' }, 'circle')).toMatch(/[a-z ]{30}/);
    }
    expect(circle('maximum-inscribed', ring(30, 40, 3.5)).status).toBe('ok');
  });

  it('inscribed in a rough arc: what fits between its neighbors is no bore', () => {
    const random = seededRandom(6);
    for (const count of [300, 30_000]) {
      const rough = ring(count, 50, 1.5).map(([x, y]) => {
        const out = 1 + 2e-4 * random.normal();
        return [x * out, y * out];
      });
      expect(circle('maximum-inscribed', rough)).toEqual({ status: 'not-all-round' });
    }
  });

  it('inscribed in a hundred thousand points and more without form error: told all the same', () => {
    const found = circle('maximum-inscribed', ring(120_000, 50));
    if (found.status !== 'ok' || !('larger' in found)) throw new Error(found.status);
    expect(found.larger).toBeNull();
    expect(Math.abs(found.diameter - 100)).toBeLessThan(1e-11);
  });

  it('a zone about points as near to a straight strip: too short an arc', () => {
    const random = seededRandom(5);
    const straight = Array.from({ length: 40 }, (_, i) => [i, 0.01 * random.uniform()]);
    // Both edges of the strip bend, so that no ring about a far-off center beats it by much.
    const wavy = straight.map(([x], i) => [x!, 0.01 * Math.cos((i * TURN * 3) / 39)]);
    expect(circle('minimum-zone', wavy)).toEqual({ status: 'arc-too-short' });
    const bent = straight.map(([x, y]) => [x!, y! + Math.sqrt(400 ** 2 - (x! - 20) ** 2)]);
    expect(circle('minimum-zone', bent).status).toBe('ok');
  });

  it('a circle about points on a short arc stands on its ends', () => {
    const found = circle('minimum-circumscribed', ring(30, 40, 1));
    if (found.status !== 'ok') throw new Error(found.status);
    expect(found.contacts).toEqual([0, 29]);
    expect(Math.abs(found.diameter - 80 * Math.sin(0.5))).toBeLessThan(1e-12);
  });
});

describe('points that tell no cylinder', () => {
  for (const criterion of CRITERIA) {
    it(`${criterion}: none, three, four, three many times`, () => {
      const three = [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 2],
      ];
      const few = { status: 'too-few-points', needed: 5 };
      expect(cylinder(criterion, [])).toEqual({ ...few, found: 0 });
      expect(cylinder(criterion, three)).toEqual({ ...few, found: 3 });
      expect(cylinder(criterion, [...three, [4, 4, 1]])).toEqual({ ...few, found: 4 });
      expect(cylinder(criterion, [...three, ...three, ...three])).toEqual({ ...few, found: 3 });
      expect(cylinder(criterion, new Array(50).fill([1, 2, 3]))).toEqual({ ...few, found: 1 });
    });

    it(`${criterion}: on one line, in one plane`, () => {
      const line = [0, 1, 2, 5, 6, 7].map((s) => [1 + s, 2 - s, 3 * s]);
      expect(cylinder(criterion, line)).toEqual({ status: 'on-a-line' });
      const flat = ring(12, 20).map(([x, y]) => [x, y, 0.3 * x - 0.2 * y]);
      expect(cylinder(criterion, flat)).toEqual({ status: 'in-a-plane' });
    });

    it(`${criterion}: a row that is not finite is named; unequal columns are refused`, () => {
      const points = tube(8, 10).map((p) => [...p]);
      points[11]![2] = NEVER;
      expect(cylinder(criterion, points)).toEqual({ status: 'not-finite', row: 11 });
      expect(() => CYLINDERS[criterion]([1, 2, 3], [1, 2, 3], [1, 2])).toThrow(RangeError);
    });
  }

  it('inscribed in less than half a tube: nothing holds it', () => {
    for (const arc of [1.5, 2.5, 3.1]) {
      const found = cylinder('maximum-inscribed', tube(30, 40, arc));
      expect(found.status).toBe('not-all-round');
    }
  });
});

describe('exact features have nothing left over', () => {
  it('circles: center and size to rounding, a range of rounding only', () => {
    const random = seededRandom(31);
    for (let set = 0; set < 40; set++) {
      const [a, b, r] = [30 * random.normal(), 30 * random.normal(), 10 + 90 * random.uniform()];
      const points = ring(3 + set, r).map(([x, y]) => [a + x, b + y]);
      const columns = [0, 1].map((d) => Float64Array.from(points, (p) => p[d]!));
      const near = 64 * lastPlace(columns);
      for (const criterion of CRITERIA) {
        const found = circle(criterion, points);
        if (found.status !== 'ok') throw new Error(`${criterion}, ${set}: ${found.status}`);
        expect(found.deviation.range).toBeLessThan(near);
        expect(Math.hypot(found.center[0] - a, found.center[1] - b)).toBeLessThan(near);
        expect(Math.abs(found.diameter - 2 * r)).toBeLessThan(near);
      }
    }
  });

  it('cylinders: axis and size to rounding, a range of rounding only', () => {
    const random = seededRandom(32);
    for (let set = 0; set < 20; set++) {
      const direction = randomDirection(random);
      const [first, second] = squareTo(direction);
      const center = [0, 0, 0].map(() => 30 * random.normal());
      const r = 10 + 90 * random.uniform();
      const points = Array.from({ length: 24 + set }, (_, i) => {
        const [t, s] = [2.4 * i, r * (i < 2 ? i : random.uniform())];
        return center.map(
          (c, d) =>
            c + r * (Math.cos(t) * first[d]! + Math.sin(t) * second[d]!) + s * direction[d]!,
        );
      });
      const columns = [0, 1, 2].map((d) => Float64Array.from(points, (p) => p[d]!));
      const near = 64 * lastPlace(columns);
      for (const criterion of CRITERIA) {
        const found = cylinder(criterion, points);
        if (found.status !== 'ok') throw new Error(`${criterion}, ${set}: ${found.status}`);
        expect(found.deviation.range).toBeLessThan(near);
        const lean = Math.abs(
          Math.abs(found.axis.direction.reduce((s, v, d) => s + v * direction[d]!, 0)) - 1,
        );
        expect(lean).toBeLessThan(1e-15);
        expect(Math.abs(found.diameter - 2 * r)).toBeLessThan(10 * near);
      }
    }
  });
});

describe('a million points', () => {
  const COUNT = 1_000_000;
  const random = seededRandom(41);
  const direction: Vector = [0, 0.6, 0.8];
  const [first, second] = squareTo(direction);
  const flat = [new Float64Array(COUNT), new Float64Array(COUNT)];
  const solid = [0, 1, 2].map(() => new Float64Array(COUNT));
  for (let i = 0; i < COUNT; i++) {
    const t = TURN * random.uniform();
    const r = 50 + 0.02 * Math.cos(3 * t) + 0.003 * random.normal();
    const s = 80 * random.uniform();
    const [c, d] = [r * Math.cos(t), r * Math.sin(t)];
    flat[0]![i] = 7 + c;
    flat[1]![i] = -3 + d;
    for (const k of [0, 1, 2] as const) {
      solid[k]![i] = c * first[k] + d * second[k] + s * direction[k];
    }
  }
  for (const criterion of CRITERIA) {
    it(`ends well and is proved: ${criterion}`, () => {
      const round = CIRCLES[criterion](flat[0]!, flat[1]!);
      if (round.status !== 'ok') throw new Error(round.status);
      expect(faults(flat, criterion, round)).toEqual([]);
      const tubular = CYLINDERS[criterion](solid[0]!, solid[1]!, solid[2]!);
      if (tubular.status !== 'ok') throw new Error(tubular.status);
      expect(faults(solid, criterion, tubular)).toEqual([]);
    });
  }
});
