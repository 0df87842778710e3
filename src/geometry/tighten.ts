import type { Ending } from '../num/gaussNewton.ts';
import { type MinimaxStep, minimaxStep, type Rows } from '../num/minimaxStep.ts';
import { sharedWeights } from './sharedWeights.ts';
import { curvatureOf, definiteAlong, downhill, evenly, leveled } from './tightCurvature.ts';
import { levelAt, moved, rowsAt, type Task } from './tightRows.ts';

/** A state where the greatest height of a task is least, near a start. */
export interface Tight<State> {
  state: State;
  /** `slipped`: nothing held it (an inscribed circle that leaves between the points) */
  ending: Ending | 'slipped';
  iterations: number;
  /** greatest height; what the next ones are worth only where the ending is `converged` */
  level: number;
  /** heights (see tightRows.ts) that hold it */
  held: number[];
  /** one a held height: positive, sum 1 */
  weights: number[];
  /** of the weighted heights, moves * moves; 0 at a sharp corner, where it decides nothing */
  curvature: readonly number[];
}

const MOST_STEPS = 200;
/** Rounding of a height when coordinates are about 1. */
export const ROUNDING = 16 * Number.EPSILON;
/** Steps that promise no more than this may be made of rounding. */
const ROUNDING_SIZE = 4096 * Number.EPSILON;
/** A step may change no height by more than this, in units of the points' spread. */
const FARTHEST = 0.5;
const SHORTEST = 2 ** -30;
/** A deviation this much better than any start has left the points, whose spread is 1 to 2. */
const SLIPPED = 1;
/** Steps that keep less than this share of their promise ask for the curvature. */
const KEEPS_WELL = 0.7;
/** Steps that change no height by more than this, in units of the points' spread, are none. */
const STILL = 1e-13;
const MOST_SETTLING = 6;
/** Share of the promised gain that a step must keep (Armijo). */
const KEPT = 1e-4;
/** Curvature given to moves that have none, so that no step is endless. */
const LEAST_CURVATURE = 1e-6;

/**
 * Sequential minimax: the heights are made linear, the linear problem is solved exactly, and a step
 * is taken that keeps enough of its promise. Where fewer heights hold than would make a sharp
 * corner, the curvature of the held ones decides, which keeps the end as fast as Newton's (the idea
 * of R. S. Womersley and R. Fletcher, Journal of Optimization Theory and Applications 48, 1986,
 * 493-523). Ends where the held heights balance and no small move lowers the greatest.
 *
 * @param hint heights thought to hold
 */
export function tighten<State>(
  task: Task<State>,
  start: State,
  hint: readonly number[] = [],
): Tight<State> {
  let state = start;
  let held = hint;
  let weights: readonly number[] = [];
  let bent = false;
  let settling = 0;
  let last: Promising | null = null;
  const end = (ending: Tight<State>['ending'], iterations: number): Tight<State> => ({
    state,
    ending,
    iterations,
    level: levelAt(task, state),
    ...(last === null ? { held: [], weights: [] } : sharing(task, state, last.step)),
    curvature: last?.curvature ?? [],
  });
  for (let iterations = 1; iterations <= MOST_STEPS; iterations++) {
    const present = levelAt(task, state);
    if (!Number.isFinite(present)) return end('not-finite', iterations);
    if (present < -SLIPPED) return end('slipped', iterations);
    const rows = rowsAt(task, state);
    last = promising(task, state, rows, held, bent ? weights : []);
    if (last === null) return end('stalled', iterations);
    ({ held, weights } = last.step);
    const gain: number = present - last.step.level;
    if (!(gain > ROUNDING) && settling < MOST_SETTLING && farthest(rows, last.step.x) > STILL) {
      // Nothing to gain, yet not at rest: along a flat bottom only the curvature tells the middle.
      const there = bent ? leveled(task, moved(task, state, last.step.x)) : state;
      if (levelAt(task, there) <= present + ROUNDING) {
        state = there;
        bent = true;
        settling++;
        continue;
      }
    }
    let next = gain > ROUNDING ? follow(task, state, rows, last.step, present, gain) : null;
    const kept = next === null ? 0 : present - levelAt(task, next);
    if (!(kept >= KEEPS_WELL * gain)) {
      // A corner of the linear problem that keeps little of its promise is rounded off in truth.
      bent = true;
      next = besideSaddle(task, state, rows, last, present - kept) ?? next;
    }
    if (next === null) return end(gain > ROUNDING_SIZE ? 'stalled' : 'converged', iterations);
    state = next;
  }
  return end('out-of-iterations', MOST_STEPS);
}

/** The weights in balance; where more heights hold than a corner needs (a square), of all of them. */
function sharing<State>(
  task: Task<State>,
  state: State,
  { held, weights }: MinimaxStep,
): { held: number[]; weights: number[] } {
  const rows = rowsAt(task, state);
  const { b, count, unknowns } = rows;
  const level = levelAt(task, state);
  const touching: number[] = [];
  for (let at = 0; at < count; at++) if (b[at]! >= level - ROUNDING) touching.push(at);
  const many = held.length <= unknowns && touching.length > held.length;
  if (!many && held.length <= unknowns) return { held, weights };
  const sharers = many ? touching : held;
  // A corner leaves no choice: this then takes what the step before the last left off the balance.
  const shared = sharedWeights(gradientsOf(rows, sharers));
  if (shared === null || (!many && shared.length < held.length)) return { held, weights };
  return { held: shared.map(({ at }) => sharers[at]!), weights: shared.map((s) => s.weight) };
}

interface Promising {
  step: MinimaxStep;
  curvature: readonly number[];
}

/**
 * The step of the linear problem; where no sharp corner holds it, or weights from a step before are
 * given, that with the curvature.
 */
function promising<State>(
  task: Task<State>,
  state: State,
  rows: Rows,
  held: readonly number[],
  weights: readonly number[],
): Promising | null {
  const { moves } = task;
  const none = new Array<number>(moves * moves).fill(0);
  const flat = { held, weights };
  let step = weights.length > 0 ? null : minimaxStep(rows, evenly(moves, LEAST_CURVATURE), held);
  if (step !== null && step.held.length > moves) return { step, curvature: none };
  let from: { held: readonly number[]; weights: readonly number[] } | null = step ?? flat;
  // The weights and the curvature they give settle on each other in a turn or two.
  for (let turn = 0; turn < 3; turn++) {
    const curvature = curvatureOf(task, state, from.held, from.weights);
    const bend = definiteAlong(curvature, gradientsOf(rows, from.held), moves, LEAST_CURVATURE);
    step = minimaxStep(rows, bend, from.held);
    if (step === null) return null;
    if (turn === 2 || sameRows(step.held, from.held)) return { step, curvature };
    from = step;
  }
  return null;
}

function sameRows(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((row) => b.includes(row));
}

/** The state after as much of a step as keeps its promise; null when no part of it does. */
function follow<State>(
  task: Task<State>,
  state: State,
  rows: Rows,
  step: MinimaxStep,
  present: number,
  gain: number,
): State | null {
  const slack = gain <= ROUNDING_SIZE ? ROUNDING / 4 : 0;
  const keeps = (next: State, part: number) =>
    levelAt(task, next) <= present - KEPT * part * gain + slack;
  const longest = farthest(rows, step.x);
  for (let part = Math.min(1, FARTHEST / longest); part >= SHORTEST; part /= 2) {
    const next = moved(
      task,
      state,
      step.x.map((v) => part * v),
    );
    if (keeps(next, part)) return next;
    // A long step along a bent valley climbs its side a little: down again, by the shortest way.
    const corrected = leveled(task, next);
    if (keeps(corrected, part)) return corrected;
  }
  return null;
}

/** See `downhill`; null where the held rows make a sharp corner. */
function besideSaddle<State>(
  task: Task<State>,
  state: State,
  rows: Rows,
  { step, curvature }: Promising,
  present: number,
): State | null {
  if (step.held.length > rows.unknowns) return null;
  return downhill(task, state, gradientsOf(rows, step.held), curvature, present);
}

function gradientsOf({ a, unknowns }: Rows, held: readonly number[]): number[][] {
  return held.map((at) => Array.from({ length: unknowns }, (_, j) => a[at * unknowns + j]!));
}

function farthest({ a, count }: Rows, x: Float64Array): number {
  let longest = 0;
  for (let i = 0; i < count; i++) longest = Math.max(longest, Math.abs(changeOf(a, i, x)));
  return longest;
}

function changeOf(a: ArrayLike<number>, row: number, x: Float64Array): number {
  let change = 0;
  for (let j = 0; j < x.length; j++) change += a[row * x.length + j]! * x[j]!;
  return change;
}
