import type { Problem } from '../num/gaussNewton.ts';
import { BLOCK_ROWS, type Block, emptyBlock } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';
import { ROUNDING, type Tight, tighten } from './tighten.ts';
import { type Sides, sideOf, type Task, taskOf } from './tightRows.ts';

/** A point that holds a feature. */
export interface Contact {
  /** row of the cloud */
  row: number;
  /** 1 where it keeps the outside from shrinking, -1 where it keeps the inside from growing */
  side: 1 | -1;
  /** positive, all of a fit sum to 1 */
  weight: number;
}

/** A minimax feature of a whole cloud, in scaled units. */
export interface Held<State> {
  state: State;
  ending: Tight<State>['ending'];
  iterations: number;
  contacts: Contact[];
  /** rows of the few points it was worked on; `task` and `tight` count among these */
  few: number[];
  task: Task<State>;
  tight: Tight<State>;
  /** least and greatest deviation of all points */
  low: number;
  high: number;
}

const MOST_ROUNDS = 200;

/**
 * `tighten` for any number of points: worked on the few that lie farthest out in each part of the
 * wall, then asked of all points whether another one sticks out, which is then taken in. Each round
 * is one pass over the points and lets none go, so it ends; the last round proves that the contacts
 * hold all points.
 *
 * @param problemOn the deviations of the points of a cloud in the frame of the whole
 * @param startHolds whether the start is held by points already: the search then sets out from all
 *   that touch it, and stays where they hold it
 */
export function tightenAll<State>(
  cloud: Cloud,
  problemOn: (cloud: Cloud) => Problem<State>,
  start: State,
  sides: Sides,
  moves: number,
  startHolds = false,
): Held<State> {
  const whole = problemOn(cloud);
  let state = start;
  let iterations = 0;
  let seen = farthestOut(whole, state, sides);
  const most = worst(seen, sides) + seen.high - seen.low;
  const few = new Set(startHolds ? touching(whole, state, seen) : []);
  let hint: number[] = [];
  for (let round = 0; ; round++) {
    const before = few.size;
    for (const row of seen.rows) few.add(row);
    const rows = Array.from(few);
    const task = taskOf(problemOn(rowsOf(cloud, rows)), sides, moves);
    // Rows keep their numbers among the few, but inward heights come after all outward ones.
    const carried = hint.map((at) => (at < before ? at : at - before + rows.length));
    const tight = tighten(task, state, carried);
    iterations += tight.iterations;
    seen = farthestOut(whole, tight.state, sides, tight.level + ROUNDING);
    const stopped = seen.rows.every((row) => few.has(row)) || round === MOST_ROUNDS;
    // Where the few let it slip or stray, those that stand in its way are taken in first.
    if (!stopped && (tight.ending !== 'converged' || !(worst(seen, sides) <= most))) continue;
    hint = tight.held;
    state = tight.state;
    if (!stopped) continue;
    const ending = round === MOST_ROUNDS ? 'out-of-iterations' : tight.ending;
    const contacts = contactsOf(task, tight, rows);
    const { low, high } = seen;
    return { state, ending, iterations, contacts, few: rows, task, tight, low, high };
  }
}

function rowsOf(cloud: Cloud, rows: readonly number[]): Cloud {
  return {
    ...cloud,
    count: rows.length,
    columns: cloud.columns.map((c) => Float64Array.from(rows, (row) => c[row]!)),
  };
}

function contactsOf<State>(
  task: Task<State>,
  { held, weights }: Tight<State>,
  rows: readonly number[],
): Contact[] {
  const contacts = held.map((at, i) => ({
    row: rows[at % rows.length]!,
    side: sideOf(task as Task<never>, at),
    weight: weights[i]!,
  }));
  return contacts.sort((a, b) => a.row - b.row || a.side - b.side);
}

function worst({ low, high }: Seen, sides: Sides): number {
  return sides === 'outer' ? high : sides === 'inner' ? -low : Math.max(high, -low);
}

/** Points within this of the least or greatest deviation touch, in scaled units. */
const TOUCHES = 1e-9;
const MOST_TOUCHING = 256;

function touching<State>(problem: Problem<State>, state: State, { low, high }: Seen): number[] {
  const block = emptyBlock(problem.unknowns, problem.residuals);
  problem.rows(state, 0, problem.residuals, block);
  const rows: number[] = [];
  for (let i = 0; i < problem.residuals && rows.length < MOST_TOUCHING; i++) {
    const f = block.residuals[i]!;
    if (f - low <= TOUCHES || high - f <= TOUCHES) rows.push(i);
  }
  return rows;
}

interface Seen {
  rows: number[];
  low: number;
  high: number;
}

/** Parts of a wall, told apart by the signs of the columns: quarters of the turn, halves of depth. */
const MOST_COLUMNS = 6;

/**
 * The points farthest out in each part of the wall, on the asked sides, as far as they are farther
 * out than `beyond`; one pass.
 */
function farthestOut<State>(
  problem: Problem<State>,
  state: State,
  sides: Sides,
  beyond = Number.NEGATIVE_INFINITY,
): Seen {
  const parts = 2 ** Math.min(problem.unknowns, MOST_COLUMNS);
  const outer = { rows: new Int32Array(parts).fill(-1), height: new Float64Array(parts) };
  const inner = { rows: new Int32Array(parts).fill(-1), height: new Float64Array(parts) };
  outer.height.fill(beyond);
  inner.height.fill(beyond);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const block = emptyBlock(problem.unknowns, Math.min(BLOCK_ROWS, problem.residuals));
  for (let from = 0; from < problem.residuals; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, problem.residuals);
    problem.rows(state, from, to, block);
    for (let i = 0; i < to - from; i++) {
      const f = block.residuals[i]!;
      if (f < low) low = f;
      if (f > high) high = f;
      const part = partOf(block, i);
      if (sides !== 'inner' && f > outer.height[part]!) {
        outer.height[part] = f;
        outer.rows[part] = from + i;
      }
      if (sides !== 'outer' && -f > inner.height[part]!) {
        inner.height[part] = -f;
        inner.rows[part] = from + i;
      }
    }
  }
  const rows = [...outer.rows, ...inner.rows].filter((row) => row >= 0);
  return { rows: Array.from(new Set(rows)), low, high };
}

function partOf({ columns }: Block, row: number): number {
  let part = 0;
  for (let j = 0; j < columns.length && j < MOST_COLUMNS; j++) {
    if (columns[j]![row]! > 0) part |= 1 << j;
  }
  return part;
}
