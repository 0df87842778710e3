import type { Problem, Solution } from '../num/gaussNewton.ts';
import { changeOf, dampedStep, type NormalEquations } from '../num/normalEquations.ts';
import { type Cloud, sampleCloud } from './cloud.ts';
import { NOISE } from './search.ts';
import { type Wall, wallProblem } from './wall.ts';
import { BENT_ENOUGH, type WallSums, wallSums } from './wallSums.ts';

/** The least-squares wall of very many points. */
export interface WallOfAll {
  solution: Solution<Wall>;
  /** of the last pass, but with the reach of the first, which had the matrix */
  sums: WallSums;
  /** no signed distance differs from those of the last pass by more than this */
  moved: number;
}

/** Larger sets are brought nearer on so many of their points, at a fraction of a pass. */
const NEARER = 32768;
const MOST_PASSES = 12;
/** Passes that shrink the step less than this are better left to the usual search. */
const SLOW = 0.1;
/**
 * What may be left to gain, scaled: a distance alone is rounded by several times NOISE, and this is
 * 1e-12 mm on a part of 200 mm.
 */
const LEFT = 64 * NOISE;
/** Steps of this length tell a second derivative to about 1e-6, and rounding to 1e-10. */
const APART = 1e-6;

/**
 * Carries the wall of a sample on to all points by Newton steps with a fixed matrix: J^T J of all
 * points, summed in the first pass, and the part of second order, which is small, as some of them
 * have it. Each further pass sums the gradient alone and shrinks the step to a part of itself that
 * is the error of the matrix, about 1e-5. Ends where the next step, at that ratio, would change no
 * more than LEFT; null where that does not come to pass, or the wall is so flat that the quick sums
 * would not be good.
 *
 * @param coarse the wall of the sample
 * @param mean a place amid the points
 */
export function wallOfAll(
  cloud: Cloud,
  sample: Cloud,
  coarse: Solution<Wall>,
  mean: readonly number[],
): WallOfAll | null {
  if (!(coarse.ending === 'converged' && coarse.state.k > BENT_ENOUGH)) return null;
  const problem = wallProblem(cloud, mean);
  const { some, start } = nearer(problem, cloud, sample, coarse.state);
  let state = start;
  const bend = secondOrder(problem, state, some);
  const first = wallSums(cloud, state, true);
  const { matrix } = first.normal;
  const newton = matrix.map((value, at) => value + cloud.count * bend[at]!);
  let sums = first;
  let previous = Number.NaN;
  for (let pass = 1; pass <= MOST_PASSES; pass++) {
    const step = stepWith(sums.normal, newton);
    if (step === null) return null;
    const change = changeOf(first.normal, step, cloud.count);
    const ratio = change / previous;
    const next = problem.move(state, step);
    if (!(next.k > BENT_ENOUGH)) return null;
    if (change <= NOISE || change * ratio <= LEFT) {
      const normal = { ...sums.normal, matrix };
      const iterations = coarse.iterations + pass;
      return {
        solution: { state: next, ending: 'converged', iterations, normal },
        sums: { ...sums, reach: first.reach },
        moved: farthestMoved(step, first.reach, state.k),
      };
    }
    if (pass > 1 && !(ratio < SLOW)) return null;
    state = next;
    previous = change;
    sums = wallSums(cloud, state, false);
  }
  return null;
}

/** One step from the wall of the sample on many more points, where there are many more still. */
function nearer(
  problem: Problem<Wall>,
  cloud: Cloud,
  sample: Cloud,
  coarse: Wall,
): { some: Cloud; start: Wall } {
  if (cloud.count <= 4 * NEARER) return { some: sample, start: coarse };
  const some = sampleCloud(cloud, NEARER);
  const { normal } = wallSums(some, coarse, true);
  const step = stepWith(normal, normal.matrix);
  return { some, start: step === null ? coarse : problem.move(coarse, step) };
}

function stepWith({ gradient }: NormalEquations, matrix: Float64Array): Float64Array | null {
  return dampedStep({ matrix, gradient, sumSquares: 0 }, 0);
}

/**
 * Per point, what the second derivative of half the sum of squares has beyond J^T J, where the
 * gradient is nearly 0, by differences.
 */
function secondOrder(problem: Problem<Wall>, state: Wall, some: Cloud): Float64Array {
  const p = problem.unknowns;
  const out = new Float64Array(p * p);
  const { k } = state;
  const { gradient, matrix } = wallSums(some, state, true).normal;
  const lengths = [1, 1, 1, k, k * k].map((unit) => APART * unit);
  lengths.forEach((length, j) => {
    const step = new Float64Array(p);
    step[j] = length;
    const after = wallSums(some, problem.move(state, step), false).normal.gradient;
    for (let i = j; i < p; i++) {
      const slope = (after[i]! - gradient[i]!) / length;
      out[i * p + j] = (slope - matrix[i * p + j]!) / some.count;
    }
  });
  return out;
}

/** Twice the most that a step changes any distance, for what the first order leaves out. */
function farthestMoved(step: Float64Array, reach: number, k: number): number {
  const [along, pitch, roll, yaw, bend] = Array.from(step, Math.abs) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const sideways = (roll + reach * yaw) / k;
  return 2 * (along + reach * pitch + sideways + (2 * bend) / (k * k)) + 64 * NOISE;
}
