/**
 * Hills of a field on the unrolled wall: each place given to the summit that it belongs to.
 *
 * The field is flooded from its summits down. Where two hills meet, the lower one goes on as a hill of its own only
 * if it rises far enough above the pass between them (its prominence); else it joins the higher.
 */
import type { Field } from './types.ts';

export interface Basins {
  /** Hill of each place, an index into `summits`; -1 where the field is not above the floor. */
  readonly label: Int32Array;
  /** Place (index into the field) of each hill's summit, highest first. */
  readonly summits: readonly number[];
}

/** @param prominence how far a summit of the given height must rise above its pass to stand alone */
export function basins(
  field: Field,
  columns: number,
  floor: number,
  prominence: (height: number) => number,
): Basins {
  const order = fromTheTop(field, floor);
  const owner = new Int32Array(field.length).fill(-1);
  // A hill is named by its summit; `into` leads from a joined hill to the one that took it.
  const into = new Int32Array(field.length).fill(-1);
  const root = (k: number): number => {
    let at = k;
    while (into[at]! >= 0) at = into[at]!;
    return at;
  };
  const near = new Int32Array(4);
  const around: number[] = [];
  for (const k of order) {
    const count = neighbours(k, columns, field.length, near);
    around.length = 0;
    let known = -1;
    for (let n = 0; n < count; n++) {
      const of = owner[near[n]!]!;
      // Most places lie within one hill.
      if (of < 0 || of === known) continue;
      known = of;
      const hill = root(of);
      if (!around.includes(hill)) around.push(hill);
    }
    if (around.length > 1) around.sort((a, b) => field[b]! - field[a]! || a - b);
    owner[k] = around[0] ?? k;
    for (let n = 1; n < around.length; n++) {
      const hill = around[n]!;
      if (field[hill]! - field[k]! < prominence(field[hill]!)) into[hill] = around[0]!;
    }
  }
  const summits = Array.from(order.filter((k) => owner[k] === k && into[k] === -1));
  summits.sort((a, b) => field[b]! - field[a]! || a - b);
  const index = new Int32Array(field.length);
  summits.forEach((k, i) => {
    index[k] = i;
  });
  const label = new Int32Array(field.length).fill(-1);
  for (const k of order) label[k] = index[root(owner[k]!)]!;
  return { label, summits };
}

/** Places above the floor, the highest first, those alike in their order. */
function fromTheTop(field: Field, floor: number): Int32Array {
  const heights = above(field, floor).sort();
  const out = new Int32Array(heights.length);
  /** How many of each height stand in place already, at the last of them in `heights`. */
  const placed = new Int32Array(heights.length);
  for (let k = 0; k < field.length; k++) {
    const h = field[k]!;
    if (!(h > floor)) continue;
    const last = lastAtMost(heights, h);
    out[heights.length - 1 - last + placed[last]!] = k;
    placed[last] = placed[last]! + 1;
  }
  return out;
}

function above(field: Field, floor: number): Float64Array {
  const out = new Float64Array(field.length);
  let count = 0;
  for (let k = 0; k < field.length; k++) if (field[k]! > floor) out[count++] = field[k]!;
  return out.subarray(0, count);
}

/** Place of the last of the rising values that is not above h; one is h itself. */
function lastAtMost(values: Float64Array, h: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (values[middle]! <= h) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Writes the places beside into `near`; how many they are. */
function neighbours(k: number, columns: number, size: number, near: Int32Array): number {
  const it = k % columns;
  const row = k - it;
  let count = 2;
  near[0] = row + ((it + 1) % columns);
  near[1] = row + ((it + columns - 1) % columns);
  if (k >= columns) near[count++] = k - columns;
  if (k + columns < size) near[count++] = k + columns;
  return count;
}
