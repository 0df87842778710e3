/** The fits against another optimiser, ml-levenberg-marquardt, on random readings. */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { otherwise } from './otherwise.ts';

const TURN = 2 * Math.PI;

function noisyCircle(random: Random) {
  const count = 6 + Math.floor(40 * random.uniform());
  const [a, b] = [20 * random.normal(), 20 * random.normal()];
  const radius = 10 + 40 * random.uniform();
  const arc = TURN * (0.3 + 0.7 * random.uniform());
  const points = Array.from({ length: count }, () => {
    const t = arc * random.uniform();
    const r = radius + 0.2 * random.normal();
    return [a + r * Math.cos(t), b + r * Math.sin(t)] as const;
  });
  return { x: points.map((p) => p[0]), y: points.map((p) => p[1]), start: [a, b, radius] };
}

describe('least squares by another optimiser', () => {
  it('finds the same circle, 100 times', () => {
    const random = seededRandom(11);
    let compared = 0;
    for (let set = 0; set < 100; set++) {
      const { x, y, start } = noisyCircle(random);
      const fit = fitCircle(x, y);
      if (fit.status !== 'ok') throw new Error(fit.status);
      const other = otherwise(
        x.length,
        start,
        ([a, b, r], i) => Math.hypot(x[i]! - a!, y[i]! - b!) - r!,
      );
      const own = x.reduce(
        (s, v, i) =>
          s + (Math.hypot(v - fit.center[0], y[i]! - fit.center[1]) - fit.diameter / 2) ** 2,
        0,
      );
      expect(own).toBeLessThanOrEqual(other.sumSquares * (1 + 1e-12));
      const near = 1e-6 * fit.conditioning;
      expect(Math.abs(fit.center[0] - other.parameters[0]!)).toBeLessThan(near);
      expect(Math.abs(fit.center[1] - other.parameters[1]!)).toBeLessThan(near);
      expect(Math.abs(fit.diameter / 2 - other.parameters[2]!)).toBeLessThan(near);
      compared++;
    }
    expect(compared).toBe(100);
  });

  it('finds the same cylinder, 40 times', () => {
    const random = seededRandom(12);
    for (let set = 0; set < 40; set++) {
      const start = [5 * random.normal(), 5 * random.normal(), 0.1 * random.normal()];
      start.push(0.1 * random.normal(), 10 + 40 * random.uniform());
      const [a, b, slopeX, slopeY, radius] = start as [number, number, number, number, number];
      const points = Array.from({ length: 30 }, () => {
        const t = TURN * random.uniform();
        const z = 60 * random.uniform() - 30;
        const r = radius + 0.1 * random.normal();
        return [a + slopeX * z + r * Math.cos(t), b + slopeY * z + r * Math.sin(t), z] as const;
      });
      const [x, y, z] = [0, 1, 2].map((d) => points.map((p) => p[d]!)) as [
        number[],
        number[],
        number[],
      ];
      const fit = fitCylinder(x, y, z);
      if (fit.status !== 'ok') throw new Error(fit.status);
      const distance = ([px, py, sx, sy, r]: number[], i: number) => {
        const [dx, dy] = [x[i]! - px!, y[i]! - py!];
        const along = (dx * sx! + dy * sy! + z[i]!) / (sx! * sx! + sy! * sy! + 1);
        return Math.hypot(dx - along * sx!, dy - along * sy!, z[i]! - along) - r!;
      };
      const other = otherwise(30, start, distance);
      const { point, direction } = fit.axis;
      const [sx, sy] = [direction[0] / direction[2], direction[1] / direction[2]];
      const own = [point[0] - sx * point[2], point[1] - sy * point[2], sx, sy, fit.diameter / 2];
      const ownSquares = x.reduce((s, _, i) => s + distance(own, i) ** 2, 0);
      expect(ownSquares).toBeLessThanOrEqual(other.sumSquares * (1 + 1e-12));
      own.forEach((value, d) => {
        expect(Math.abs(value - other.parameters[d]!)).toBeLessThan(1e-6 * fit.conditioning);
      });
    }
  });
});
