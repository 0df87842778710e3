/**
 * The Gaussian filter against the transmission of ISO 16610-21 (figures from memory, derived anew), and its laws.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type FilteredProfile,
  filterFailureInWords,
  gaussianFilter,
  gaussianTransmission,
} from '../../src/geometry/filter.ts';
import { seededRandom } from '../../src/num/random.ts';

const even = (count: number, start = 0) =>
  Array.from({ length: count }, (_, i) => start + (2 * Math.PI * i) / count);

function done(theta: ArrayLike<number>, r: ArrayLike<number>, cutoff: number): FilteredProfile {
  const found = gaussianFilter(theta, r, cutoff);
  if (found.status !== 'ok') throw new Error(filterFailureInWords(found, cutoff));
  return found;
}

const amplitude = (r: ArrayLike<number>) => {
  const values = Array.from(r);
  const middle = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt((2 * values.reduce((s, v) => s + (v - middle) ** 2, 0)) / values.length);
};

const TABLE = [
  [1, 0.99692408621],
  [5, 0.92587471229],
  [10, 0.73486724614],
  [15, 0.5],
  [30, 0.0625],
  [45, 0.001953125],
] as const;

describe('GAUSS-FILTER: cut-off 15 undulations per revolution', () => {
  it.each(TABLE)('%i lobes go through by %d', (lobes, share) => {
    const alpha = Math.sqrt(Math.LN2 / Math.PI);
    expect(Math.abs(gaussianTransmission(lobes, 15) - share)).toBeLessThan(1e-9);
    const closed = Math.exp(-Math.PI * ((alpha * lobes) / 15) ** 2);
    expect(Math.abs(gaussianTransmission(lobes, 15) - closed)).toBeLessThan(1e-15);
    for (const count of [105, 360, 721]) {
      const theta = even(count, 0.3);
      const { long } = done(
        theta,
        theta.map((t) => 25 + Math.cos(lobes * t - 1)),
        15,
      );
      long.forEach((value, i) => {
        const wanted = 25 + share * Math.cos(lobes * theta[i]! - 1);
        expect(Math.abs(value - wanted)).toBeLessThan(1e-9);
      });
    }
  });
});

describe('at even angles', () => {
  const count = fc.integer({ min: 22, max: 60 });
  const cutoff = fc.double({ min: 0.5, max: 3, noNaN: true });
  const profile = fc.tuple(count, cutoff, fc.integer()).map(([n, fcut, seed]) => {
    const random = seededRandom(seed);
    const r = () => Array.from({ length: n }, () => 25 + 0.1 * random.normal());
    return { theta: even(n, random.uniform()), a: r(), b: r(), cutoff: fcut };
  });
  // 25 mm carries 4e-15; sums of 60 of them, and lobes of 0.5 mm in all, stay below a hundred of that.
  const near = 4e-13;

  it('both parts add up to the profile, and the long one keeps its mean', () => {
    fc.assert(
      fc.property(profile, ({ theta, a, cutoff }) => {
        const { long, short, mean } = done(theta, a, cutoff);
        let total = 0;
        a.forEach((value, i) => {
          expect(Math.abs(long[i]! + short[i]! - value)).toBeLessThan(near);
          total += short[i]!;
        });
        expect(Math.abs(total / a.length)).toBeLessThan(near);
        expect(Math.abs(a.reduce((s, v) => s + v, 0) / a.length - mean)).toBeLessThan(near);
      }),
    );
  });

  it('is linear', () => {
    fc.assert(
      fc.property(profile, fc.double({ min: -2, max: 2, noNaN: true }), (p, k) => {
        const [one, two] = [done(p.theta, p.a, p.cutoff), done(p.theta, p.b, p.cutoff)];
        const both = done(
          p.theta,
          p.a.map((value, i) => value + k * p.b[i]!),
          p.cutoff,
        );
        both.long.forEach((value, i) => {
          expect(Math.abs(value - one.long[i]! - k * two.long[i]!)).toBeLessThan(4 * near);
        });
      }),
    );
  });

  it('turns with the part, whatever the order of the rows', () => {
    fc.assert(
      fc.property(profile, fc.integer({ min: 0, max: 60 }), (p, by) => {
        const n = p.a.length;
        const turned = p.a.map((_, i) => p.a[(i + by) % n]!);
        const [one, two] = [done(p.theta, p.a, p.cutoff), done(p.theta, turned, p.cutoff)];
        const back = [...p.theta].reverse();
        const three = done(back, [...p.a].reverse(), p.cutoff);
        two.long.forEach((value, i) => {
          expect(Math.abs(value - one.long[(i + by) % n]!)).toBeLessThan(near);
          expect(Math.abs(three.long[n - 1 - i]! - one.long[i]!)).toBeLessThan(near);
        });
      }),
    );
  });

  it('a lobe of half the readings goes by its own share too', () => {
    const theta = even(22, 0.2);
    const { long, highest } = done(
      theta,
      theta.map((_, i) => (i % 2 ? 1 : -1)),
      3,
    );
    expect(highest).toBe(11);
    const share = gaussianTransmission(11, 3);
    long.forEach((value, i) => {
      expect(Math.abs(value - (i % 2 ? share : -share))).toBeLessThan(1e-14);
    });
  });

  it('5,000 readings at 150 undulations', () => {
    const theta = even(5000);
    const { long, perWave } = done(
      theta,
      theta.map((t) => Math.cos(150 * t)),
      150,
    );
    expect(Math.abs(amplitude(long) - 0.5)).toBeLessThan(1e-10);
    expect(perWave).toBeCloseTo(5000 / 150, 9);
  });
});

describe('at uneven angles', () => {
  const random = seededRandom(3);
  const scattered = Array.from({ length: 1500 }, () => 2 * Math.PI * random.uniform());
  const jittered = even(360).map((t) => t + 0.004 * random.normal());
  // Two turns over the same part, almost on the same places.
  const twice = [...even(360), ...even(360, 1e-7)];

  it.each([
    ['scattered', scattered, 15],
    ['jittered', jittered, 15],
    ['two turns', twice, 15],
  ] as const)(
    '%s: lobes within what is fitted go through by their own share',
    (_, theta, cutoff) => {
      const parts = [1, 2, 5, 11, 15, 28].map((n) => ({ n, a: 0.1 / n, at: n }));
      const sum = (t: number, by: (n: number) => number) =>
        parts.reduce((r, { n, a, at }) => r + by(n) * a * Math.cos(n * t - at), 25);
      const {
        long,
        highest,
        even: isEven,
      } = done(
        theta,
        theta.map((t) => sum(t, () => 1)),
        cutoff,
      );
      expect(isEven).toBe(false);
      expect(highest).toBeGreaterThanOrEqual(28);
      // Values of 25 mm known to 4e-15, magnified by a condition number of 385 at most (gaps of 0.9 of half a wave).
      long.forEach((value, i) => {
        const wanted = sum(theta[i]!, (n) => gaussianTransmission(n, cutoff));
        expect(Math.abs(value - wanted)).toBeLessThan(2e-12);
      });
    },
  );

  it('agrees with the even way on readings that are nearly even', () => {
    const theta = even(240);
    const moved = theta.map((t, i) => t + (i === 7 ? 1e-5 : 0));
    const r = theta.map(() => 0.01 * random.normal());
    const [one, two] = [done(theta, r, 15), done(moved, r, 15)];
    expect(two.even).toBe(false);
    // The two ways differ in lobes above 48, of which 2^-10 goes through: a sixth of the readings' spread each.
    const most = Math.max(...one.long.map((value, i) => Math.abs(value - two.long[i]!)));
    expect(most).toBeGreaterThan(0);
    expect(most).toBeLessThan(0.01 * 2 ** -10 * 4);
  });
});

describe('what is refused', () => {
  const flat = (theta: readonly number[]) => theta.map(() => 25);

  it('fewer than seven readings in the shortest wave', () => {
    const few = even(104);
    const found = gaussianFilter(few, flat(few), 15);
    expect(found).toEqual({ status: 'too-few-readings', needed: 105, found: 104 });
    if (found.status === 'ok') throw new Error();
    expect(filterFailureInWords(found, 15)).toBe(
      'a cut-off of 15 undulations per revolution needs 105 readings round the turn, and there are 104',
    );
    expect(gaussianFilter(even(105), flat(even(105)), 15).status).toBe('ok');
  });

  it('a gap that half of a kept wave would fit into', () => {
    const theta = even(720).filter((t) => t < 5 || t > 5.1);
    const found = gaussianFilter(theta, flat(theta), 15);
    if (found.status !== 'gap-too-wide') throw new Error(found.status);
    expect(found.from).toBeLessThanOrEqual(5);
    expect(found.to).toBeGreaterThan(5.1);
    expect(filterFailureInWords(found, 15)).toBe(
      'nothing is read between 286 degrees and 292.5 degrees; a cut-off of 15 undulations per revolution allows gaps of 3.429 degrees',
    );
    const across12 = even(720).filter((t) => t > 0.06 && t < 6.2);
    expect(gaussianFilter(across12, flat(across12), 15).status).toBe('gap-too-wide');
  });

  it('no number, and no cut-off', () => {
    const theta = even(105);
    const r = flat(theta);
    r[4] = Number.NaN;
    expect(gaussianFilter(theta, r, 15)).toEqual({ status: 'not-finite', row: 4 });
    for (const cutoff of [0, -1, Number.NaN]) {
      expect(gaussianFilter(theta, flat(theta), cutoff).status).toBe('cutoff-not-above-0');
    }
    expect(() => gaussianFilter([0], [1, 2], 15)).toThrow(RangeError);
  });
});
