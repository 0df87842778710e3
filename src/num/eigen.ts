/** Eigenvalues in rising order; `vectors[i]` is the unit vector that belongs to `values[i]`. */
export interface SymmetricEigen {
  values: number[];
  vectors: number[][];
}

const MOST_SWEEPS = 60;

/**
 * Eigenvalues and eigenvectors of a small symmetric matrix by cyclic Jacobi rotations (Golub and
 * Van Loan, Matrix Computations, 4th ed., section 8.5), which keep the vectors square to each
 * other to working precision.
 *
 * @param a n * n row-major, symmetric, finite; left untouched. A NaN gives NaN values
 * @param n order, up to a few dozen
 */
export function symmetricEigen(a: ArrayLike<number>, n: number): SymmetricEigen {
  const m = Float64Array.from(a);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let turned = false;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) turned = rotate(m, v, n, p, q) || turned;
    }
    if (!turned) break;
  }
  const order = Array.from({ length: n }, (_, i) => i);
  order.sort((i, j) => m[i * n + i]! - m[j * n + j]!);
  return {
    values: order.map((i) => m[i * n + i]!),
    vectors: order.map((i) => Array.from({ length: n }, (_, row) => v[row * n + i]!)),
  };
}

/** Largest eigenvalue of a symmetric matrix with no negative one; 0 for an empty matrix. */
export function largestEigenvalue(a: ArrayLike<number>, n: number): number {
  return symmetricEigen(a, n).values[n - 1] ?? 0;
}

/** Turns the plane p, q so that m[p, q] becomes 0; false when it is nothing already. */
function rotate(m: Float64Array, v: Float64Array, n: number, p: number, q: number): boolean {
  const mpp = m[p * n + p]!;
  const mqq = m[q * n + q]!;
  const mpq = m[p * n + q]!;
  if (!(Math.abs(mpq) > 1e-17 * Math.sqrt(Math.abs(mpp * mqq)))) return false;
  if (Math.abs(mpq) < Number.MIN_VALUE / Number.EPSILON) return false;
  const half = (mqq - mpp) / (2 * mpq);
  const t = (half >= 0 ? 1 : -1) / (Math.abs(half) + Math.hypot(half, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < n; k++) {
    if (k === p || k === q) continue;
    const mkp = m[k * n + p]!;
    const mkq = m[k * n + q]!;
    m[k * n + p] = m[p * n + k] = c * mkp - s * mkq;
    m[k * n + q] = m[q * n + k] = s * mkp + c * mkq;
  }
  m[p * n + p] = mpp - t * mpq;
  m[q * n + q] = mqq + t * mpq;
  m[p * n + q] = m[q * n + p] = 0;
  for (let k = 0; k < n; k++) {
    const vkp = v[k * n + p]!;
    const vkq = v[k * n + q]!;
    v[k * n + p] = c * vkp - s * vkq;
    v[k * n + q] = s * vkp + c * vkq;
  }
  return true;
}
