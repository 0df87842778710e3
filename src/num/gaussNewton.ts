import {
  addBlock,
  BLOCK_ROWS,
  type Block,
  changeOf,
  dampedStep,
  emptyBlock,
  emptyNormal,
  type NormalEquations,
} from './normalEquations.ts';

/** A nonlinear least-squares problem whose unknowns are small moves about the present state. */
export interface Problem<State> {
  /** number of unknowns, p */
  unknowns: number;
  /** number of residuals */
  residuals: number;
  /** writes the residuals `from` to `to` (not included) and their changes into `block`, from 0 */
  rows(state: State, from: number, to: number, block: Block): void;
  /** the state after a move of length p; the columns of a block are its first derivatives at 0 */
  move(state: State, step: Float64Array): State;
}

/** How a search ended: only `converged` is an answer. */
export type Ending = 'converged' | 'out-of-iterations' | 'stalled' | 'not-finite';

export interface Solution<State> {
  state: State;
  ending: Ending;
  /** steps tried, one pass over the data each */
  iterations: number;
  /** at `state`, or so near that the difference is rounding */
  normal: NormalEquations;
}

export interface SolverLimits {
  maxIterations: number;
  /** size of a residual's own rounding error: changes below it mean nothing */
  noise: number;
  /** first damping, relative to the diagonal of J^T J; 0 for a start that is close already */
  damping: number;
}

const LEAST_DAMPING = 1e-6;
const MOST_DAMPING = 1e12;
/** Steps damped less than this are as long as they want to be. */
const FREE = 1e-2;
/** Sums of squares that agree to this are equal: summing a million terms rounds that much. */
const SAME_SUM = 1e-12;
const UNCHANGED = 1e-9;
/** Steps of so many times the noise may be made of noise. */
const ROUNDING_SIZE = 100;

/**
 * Smallest sum of squares by Gauss-Newton steps, damped as Levenberg and Marquardt do when a step
 * does not help (Nocedal and Wright, Numerical Optimization, 2nd ed., chapter 10). The data are
 * streamed: J is never held. It ends when what is left to gain, judged by how fast the steps
 * shrink, changes the residuals (root mean square) by no more than their rounding noise.
 */
export function gaussNewton<State>(
  problem: Problem<State>,
  start: State,
  { maxIterations, noise, damping }: SolverLimits,
): Solution<State> {
  const block = emptyBlock(problem.unknowns, Math.min(problem.residuals, BLOCK_ROWS));
  let state = start;
  let normal = linearise(problem, state, block);
  let lambda = damping;
  let previous = Number.NaN;
  let iterations = 0;
  const end = (ending: Ending): Solution<State> => ({ state, ending, iterations, normal });
  if (!Number.isFinite(normal.sumSquares)) return end('not-finite');
  const rounding = Math.sqrt(problem.residuals) * noise;
  while (iterations < maxIterations) {
    if (lambda > MOST_DAMPING) return end('stalled');
    const step = dampedStep(normal, lambda);
    if (step === null) {
      lambda = Math.max(10 * lambda, 1e-3);
      continue;
    }
    iterations++;
    const change = changeOf(normal, step, problem.residuals);
    const next = problem.move(state, step);
    const last = lambda < FREE && settled(change, previous, noise);
    // A last step that leaves the sum of squares as it is needs no pass to tell so.
    if (last && problem.residuals * change * change <= UNCHANGED * normal.sumSquares) {
      state = next;
      return end('converged');
    }
    const trial = linearise(problem, next, block);
    if (!noWorse(trial.sumSquares, normal.sumSquares, rounding)) {
      // A step of rounding size that does not help: there is nothing left to gain.
      if (lambda < FREE && change <= ROUNDING_SIZE * noise) return end('converged');
      lambda = Math.max(10 * lambda, 1e-3);
      continue;
    }
    state = next;
    normal = trial;
    if (last) return end('converged');
    lambda = lambda > LEAST_DAMPING ? lambda / 10 : 0;
    previous = change;
  }
  return end('out-of-iterations');
}

/** `rounding` is the length of the vector of residuals that rounding alone makes. */
function noWorse(sumSquares: number, before: number, rounding: number): boolean {
  const slack = rounding * (2 * Math.sqrt(before) + rounding);
  return sumSquares <= before * (1 + SAME_SUM) + slack;
}

/**
 * Whether nothing is left to gain after a step: the next ones would shrink at least at the same
 * ratio. Steps near the noise that do not shrink any more are noise. NaN: there was none before.
 */
function settled(change: number, previous: number, noise: number): boolean {
  if (change <= noise) return true;
  const ratio = change / previous;
  if (change <= ROUNDING_SIZE * noise) return ratio > 0.5 || change * ratio <= noise;
  return change <= 1e-6 && ratio < 0.1 && change * ratio <= noise;
}

function linearise<State>(problem: Problem<State>, state: State, block: Block): NormalEquations {
  const normal = emptyNormal(problem.unknowns);
  for (let from = 0; from < problem.residuals; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, problem.residuals);
    problem.rows(state, from, to, block);
    addBlock(normal, block, to - from);
  }
  return normal;
}
