/** Cholesky factor and triangular solves. */
import { describe, expect, it } from 'vitest';
import {
  cholesky,
  choleskyInPlace,
  solveLower,
  solveLowerMany,
  solveLowerTransposed,
} from '../src/num/cholesky.ts';
import { seededRandom } from '../src/num/random.ts';

/** b b^T + I, with smallest eigenvalue 1 at least. */
function positive(n: number): Float64Array {
  const random = seededRandom(n);
  const b = Float64Array.from({ length: n * n }, () => random.normal());
  const a = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let sum = i === j ? 1 : 0;
      for (let k = 0; k < n; k++) sum += b[i * n + k]! * b[j * n + k]!;
      a[i * n + j] = sum;
    }
  }
  return a;
}

function trace(a: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i * n + i]!;
  return sum;
}

for (const n of [1, 2, 3, 4, 7, 16, 61, 100]) {
  describe(`order ${n}`, () => {
    const a = positive(n);
    const l = cholesky(a, n)!;
    // N. J. Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., theorem 10.3: the
    // backward error is below (n + 1) u trace(a).
    const bound = (n + 1) * Number.EPSILON * trace(a, n);

    it('multiplies back', () => {
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          let sum = 0;
          for (let k = 0; k < n; k++) sum += l[i * n + k]! * l[j * n + k]!;
          expect(Math.abs(sum - a[i * n + j]!)).toBeLessThan(bound);
        }
      }
    });

    it('is zero above the diagonal, and reads nothing there', () => {
      const dirty = a.slice();
      for (let i = 0; i < n; i++) dirty.fill(Number.NaN, i * n + i + 1, i * n + n);
      expect(cholesky(dirty, n)).toEqual(l);
      for (let i = 0; i < n; i++) {
        for (let j = i + 1; j < n; j++) expect(l[i * n + j]).toBe(0);
      }
    });

    it('solves, in place too', () => {
      const x = Float64Array.from({ length: n }, (_, i) => 1 + i);
      const b = x.map((_, i) => x.reduce((s, v, j) => s + a[i * n + j]! * v, 0));
      const half = solveLower(l, n, b);
      const solved = solveLowerTransposed(l, n, half);
      const inPlace = b.slice();
      solveLower(l, n, inPlace, inPlace);
      solveLowerTransposed(l, n, inPlace, inPlace);
      expect(inPlace).toEqual(solved);
      // The smallest eigenvalue is 1 or more, so a backward error bounds the error itself.
      for (let i = 0; i < n; i++) expect(Math.abs(solved[i]! - x[i]!)).toBeLessThan(4 * bound * n);
    });
  });
}

describe('what has no factor', () => {
  it('is told by null', () => {
    expect(cholesky(Float64Array.of(1, 2, 2, 1), 2)).toBeNull();
    expect(cholesky(Float64Array.of(0), 1)).toBeNull();
    expect(cholesky(Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, -1), 3)).toBeNull();
    expect(cholesky(Float64Array.of(1, 0, Number.NaN, 1), 2)).toBeNull();
    expect(cholesky(Float64Array.of(Number.POSITIVE_INFINITY), 1)).toBeNull();
    expect(choleskyInPlace(Float64Array.of(4, 0, 0, -4), 2)).toBe(false);
  });

  it('order nothing has the empty factor', () => {
    expect(cholesky(new Float64Array(0), 0)).toEqual(new Float64Array(0));
  });

  it('in place it leaves what is above the diagonal', () => {
    const a = Float64Array.of(4, 99, 2, 5);
    expect(choleskyInPlace(a, 2)).toBe(true);
    expect(a).toEqual(Float64Array.of(2, 99, 1, 2));
  });
});

it.each([0, 1, 3, 4, 9])(
  '%i right sides at once are each as by itself, to the last digit',
  (many) => {
    const n = 7;
    const l = cholesky(positive(n), n)!;
    const random = seededRandom(many);
    const x = Float64Array.from({ length: many * n }, () => random.normal());
    const each = Array.from({ length: many }, (_, k) =>
      solveLower(l, n, x.slice(k * n, k * n + n)),
    );
    solveLowerMany(l, n, x);
    expect([...x]).toEqual(each.flatMap((one) => [...one]));
  },
);
