import { largestEigenvalue } from '../num/eigen.ts';
import { gaussNewton, type Problem, type Solution } from '../num/gaussNewton.ts';
import type { NormalEquations } from '../num/normalEquations.ts';
import { type Cloud, sampleCloud } from './cloud.ts';

/** Larger sets are first solved on so many of their points. */
export const SAMPLE = 2048;
/** Starts are tried on so many of the points. */
const FEW = 256;
const MOST_STEPS = 500;
/** Ends that agree to this are the same end. */
const ALIKE = 1e-6;
/** A curvature known no better than to this many standard errors is no curvature. */
export const SURE = 2;
/** Rounding of a scaled deviation. */
export const NOISE = Number.EPSILON;
/** Sums of squares that agree to this, or to rounding, are equally good. */
const SAME = 1e-9;

/** A start that takes more steps than this goes on only where none has found better by far. */
const FIRST_HEAT = 30;
/** Better by far: a sum of squares so many times smaller. */
const HOPELESS = 16;
/** So few points may lie exactly on several walls, and all of these are looked for to the end. */
const EXACT = 16;

/**
 * Searches from every start. Of the ends that converged the least sum of squares wins, and among
 * equally good ones (exact points may lie on several cylinders) the greatest curvature.
 */
export function bestEnd<State>(
  problem: Problem<State>,
  starts: readonly State[],
  curvature: (state: State) => number,
): Solution<State> {
  const ends = allEnds(problem, starts);
  return bestOf(problem.residuals, ends, curvature) ?? ends[0]!;
}

/**
 * The same for many points: all starts are searched from on a few of them, and what comes near the
 * best there on all.
 *
 * @param problemOn the deviations of the points of a cloud
 */
export function bestEndOfMany<State>(
  problemOn: (cloud: Cloud) => Problem<State>,
  cloud: Cloud,
  starts: readonly State[],
  curvature: (state: State) => number,
): Solution<State> {
  const problem = problemOn(cloud);
  const few = sampleCloud(cloud, FEW);
  if (few === cloud) return bestEnd(problem, starts, curvature);
  const ends = allEnds(problemOn(few), starts);
  const heat = bestOf(few.count, ends, curvature);
  if (heat === null) return bestEnd(problem, starts, curvature);
  const most = HOPELESS * heat.normal.sumSquares + few.count * (16 * NOISE) ** 2;
  const near = ends.filter((end) => end.normal.sumSquares <= most);
  const finals = different(near, curvature).map((end) => polish(problem, end));
  return bestOf(problem.residuals, finals, curvature) ?? bestEnd(problem, starts, curvature);
}

/** Starts that wander far off what another one has found already are given up early. */
function allEnds<State>(problem: Problem<State>, starts: readonly State[]): Solution<State>[] {
  const limits = { noise: NOISE, damping: 1e-3 };
  const heats = starts.map((start) =>
    gaussNewton(problem, start, { ...limits, maxIterations: FIRST_HEAT }),
  );
  const found = heats.filter((end) => end.ending === 'converged');
  const least = Math.min(...found.map((end) => end.normal.sumSquares));
  return heats.map((end) => {
    if (end.ending !== 'out-of-iterations') return end;
    const most = HOPELESS * least + problem.residuals * (16 * NOISE) ** 2;
    if (problem.residuals > EXACT && end.normal.sumSquares > most) return end;
    const rest = gaussNewton(problem, end.state, { ...limits, maxIterations: MOST_STEPS });
    return { ...rest, iterations: end.iterations + rest.iterations };
  });
}

function bestOf<State>(
  residuals: number,
  ends: readonly Solution<State>[],
  curvature: (state: State) => number,
): Solution<State> | null {
  const converged = ends.filter((end) => end.ending === 'converged');
  if (converged.length === 0) return null;
  const least = Math.min(...converged.map((end) => end.normal.sumSquares));
  const most = least * (1 + SAME) + residuals * (16 * NOISE) ** 2;
  const equal = converged.filter((end) => end.normal.sumSquares <= most);
  return equal.reduce((a, b) => (curvature(b.state) > curvature(a.state) * (1 + SAME) ? b : a));
}

/** One of each group of ends that agree in sum of squares and curvature. */
function different<State>(
  ends: readonly Solution<State>[],
  curvature: (state: State) => number,
): Solution<State>[] {
  const same = (a: number, b: number) =>
    Math.abs(a - b) <= ALIKE * Math.max(Math.abs(a), Math.abs(b));
  const kept: Solution<State>[] = [];
  for (const end of ends) {
    const known = kept.some(
      (other) =>
        same(end.normal.sumSquares, other.normal.sumSquares) &&
        same(curvature(end.state), curvature(other.state)),
    );
    if (!known) kept.push(end);
  }
  return kept;
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
