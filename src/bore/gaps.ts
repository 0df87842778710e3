/** Gaps in the stretch of clock and depth that a zone is told by: there it is on size, or the other way. */
import { ALL_ROUND, type Arc, arcOf } from './arcOf.ts';
import type { Gap, Zone } from './types.ts';

/** A gap smaller than this share of the stretch is too small to be told; at an edge of it, where all runs out. */
const WORTH_SAYING = { within: 0.02, edge: 0.06 } as const;
const MOST_SAID = 2;
/** Untold gaps up to this share of the stretch are its corners. */
const CORNERS = 0.1;
/**
 * A gap is told by its own stretch only if the zone has no more than this share of that: the corners about a round one are
 * 0.21 of it, those beside a slanting edge half.
 */
const SPARED = 0.3;

/** A field cut up into hills, by row and column. */
interface Cut {
  /** Hill of each place; -1 where there is none. */
  readonly label: Int32Array;
  /** Of the wall, of each place of a row. */
  readonly share: Float64Array;
  readonly theta: Float64Array;
  readonly z: Float64Array;
}

/** Rows and columns of the grid. */
interface Stretch extends Arc {
  readonly top: number;
  readonly bottom: number;
}

/** A hill, and the place of its summit. */
interface Hill {
  readonly hill: number;
  readonly summit: number;
}

/** @param stretch of the hill that is told */
export function gapsIn(cut: Cut, of: Hill, stretch: Stretch): Pick<Zone, 'gaps' | 'patchy'> {
  const { share, theta, z } = cut;
  const columns = theta.length;
  const whole = sumOf(share, stretch) * stretch.count;
  const found = patches(cut, stretch).sort((a, b) => b.area - a.area);
  const gaps: Gap[] = [];
  let untold = 0;
  for (const patch of found) {
    const { from, count, top, bottom, area } = patch;
    const least = WORTH_SAYING[atEdge(patch, stretch, columns) ? 'edge' : 'within'];
    const big = area >= least * whole && gaps.length < MOST_SAID;
    if (!big || held(cut, of, patch) > SPARED * sumOf(share, patch) * count) {
      untold += area;
      continue;
    }
    gaps.push({
      from: theta[from]!,
      to: theta[(from + count - 1) % columns]!,
      top: z[top]!,
      bottom: z[bottom]!,
      allRound: count >= ALL_ROUND * columns,
    });
  }
  return { gaps, patchy: untold > CORNERS * whole };
}

function atEdge(one: Stretch, of: Stretch, columns: number): boolean {
  const sides = one.from === of.from || (one.from + one.count - of.from - of.count) % columns === 0;
  return (sides && of.count < columns) || one.top === of.top || one.bottom === of.bottom;
}

function sumOf(share: Float64Array, { top, bottom }: Stretch): number {
  let sum = 0;
  for (let row = top; row <= bottom; row++) sum += share[row]!;
  return sum;
}

/** How much of the hill lies in that stretch; Infinity with its summit. */
function held(
  { label, share, theta }: Cut,
  { hill, summit }: Hill,
  { from, count, top, bottom }: Stretch,
): number {
  const columns = theta.length;
  let sum = 0;
  for (let row = top; row <= bottom; row++) {
    for (let i = 0; i < count; i++) {
      const k = row * columns + ((from + i) % columns);
      if (k === summit) return Number.POSITIVE_INFINITY;
      if (label[k] === hill) sum += share[row]!;
    }
  }
  return sum;
}

/** What is of one piece, in the stretch and of no hill. */
function patches(
  { label, share, theta }: Cut,
  { from, count, top, bottom }: Stretch,
): (Stretch & { readonly area: number })[] {
  const columns = theta.length;
  const seen = new Uint8Array(label.length);
  const empty = (row: number, i: number) => {
    const k = row * columns + ((from + i) % columns);
    if (label[k]! >= 0 || seen[k] === 1) return false;
    seen[k] = 1;
    return true;
  };
  const out: (Stretch & { area: number })[] = [];
  for (let row = top; row <= bottom; row++) {
    for (let i = 0; i < count; i++) {
      if (!empty(row, i)) continue;
      const edge = [{ row, i }];
      const clock = new Uint8Array(columns);
      const piece = { top: row, bottom: row, area: 0 };
      for (let one = edge.pop(); one !== undefined; one = edge.pop()) {
        piece.area += share[one.row]!;
        piece.top = Math.min(piece.top, one.row);
        piece.bottom = Math.max(piece.bottom, one.row);
        clock[(from + one.i) % columns] = 1;
        for (const next of beside(one, { from, count, top, bottom }, columns)) {
          if (empty(next.row, next.i)) edge.push(next);
        }
      }
      out.push({ ...arcOf(clock), ...piece });
    }
  }
  return out;
}

interface Cell {
  readonly row: number;
  /** Columns from where the stretch begins. */
  readonly i: number;
}

function beside({ row, i }: Cell, { count, top, bottom }: Stretch, columns: number): Cell[] {
  const out: Cell[] = [];
  if (row > top) out.push({ row: row - 1, i });
  if (row < bottom) out.push({ row: row + 1, i });
  const closed = count === columns;
  if (i > 0 || closed) out.push({ row, i: (i + columns - 1) % columns });
  if (i < count - 1 || closed) out.push({ row, i: (i + 1) % columns });
  return out;
}
