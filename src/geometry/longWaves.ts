import { fitCircle } from './circle.ts';
import type { FitFailure } from './ending.ts';
import { type FilterFailure, gaussianFilter } from './filter.ts';

/**
 * The points of a round profile with the waves above a cut-off taken out: each point is moved along
 * its ray from the least-squares center to the long-wave part of the profile (see filter.ts). About
 * that center an eccentric set-up is no lobe, and none of it is filtered.
 *
 * @param x any length unit; the answer is in the same one and the same order
 * @param y as many as x
 * @param cutoff undulations per revolution
 * @throws RangeError when x and y differ in length
 */
export function longWaves(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  cutoff: number,
):
  | { status: 'ok'; x: Float64Array; y: Float64Array }
  | { status: 'not-fitted'; failure: FitFailure }
  | { status: 'not-filtered'; failure: FilterFailure } {
  const circle = fitCircle(x, y);
  if (circle.status !== 'ok') return { status: 'not-fitted', failure: circle };
  const [cx, cy] = circle.center;
  const theta = Float64Array.from(x, (v, i) => Math.atan2(y[i]! - cy, v - cx));
  const radius = Float64Array.from(x, (v, i) => Math.hypot(v - cx, y[i]! - cy));
  const filtered = gaussianFilter(theta, radius, cutoff);
  if (filtered.status !== 'ok') return { status: 'not-filtered', failure: filtered };
  const { long } = filtered;
  return {
    status: 'ok',
    x: long.map((r, i) => cx + r * Math.cos(theta[i]!)),
    y: long.map((r, i) => cy + r * Math.sin(theta[i]!)),
  };
}
