/**
 * A smooth patch of wall: its height at the middle, from many points round it.
 *
 * Least squares of a quadratic in two directions. What it says of the middle is a sum of the points' heights, each with
 * a weight of its own; the weights tell how far noise averages out, and how wrong the answer can be where the patch is no
 * quadratic.
 */

/** 1, u, v, u v, u^2 - 1/3, v^2 - 1/3: nearly independent of each other on an evenly filled patch. */
const TERMS = 6;
/** What the terms are worth at the middle. */
const AT_MIDDLE = [1, 0, 0, 0, -1 / 3, -1 / 3] as const;
/** A term that the ones before it explain to this share of its square is left out. */
const NOTHING_NEW = 1e-3;

/** Places in units of half the patch, -1 to 1 each way, and heights in any length unit; as many of each. */
export interface Patch {
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly height: Float64Array;
}

export interface LocalFit {
  /** Height at u = v = 0. */
  readonly middle: number;
  /** Change of height over half the patch; NaN where the points do not tell. */
  readonly slopeU: number;
  readonly slopeV: number;
  /** Noise of variance 1 in each point leaves these variances in them. */
  readonly varianceU: number;
  readonly varianceV: number;
  /** Root mean square of what the points stand off, the fitted terms allowed for; NaN where no point is left over. */
  readonly scatter: number;
  /** Sum of squares of the weights: noise of variance 1 in each point leaves this variance at the middle. */
  readonly variance: number;
  /** Sum of |weight| |u| and of |weight| |v|: how far slopes that vary within the patch reach the middle. */
  readonly reachU: number;
  readonly reachV: number;
  /** Points that count. */
  readonly count: number;
}

/**
 * @param counts 1 where a point counts; as many as the patch has
 * @param from first point, `to` one past the last
 * @param most terms that may be fitted: 6 a quadratic, 3 a plane, 1 a mean
 * @param off where given, how far each point stands off the fit is written here from 0 on, points that do not count too
 * @returns null where no point counts
 */
export function localFit(
  patch: Patch,
  counts: Uint8Array,
  from: number,
  to: number,
  most = TERMS,
  off?: Float64Array,
): LocalFit | null {
  const sums = sumsOf(patch, counts, from, to);
  const { count, matrix } = sums;
  if (count === 0) return null;
  const kept = factorInPlace(matrix, Math.min(most, TERMS));
  const c = solved(matrix, kept, sums.right);
  const share = solved(matrix, kept, Float64Array.from(AT_MIDDLE));
  const middle = AT_MIDDLE.reduce((sum, a, k) => sum + a * c[k]!, 0);
  const variance = AT_MIDDLE.reduce((sum, a, k) => sum + a * share[k]!, 0);
  let [squares, reachU, reachV] = [0, 0, 0];
  for (let i = from; i < to; i++) {
    const u = patch.u[i]!;
    const v = patch.v[i]!;
    const rest = patch.height[i]! - at(c, u, v);
    if (off !== undefined) off[i - from] = rest;
    if (counts[i] !== 1) continue;
    squares += rest * rest;
    const weight = Math.abs(at(share, u, v));
    reachU += weight * Math.abs(u);
    reachV += weight * Math.abs(v);
  }
  const spare = count - kept.length;
  return {
    middle,
    slopeU: kept.includes(1) ? c[1]! : Number.NaN,
    slopeV: kept.includes(2) ? c[2]! : Number.NaN,
    varianceU: solved(matrix, kept, Float64Array.of(0, 1, 0, 0, 0, 0))[1]!,
    varianceV: solved(matrix, kept, Float64Array.of(0, 0, 1, 0, 0, 0))[2]!,
    scatter: spare > 0 ? Math.sqrt(squares / spare) : Number.NaN,
    variance,
    reachU,
    reachV,
    count,
  };
}

function at(c: Float64Array, u: number, v: number): number {
  return (
    c[0]! + u * (c[1]! + v * c[3]!) + v * c[2]! + (u * u - 1 / 3) * c[4]! + (v * v - 1 / 3) * c[5]!
  );
}

/** Normal equations: lower triangle row by row of TERMS squared, and the right side. */
function sumsOf({ u, v, height }: Patch, counts: Uint8Array, from: number, to: number) {
  const matrix = new Float64Array(TERMS * TERMS);
  const right = new Float64Array(TERMS);
  const row = new Float64Array(TERMS);
  row[0] = 1;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (counts[i] !== 1) continue;
    count++;
    const a = u[i]!;
    const b = v[i]!;
    const h = height[i]!;
    row[1] = a;
    row[2] = b;
    row[3] = a * b;
    row[4] = a * a - 1 / 3;
    row[5] = b * b - 1 / 3;
    for (let p = 0; p < TERMS; p++) {
      const one = row[p]!;
      right[p] = right[p]! + one * h;
      for (let q = 0; q <= p; q++) matrix[p * TERMS + q] = matrix[p * TERMS + q]! + one * row[q]!;
    }
  }
  return { matrix, right, count };
}

/**
 * Cholesky's lower factor in place, terms that bring nothing new left out.
 * @returns the terms that stay
 */
function factorInPlace(a: Float64Array, most: number): number[] {
  const kept: number[] = [];
  for (let p = 0; p < most; p++) {
    const own = a[p * TERMS + p]!;
    let left = own;
    for (const q of kept) {
      let sum = a[p * TERMS + q]!;
      for (const k of kept) {
        if (k >= q) break;
        sum -= a[p * TERMS + k]! * a[q * TERMS + k]!;
      }
      const entry = sum / a[q * TERMS + q]!;
      a[p * TERMS + q] = entry;
      left -= entry * entry;
    }
    // The very first is the count of points, at least 1.
    if (!(left > NOTHING_NEW * own)) continue;
    a[p * TERMS + p] = Math.sqrt(left);
    kept.push(p);
  }
  return kept;
}

/** Solution for one right side; terms that were left out are 0. */
function solved(l: Float64Array, kept: readonly number[], right: Float64Array): Float64Array {
  const x = new Float64Array(TERMS);
  for (const p of kept) {
    let sum = right[p]!;
    for (const q of kept) {
      if (q >= p) break;
      sum -= l[p * TERMS + q]! * x[q]!;
    }
    x[p] = sum / l[p * TERMS + p]!;
  }
  for (let n = kept.length - 1; n >= 0; n--) {
    const p = kept[n]!;
    let sum = x[p]!;
    for (let m = n + 1; m < kept.length; m++) {
      const q = kept[m]!;
      sum -= l[q * TERMS + p]! * x[q]!;
    }
    x[p] = sum / l[p * TERMS + p]!;
  }
  return x;
}
