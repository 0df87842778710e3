/** A straight axis through centers found depth by depth: how it leans, and how far the centers stray from it. */
import { linearLeastSquares } from '../num/leastSquares.ts';

/** Center at one depth and what is not known of it: variances and covariance. */
export interface CenterAt {
  readonly z: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

export interface AxisLine {
  status: 'ok';
  /** where the line passes at depth 0 */
  x: number;
  y: number;
  /** per unit of depth */
  leanX: number;
  leanY: number;
  /** variances and covariance of the lean */
  leanXX: number;
  leanXY: number;
  leanYY: number;
  /** sum of what the centers are off the line, each over its own standard deviations; 2 (depths - 2) expected */
  chiSquare: number;
  /** 2 (depths - 2); 0: any line fits */
  spare: number;
  /** distance of each center from the line, square to the depth, in the order given */
  distances: Float64Array;
}

export type AxisFit =
  | AxisLine
  | { status: 'too-few-depths'; found: number }
  | { status: 'not-finite' };

/**
 * Straight line through centers by weighted least squares, x and y together.
 *
 * @param centers any order; at least two different depths, covariances positive definite
 */
export function axisThrough(centers: readonly CenterAt[]): AxisFit {
  const found = new Set(centers.map(({ z }) => z)).size;
  if (found < 2) return { status: 'too-few-depths', found };
  const middle = centers.reduce((sum, { z }) => sum + z, 0) / centers.length;
  const rows: number[] = [];
  const right: number[] = [];
  for (const c of centers) {
    // Two readings of unit variance: x by itself, and what y has beyond its share of x.
    const [a, b] = [1 / Math.sqrt(c.xx), c.xy / c.xx];
    const d = 1 / Math.sqrt(c.yy - b * c.xy);
    const dz = c.z - middle;
    rows.push(a, 0, a * dz, 0, -b * d, d, -b * d * dz, d * dz);
    right.push(a * c.x, d * (c.y - b * c.x));
  }
  const fit = linearLeastSquares(rows, right, right.length, 4);
  if (fit.status !== 'ok') return { status: 'not-finite' };
  const [mx, my, leanX, leanY] = fit.x as unknown as [number, number, number, number];
  return {
    status: 'ok',
    x: mx - leanX * middle,
    y: my - leanY * middle,
    leanX,
    leanY,
    leanXX: fit.inverse[10]!,
    leanXY: fit.inverse[11]!,
    leanYY: fit.inverse[15]!,
    chiSquare: fit.sumSquares,
    spare: 2 * (centers.length - 2),
    distances: Float64Array.from(centers, ({ x, y, z }) =>
      Math.hypot(x - mx - leanX * (z - middle), y - my - leanY * (z - middle)),
    ),
  };
}

const MOST_ROUNDS = 20_000;
/** Share by which the zone may be larger than the least there is. */
const NEAR_LEAST = 1e-6;

/**
 * Diameter of the least cylinder about a straight line that holds all centers (straightness of an
 * axis, ISO 1101, of the derived median line of ISO 14660-2), its cross-sections taken square to the
 * depth: lean makes that larger than the true one by the square of the lean.
 *
 * Lawson's weights (C. L. Lawson, thesis, UCLA 1961): least squares again and again, each center
 * counting more the farther it lies off. The weighted mean of squares is never above what the least
 * zone must have, the farthest center never below; it ends when both agree to a millionth.
 *
 * @returns 0 for fewer than three depths; NaN where they did not agree, or a center is not finite
 */
export function straightnessZone(centers: readonly Pick<CenterAt, 'z' | 'x' | 'y'>[]): number {
  if (centers.length < 3) return 0;
  const size = Math.max(
    ...centers.map(({ x, y }) => Math.hypot(x - centers[0]!.x, y - centers[0]!.y)),
  );
  const weights = new Float64Array(centers.length).fill(1 / centers.length);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const off = weightedDistances(centers, weights);
    let mean = 0;
    let most = 0;
    for (let i = 0; i < off.length; i++) {
      mean += weights[i]! * off[i]! ** 2;
      most = Math.max(most, off[i]!);
    }
    if (!Number.isFinite(mean)) return Number.NaN;
    // Centers on one line to rounding have no farthest one.
    if (most <= 1e-12 * size) return 2 * most;
    if (most - Math.sqrt(mean) <= NEAR_LEAST * most) return 2 * most;
    let total = 0;
    for (let i = 0; i < off.length; i++) total += weights[i]! * off[i]!;
    for (let i = 0; i < off.length; i++) weights[i] = (weights[i]! * off[i]!) / total;
  }
  return Number.NaN;
}

/** Distances from the line that is best by these weights. */
function weightedDistances(
  centers: readonly Pick<CenterAt, 'z' | 'x' | 'y'>[],
  weights: Float64Array,
): Float64Array {
  let [w, mz, mx, my] = [0, 0, 0, 0];
  centers.forEach(({ z, x, y }, i) => {
    w += weights[i]!;
    mz += weights[i]! * z;
    mx += weights[i]! * x;
    my += weights[i]! * y;
  });
  [mz, mx, my] = [mz / w, mx / w, my / w];
  let [zz, zx, zy] = [0, 0, 0];
  centers.forEach(({ z, x, y }, i) => {
    zz += weights[i]! * (z - mz) ** 2;
    zx += weights[i]! * (z - mz) * (x - mx);
    zy += weights[i]! * (z - mz) * (y - my);
  });
  const [lx, ly] = zz > 0 ? [zx / zz, zy / zz] : [0, 0];
  return Float64Array.from(centers, ({ z, x, y }) =>
    Math.hypot(x - mx - lx * (z - mz), y - my - ly * (z - mz)),
  );
}

/**
 * Chance that a sum of squares of `spare` independent errors comes out above this (upper tail of
 * chi-square), in closed form for an even number of them.
 *
 * @param spare even, 2 or more; NaN else
 */
export function chanceAbove(chiSquare: number, spare: number): number {
  if (!(spare >= 2) || spare % 2 !== 0) return Number.NaN;
  const half = chiSquare / 2;
  let term = Math.exp(-half);
  let sum = term;
  for (let k = 1; k < spare / 2; k++) {
    term *= half / k;
    sum += term;
  }
  return Math.min(1, sum);
}
