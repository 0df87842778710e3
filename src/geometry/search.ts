import { largestEigenvalue } from '../num/eigen.ts';
import { gaussNewton, type Problem, type Solution } from '../num/gaussNewton.ts';
import type { NormalEquations } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';

/** How far the points lie from the fitted feature, per side, positive away from the axis. */
export interface Deviation {
  min: number;
  max: number;
  /** max - min */
  range: number;
}

/** Larger sets are first solved on so many of their points. */
export const SAMPLE = 2048;
/** A curvature known no better than to this many standard errors is no curvature. */
export const SURE = 2;
/** Rounding of a scaled deviation. */
const NOISE = Number.EPSILON;
/** Sums of squares that agree to this, or to rounding, are equally good. */
const SAME = 1e-9;

/**
 * Searches from every start. Of the ends that converged the least sum of squares wins, and among
 * equally good ones (exact points may lie on several cylinders) the greatest curvature.
 */
export function bestEnd<State>(
  problem: Problem<State>,
  starts: readonly State[],
  curvature: (state: State) => number,
): Solution<State> {
  const limits = { maxIterations: 500, noise: NOISE, damping: 1e-3 };
  const ends = starts.map((start) => gaussNewton(problem, start, limits));
  const converged = ends.filter((end) => end.ending === 'converged');
  if (converged.length === 0) return ends[0]!;
  const least = Math.min(...converged.map((end) => end.normal.sumSquares));
  const most = least * (1 + SAME) + problem.residuals * (16 * NOISE) ** 2;
  const equal = converged.filter((end) => end.normal.sumSquares <= most);
  return equal.reduce((a, b) => (curvature(b.state) > curvature(a.state) * (1 + SAME) ? b : a));
}

/** Carries on with all points from where a sample of them ended. Iterations add up. */
export function polish<State>(problem: Problem<State>, coarse: Solution<State>): Solution<State> {
  if (coarse.ending !== 'converged') return coarse;
  const fine = gaussNewton(problem, coarse.state, { maxIterations: 100, noise: NOISE, damping: 0 });
  return { ...fine, iterations: coarse.iterations + fine.iterations };
}

/** Standard error of one deviation, never less than the grain of the coordinates; scaled units. */
export function standardError(cloud: Cloud, { gradient, sumSquares }: NormalEquations): number {
  const spare = Math.max(cloud.count - gradient.length, 1);
  return Math.hypot(Math.sqrt(sumSquares / spare), cloud.grain);
}

/**
 * By how much an error of the same size at every point is magnified, at worst, in the quantities
 * whose change per unknown the rows of `t` give.
 */
export function magnification(t: number[][], inverse: Float64Array, count: number): number {
  return Math.sqrt(count * largestEigenvalue(sandwich(t, inverse), t.length));
}

/** t a t^T for square matrices of the same order; `a` row-major. */
function sandwich(t: number[][], a: Float64Array): Float64Array {
  const p = t.length;
  const out = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      let sum = 0;
      for (let k = 0; k < p; k++) {
        for (let l = 0; l < p; l++) sum += t[i]![k]! * a[k * p + l]! * t[j]![l]!;
      }
      out[i * p + j] = sum;
    }
  }
  return out;
}
