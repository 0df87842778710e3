/**
 * Each reading against what the others predict, exact: with P the inverse of the readings' covariance (noise included)
 * and w = P y, reading i stands off from the prediction of all others by w_i / P_ii, with variance 1 / P_ii (Rasmussen
 * and Williams 2006, equations 5.10 to 5.12; for several left out together the same with blocks).
 */
import { cholesky, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import type { Posterior } from './posterior.ts';
import { pressValues, releaseWeights } from './pressed.ts';

/** The inverse of the readings' covariance, count * count and full, and that times what they depart by. */
export interface Precision {
  readonly count: number;
  readonly inverse: Float64Array;
  readonly weights: Float64Array;
}

/** How far readings stand off from what those that were not left out predict. */
export interface StandOff {
  /** Place in the posterior's list of sightings. */
  readonly at: number;
  /** Reading less prediction, mm, in the instrument's own figure. */
  readonly residual: number;
  /** One standard deviation of that, noise included. */
  readonly sd: number;
}

/** Readings that may not be told from their neighbours by rounding have no more precision than this share of it. */
const ROUNDING = 1e-12;

export function precisionOf(p: Posterior): Precision {
  const { count: n, pressed } = p.design;
  const inverse = new Float64Array(n * n);
  const unit = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    unit[j] = 1;
    const { rows } = pressValues(pressed, unit);
    const half = solveLower(p.factor, pressed.count, rows, rows);
    const weights = solveLowerTransposed(p.factor, pressed.count, half, half);
    inverse.set(releaseWeights(pressed, unit, weights, p.smoothness.noise), j * n);
    unit[j] = 0;
  }
  return { count: n, inverse, weights: p.weights };
}

/** Each reading that is not left out, against all others that are not. */
export function standOffs(p: Precision, out: readonly number[] = []): StandOff[] {
  const left = withoutReadings(p, out);
  const gone = new Set(out);
  return Array.from({ length: p.count }, (_, i) => i)
    .filter((i) => !gone.has(i))
    .map((at) => {
      const own = left.inverse[at * p.count + at]!;
      return { at, residual: left.weights[at]! / own, sd: 1 / Math.sqrt(own) };
    });
}

/** The readings that are left out, each against those that are not: what a fix must agree with. */
export function leftOutStandOffs(p: Precision, out: readonly number[]): StandOff[] {
  const factor = blockFactor(p, out);
  if (factor === null) return [];
  const m = out.length;
  const residual = solved(
    factor,
    m,
    out.map((i) => p.weights[i]!),
  );
  return out.map((at, k) => {
    const unit = new Float64Array(m);
    unit[k] = 1;
    const half = solveLower(factor, m, unit);
    return { at, residual: residual[k]!, sd: Math.sqrt(half.reduce((sum, x) => sum + x * x, 0)) };
  });
}

function blockFactor(p: Precision, block: readonly number[]): Float64Array | null {
  const m = block.length;
  const a = new Float64Array(m * m);
  block.forEach((i, r) => {
    block.forEach((j, c) => {
      a[r * m + c] = p.inverse[i * p.count + j]!;
    });
  });
  return cholesky(a, m);
}

function solved(factor: Float64Array, m: number, b: readonly number[]): Float64Array {
  return solveLowerTransposed(factor, m, solveLower(factor, m, Float64Array.from(b)));
}

/** One reading after the other taken out of the inverse; those already out keep rows that mean nothing. */
function withoutReadings(p: Precision, out: readonly number[]): Precision {
  if (out.length === 0) return p;
  const n = p.count;
  const inverse = p.inverse.slice();
  const weights = p.weights.slice();
  for (const k of out) {
    const row = inverse.slice(k * n, (k + 1) * n);
    const own = row[k]!;
    if (!(own > ROUNDING * p.inverse[k * n + k]!)) continue;
    const weight = weights[k]! / own;
    for (let i = 0; i < n; i++) {
      const share = row[i]! / own;
      weights[i] = weights[i]! - row[i]! * weight;
      if (share === 0) continue;
      for (let j = 0; j < n; j++) inverse[i * n + j] = inverse[i * n + j]! - share * row[j]!;
    }
  }
  return { count: n, inverse, weights };
}
