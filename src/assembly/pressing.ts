/**
 * A bushing pressed into a bore that is not round: where it presses, where gaps are left, what becomes of its own bore.
 *
 * Every depth is a slice by itself (plane stress); all slices share the bushing's axis, which keeps straight and settles
 * sideways and in lean until nothing pushes it aside any more, as it would if nothing rubbed. Nothing pulls: where wall
 * and bushing would part they do.
 */
import { circulant, turnBy } from '../num/circulant.ts';
import { Complementary } from '../num/complementary.ts';
import type { PairMoves } from './pairMoves.ts';
import { type Settled, settle } from './settle.ts';
import type { Seat } from './slices.ts';

export interface Pressing {
  /** rows * columns, MPa, >= 0; NaN where there is no wall. */
  readonly pressure: Float64Array;
  /** Left between bushing and wall, per side, mm, 0 where they touch; NaN where there is no wall. */
  readonly gap: Float64Array;
  /** How far the bushing's bore comes in, per side, mm, about the bushing's own axis; everywhere. */
  readonly closed: Float64Array;
  readonly settled: Settled;
}

/** @returns null where nothing can be worked out: no rows, or readings that are no numbers */
export function press(seat: Seat, moves: PairMoves): Pressing | null {
  const { proud, z, columns } = seat;
  if (z.length === 0) return null;
  const pair = new Complementary(moves.soft, columns);
  const found = settle(seat, pair);
  if (found === null) return null;
  const inwards = circulant(moves.inside, columns);
  const closed = new Float64Array(proud.length);
  for (let row = 0; row < z.length; row++) {
    const at = row * columns;
    turnBy(inwards, found.pressure.subarray(at, at + columns), closed.subarray(at, at + columns));
  }
  const pressure = found.pressure.map((p, k) => (Number.isNaN(proud[k]!) ? Number.NaN : p));
  const gap = found.gap.map((g, k) => (Number.isNaN(proud[k]!) ? Number.NaN : g));
  return { pressure, gap, closed, settled: found.settled };
}
