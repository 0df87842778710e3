import type { Problem } from '../num/gaussNewton.ts';
import { BLOCK_ROWS, emptyBlock } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';
import { farthestOfStretches, farthestOut, touching, worst } from './seen.ts';
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
const MOST_STRETCHES = 4096;

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
  const block = emptyBlock(whole.unknowns, Math.min(BLOCK_ROWS, whole.residuals));
  let seen = farthestOut(whole, state, sides, block);
  const most = worst(seen, sides) + seen.high - seen.low;
  const few = new Set(startHolds ? touching(whole, state, seen) : []);
  let stretches = 8;
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
    seen = farthestOut(whole, tight.state, sides, block, tight.level + ROUNDING);
    const stopped = seen.rows.every((row) => few.has(row)) || round === MOST_ROUNDS;
    // Where the few let it slip or stray, those that stand in its way are taken in first.
    const strayed = tight.ending !== 'converged' || !(worst(seen, sides) <= most);
    if (strayed && stopped && stretches < MOST_STRETCHES) {
      stretches *= 8;
      seen.rows = farthestOfStretches(whole, state, sides, stretches);
      if (seen.rows.some((row) => !few.has(row))) continue;
    }
    if (strayed && !stopped) continue;
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
