/**
 * Cholesky factor of a symmetric positive definite matrix and its triangular solves.
 *
 * Matrices are row-major Float64Arrays of n * n. Only the lower triangle (row >= column) is
 * read; nothing above the diagonal is ever read or needed.
 *
 * Source: Golub and Van Loan, Matrix Computations, 4th ed., section 4.2 (row form, worked in
 * tiles of 2 x 2 so that each number fetched from memory is used twice).
 */

/**
 * Lower factor L with L L^T = a.
 *
 * @param a n * n row-major, lower triangle read, left untouched
 * @param n order, >= 0
 * @returns n * n row-major with zeros above the diagonal, or null when a pivot is not above zero
 *   (not positive definite to working precision, or a NaN in the lower triangle)
 */
export function cholesky(a: Float64Array, n: number): Float64Array | null {
  const l = a.slice(0, n * n);
  if (!choleskyInPlace(l, n)) return null;
  for (let i = 0; i < n; i++) l.fill(0, i * n + i + 1, i * n + n);
  return l;
}

/**
 * As `cholesky`, but writes L over the lower triangle of `a` and leaves what is above the
 * diagonal as it was.
 *
 * @returns false when not positive definite; the lower triangle is then partly overwritten
 */
export function choleskyInPlace(a: Float64Array, n: number): boolean {
  const paired = n - (n % 2);
  for (let i = 0; i < paired; i += 2) {
    for (let j = 0; j < i; j += 2) tile(a, n, i, j);
    if (!diagonalPair(a, n, i)) return false;
  }
  return paired === n || lastRow(a, n);
}

/** Rows i, i + 1 by columns j, j + 1 of L, where j + 1 < i and all columns before j are done. */
function tile(a: Float64Array, n: number, i: number, j: number): void {
  const p = i * n;
  const q = p + n;
  const r = j * n;
  const s = r + n;
  let pr = a[p + j]!;
  let ps = a[p + j + 1]!;
  let qr = a[q + j]!;
  let qs = a[q + j + 1]!;
  for (let k = 0; k < j; k++) {
    const vp = a[p + k]!;
    const vq = a[q + k]!;
    const vr = a[r + k]!;
    const vs = a[s + k]!;
    pr -= vp * vr;
    ps -= vp * vs;
    qr -= vq * vr;
    qs -= vq * vs;
  }
  const first = 1 / a[r + j]!;
  const under = a[s + j]!;
  const second = 1 / a[s + j + 1]!;
  pr *= first;
  qr *= first;
  a[p + j] = pr;
  a[q + j] = qr;
  a[p + j + 1] = (ps - pr * under) * second;
  a[q + j + 1] = (qs - qr * under) * second;
}

/** The 2 x 2 block on the diagonal at i; false when a pivot is not above zero. */
function diagonalPair(a: Float64Array, n: number, i: number): boolean {
  const p = i * n;
  const q = p + n;
  let pp = a[p + i]!;
  let qp = a[q + i]!;
  let qq = a[q + i + 1]!;
  for (let k = 0; k < i; k++) {
    const vp = a[p + k]!;
    const vq = a[q + k]!;
    pp -= vp * vp;
    qp -= vq * vp;
    qq -= vq * vq;
  }
  if (!(pp > 0)) return false;
  const root = Math.sqrt(pp);
  qp /= root;
  qq -= qp * qp;
  if (!(qq > 0)) return false;
  a[p + i] = root;
  a[q + i] = qp;
  a[q + i + 1] = Math.sqrt(qq);
  return Number.isFinite(root) && Number.isFinite(a[q + i + 1]!);
}

/** The row left over when n is odd. */
function lastRow(a: Float64Array, n: number): boolean {
  const i = n - 1;
  const p = i * n;
  let pivot = a[p + i]!;
  for (let j = 0; j < i; j++) {
    const r = j * n;
    let sum = a[p + j]!;
    for (let k = 0; k < j; k++) sum -= a[p + k]! * a[r + k]!;
    sum /= a[r + j]!;
    a[p + j] = sum;
    pivot -= sum * sum;
  }
  if (!(pivot > 0)) return false;
  a[p + i] = Math.sqrt(pivot);
  return Number.isFinite(a[p + i]!);
}

/**
 * Solves L x = b.
 *
 * @param l n * n row-major, lower triangle read
 * @param b length n
 * @param x where the answer goes; may be b itself; a new array when left out
 * @returns x
 */
export function solveLower(
  l: Float64Array,
  n: number,
  b: Float64Array,
  x: Float64Array = new Float64Array(n),
): Float64Array {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= l[row + k]! * x[k]!;
    x[i] = sum / l[row + i]!;
  }
  return x;
}

/**
 * Solves L x = b for many b, in place. Four at a time: their sums do not wait for one another, and each number of L is
 * fetched once for all four.
 *
 * @param l n * n row-major, lower triangle read
 * @param x one right side after the other, n numbers each; a whole number of them
 * @param from the first row that is not 0 in all of them
 */
export function solveLowerMany(l: Float64Array, n: number, x: Float64Array, from = 0): void {
  const whole = x.length - (x.length % (4 * n));
  for (let a = 0; a < whole; a += 4 * n) {
    const b = a + n;
    const c = b + n;
    const d = c + n;
    for (let i = from; i < n; i++) {
      const row = i * n;
      let sa = x[a + i]!;
      let sb = x[b + i]!;
      let sc = x[c + i]!;
      let sd = x[d + i]!;
      for (let k = from; k < i; k++) {
        const v = l[row + k]!;
        sa -= v * x[a + k]!;
        sb -= v * x[b + k]!;
        sc -= v * x[c + k]!;
        sd -= v * x[d + k]!;
      }
      const pivot = l[row + i]!;
      x[a + i] = sa / pivot;
      x[b + i] = sb / pivot;
      x[c + i] = sc / pivot;
      x[d + i] = sd / pivot;
    }
  }
  for (let a = whole; a < x.length; a += n) {
    const one = x.subarray(a, a + n);
    solveLower(l, n, one, one);
  }
}

/**
 * Solves L^T x = b, walking L by rows so that memory is read in order.
 *
 * @param l n * n row-major, lower triangle read
 * @param b length n
 * @param x where the answer goes; may be b itself; a new array when left out
 * @returns x
 */
export function solveLowerTransposed(
  l: Float64Array,
  n: number,
  b: Float64Array,
  x: Float64Array = new Float64Array(n),
): Float64Array {
  if (x !== b) x.set(b.subarray(0, n));
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    const xi = x[i]! / l[row + i]!;
    x[i] = xi;
    for (let k = 0; k < i; k++) x[k] = x[k]! - l[row + k]! * xi;
  }
  return x;
}
