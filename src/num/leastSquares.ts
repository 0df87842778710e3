import { largestEigenvalue } from './eigen.ts';

/** A linear least-squares fit, or why there is none. */
export type LinearFit =
  | {
      status: 'ok';
      /** the p unknowns */
      x: Float64Array;
      /** sum of squared residuals b - a x */
      sumSquares: number;
      /** p * p row-major, (a^T a)^-1: times the variance of b it is the covariance of x */
      inverse: Float64Array;
      /** 2-norm condition number of a with its columns scaled to length 1; 1 is best */
      conditioning: number;
    }
  | { status: 'too-few-rows' | 'not-finite' | 'columns-dependent' };

/** Columns count as dependent when the condition number is past this: no digit is left then. */
const WORST_CONDITION = 1e12;

/**
 * Least squares a x = b by Householder reflections (Golub and Van Loan, Matrix Computations,
 * 4th ed., section 5.3), columns scaled to length 1 first so that units do not matter.
 *
 * @param a m * p row-major; left untouched
 * @param b length m
 */
export function linearLeastSquares(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  m: number,
  p: number,
): LinearFit {
  if (m < p) return { status: 'too-few-rows' };
  const columns = Array.from({ length: p }, (_, j) =>
    Float64Array.from({ length: m }, (_, i) => a[i * p + j]!),
  );
  const right = Float64Array.from({ length: m }, (_, i) => b[i]!);
  const lengths = columns.map((column) => Math.hypot(...chunked(column)));
  if (!lengths.every(Number.isFinite) || !right.every(Number.isFinite)) {
    return { status: 'not-finite' };
  }
  if (lengths.some((length) => !(length > 0))) return { status: 'columns-dependent' };
  columns.forEach((column, j) => {
    for (let i = 0; i < m; i++) column[i] = column[i]! / lengths[j]!;
  });
  const diagonal = triangulate(columns, right, m);
  const upper = upperFactor(columns, diagonal);
  const inverse = invertUpper(upper, p);
  if (inverse === null) return { status: 'columns-dependent' };
  const conditioning = Math.sqrt(
    largestEigenvalue(timesTransposed(upper, p), p) *
      largestEigenvalue(timesTransposed(inverse, p), p),
  );
  if (!(conditioning < WORST_CONDITION)) return { status: 'columns-dependent' };
  const x = new Float64Array(p);
  for (let j = 0; j < p; j++) {
    for (let k = j; k < p; k++) x[j] = x[j]! + (inverse[j * p + k]! * right[k]!) / lengths[j]!;
  }
  let sumSquares = 0;
  for (let i = p; i < m; i++) sumSquares += right[i]! * right[i]!;
  const covariance = timesTransposed(inverse, p);
  for (let j = 0; j < p; j++) {
    for (let k = 0; k < p; k++) {
      covariance[j * p + k] = covariance[j * p + k]! / (lengths[j]! * lengths[k]!);
    }
  }
  return { status: 'ok', x, sumSquares, inverse: covariance, conditioning };
}

/** Norms of pieces of a long column, so that `Math.hypot` is never given too many arguments. */
function chunked(column: Float64Array): number[] {
  const norms: number[] = [];
  for (let from = 0; from < column.length; from += 1024) {
    norms.push(Math.hypot(...column.subarray(from, from + 1024)));
  }
  return norms;
}

/**
 * Reflects the columns in place so that what is left above the diagonal is R; the diagonal of R
 * is returned, since the reflection itself keeps that place.
 */
function triangulate(columns: Float64Array[], right: Float64Array, m: number): Float64Array {
  const diagonal = new Float64Array(columns.length);
  columns.forEach((column, j) => {
    let square = 0;
    for (let i = j; i < m; i++) square += column[i]! * column[i]!;
    const head = column[j]!;
    const alpha = head > 0 ? -Math.sqrt(square) : Math.sqrt(square);
    diagonal[j] = alpha;
    column[j] = head - alpha;
    const half = square - head * alpha;
    if (!(half > 0)) return;
    for (const target of [...columns.slice(j + 1), right]) {
      let dot = 0;
      for (let i = j; i < m; i++) dot += column[i]! * target[i]!;
      dot /= half;
      for (let i = j; i < m; i++) target[i] = target[i]! - dot * column[i]!;
    }
  });
  return diagonal;
}

function upperFactor(columns: Float64Array[], diagonal: Float64Array): Float64Array {
  const p = columns.length;
  const r = new Float64Array(p * p);
  for (let j = 0; j < p; j++) {
    for (let i = 0; i < j; i++) r[i * p + j] = columns[j]![i]!;
    r[j * p + j] = diagonal[j]!;
  }
  return r;
}

/** Inverse of an upper triangular matrix; null when a diagonal entry is 0. */
function invertUpper(r: Float64Array, p: number): Float64Array | null {
  const inverse = new Float64Array(p * p);
  for (let j = p - 1; j >= 0; j--) {
    if (!(Math.abs(r[j * p + j]!) > 0)) return null;
    inverse[j * p + j] = 1 / r[j * p + j]!;
    for (let k = j + 1; k < p; k++) {
      let sum = 0;
      for (let i = j + 1; i <= k; i++) sum -= r[j * p + i]! * inverse[i * p + k]!;
      inverse[j * p + k] = sum / r[j * p + j]!;
    }
  }
  return inverse;
}

/** u u^T for an upper triangular u. */
function timesTransposed(u: Float64Array, p: number): Float64Array {
  const product = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = i; j < p; j++) {
      let sum = 0;
      for (let k = j; k < p; k++) sum += u[i * p + k]! * u[j * p + k]!;
      product[i * p + j] = product[j * p + i] = sum;
    }
  }
  return product;
}
