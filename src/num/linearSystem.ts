/**
 * Solves square systems a x = b by Gaussian elimination with row exchanges (Golub and Van Loan,
 * Matrix Computations, 4th ed., section 3.4). For small systems: a few dozen unknowns at most.
 *
 * @param a n * n row-major; overwritten
 * @param b n * columns row-major: one or several right sides; overwritten with the solutions
 * @param n order
 * @param columns number of right sides
 * @returns false when a is singular to working precision (b is then partly overwritten)
 */
export function solveInPlace(a: Float64Array, b: Float64Array, n: number, columns = 1): boolean {
  const least = LEAST_PIVOT * largestIn(a, n * n);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) {
      if (Math.abs(a[i * n + k]!) > Math.abs(a[pivot * n + k]!)) pivot = i;
    }
    if (!(Math.abs(a[pivot * n + k]!) > least)) return false;
    if (pivot !== k) {
      exchange(a, n, k, pivot);
      exchange(b, columns, k, pivot);
    }
    const inverse = 1 / a[k * n + k]!;
    for (let i = k + 1; i < n; i++) {
      const factor = a[i * n + k]! * inverse;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) a[i * n + j]! -= factor * a[k * n + j]!;
      for (let j = 0; j < columns; j++) b[i * columns + j]! -= factor * b[k * columns + j]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = 0; j < columns; j++) {
      let value = b[k * columns + j]!;
      for (let i = k + 1; i < n; i++) value -= a[k * n + i]! * b[i * columns + j]!;
      b[k * columns + j] = value / a[k * n + k]!;
    }
  }
  return true;
}

/** A pivot this small beside the largest entry is what rounding leaves of nothing. */
const LEAST_PIVOT = 1e-15;

function largestIn(a: Float64Array, count: number): number {
  let largest = 0;
  for (let i = 0; i < count; i++) largest = Math.max(largest, Math.abs(a[i]!));
  return largest;
}

function exchange(a: Float64Array, width: number, i: number, k: number): void {
  for (let j = 0; j < width; j++) {
    const kept = a[i * width + j]!;
    a[i * width + j] = a[k * width + j]!;
    a[k * width + j] = kept;
  }
}
