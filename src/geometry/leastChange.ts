/**
 * The move of one wall against another that changes least: where two walls were measured each about an axis of its own
 * and most of the metal was left alone, that metal ends where it was, and only what changed is a change.
 */
import { solveInPlace } from '../num/linearSystem.ts';

/** Of the moved wall's axis: x to 3 o'clock, y to 12, at depth 0; lean sideways a mm of depth. */
export interface Move {
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
}

/** Radii on one grid, row by row; theta clockwise from 12, mm. NaN: not known there. */
export interface Walls {
  readonly theta: Float64Array;
  readonly z: Float64Array;
  readonly before: Float64Array;
  readonly after: Float64Array;
}

/** Below this a change counts in full as none, mm; far under what any gauge reads. */
const NOTHING = 1e-5;
/** First width of the corner, mm, and what each round leaves of it. */
const WIDE = 0.05;
const NARROWER = 0.6;
const ROUNDS = 40;

/**
 * The move that makes the sum of |after − before| least, each place weighed alike. To first order in the move: ask again of
 * the moved wall where it is large.
 */
export function leastChange({ theta, z, before, after }: Walls): Move {
  const half = z[z.length - 1]! / 2 || 1;
  const columns = theta.length;
  let at = new Float64Array(4);
  for (let round = 0, corner = WIDE; round < ROUNDS; round++) {
    const a = new Float64Array(16);
    const b = new Float64Array(4);
    for (let k = 0; k < before.length; k++) {
      const change = after[k]! - before[k]!;
      if (Number.isNaN(change)) continue;
      const s = Math.sin(theta[k % columns]!);
      const c = Math.cos(theta[k % columns]!);
      const along = z[Math.floor(k / columns)]! / half - 1;
      const slope = [s, c, s * along, c * along];
      // Seen from an axis moved towards a place the wall there is nearer.
      const left = change - slope.reduce((sum, v, i) => sum + v * at[i]!, 0);
      // Reweighted least squares: each place weighs 1 / |left|, with a corner that narrows from round to round.
      const weight = 1 / Math.max(Math.abs(left), corner);
      for (let i = 0; i < 4; i++) {
        b[i] = b[i]! + weight * slope[i]! * change;
        for (let j = 0; j < 4; j++) a[4 * i + j] = a[4 * i + j]! + weight * slope[i]! * slope[j]!;
      }
    }
    if (!solveInPlace(a, b, 4)) break;
    const moved = Math.max(...b.map((value, i) => Math.abs(value - at[i]!)));
    at = b;
    if (corner <= NOTHING && moved < NOTHING / 100) break;
    corner = Math.max(NOTHING, corner * NARROWER);
  }
  const [x, y, leanX, leanY] = at as unknown as [number, number, number, number];
  return { x: x - leanX, y: y - leanY, leanX: leanX / half, leanY: leanY / half };
}
