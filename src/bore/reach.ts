/** What a grinding tool can take off without cutting elsewhere. */
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
 * @returns per side, mm, 0 <= reach <= limit, of no account where that is Infinity; all 0 where the wheel does not fit into the bore; a tool that is not
 *   rigid reaches all of the limit
 */
export function reach(
  deviation: Field,
  limit: Field,
  grid: Grid,
  radius: number,
  tool: Tool,
): Field {
  if (!tool.rigid) return limit.slice();
  if (!(tool.radius < radius)) return new Float64Array(limit.length);
  const columns = grid.theta.length;
  const floor = new Float64Array(limit.length);
  for (let k = 0; k < floor.length; k++) floor[k] = deviation[k]! + limit[k]!;
  const sag = sagitta(columns, radius, tool.radius, farOff(floor));
  const runs = rowsCovered(grid.z, tool.width);
  const deepest = overRows(roundClock(floor, columns, sag, 1), columns, runs, 1);
  const covered = overRows(deepest, columns, standsOver(runs, grid.z.length), -1);
  const opened = roundClock(covered, columns, sag, -1);
  const out = new Float64Array(limit.length);
  for (let k = 0; k < out.length; k++) {
    const cut = opened[k]! - deviation[k]!;
    if (cut > 0) out[k] = Math.min(cut, limit[k]!);
  }
  return out;
}

/**
 * How far off the wheel's outline may stand and still matter, mm: greatest less least of the floor. Over a hole the wheel
 * sinks until it rests on the edges, wherever they are: then all of its outline matters.
 */
function farOff(floor: Field): number {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const v of floor) {
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

/** side 1: the least of floor + sag round each place; side -1: the greatest of depth - sag. */
function roundClock(field: Field, columns: number, sag: Float64Array, side: 1 | -1): Field {
  const out = new Float64Array(field.length);
  for (let row = 0; row < field.length; row += columns) {
    for (let it = 0; it < columns; it++) {
      let best = side * field[row + it]!;
      for (let j = 1; j < sag.length; j++) {
        const off = sag[j]!;
        const ahead = it + j < columns ? it + j : it + j - columns;
        const back = it - j >= 0 ? it - j : it - j + columns;
        const a = side * field[row + ahead]! + off;
        const b = side * field[row + back]! + off;
        if (a < best) best = a;
        if (b < best) best = b;
      }
      out[row + it] = side * best;
    }
  }
  return out;
}

/**
 * Span by span, column by column: the least (side 1) or the greatest (side -1) over its rows, first and last included (of no
 * row: side times Infinity). Each span is two runs of 2^n rows that overlap, and those are made by doubling.
 */
function overRows(
  field: Field,
  columns: number,
  spans: readonly [number, number][],
  side: 1 | -1,
): Field {
  const doubled: Field[] = [field];
  const runOf = (level: number): Field => {
    const made = doubled[level];
    if (made !== undefined) return made;
    const half = runOf(level - 1);
    const shift = columns * 2 ** (level - 1);
    const out = half.slice();
    for (let k = 0; k + shift < out.length; k++) {
      if (side * half[k + shift]! < side * out[k]!) out[k] = half[k + shift]!;
    }
    doubled[level] = out;
    return out;
  };
  const out = new Float64Array(spans.length * columns);
  for (let s = 0; s < spans.length; s++) {
    const [from, end] = spans[s]!;
    if (from > end) {
      out.fill(side * Number.POSITIVE_INFINITY, s * columns, (s + 1) * columns);
      continue;
    }
    const level = Math.floor(Math.log2(end - from + 1));
    const run = runOf(level);
    const first = from * columns;
    const last = (end + 1 - 2 ** level) * columns;
    for (let it = 0; it < columns; it++) {
      const [a, b] = [run[first + it]!, run[last + it]!];
      out[s * columns + it] = side * a < side * b ? a : b;
    }
  }
  return out;
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
