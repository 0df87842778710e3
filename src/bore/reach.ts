/** What a grinding tool can take off without cutting elsewhere. */
import { roomOf } from './room.ts';
import type { Field, Grid } from './types.ts';

/** A tool as far as the map needs it; mm, `bite` per side. */
export interface Tool {
  /** Rigid: it bridges hollows. Else (flap wheel, strip) it follows the wall, and makes nothing round by itself. */
  readonly rigid: boolean;
  /** Of the wheel, and how much of it lies on the wall along the bore. Of no account where it is not rigid. */
  readonly radius: number;
  readonly width: number;
  /** The most that one pass takes. */
  readonly bite: number;
}

/**
 * The removal that a rigid wheel reaches, its axis along the bore.
 *
 * The floor is the wall once all that may come off is off: `deviation + limit`, seen from the target cylinder. The
 * wheel may stand with its middle at any column of the grid and press as deep as it likes, as long as it cuts
 * nowhere below the floor. Where it touches the target cylinder at one clock position it stands off it by the
 * sagitta between the two circles at the others. Along the bore it covers the fewest rows that span its width
 * (rounded up: a groove that is said to be reached is wide enough), and at either face at least half of it stays
 * inside. What it reaches is the opening of the floor by that shape, less the wall. First order in floor over radius:
 * the wheel is moved along the radius, its outline unchanged.
 *
 * @param deviation, limit per side, mm, row by row; limit >= 0, Infinity where there is no metal to be cut (a hole)
 * @param radius of the target cylinder, mm
 * @param out as long as they are; written and returned
 * @returns per side, mm, 0 <= reach <= limit, of no account where that is Infinity; all 0 where the wheel does not fit into the bore; a tool that is not
 *   rigid reaches all of the limit
 */
export function reach(
  deviation: Field,
  limit: Field,
  grid: Grid,
  radius: number,
  tool: Tool,
  out: Field = new Float64Array(limit.length),
): Field {
  if (!tool.rigid) {
    out.set(limit);
    return out;
  }
  out.fill(0);
  if (!(tool.radius < radius)) return out;
  const columns = grid.theta.length;
  const size = limit.length;
  const floor = floorRoom(size);
  for (let k = 0; k < size; k++) floor[k] = deviation[k]! + limit[k]!;
  const sag = sagitta(columns, radius, tool.radius, farOff(floor, size));
  const runs = rowsCovered(grid.z, tool.width);
  const round = leastRound(floor, size, columns, sag, roundRoom(size));
  const stands = runs.length * columns;
  const deepest = leastOfRows(round, size, columns, runs, standsRoom(stands));
  // Depths from here on, so that the greatest is the least as well.
  for (let k = 0; k < stands; k++) deepest[k] = -deepest[k]!;
  const covered = leastOfRows(deepest, stands, columns, standsOver(runs, grid.z.length), floor);
  const opened = leastRound(covered, size, columns, sag, round);
  for (let k = 0; k < size; k++) {
    const cut = -opened[k]! - deviation[k]!;
    if (cut > 0) out[k] = Math.min(cut, limit[k]!);
  }
  return out;
}

const fieldRoom = () => roomOf((length) => new Float64Array(length));
const floorRoom = fieldRoom();
const roundRoom = fieldRoom();
const standsRoom = fieldRoom();
/** One a level of doubling, as many as there were rows for. */
const levelRooms: ReturnType<typeof fieldRoom>[] = [];

/**
 * How far off the wheel's outline may stand and still matter, mm: greatest less least of the floor. Over a hole the wheel
 * sinks until it rests on the edges, wherever they are: then all of its outline matters.
 */
function farOff(floor: Field, size: number): number {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < size; k++) {
    const v = floor[k]!;
    if (v < least) least = v;
    if (v > greatest) greatest = v;
  }
  return greatest > least ? greatest - least : 0;
}

/**
 * How far a wheel of radius r that touches a circle of radius R stands off it, column by column from the touch on, mm,
 * up to the first that is more than `most` or that the wheel does not face at all.
 */
export function sagitta(columns: number, R: number, r: number, most: number): Float64Array {
  const out: number[] = [];
  const c = R - r;
  for (let j = 0; j <= columns / 2; j++) {
    const turn = (2 * Math.PI * j) / columns;
    const inside = r * r - (c * Math.sin(turn)) ** 2;
    if (!(inside >= 0)) break;
    const off = R - (c * Math.cos(turn) + Math.sqrt(inside));
    if (off > most) break;
    out.push(Math.max(0, off));
  }
  return Float64Array.from(out);
}

/** First and last row of each stand of the wheel along the bore, both ascending. */
export function rowsCovered(z: Float64Array, width: number): [number, number][] {
  const last = z.length - 1;
  const runs: [number, number][] = [];
  const near = 1e-9 * (z[last]! - z[0]! + width);
  for (let end = 0; end <= last; end++) {
    if (z[end]! - z[0]! >= width / 2 - near || end === last) runs.push([0, end]);
    if (z[end]! - z[0]! >= width - near) break;
  }
  for (let from = 1; from <= last; from++) {
    if (z[last]! - z[from]! < width / 2 - near) break;
    let end = from;
    while (end < last && z[end]! - z[from]! < width - near) end++;
    runs.push([from, end]);
  }
  return runs;
}

/** The least of field + sag round each place, into `out`. */
function leastRound(
  field: Field,
  size: number,
  columns: number,
  sag: Float64Array,
  out: Field,
): Field {
  const beyond = Math.max(0, sag.length - 1);
  // A row with its ends once more before and behind it, as far as the outline goes.
  const row = new Float64Array(columns + 2 * beyond);
  for (let from = 0; from < size; from += columns) {
    for (let i = 0; i < columns; i++) row[beyond + i] = field[from + i]!;
    row.copyWithin(0, columns, columns + beyond);
    row.copyWithin(columns + beyond, beyond, 2 * beyond);
    let lowest = Number.POSITIVE_INFINITY;
    for (let i = beyond; i < beyond + columns; i++) if (row[i]! < lowest) lowest = row[i]!;
    for (let it = 0; it < columns; it++) {
      const at = it + beyond;
      let least = row[at]!;
      // Where not even the lowest place of the row would matter, none does: over a hole the outline is wide.
      for (let j = 1; j <= beyond && lowest + sag[j]! < least; j++) {
        least = Math.min(least, Math.min(row[at + j]!, row[at - j]!) + sag[j]!);
      }
      out[from + it] = least;
    }
  }
  return out;
}

/**
 * Span by span, column by column: the least over its rows, first and last included; Infinity of no row; into `out`. Each span
 * is two runs of 2^n rows that overlap, and those are made by doubling.
 */
function leastOfRows(
  field: Field,
  size: number,
  columns: number,
  spans: readonly [number, number][],
  out: Field,
): Field {
  const doubled: Field[] = [field];
  const runOf = (level: number): Field => {
    const made = doubled[level];
    if (made !== undefined) return made;
    const half = runOf(level - 1);
    const shift = columns * 2 ** (level - 1);
    // Runs of 2^level rows start at so many places.
    const count = size - columns * (2 ** level - 1);
    levelRooms[level] ??= fieldRoom();
    const run = levelRooms[level](count);
    leastOfTwo(run, 0, half, 0, shift, count);
    doubled[level] = run;
    return run;
  };
  for (let s = 0; s < spans.length; s++) {
    const [from, end] = spans[s]!;
    if (from > end) {
      out.fill(Number.POSITIVE_INFINITY, s * columns, (s + 1) * columns);
      continue;
    }
    const level = Math.floor(Math.log2(end - from + 1));
    const last = end + 1 - 2 ** level;
    leastOfTwo(out, s * columns, runOf(level), from * columns, last * columns, columns);
  }
  return out;
}

/** The lesser of two stretches of a field, place by place, into a third. */
function leastOfTwo(
  out: Field,
  to: number,
  field: Field,
  one: number,
  other: number,
  count: number,
): void {
  for (let k = 0; k < count; k++) {
    out[to + k] = Math.min(field[one + k]!, field[other + k]!);
  }
}

/** Row by row: the first and the last of the stands that cover it, which stand in order; the first after the last: none does. */
function standsOver(runs: readonly [number, number][], rows: number): [number, number][] {
  const out: [number, number][] = [];
  let first = 0;
  let last = 0;
  for (let row = 0; row < rows; row++) {
    while (first < runs.length && runs[first]![1] < row) first++;
    while (last + 1 < runs.length && runs[last + 1]![0] <= row) last++;
    out.push([first, last]);
  }
  return out;
}
