import { largestEigenvalue } from '../num/eigen.ts';
import { gaussNewton, type Solution } from '../num/gaussNewton.ts';
import { BLOCK_ROWS, invertNormal } from '../num/normalEquations.ts';
import { type Cloud, meanOf, sampleCloud } from './cloud.ts';
import { cylinderStarts, principalStart } from './cylinderStart.ts';
import type { FitFailure } from './ending.ts';
import type { CylinderPlace, LeastSquares } from './fitted.ts';
import { bestEndOfMany, magnification, NOISE, polish, SURE, standardError } from './search.ts';
import { readSolid, type Solid } from './solid.ts';
import {
  type Vector,
  type Wall,
  type WallDeviations,
  wallDeviations,
  wallProblem,
} from './wall.ts';
import { type WallOfAll, wallOfAll } from './wallOfAll.ts';

export type CylinderFit = (LeastSquares & CylinderPlace) | FitFailure;

/** An axis direction with a standard error above this, in radians (3 degrees), is none. */
export const LEAN_KNOWN = 0.05;

/**
 * Cylinder with the least sum of squared orthogonal distances, its axis in any direction (the
 * least-squares cylinder of ISO 12180).
 *
 * Searches from several directions (see cylinderStart.ts) by Gauss-Newton steps on a point of the
 * wall, its normal, the axis direction and the curvature. Five or six points may lie exactly on
 * several cylinders: the smallest of them is reported. Large sets are first solved on 2048 of
 * their points, then carried on to all (see wallOfAll.ts). Nothing is allocated per point when the
 * coordinates are Float64Arrays.
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @param z as many as x
 * @throws RangeError when x, y and z differ in length
 */
export function fitCylinder(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  z: ArrayLike<number>,
): CylinderFit {
  const solid = readSolid([x, y, z], 5);
  if ('status' in solid) return solid;
  const { cloud, sample, mean } = solid;
  const coarse = cylinderOfSample(solid);
  const quick = sample === cloud ? null : wallOfAll(cloud, sample, coarse, mean);
  if (quick !== null) return describe(cloud, quick.solution, () => deviationsOf(cloud, quick));
  const center = sample === cloud ? mean : meanOf(cloud);
  const best = sample === cloud ? coarse : polish(wallProblem(cloud, center), coarse);
  if (best.ending !== 'converged') {
    return { status: 'did-not-converge', iterations: best.iterations };
  }
  return describe(cloud, best, () => ({ ...wallDeviations(cloud, best.state), level: 0 }));
}

/**
 * Points that lie this near a cylinder, as a share of how thick the cloud of them is (root mean
 * squares both), lie near no other: it need not be looked for.
 */
const PLAINLY = 0.02;
/** Fewer points may lie on several cylinders. */
const MANY = 64;
/** Points enough to see whether they plainly lie on one. */
const FEW = 96;

/** The least-squares cylinder of the sample alone. */
export function cylinderOfSample(solid: Solid): Solution<Wall> {
  const { sample, mean, principal } = solid;
  const plain = plainCylinder(solid);
  if (plain !== null) return plain;
  const starts = cylinderStarts(sample, mean, principal);
  return bestEndOfMany(
    (cloud) => wallProblem(cloud, mean),
    sample,
    starts,
    (wall) => wall.k,
  );
}

function plainCylinder(solid: Solid): Solution<Wall> | null {
  const { sample, mean } = solid;
  const coarse = plainlyNear(solid);
  if (coarse === null) return null;
  const fine = polish(wallProblem(sample, mean), coarse);
  return fine.ending === 'converged' ? fine : null;
}

/**
 * The least-squares cylinder of a few of the points, found along a principal direction, where there
 * can hardly be another; else null.
 */
export function plainlyNear({ sample, mean, principal, thickness }: Solid): Solution<Wall> | null {
  if (sample.count < MANY) return null;
  const few = sampleCloud(sample, FEW);
  const start = principalStart(few, mean, principal);
  if (start === null) return null;
  const limits = { maxIterations: 30, noise: NOISE, damping: 1e-3 };
  const coarse = gaussNewton(wallProblem(few, mean), start, limits);
  const meanSquare = coarse.normal.sumSquares / few.count;
  const near = meanSquare <= PLAINLY * PLAINLY * thickness;
  return coarse.ending === 'converged' && near ? coarse : null;
}

interface Seen extends WallDeviations {
  /** mean distance of the points along the axis from the place p of the wall */
  level: number;
}

/** Only where the last pass found the extremes, to a hair, can they be now. */
function deviationsOf(cloud: Cloud, { solution, sums, moved }: WallOfAll): Seen {
  const { lows, highs, level, reach } = sums;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let block = 0; block < lows.length; block++) {
    low = Math.min(low, lows[block]!);
    high = Math.max(high, highs[block]!);
  }
  const parts: [number, number][] = [];
  for (let block = 0; block < lows.length; block++) {
    if (lows[block]! > low + 2 * moved && highs[block]! < high - 2 * moved) continue;
    parts.push([block * BLOCK_ROWS, Math.min((block + 1) * BLOCK_ROWS, cloud.count)]);
  }
  return { ...wallDeviations(cloud, solution.state, parts), reach, level };
}

function describe(
  cloud: Cloud,
  { state, normal, iterations }: Solution<Wall>,
  see: () => Seen,
): CylinderFit {
  const inverse = invertNormal(normal);
  if (inverse === null) return { status: 'arc-too-short' };
  const error = standardError(cloud, normal);
  const { p, a, m, k } = state;
  if (!(k > SURE * error * Math.sqrt(inverse[24]!))) return { status: 'arc-too-short' };
  if (!(error * lean(inverse, k) <= LEAN_KNOWN)) return { status: 'too-short-along-axis' };
  const { low, high, lowRow, highRow, reach, level } = see();
  const { middle, scale } = cloud;
  const place = (d: 0 | 1 | 2) => middle[d]! + scale * (p[d] - m[d] / k + level * a[d]);
  return {
    status: 'ok',
    axis: { point: [place(0), place(1), place(2)], direction: upright(a) },
    diameter: (2 * scale) / k,
    iterations,
    conditioning: magnification(endsAndRadius(k, reach), inverse, cloud.count),
    deviation: { min: scale * low, max: scale * high, range: scale * (high - low) },
    contacts: [lowRow, highRow],
  };
}

/** Standard error of the axis direction, in radians, for a standard error of 1 in a distance. */
function lean(inverse: Float64Array, k: number): number {
  const pitch = inverse[6]!;
  const yaw = inverse[18]! / (k * k);
  const both = inverse[8]! / k;
  return Math.sqrt(largestEigenvalue([pitch, both, both, yaw], 2));
}

/**
 * Rows: axis along the normal and sideways at the middle, the same two for the lean at `reach`
 * from it, radius; each per unknown of the search.
 */
export function endsAndRadius(k: number, reach: number): number[][] {
  const bend = 1 / (k * k);
  return [
    [1, 0, 0, 0, bend],
    [0, 0, -1 / k, 0, 0],
    [0, reach, 0, 0, 0],
    [0, 0, 0, -reach / k, 0],
    [0, 0, 0, 0, -bend],
  ];
}

export function upright(a: Vector): [number, number, number] {
  const size = a.map(Math.abs);
  const largest = size.indexOf(Math.max(...size));
  const sign = a[largest]! < 0 ? -1 : 1;
  return [sign * a[0], sign * a[1], sign * a[2]];
}
