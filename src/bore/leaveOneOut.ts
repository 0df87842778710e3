/**
 * Each reading against what the others predict, exact: with P the inverse of the readings' covariance (noise included)
 * and w = P y, reading i stands off from the prediction of all others by w_i / P_ii, with variance 1 / P_ii (Rasmussen
 * and Williams 2006, equations 5.10 to 5.12; for several left out together the same with blocks).
 */
import { cholesky, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import type { Posterior } from './posterior.ts';
import { pressValues, releaseWeights } from './pressed.ts';
import { valueFree } from './valueFree.ts';

/** How far readings stand off from what those that were not left out predict. */
export interface StandOff {
  /** Place in the posterior's list of sightings. */
  readonly at: number;
  /** Reading less prediction, mm, in the instrument's own figure. */
  readonly residual: number;
  /** One standard deviation of that, noise included. */
  readonly sd: number;
}

/** v P v, 1 / mm2: how much is known of that combination of the readings, one number a reading. */
export function information({ design, factor, smoothness }: Posterior, v: Float64Array): number {
  const { rows, rest } = pressValues(design.pressed, v);
  const half = solveLower(factor, design.pressed.count, rows, rows);
  return half.reduce((sum, x) => sum + x * x, rest / smoothness.noise ** 2);
}

/** Column `at` of P. */
function column({ design, factor, smoothness }: Posterior, at: number): Float64Array {
  const { count, pressed } = design;
  const unit = new Float64Array(count);
  unit[at] = 1;
  const { rows } = pressValues(pressed, unit);
  const half = solveLower(factor, pressed.count, rows, rows);
  const weights = solveLowerTransposed(factor, pressed.count, half, half);
  return releaseWeights(pressed, unit, weights, smoothness.noise);
}

const keptInformation = valueFree<Float64Array>();

/** P_ii of each reading. */
export function ownInformation(p: Posterior): Float64Array {
  return keptInformation(p, '', () => diagonal(p));
}

function diagonal(p: Posterior): Float64Array {
  const unit = new Float64Array(p.design.count);
  return unit.map((_, i) => {
    const one = unit.slice();
    one[i] = 1;
    return information(p, one);
  });
}

/**
 * One standard deviation of what a reading would be without its own scatter, by all readings together, mm as it reads:
 * what is left of its noise n is n^2 - n^4 P_ii. Set-up and all lobes are in it, as its gauge sees them.
 */
export function toldSd(p: Posterior, at: number): number {
  const unit = new Float64Array(p.design.count);
  unit[at] = 1;
  const noise = p.design.pressed.readingSds[at]! * p.smoothness.noise;
  return noise * Math.sqrt(Math.max(0, 1 - noise * noise * information(p, unit)));
}

/** Some readings left out together: what of P that takes, worked out once. */
interface Block {
  readonly out: readonly number[];
  readonly columns: readonly Float64Array[];
  /** Lower factor of P among them. */
  readonly factor: Float64Array;
}

function blockOf(p: Posterior, out: readonly number[]): Block | null {
  const columns = out.map((i) => column(p, i));
  const among = Float64Array.from(columns.flatMap((c) => out.map((i) => c[i]!)));
  const factor = cholesky(among, out.length);
  return factor && { out, columns, factor };
}

/**
 * Each reading that is not left out, against all others that are not.
 * @param own `ownInformation(p)`
 * @returns none where those left out cannot be told apart from rounding
 */
export function standOffs(
  p: Posterior,
  own: Float64Array,
  out: readonly number[] = [],
): StandOff[] {
  const block = blockOf(p, out);
  if (block === null) return [];
  const m = out.length;
  const gone = new Set(out);
  const outWeights = solveLower(block.factor, m, weightsOf(p, out));
  const left: StandOff[] = [];
  for (let at = 0; at < p.design.count; at++) {
    if (gone.has(at)) continue;
    const shared = solveLower(
      block.factor,
      m,
      Float64Array.from(block.columns, (c) => c[at]!),
    );
    let weight = p.weights[at]!;
    let information = own[at]!;
    for (let k = 0; k < m; k++) {
      weight -= shared[k]! * outWeights[k]!;
      information -= shared[k]! * shared[k]!;
    }
    left.push({ at, residual: weight / information, sd: 1 / Math.sqrt(information) });
  }
  return left;
}

/** The readings that are left out, each against those that are not: what a fix must agree with. */
export function leftOutStandOffs(p: Posterior, out: readonly number[]): StandOff[] {
  const block = blockOf(p, out);
  if (block === null) return [];
  const m = out.length;
  const half = solveLower(block.factor, m, weightsOf(p, out));
  const residual = solveLowerTransposed(block.factor, m, half);
  return out.map((at, k) => {
    const unit = new Float64Array(m);
    unit[k] = 1;
    const spread = solveLower(block.factor, m, unit);
    const sd = Math.sqrt(spread.reduce((sum, x) => sum + x * x, 0));
    return { at, residual: residual[k]!, sd };
  });
}

function weightsOf(p: Posterior, out: readonly number[]): Float64Array {
  return Float64Array.from(out, (i) => p.weights[i]!);
}
