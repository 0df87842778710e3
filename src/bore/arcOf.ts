/** The stretch of a clock that some of its places take up. */

/** What covers at least this share of the clock is said to go all round. */
export const ALL_ROUND = 0.95;

export interface Arc {
  /** First place clockwise, and how many from there on. */
  readonly from: number;
  readonly count: number;
}

/**
 * The shortest stretch that holds all of them: what the longest run of places without any leaves.
 *
 * @param held 1 where a place counts; at least one does
 */
export function arcOf(held: Uint8Array): Arc {
  const size = held.length;
  let best = { from: 0, count: size };
  const first = held.indexOf(1);
  for (let step = 0, empty = 0; step <= size; step++) {
    const at = (first + step) % size;
    if (held[at] !== 1) {
      empty++;
      continue;
    }
    if (size - empty < best.count) best = { from: at, count: size - empty };
    empty = 0;
  }
  return best;
}

/** From the first of them to the last, going through a stretch that holds them all. */
export function arcWithin(held: Uint8Array, { from, count }: Arc): Arc {
  const size = held.length;
  let [first, last] = [count, -1];
  for (let i = 0; i < count; i++) {
    if (held[(from + i) % size] !== 1) continue;
    first = Math.min(first, i);
    last = i;
  }
  return { from: (from + first) % size, count: last - first + 1 };
}
