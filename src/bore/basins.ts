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
  const order = Array.from(field.keys()).filter((k) => field[k]! > floor);
  order.sort((a, b) => field[b]! - field[a]! || a - b);
  const owner = new Int32Array(field.length).fill(-1);
  // A hill is named by its summit; `into` leads from a joined hill to the one that took it.
  const into = new Map<number, number>();
  const root = (k: number): number => {
    let at = k;
    while (into.has(at)) at = into.get(at)!;
    return at;
  };
  for (const k of order) {
    const around = new Set<number>();
    for (const j of neighbours(k, columns, field.length)) {
      if (owner[j]! >= 0) around.add(root(owner[j]!));
    }
    if (around.size === 0) {
      owner[k] = k;
      continue;
    }
    const hills = [...around].sort((a, b) => field[b]! - field[a]! || a - b);
    owner[k] = hills[0]!;
    for (const hill of hills.slice(1)) {
      if (field[hill]! - field[k]! < prominence(field[hill]!)) into.set(hill, hills[0]!);
    }
  }
  const summits = [...new Set(order.map((k) => root(owner[k]!)))];
  summits.sort((a, b) => field[b]! - field[a]! || a - b);
  const index = new Map(summits.map((k, i) => [k, i]));
  const label = owner.map((k) => (k < 0 ? -1 : index.get(root(k))!));
  return { label, summits };
}

function neighbours(k: number, columns: number, size: number): number[] {
  const it = k % columns;
  const row = k - it;
  const near = [row + ((it + 1) % columns), row + ((it + columns - 1) % columns)];
  if (k >= columns) near.push(k - columns);
  if (k + columns < size) near.push(k + columns);
  return near;
}
