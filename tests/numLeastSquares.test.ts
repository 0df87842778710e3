/** Linear least squares, small eigenvalue problems, and the streamed Gauss-Newton search. */
import { describe, expect, it } from 'vitest';
import { largestEigenvalue, symmetricEigen } from '../src/num/eigen.ts';
import { gaussNewton, type Problem } from '../src/num/gaussNewton.ts';
import { linearLeastSquares } from '../src/num/leastSquares.ts';
import { invertNormal } from '../src/num/normalEquations.ts';
import { seededRandom } from '../src/num/random.ts';

function solved(a: number[], b: number[], p: number) {
  const fit = linearLeastSquares(a, b, b.length, p);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return fit;
}

describe('linear least squares', () => {
  it('worked by hand: a line through (0, 1), (1, 2), (2, 4)', () => {
    const fit = solved([1, 0, 1, 1, 1, 2], [1, 2, 4], 2);
    expect(fit.x[0]).toBeCloseTo(5 / 6, 14);
    expect(fit.x[1]).toBeCloseTo(3 / 2, 14);
    expect(fit.sumSquares).toBeCloseTo(1 / 6, 14);
    // (a^T a)^-1 of 3, 3, 5.
    for (const [i, v] of [5 / 6, -1 / 2, -1 / 2, 1 / 2].entries()) {
      expect(fit.inverse[i]).toBeCloseTo(v, 14);
    }
    // Scaled columns have the cosine 3 / sqrt(15) between them.
    const cosine = 3 / Math.sqrt(15);
    expect(fit.conditioning).toBeCloseTo(Math.sqrt((1 + cosine) / (1 - cosine)), 12);
  });

  it('leaves residuals square to every column', () => {
    const random = seededRandom(1);
    const [m, p] = [50, 7];
    const a = Array.from({ length: m * p }, () => random.normal());
    const b = Array.from({ length: m }, () => random.normal());
    const fit = solved(a, b, p);
    const rest = b.map((v, i) => v - fit.x.reduce((s, x, j) => s + a[i * p + j]! * x, 0));
    for (let j = 0; j < p; j++) {
      const part = rest.reduce((s, v, i) => s + v * a[i * p + j]!, 0);
      // m products of numbers near 1, each rounded a few times.
      expect(Math.abs(part)).toBeLessThan(m * 10 * Number.EPSILON);
    }
    expect(fit.sumSquares).toBeCloseTo(
      rest.reduce((s, v) => s + v * v, 0),
      12,
    );
  });

  it('does not ask for units: columns of 1e-9 and 1e9', () => {
    const a = [1e-9, 0, 1e-9, 1e9, 1e-9, 2e9];
    const fit = solved(a, [1, 2, 4], 2);
    expect(fit.x[0]! / 1e9).toBeCloseTo(5 / 6, 13);
    expect(fit.x[1]! * 1e9).toBeCloseTo(3 / 2, 13);
  });

  it('solves what normal equations cannot: columns alike to 1e-9', () => {
    const d = 1e-9;
    const fit = solved([1, 1, d, 0, 0, d], [2, d, d], 2);
    // Condition about 1e9: 1e9 roundings, and more than 1e16 would leave nothing.
    expect(fit.x[0]).toBeCloseTo(1, 6);
    expect(fit.x[1]).toBeCloseTo(1, 6);
    expect(fit.conditioning / (Math.SQRT2 / d)).toBeCloseTo(1, 6);
  });

  it('says why there is none', () => {
    expect(linearLeastSquares([1, 2], [1], 1, 2).status).toBe('too-few-rows');
    expect(linearLeastSquares([1, 2, 2, 4, 3, 6], [1, 2, 3], 3, 2).status).toBe(
      'columns-dependent',
    );
    expect(linearLeastSquares([1, 0, 2, 0], [1, 2], 2, 2).status).toBe('columns-dependent');
    expect(linearLeastSquares([1, Number.NaN], [1, 2], 2, 1).status).toBe('not-finite');
    expect(linearLeastSquares([1, 1], [1, Number.POSITIVE_INFINITY], 2, 1).status).toBe(
      'not-finite',
    );
  });
});

describe('symmetric eigenvalues', () => {
  it('of a matrix with known ones', () => {
    const { values, vectors } = symmetricEigen([2, 1, 0, 1, 2, 0, 0, 0, -5], 3);
    for (const [i, v] of [-5, 1, 3].entries()) expect(values[i]).toBeCloseTo(v, 14);
    expect(Math.abs(vectors[2]![0]!)).toBeCloseTo(Math.SQRT1_2, 14);
    expect(vectors[2]![0]! * vectors[2]![1]!).toBeCloseTo(0.5, 14);
  });

  it('rebuild random matrices, with vectors square to each other', () => {
    const random = seededRandom(2);
    for (const n of [1, 2, 5, 12]) {
      const a = new Float64Array(n * n);
      for (let i = 0; i < n; i++) {
        for (let j = 0; j <= i; j++) a[i * n + j] = a[j * n + i] = random.normal();
      }
      const { values, vectors } = symmetricEigen(a, n);
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          const back = values.reduce((s, v, k) => s + v * vectors[k]![i]! * vectors[k]![j]!, 0);
          expect(back).toBeCloseTo(a[i * n + j]!, 12);
          const dot = vectors[i]!.reduce((s, v, k) => s + v * vectors[j]![k]!, 0);
          expect(dot).toBeCloseTo(i === j ? 1 : 0, 13);
        }
      }
      expect(values).toEqual([...values].sort((p, q) => p - q));
    }
  });

  it('the largest alone', () => {
    expect(largestEigenvalue([4, 2, 2, 4], 2)).toBeCloseTo(6, 14);
    expect(largestEigenvalue([], 0)).toBe(0);
  });
});

/** y = a exp(b x) at x = 0, 0.1, ...; the state is [a, b] itself. */
function growth(y: number[]): Problem<number[]> {
  return {
    unknowns: 2,
    residuals: y.length,
    rows: ([a, b], from, to, { columns, residuals }) => {
      for (let i = from; i < to; i++) {
        const wave = Math.exp(b! * i * 0.1);
        columns[0]![i - from] = wave;
        columns[1]![i - from] = a! * 0.1 * i * wave;
        residuals[i - from] = a! * wave - y[i]!;
      }
    },
    move: ([a, b], step) => [a! + step[0]!, b! + step[1]!],
  };
}

describe('damped Gauss-Newton', () => {
  const limits = { maxIterations: 200, noise: 4 * Number.EPSILON, damping: 1e-3 };

  it('finds an exact answer from afar', () => {
    const y = Array.from({ length: 30 }, (_, i) => 3 * Math.exp(-0.7 * 0.1 * i));
    const { ending, state } = gaussNewton(growth(y), [1, 1], limits);
    expect(ending).toBe('converged');
    expect(state[0]).toBeCloseTo(3, 13);
    expect(state[1]).toBeCloseTo(-0.7, 13);
  });

  it('ends where the gradient is nothing, also over several blocks of rows', () => {
    const random = seededRandom(9);
    const y = Array.from({ length: 1500 }, (_, i) => Math.exp(-0.02 * i) + 0.1 * random.normal());
    const { ending, state, normal } = gaussNewton(growth(y), [1, 0], limits);
    expect(ending).toBe('converged');
    const [a, b] = state as [number, number];
    let gradient = 0;
    let squares = 0;
    for (let i = 0; i < 1500; i++) {
      const rest = a * Math.exp(b * i * 0.1) - y[i]!;
      gradient += rest * Math.exp(b * i * 0.1);
      squares += rest * rest;
    }
    expect(Math.abs(gradient)).toBeLessThan(1e-11);
    expect(normal.sumSquares).toBeCloseTo(squares, 10);
    const inverse = invertNormal(normal)!;
    const back = normal.matrix[0]! * inverse[0]! + normal.matrix[2]! * inverse[2]!;
    expect(back).toBeCloseTo(1, 12);
  });

  it('says when it gave up, and when the start is no number', () => {
    const y = Array.from({ length: 30 }, (_, i) => 3 * Math.exp(-0.7 * 0.1 * i));
    const short = gaussNewton(growth(y), [1, 1], { ...limits, maxIterations: 2 });
    expect(short).toMatchObject({ ending: 'out-of-iterations', iterations: 2 });
    expect(gaussNewton(growth(y), [Number.NaN, 1], limits).ending).toBe('not-finite');
    // Nothing depends on the second unknown while the first is 0 and may not move.
    const stuck = gaussNewton(growth(y.map(() => 0)), [0, 1], limits);
    expect(stuck.ending).toBe('stalled');
  });
});
