/**
 * Where a bore's wall ends in a chamfer or a face: there it widens faster along the depth than any wear.
 */

/** A quarter: 14 degrees. A bell-mouth of 0.2 mm over 5 mm opens by a twenty-fifth. */
const STEEP = 0.25;
/** A wall that widens by less, mm, may have worn so. */
const LEAST_RISE = 0.15;
/** How far from an end a chamfer is looked for: this deep, mm, or that share of the depths. */
const REACH = 3;
const REACH_SHARE = 0.05;
/** Rings along the depth: so many points in each at least, and so many rings. */
const RING_POINTS = 200;
const MOST_RINGS = 200;
const FEWEST_RINGS = 20;

/**
 * The depths between which the wall is a wall, mm; `from` and `to` where neither end shows anything else.
 *
 * @param counts 1 where a point is to be looked at; depths of those lie between from and to
 */
export function wallEnds(
  depth: Float64Array,
  radius: Float64Array,
  counts: Uint8Array,
  from: number,
  to: number,
): { from: number; to: number } {
  const points = counts.reduce((sum, one) => sum + one, 0);
  const rings = Math.min(MOST_RINGS, Math.floor(points / RING_POINTS));
  if (!(rings >= FEWEST_RINGS && to > from)) return { from, to };
  const step = (to - from) / rings;
  const middle = ringMiddles(depth, radius, counts, { from, step, rings });
  const reach = Math.min(rings >> 2, Math.ceil(Math.max(REACH, REACH_SHARE * (to - from)) / step));
  const upper = wallFrom(middle, reach, step);
  const lower = wallFrom(middle.slice().reverse(), reach, step);
  return { from: from + upper * step, to: to - lower * step };
}

interface Rings {
  readonly from: number;
  readonly step: number;
  readonly rings: number;
}

/** Middle one of the radii in each ring; NaN in a ring of few. */
function ringMiddles(
  depth: Float64Array,
  radius: Float64Array,
  counts: Uint8Array,
  { from, step, rings }: Rings,
): Float64Array {
  const ringOf = (i: number) =>
    Math.min(rings - 1, Math.max(0, Math.floor((depth[i]! - from) / step)));
  const ends = new Int32Array(rings + 1);
  for (let i = 0; i < depth.length; i++) {
    if (counts[i] === 1) ends[ringOf(i) + 1] = ends[ringOf(i) + 1]! + 1;
  }
  for (let k = 0; k < rings; k++) ends[k + 1] = ends[k + 1]! + ends[k]!;
  const next = ends.slice();
  const sorted = new Float64Array(ends[rings]!);
  for (let i = 0; i < depth.length; i++) {
    if (counts[i] !== 1) continue;
    const k = ringOf(i);
    sorted[next[k]!] = radius[i]!;
    next[k] = next[k]! + 1;
  }
  return Float64Array.from({ length: rings }, (_, k) => {
    const own = sorted.subarray(ends[k]!, ends[k + 1]!);
    if (own.length < RING_POINTS / 4) return Number.NaN;
    return own.sort()[own.length >> 1]!;
  });
}

/** Rings to leave out at the first end: with the one in which the steep part begins, where there is one. */
function wallFrom(middle: Float64Array, reach: number, step: number): number {
  const wide = STEEP * step;
  for (let k = reach; k > 0; k--) {
    const rises = middle[k - 1]! - middle[k]! > wide;
    const goesOn = k === 1 || middle[k - 2]! - middle[k - 1]! > wide;
    const most = middle.subarray(0, k).reduce((a, b) => Math.max(a, b), middle[k]!);
    if (rises && goesOn && most - middle[k]! > LEAST_RISE) return k + 1;
  }
  return 0;
}
