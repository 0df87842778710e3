import { emptyBlock } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';
import {
  type Feature,
  farthestOfStretches,
  firstSeen,
  lookAt,
  rowsOf,
  seenBeyond,
  touching,
  worst,
} from './seen.ts';
import { ROUNDING, type Tight, tighten } from './tighten.ts';
import { type Sides, sideOf, type Task } from './tightRows.ts';

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
 * Heights that change by less than the root of radius times range are all but linear in the moves,
 * so that there is one optimum among them. Up to this many ranges lie well within that where the
 * range is under 1 / 64 of the radius.
 */
const NEARBY = 8;
/** A range this small is rounding, in scaled units. */
const LEAST_RANGE = 1e-12;
const MOST_STRETCHES = 4096;

/**
 * `tighten` for any number of points: worked on a few that lie far out, then asked of all points
 * whether another one sticks out, which is then taken in. Each round is one pass over the points
 * and lets none go, so it ends; the last round proves that the contacts hold all points.
 *
 * @param startHolds whether the start is held by points already: the search then sets out from all
 *   that touch it, and stays where they hold it
 */
export function tightenAll<State>(
  cloud: Cloud,
  feature: Feature<State>,
  start: State,
  sides: Sides,
  moves: number,
  startHolds = false,
): Held<State> {
  let state = start;
  let iterations = 0;
  const look = lookAt(cloud, feature, sides);
  let seen = firstSeen(look, state);
  const range = seen.high - seen.low;
  const most = worst(seen, sides) + range;
  const widest = NEARBY * Math.max(range, LEAST_RANGE);
  const few = new Set(startHolds ? touching(look, state) : []);
  let stretches = 8;
  const { unknowns } = look.whole;
  let room = emptyBlock(unknowns, 0);
  let hint: number[] = [];
  for (let round = 0; ; round++) {
    const before = few.size;
    for (const row of seen.rows) few.add(row);
    const rows = Array.from(few);
    if (room.residuals.length < rows.length) room = emptyBlock(unknowns, 2 * rows.length);
    const problem = feature.problemOn(rowsOf(cloud, rows));
    const task: Task<State> = { problem, sides, moves, room };
    // Rows keep their numbers among the few, but inward heights come after all outward ones.
    const carried = hint.map((at) => (at < before ? at : at - before + rows.length));
    const tight = tighten(task, state, carried);
    iterations += tight.iterations;
    seen = seenBeyond(look, tight.state, tight.level + ROUNDING);
    const stopped = seen.rows.every((row) => few.has(row)) || round === MOST_ROUNDS;
    // Where the few let it slip or stray, those that stand in its way are taken in first: past
    // them there may be another optimum, and which of the two is found would be left to chance.
    const near = worst(seen, sides) <= most && seen.high - seen.low <= widest;
    const strayed = tight.ending !== 'converged' || !near;
    if (strayed && stopped && stretches < MOST_STRETCHES) {
      stretches *= 8;
      seen.rows = farthestOfStretches(look, state, stretches);
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
