/** Turning ovals: made-up ones recovered, and the least chi-square met by a search that goes everywhere. */
import { describe, expect, it } from 'vitest';
import { type OvalAt, type TurnModel, turnModels } from '../../src/geometry/ovalTurn.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';

const HOUR = Math.PI / 6;

function oval(z: number, amplitude: number, at: number, random?: Random): OvalAt {
  const [p, q, r] = random
    ? [1 + random.uniform(), 0.6 * (random.uniform() - 0.5), 1 + random.uniform()]
    : [1, 0, 1];
  const [u, v] = random ? [random.normal(), random.normal()] : [0, 0];
  return {
    z,
    a: amplitude * Math.cos(2 * at) + p * u,
    b: amplitude * Math.sin(2 * at) + q * u + r * v,
    aa: p * p,
    ab: p * q,
    bb: q * q + r * r,
  };
}

const named = (models: readonly TurnModel[], kind: TurnModel['kind']) =>
  models.find((m) => m.kind === kind)!;

/** Chi-square of depths whose long ways are given, each with its best amplitude, written out as residuals. */
function chiSquare(ovals: readonly OvalAt[], ways: readonly number[]): number {
  return ovals.reduce((sum, { a, b, aa, ab, bb }, i) => {
    const [c, s] = [Math.cos(2 * ways[i]!), Math.sin(2 * ways[i]!)];
    const det = aa * bb - ab * ab;
    const product = (x: number, y: number, u: number, v: number) =>
      (bb * x * u - ab * (x * v + y * u) + aa * y * v) / det;
    const amplitude = Math.max(0, product(a, b, c, s) / product(c, s, c, s));
    const [x, y] = [a - amplitude * c, b - amplitude * s];
    return sum + product(x, y, x, y);
  }, 0);
}

describe('made-up ovals', () => {
  it('the same, turning steadily, and at once are recovered, also across 12 o’clock', () => {
    const depths = [0, 10, 20, 30, 40];
    for (let k = 0; k < 12; k++) {
      const at = (k * Math.PI) / 12;
      const same = named(turnModels(depths.map((z) => oval(z, 100, at))), 'same');
      expect(same.chiSquare).toBeLessThan(1e-6);
      expect(Math.abs(Math.sin(same.first - at))).toBeLessThan(1e-5);
      for (const by of [-2.5, -1, 1, 2.5]) {
        const twisted = depths.map((z) => oval(z, 100, at + (by * HOUR * z) / 40));
        const steady = named(turnModels(twisted), 'steady');
        // 1e-4 rad of an amplitude of 100 standard deviations is 2e-4 of chi-square.
        expect(Math.abs(steady.turn - by * HOUR)).toBeLessThan(1e-4);
        const stepped = depths.map((z) => oval(z, 100, z > 15 ? at + by * HOUR : at));
        const [best] = turnModels(stepped);
        expect(best!.kind).toBe('at-once');
        expect(best!.at).toBe(2);
        expect(Math.abs(best!.turn - by * HOUR)).toBeLessThan(1e-5);
      }
    }
  });

  it('an oval the other way about is one turned by three hours, not one of negative amplitude', () => {
    const models = turnModels([0, 10, 20, 30].map((z) => oval(z, 10, z > 15 ? Math.PI / 2 : 0)));
    expect(Math.abs(Math.abs(named(models, 'at-once').turn) - 3 * HOUR)).toBeLessThan(1e-5);
    // Two depths of 10 standard deviations that fit no amplitude at all.
    expect(Math.abs(named(models, 'same').chiSquare - 200)).toBeLessThan(1e-6);
  });

  it('three depths at least', () => {
    expect(turnModels([oval(0, 10, 1), oval(10, 10, 1)])).toEqual([]);
  });
});

describe('the least chi-square', () => {
  it('is met or bettered nowhere on a fine grid, 30 seeded surveys', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const random = seededRandom(seed);
      const count = 4 + (seed % 3);
      const ovals = Array.from({ length: count }, (_, i) =>
        oval(10 * i, 6 * random.uniform(), 0.8 * random.normal(), random),
      );
      const models = turnModels(ovals);
      const fine = Array.from({ length: 360 }, (_, k) => (k * Math.PI) / 360);
      const direction = (part: readonly OvalAt[]) =>
        Math.min(
          ...fine.map((way) =>
            chiSquare(
              part,
              part.map(() => way),
            ),
          ),
        );
      expect(named(models, 'same').chiSquare).toBeLessThanOrEqual(direction(ovals) + 1e-9);
      const steps = ovals
        .slice(1)
        .map((_, i) => direction(ovals.slice(0, i + 1)) + direction(ovals.slice(i + 1)));
      const once = named(models, 'at-once');
      expect(once.chiSquare).toBeLessThanOrEqual(Math.min(...steps) + 1e-9);
      const share = (i: number) => i / (count - 1) - 0.5;
      let least = Number.POSITIVE_INFINITY;
      for (let turn = -4; turn <= 4; turn += 0.1) {
        for (const way of fine.filter((_, k) => k % 4 === 0)) {
          const ways = ovals.map((_, i) => way + turn * HOUR * share(i));
          least = Math.min(least, chiSquare(ovals, ways));
        }
      }
      const steady = named(models, 'steady');
      expect(steady.chiSquare).toBeLessThanOrEqual(least + 1e-9);
      // And what each says of itself is what it costs.
      const ways = ovals.map((_, i) => steady.first + steady.turn * (share(i) + 0.5));
      expect(Math.abs(chiSquare(ovals, ways) - steady.chiSquare)).toBeLessThan(1e-6);
      const jumped = ovals.map((_, i) => (i < once.at ? once.first : once.last));
      expect(Math.abs(chiSquare(ovals, jumped) - once.chiSquare)).toBeLessThan(1e-6);
    }
  });
});
