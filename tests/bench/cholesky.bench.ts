import { cholesky, solveLower, solveLowerTransposed } from '../../src/num/cholesky.ts';
import type { Bench } from './bench.ts';

/**
 * The covariance of n readings spread over a bore 1 long: a smooth kernel and some noise, the kind
 * of matrix the surface factors. Row-major, n x n.
 */
function covariance(n: number): Float64Array {
  const a = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const apart = (i - j) / n / 0.3;
      a[i * n + j] = Math.exp(-0.5 * apart * apart) + (i === j ? 0.01 : 0);
    }
  return a;
}

function factor(a: Float64Array, n: number): Float64Array {
  const l = cholesky(a, n);
  if (l === null) throw new Error('the covariance of the bench is not positive definite');
  return l;
}

export const benches: Bench[] = [
  ...[96, 300].map((n) => ({
    name: `cholesky, ${n} x ${n}`,
    prepare: () => {
      const a = covariance(n);
      return () => factor(a, n);
    },
  })),
  {
    name: 'both triangular solves, 300 x 300',
    prepare: () => {
      const n = 300;
      const l = factor(covariance(n), n);
      const b = new Float64Array(n).fill(1);
      return () => solveLowerTransposed(l, n, solveLower(l, n, b));
    },
  },
];
