/**
 * The hole that a pin runs in, as radii about a straight axis: how wide it is, the largest straight pin that goes through.
 * First order in the departures from round.
 */
import { minimaxStep } from '../num/minimaxStep.ts';

export interface Hole {
  /** rows * columns, mm, about one straight axis; NaN where there is none. */
  readonly radius: Float64Array;
  /** Depths of the rows, rising, mm. */
  readonly z: ArrayLike<number>;
  /** Places round the clock, evenly from 12 o'clock; even. */
  readonly columns: number;
}

/** Across, mm, and where: clock position of one end, 0 to pi, and depth. */
export interface AcrossAt {
  readonly mm: number;
  readonly theta: number;
  readonly z: number;
}

export interface HoleSizes {
  readonly least: AcrossAt;
  readonly greatest: AcrossAt;
  readonly mean: number;
  /** Greatest less least diameter at one depth, where that is most; the clock is that of the greatest. */
  readonly outOfRound: AcrossAt;
}

/** @returns null where no diameter is known */
export function holeSizes({ radius, z, columns }: Hole): HoleSizes | null {
  const half = columns / 2;
  const nowhere = { mm: Number.NaN, theta: Number.NaN, z: Number.NaN };
  let [least, greatest, outOfRound]: AcrossAt[] = [nowhere, nowhere, nowhere] as const;
  let [sum, count] = [0, 0];
  for (let row = 0; row < z.length; row++) {
    let [low, high] = [nowhere, nowhere];
    for (let i = 0; i < half; i++) {
      const mm = radius[row * columns + i]! + radius[row * columns + i + half]!;
      if (Number.isNaN(mm)) continue;
      const at = { mm, theta: (2 * Math.PI * i) / columns, z: z[row]! };
      if (!(low.mm <= mm)) low = at;
      if (!(high.mm >= mm)) high = at;
      sum += mm;
      count += 1;
    }
    if (low.mm < least!.mm || Number.isNaN(least!.mm)) least = low;
    if (high.mm > greatest!.mm || Number.isNaN(greatest!.mm)) greatest = high;
    const out = { ...high, mm: high.mm - low.mm };
    if (out.mm > outOfRound!.mm || Number.isNaN(outOfRound!.mm)) outOfRound = out;
  }
  if (count === 0) return null;
  return { least: least!, greatest: greatest!, outOfRound: outOfRound!, mean: sum / count };
}

export interface LargestPin {
  /** Across, mm. */
  readonly diameter: number;
  /** Its axis in the hole's frame, mm and mm per mm of depth: x to 3 o'clock, y to 12. */
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
}

/** Keeps the axis where it is when nothing says where to go, of heights of about 1. */
const TIE = 1e-7;

/**
 * The largest straight pin that goes through, free to shift and to lean.
 *
 * @returns null where no radius is known, or the search does not end
 */
export function largestPin({ radius, z, columns }: Hole): LargestPin | null {
  const known: number[] = [];
  for (let k = 0; k < radius.length; k++) if (Number.isFinite(radius[k]!)) known.push(k);
  if (known.length === 0) return null;
  const rows = z.length;
  const middle = (z[0]! + z[rows - 1]!) / 2;
  const reach = (z[rows - 1]! - z[0]!) / 2;
  let [least, greatest] = [Number.POSITIVE_INFINITY, 0];
  for (const k of known) {
    least = Math.min(least, radius[k]!);
    greatest = Math.max(greatest, radius[k]!);
  }
  const unit = greatest - least || 1;
  const a = new Float64Array(known.length * 4);
  const b = new Float64Array(known.length);
  const { sines, cosines } = turns(columns);
  for (let i = 0; i < known.length; i++) {
    const k = known[i]!;
    const arm = reach > 0 ? (z[Math.floor(k / columns)]! - middle) / reach : 0;
    const [s, c] = [sines[k % columns]!, cosines[k % columns]!];
    a[4 * i] = s;
    a[4 * i + 1] = c;
    a[4 * i + 2] = arm * s;
    a[4 * i + 3] = arm * c;
    b[i] = (least - radius[k]!) / unit;
  }
  const tie = Float64Array.from({ length: 16 }, (_, i) => (i % 5 === 0 ? TIE : 0));
  const found = minimaxStep({ a, b, count: known.length, unknowns: 4 }, tie, []);
  if (found === null) return null;
  const [x, y, leanX, leanY] = Array.from(found.x, (one) => one * unit) as [
    number,
    number,
    number,
    number,
  ];
  const per = reach > 0 ? 1 / reach : 0;
  return {
    diameter: 2 * (least - unit * found.level),
    x: x - leanX * per * middle,
    y: y - leanY * per * middle,
    leanX: leanX * per,
    leanY: leanY * per,
  };
}

/** Sine and cosine of each column's clock position. */
export function turns(columns: number): { sines: Float64Array; cosines: Float64Array } {
  const theta = Float64Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns);
  return { sines: theta.map(Math.sin), cosines: theta.map(Math.cos) };
}

/** Radius of the hole about the axis of that pin, mm; NaN where there is no wall. */
export function radiusAbout(
  { radius, z, columns }: Hole,
  { x, y, leanX, leanY }: LargestPin,
): Float64Array {
  const { sines, cosines } = turns(columns);
  const out = new Float64Array(radius.length);
  for (let k = 0; k < out.length; k++) {
    const deep = z[Math.floor(k / columns)]!;
    const across = (x + leanX * deep) * sines[k % columns]!;
    out[k] = radius[k]! - across - (y + leanY * deep) * cosines[k % columns]!;
  }
  return out;
}
