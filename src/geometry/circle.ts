import { symmetricEigen } from '../num/eigen.ts';
import type { Solution } from '../num/gaussNewton.ts';
import { invertNormal } from '../num/normalEquations.ts';
import { type Arc, arcDeviations, arcProblem, arcThrough, kasaCircle } from './arc.ts';
import {
  type Cloud,
  isThick,
  liesFlat,
  meanOf,
  readCloud,
  sampleCloud,
  scaledColumns,
  scatterOf,
} from './cloud.ts';
import type { FitFailure } from './ending.ts';
import type { LeastSquares, RoundPlace } from './fitted.ts';
import { bestEnd, magnification, polish, SAMPLE, SURE, standardError } from './search.ts';

export type CircleFit = (LeastSquares & RoundPlace) | FitFailure;

/**
 * Circle with the least sum of squared orthogonal distances (ISO 4291 least-squares circle).
 *
 * The search moves a point of the circle, its normal there and the curvature, a set of unknowns
 * that stays well conditioned from a full turn down to a nearly straight arc (the idea of
 * N. Chernov and C. Lesort, Journal of Mathematical Imaging and Vision 23, 2005, 239-251). It
 * starts both from the algebraic circle and from the straight line and keeps the better end.
 * Large sets are first solved on 2048 of their points.
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @throws RangeError when x and y differ in length
 */
export function fitCircle(x: ArrayLike<number>, y: ArrayLike<number>): CircleFit {
  const cloud = readCloud([x, y], 3);
  if ('status' in cloud) return cloud;
  const sample = sampleCloud(cloud, SAMPLE);
  const mean = meanOf(sample);
  const { values, vectors } = symmetricEigen(scatterOf(sample, mean), 2);
  const across = vectors[0] as [number, number];
  if (!isThick(values[0]!) && liesFlat(sample, mean, [across]) && liesFlat(cloud, mean, [across])) {
    return { status: 'on-a-line' };
  }
  const line: Arc = { px: mean[0]!, py: mean[1]!, mx: across[0], my: across[1], k: 0 };
  const [u, v] = scaledColumns(sample) as [Float64Array, Float64Array];
  const kasa = kasaCircle(u, v);
  const starts = kasa === null ? [line] : [arcThrough(mean, kasa), line];
  const coarse = bestEnd(arcProblem(sample, meanOf(sample)), starts, (arc) => arc.k);
  const best = sample === cloud ? coarse : polish(arcProblem(cloud, meanOf(cloud)), coarse);
  if (best.ending !== 'converged') {
    return { status: 'did-not-converge', iterations: best.iterations };
  }
  return describe(cloud, best);
}

function describe(cloud: Cloud, { state, normal, iterations }: Solution<Arc>): CircleFit {
  const inverse = invertNormal(normal);
  if (inverse === null) return { status: 'arc-too-short' };
  const error = standardError(cloud, normal) * Math.sqrt(inverse[8]!);
  if (!(state.k > SURE * error)) return { status: 'arc-too-short' };
  const { low, high, lowRow, highRow } = arcDeviations(cloud, state);
  const { middle, scale } = cloud;
  return {
    status: 'ok',
    center: [
      middle[0]! + scale * (state.px - state.mx / state.k),
      middle[1]! + scale * (state.py - state.my / state.k),
    ],
    diameter: (2 * scale) / state.k,
    iterations,
    conditioning: magnification(centerAndRadius(state.k, 3), inverse, cloud.count),
    deviation: { min: scale * low, max: scale * high, range: scale * (high - low) },
    contacts: [lowRow, highRow],
  };
}

/**
 * Rows: center along the normal and along the tangent, radius, each per unknown of the search, of
 * which the first `moves` may move.
 */
export function centerAndRadius(k: number, moves: number): number[][] {
  const rows = [
    [1, 0, 1 / (k * k)],
    [0, -1 / k, 0],
    [0, 0, -1 / (k * k)],
  ];
  return rows.map((row) => row.slice(0, moves));
}
