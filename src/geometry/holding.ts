import { solveInPlace } from '../num/linearSystem.ts';
import { definite } from './tightCurvature.ts';
import type { Held } from './tightenAll.ts';
import { rowsAt } from './tightRows.ts';

/** Curvature given to moves that the contacts leave free. */
const LEAST_CURVATURE = 1e-9;

/**
 * By how much, at worst, errors of one in the deviations at the contacts move the quantities whose
 * change per move the rows of `t` give, or the range (at least 2: both sides of a zone move).
 */
export function gainOf<State>({ task, tight, state }: Held<State>, t: number[][]): number {
  const { moves } = task;
  const { curvature } = tight;
  const { a } = rowsAt(task, state);
  const held = independent(tight.held, a, moves);
  const n = moves + 1 + held.length;
  const m = new Float64Array(n * n);
  const right = new Float64Array(n * held.length);
  const sharp = held.length > moves;
  const h = sharp ? curvature : definite(curvature, moves, LEAST_CURVATURE);
  for (let i = 0; i < moves; i++) for (let j = 0; j < moves; j++) m[i * n + j] = h[i * moves + j]!;
  held.forEach((at, k) => {
    const row = moves + 1 + k;
    for (let j = 0; j < moves; j++) m[j * n + row] = m[row * n + j] = a[at * moves + j]!;
    m[moves * n + row] = m[row * n + moves] = -1;
    right[row * held.length + k] = -1;
  });
  if (!solveInPlace(m, right, n, held.length)) return Number.POSITIVE_INFINITY;
  const sums = t.map((places) =>
    held.reduce((sum, _, k) => {
      const move = places.reduce((s, v, j) => s + v * right[j * held.length + k]!, 0);
      return sum + Math.abs(move);
    }, 0),
  );
  return Math.max(Math.hypot(...sums), 2);
}

/** A row with less than this outside the span of others adds nothing to what they hold. */
const NOTHING_NEW = 1e-6;

/** As many of the held rows, in their order, as hold the feature without another one's help. */
function independent(held: readonly number[], a: ArrayLike<number>, moves: number): number[] {
  const units: number[][] = [];
  return held.filter((at) => {
    const rest = Array.from({ length: moves + 1 }, (_, j) => (j < moves ? a[at * moves + j]! : -1));
    const whole = Math.hypot(...rest);
    for (const unit of units) {
      const part = unit.reduce((s, v, j) => s + v * rest[j]!, 0);
      for (let j = 0; j <= moves; j++) rest[j]! -= part * unit[j]!;
    }
    const length = Math.hypot(...rest);
    if (!(length > NOTHING_NEW * whole)) return false;
    units.push(rest.map((v) => v / length));
    return true;
  });
}

/** Contacts by row with the change of the range (both sides) or of the radius (one side) by each. */
export function signedMultipliers<State>({ contacts, task }: Held<State>): {
  contacts: number[];
  multipliers: number[];
} {
  const byRow = new Map<number, number>();
  for (const { row, side, weight } of contacts) {
    const share = task.sides === 'both' ? 2 * side * weight : weight;
    byRow.set(row, (byRow.get(row) ?? 0) + share);
  }
  return { contacts: [...byRow.keys()], multipliers: [...byRow.values()] };
}
