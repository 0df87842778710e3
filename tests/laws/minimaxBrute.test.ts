/** Minimax circles of a dozen points against every choice of contacts there is. */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import {
  maximumInscribedCircle,
  minimumCircumscribedCircle,
  minimumZoneCircle,
} from '../../src/geometry/minimaxCircle.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { bestOfAllRings, inscribedOnes, narrowestStrip, smallestAround } from './minimaxBrute.ts';

const SETS = 150;

type Maker = (random: Random) => [number, number][];

const few = (random: Random) => 5 + Math.floor(8 * random.uniform());

const some = (count: number, point: (i: number) => [number, number]) =>
  Array.from({ length: count }, (_, i) => point(i));

const MAKERS: Record<string, Maker> = {
  'wild points': (random) => some(few(random), () => [random.normal(), random.normal()]),
  'nearly on a line': (random) =>
    some(few(random), () => [5 * random.normal(), 0.05 * random.normal()]),
  'in two clusters': (random) =>
    some(few(random), (i) => [(i % 2) * 4 + 0.1 * random.normal(), 0.1 * random.normal()]),
  'on a grid, with ties': (random) =>
    some(few(random), () => [Math.floor(4 * random.uniform()), Math.floor(4 * random.uniform())]),
  'a rough circle': (random) =>
    some(few(random), (i) => {
      const r = 1 + 0.2 * random.normal();
      return [r * Math.cos(2 * i), r * Math.sin(2 * i)];
    }),
};

function columnsOf(points: [number, number][]): [Float64Array, Float64Array] {
  return [Float64Array.from(points, (p) => p[0]), Float64Array.from(points, (p) => p[1])];
}

/** Points span a few units; their distances from a center among them round by about 1e-15. */
const NEAR = 1e-12;

/** Whether points leave half a turn or more without any, seen from a place. */
function leavesHalfOpen(x: Float64Array, y: Float64Array, [a, b]: [number, number]): boolean {
  const angles = Array.from(x, (v, i) => Math.atan2(y[i]! - b, v - a)).sort((p, q) => p - q);
  return angles.some((angle, i) => {
    const next = i + 1 < angles.length ? angles[i + 1]! : angles[0]! + 2 * Math.PI;
    return next - angle >= Math.PI;
  });
}

function rootMeanSquareFromMean(x: Float64Array, y: Float64Array): number {
  const mean = (v: Float64Array) => v.reduce((s, w) => s + w, 0) / v.length;
  const [a, b] = [mean(x), mean(y)];
  return Math.sqrt(mean(x.map((v, i) => (v - a) ** 2 + (y[i]! - b) ** 2)));
}

/** Counts the sets that had something to compare. */
function eachSet(trial: (x: Float64Array, y: Float64Array, where: string) => 0 | 1): void {
  let compared = 0;
  for (const [name, make] of Object.entries(MAKERS)) {
    const random = seededRandom(name.length);
    for (let set = 0; set < SETS; set++)
      compared += trial(...columnsOf(make(random)), `${name}, set ${set}`);
  }
  expect(compared).toBeGreaterThan(3 * SETS);
}

describe('every choice of contacts', () => {
  it('has no narrower ring, and none where a straight strip is as narrow', () => {
    eachSet((x, y, where) => {
      const ours = minimumZoneCircle(x, y);
      const ring = bestOfAllRings(x, y);
      const strip = narrowestStrip(x, y);
      if (ours.status === 'ok') {
        const { range } = ours.deviation;
        // About a far-off center all choices of contacts were asked with distances rounded as here.
        const near = NEAR + 4 * Number.EPSILON * ours.diameter;
        expect({ where, range, worse: range > ring + near }).toEqual({
          where,
          range,
          worse: false,
        });
        expect({ where, range, less: range < ring - 1e-9 }).toEqual({ where, range, less: false });
        expect(range).toBeLessThan(strip + NEAR);
      } else if (ours.status === 'arc-too-short') {
        expect({ where, ring, strip, narrow: strip <= ring + 1e-9 }).toEqual({
          where,
          ring,
          strip,
          narrow: true,
        });
      } else expect(['on-a-line', 'too-few-points']).toContain(ours.status);
      return 1;
    });
  });

  it('has no smaller circle about all points', () => {
    eachSet((x, y, where) => {
      const ours = minimumCircumscribedCircle(x, y);
      if (ours.status !== 'ok') {
        expect(['on-a-line', 'too-few-points']).toContain(ours.status);
        return 0;
      }
      const { center, radius } = smallestAround(x, y);
      const off = Math.hypot(ours.center[0] - center[0], ours.center[1] - center[1]);
      expect({ where, off, near: off < 1e-7 }).toEqual({ where, off, near: true });
      expect(Math.abs(ours.diameter / 2 - radius)).toBeLessThan(NEAR);
      return 1;
    });
  });

  it('has, of all circles that cannot slip out, ours nearest the least-squares center', () => {
    eachSet((x, y, where) => {
      const ours = maximumInscribedCircle(x, y);
      const least = fitCircle(x, y);
      if (least.status !== 'ok') {
        expect(ours.status).toBe(least.status);
        return 0;
      }
      const all = inscribedOnes(x, y);
      const sure = all.filter((c) => c.sure);
      const far = ({ center: [a, b] }: { center: [number, number] }) =>
        Math.hypot(a - least.center[0], b - least.center[1]);
      if (ours.status !== 'ok') {
        // What lies between neighbors of one arc, beside its center and far smaller than it spreads, is no bore.
        const spread = rootMeanSquareFromMean(x, y);
        const nearest = sure.sort((c, d) => far(c) - far(d)).slice(0, 1);
        const bore = nearest.filter(
          (c) =>
            far(c) < c.radius || c.radius >= 0.01 * spread || !leavesHalfOpen(x, y, least.center),
        );
        expect({ where, status: ours.status, bore }).toEqual({
          where,
          status: 'not-all-round',
          bore: [],
        });
        return 0;
      }
      const same = all.filter(
        (c) =>
          Math.hypot(c.center[0] - ours.center[0], c.center[1] - ours.center[1]) < 1e-8 &&
          Math.abs(c.radius - ours.diameter / 2) < 1e-8,
      );
      expect({ where, among: same.length > 0 }).toEqual({ where, among: true });
      const nearer = sure.filter((c) => far(c) < far(ours) - 1e-8);
      expect({ where, nearer }).toEqual({ where, nearer: [] });
      const sureLarger = sure.filter((c) => c.radius > ours.diameter / 2 + 1e-8);
      const larger = ours.larger;
      if (sureLarger.length > 0) expect({ where, larger }).not.toEqual({ where, larger: null });
      if (larger) {
        expect(larger.diameter).toBeGreaterThan(ours.diameter);
        const known = all.some(
          (c) =>
            Math.abs(c.radius - larger.diameter / 2) < 1e-8 &&
            Math.hypot(c.center[0] - larger.center[0], c.center[1] - larger.center[1]) < 1e-8,
        );
        expect({ where, larger, known }).toEqual({ where, larger, known: true });
      }
      return 1;
    });
  });
});
