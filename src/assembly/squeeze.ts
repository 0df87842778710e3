/**
 * A bore squeezed with heat: how far, where to grip, and between which sizes it can end.
 *
 * Two limits. Pure bending: what closes one way opens the other, the mean diameter is kept: D - J cos 2(theta - jaws), the
 * largest that the bore can end. Bending with upset: hot metal held in jaws also shortens, by U across in the mean; the
 * jaws set the way across them as long as it draws in by less, so D - (J - U) cos 2(theta - jaws) - U; where it draws
 * in by more it leaves the jaws and comes out smaller all round, D - U. All across, mm. J: how far the bore closes across
 * the jaws, cold, once they have let go.
 */
import type { Field, Grid } from '../bore/types.ts';
import type { Range } from './springback.ts';

/** Sizes across at one depth, mm. */
export interface Ends {
  readonly mean: number;
  readonly largest: number;
  readonly least: number;
}

export interface SqueezeRow {
  readonly z: number;
  readonly before: Ends;
  /** J: how far the bore is to close across the jaws, mm; 0 where nothing is wanted. */
  readonly close: number;
  /** By bending alone: the largest it can end. */
  readonly bent: Ends;
  /** With as much upset as one heat is taken to bring: the smallest. */
  readonly upset: Ends;
  /** How far the largest place stays over what is wanted, by bending alone, mm; 0 where it does not. */
  readonly short: number;
}

export interface SqueezePlan {
  /** Clock position of the jaws, theta in [0, pi); the other jaw stands straight across. */
  readonly jaws: number;
  /** Every depth of the seat, from the rim. */
  readonly rows: readonly SqueezeRow[];
  /** Depths over which to grip the boss: where at least half of the greatest need is. */
  readonly grip: { readonly from: number; readonly to: number };
  /** The depth that needs most. */
  readonly most: SqueezeRow;
  /** Largest place of all, before. */
  readonly largest: number;
}

export interface SqueezeAsked {
  readonly grid: Grid;
  /** Radius, about any axis: only diameters count. Its columns are even in number. */
  readonly radius: Field;
  /** True for a depth that a bushing sits on. */
  readonly seated: readonly boolean[];
  /** What the largest place is to end at, across, mm: a little under the target. */
  readonly goal: number;
  /** The most that the mean draws in with one heat, across, mm. */
  readonly upset: number;
}

/** Less than this is not worth a heat, across, mm: half a thou. */
const WORTH_CLOSING = 0.0127;

/**
 * How far to squeeze, depth by depth, so that the largest place ends at the goal and no farther.
 *
 * @returns null where no depth of the seat is larger than the goal by half a thou, or none is known
 */
export function planSqueeze(asked: SqueezeAsked): SqueezePlan | null {
  const { grid, seated, goal } = asked;
  const sizes = [...grid.z].map((_, iz) => (seated[iz] ? diametersAt(asked, iz) : null));
  const large = sizes.map((d) => d !== null && Math.max(...d) > goal + WORTH_CLOSING);
  const jaws = longWay(sizes.filter((_, iz) => large[iz]));
  if (Number.isNaN(jaws)) return null;
  const bends = bendsOf(grid.theta.length / 2, jaws);
  const rows = sizes.flatMap((d, iz) => (d === null ? [] : [rowOf(asked, grid.z[iz]!, d, bends)]));
  const most = rows.reduce((a, b) => (needOf(b) > needOf(a) ? b : a));
  const gripped = rows.filter((row) => needOf(row) >= needOf(most) / 2).map(({ z }) => z);
  return {
    jaws,
    rows,
    grip: { from: Math.min(...gripped), to: Math.max(...gripped) },
    most,
    largest: Math.max(...rows.map(({ before }) => before.largest)),
  };
}

/** All that the largest place is over the goal by, by bending and by drawing in, mm. */
export function needOf({ close, short }: SqueezeRow): number {
  return close + short;
}

/** Diameters over half a turn from 12 o'clock; null where one is not known. */
function diametersAt({ grid, radius }: SqueezeAsked, iz: number): Float64Array | null {
  const columns = grid.theta.length;
  const half = columns / 2;
  const row = radius.subarray(iz * columns, (iz + 1) * columns);
  const d = Float64Array.from({ length: half }, (_, it) => row[it]! + row[it + half]!);
  return d.every((value) => value > 0) ? d : null;
}

/** Where the common oval of these depths is longest, in [0, pi); NaN without any depth or any oval. */
function longWay(sizes: readonly (Float64Array | null)[]): number {
  let [along, beside] = [0, 0];
  for (const d of sizes) {
    if (d === null) continue;
    for (let it = 0; it < d.length; it++) {
      const twice = (2 * Math.PI * it) / d.length;
      along += d[it]! * Math.cos(twice);
      beside += d[it]! * Math.sin(twice);
    }
  }
  if (!(Math.hypot(along, beside) > 1e-9)) return Number.NaN;
  const way = Math.atan2(beside, along) / 2;
  return way < 0 ? way + Math.PI : way;
}

function rowOf(asked: SqueezeAsked, z: number, d: Float64Array, bends: Float64Array): SqueezeRow {
  const { close, short } = closingOf(d, bends, asked.goal);
  return {
    z,
    before: endsOf(d),
    close,
    bent: endsOf(squeezed(d, bends, close, 0)),
    upset: endsOf(squeezed(d, bends, close, close + short > 0 ? asked.upset : 0)),
    short,
  };
}

/** Diameters after closing by J across the jaws with an upset U of the mean. */
function squeezed(d: Float64Array, bends: Float64Array, close: number, upset: number) {
  const bent = Math.max(0, close - upset);
  return d.map((value, it) => value - bent * bends[it]! - upset);
}

/** How much of J each of `half` diameters closes, over half a turn from 12 o'clock; below 0: it opens. */
function bendsOf(half: number, jaws: number): Float64Array {
  return Float64Array.from({ length: half }, (_, it) =>
    Math.cos(2 * ((Math.PI * it) / half - jaws)),
  );
}

function endsOf(d: Float64Array): Ends {
  const mean = d.reduce((sum, value) => sum + value, 0) / d.length;
  return { mean, largest: Math.max(...d), least: Math.min(...d) };
}

/**
 * The least J with which no place ends over the goal: each place asks for at least, or allows at most, so much of it.
 * Where they contradict each other, the J that brings the largest place nearest to the goal.
 */
function closingOf(
  d: Float64Array,
  bends: Float64Array,
  goal: number,
): { readonly close: number; readonly short: number } {
  let [least, most] = [0, Number.POSITIVE_INFINITY];
  d.forEach((value, it) => {
    const asks = (value - goal) / bends[it]!;
    if (bends[it]! > 0) least = Math.max(least, asks);
    else if (bends[it]! < 0) most = Math.min(most, asks);
    else if (value > goal) most = Number.NEGATIVE_INFINITY;
  });
  if (least <= most) return { close: least, short: 0 };
  const largest = (close: number) => {
    let most = 0;
    for (let it = 0; it < d.length; it++) {
      const size = d[it]! - close * bends[it]!;
      if (size > most) most = size;
    }
    return most;
  };
  const close = leastOf(largest, Math.max(...d) - Math.min(...d));
  return { close, short: Math.max(0, largest(close) - goal) };
}

/** Steps of two thirds: from a millimetre down to rounding. */
const THIRDS = 80;

/** Where a convex function is least on [0, end]. The largest place is one in J, as the greatest of straight lines. */
function leastOf(f: (at: number) => number, end: number): number {
  let [low, high] = [0, end];
  for (let i = 0; i < THIRDS; i++) {
    const third = (high - low) / 3;
    if (f(low + third) <= f(high - third)) high -= third;
    else low += third;
  }
  return (low + high) / 2;
}

/** A reading across to take when it is cold, and between which sizes it is expected. */
export interface ColdReading extends Range {
  readonly theta: number;
  readonly z: number;
}

/** The jaws' way, the way between, and the two at 45 degrees. */
const WAYS = [0, 1, 2, 3] as const;

/**
 * What to measure cold, and what to expect once the jaws have moved all the way: between bending alone and the most upset of
 * one heat, and between what the jaws may have brought.
 *
 * @param depths at which readings are taken; the nearest of the grid tells what to expect
 * @param off how far J may be out either way, as springback is not known better, across, mm
 * @param give of a diameter before, across, mm
 */
export function coldReadings(
  asked: SqueezeAsked,
  plan: SqueezePlan,
  depths: readonly number[],
  off: number,
  give: number,
): ColdReading[] {
  const bends = bendsOf(asked.grid.theta.length / 2, plan.jaws);
  return depths.flatMap((depth) => {
    const row = nearest(plan.rows, depth);
    const d = row && diametersAt(asked, asked.grid.z.indexOf(row.z));
    if (!row || !d) return [];
    return WAYS.map((way) => {
      const theta = (plan.jaws + (way * Math.PI) / 4) % Math.PI;
      // An even sample of a smooth row: the nearest column is within a degree and a half.
      const it = Math.round((theta / Math.PI) * d.length) % d.length;
      const slack = row.close > 0 ? Math.min(off, row.close) : 0;
      const drawn = needOf(row) > 0 ? [0, asked.upset] : [0];
      const ends = [row.close - slack, row.close + slack].flatMap((close) =>
        drawn.map((upset) => squeezed(d, bends, close, upset)[it]!),
      );
      return { theta, z: depth, least: Math.min(...ends) - give, most: Math.max(...ends) + give };
    });
  });
}

function nearest(rows: readonly SqueezeRow[], z: number): SqueezeRow | undefined {
  return rows.toSorted((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z))[0];
}
