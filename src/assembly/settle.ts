/**
 * The straight axis about which a pressed bushing comes to rest: moved sideways and leant until the pressures of all
 * depths balance. The energy held in the metal is a convex function of the four moves with a continuous slope (the side
 * force and its moment), so that Newton's method with a check that it falls finds the one rest there is.
 */
import type { Complementary } from '../num/complementary.ts';
import { solveInPlace } from '../num/linearSystem.ts';
import { type AxisMoves, type Held, type Seat, Slices } from './slices.ts';

export interface Settled {
  /** Of the bushing's axis against the one that the seat is told about, at z = 0, mm: x to 3 o'clock, y to 12. */
  readonly x: number;
  readonly y: number;
  /** mm per mm of depth. */
  readonly leanX: number;
  readonly leanY: number;
  /** Side force and moment (over half the length) that are left, beside all that presses; 0 at rest. */
  readonly unbalanced: number;
}

interface Found {
  readonly pressure: Float64Array;
  readonly gap: Float64Array;
  readonly settled: Settled;
}

const MOST_STEPS = 60;
const BALANCED = 1e-11;
/** Added to the stiffness, of its largest: a bushing that touches on one side only is held by nothing across. */
const DAMPING = 1e-9;

/** @returns null where the heights are no numbers */
export function settle(seat: Seat, pair: Complementary): Found | null {
  const slices = new Slices(seat, pair);
  let moves = slices.evenly();
  let held = slices.at(moves);
  if (held === null) return null;
  for (let step = 0; step < MOST_STEPS && held.unbalanced > BALANCED; step++) {
    const next = fallen(slices, moves, held);
    if (next === null) break;
    [moves, held] = next;
  }
  const { middle, reach, pressure, gap } = slices;
  const [leanX, leanY] = [moves[2]! / reach, moves[3]! / reach];
  return {
    pressure,
    gap,
    settled: {
      x: moves[0]! - leanX * middle,
      y: moves[1]! - leanY * middle,
      leanX,
      leanY,
      unbalanced: held.unbalanced,
    },
  };
}

/** One step of Newton's method, halved until the energy falls; null where it falls no more. */
function fallen(slices: Slices, moves: AxisMoves, held: Held): [AxisMoves, Held] | null {
  const stiffness = slices.stiffness();
  const largest = Math.max(...[0, 5, 10, 15].map((i) => stiffness[i]!)) || 1;
  for (let i = 0; i < 4; i++) stiffness[i * 5] = stiffness[i * 5]! + DAMPING * largest;
  const way = held.push.map((one) => -one);
  if (!solveInPlace(stiffness, way, 4)) return null;
  const slope = way.reduce((sum, one, i) => sum + one * held.push[i]!, 0);
  for (let share = 1; share > 1e-6; share /= 2) {
    const to = moves.map((one, i) => one + share * way[i]!);
    const next = slices.at(to);
    // Near the rest the energy no longer tells, but the forces still do.
    const falls = next !== null && next.energy <= held.energy + 1e-4 * share * slope;
    if (falls || (next !== null && next.unbalanced < held.unbalanced / 2)) return [to, next];
  }
  slices.at(moves);
  return null;
}
