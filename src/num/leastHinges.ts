/**
 * Smallest weighted sum of hinges, `sum_k weight_k max(0, height_k + slope_k . x)`, exactly.
 *
 * The sum is convex and made of flat pieces: its least point lies where some hinges bend, or in a flat. From piece to
 * piece the way goes straight down, along the hinges that are held in their bend, to where it no longer falls; a held
 * hinge is let go of when that would lower the sum (the descent of Barrodale and Roberts for sums of absolute values,
 * SIAM Journal on Numerical Analysis 10, 1973, 839-848, for hinges). What holds the end is its proof: see `shares`.
 */
import { Held } from './heldSlopes.ts';

export interface Hinges {
  /** count * unknowns, row-major. */
  readonly slope: Float64Array;
  readonly height: Float64Array;
  /** Above 0. */
  readonly weight: Float64Array;
  readonly count: number;
  readonly unknowns: number;
}

export interface LeastHinges {
  readonly x: Float64Array;
  /** The sum at x. */
  readonly value: number;
  /** Hinges held in their bend, at most as many as unknowns. */
  readonly held: readonly number[];
  /**
   * By hinge: 1 above its bend, 0 below, between for a held one. `sum weight share slope + tie (x - near) = 0`, so that
   * no x gives less than `sum weight share height` (the linear programme's dual) but for the tie.
   */
  shares(): Float64Array;
}

/** A gradient below this is rounding: weights sum to about 1, slopes are about 1. */
const NOTHING = 1e-14;
/** Forces are known to about this. */
const FORCE_SLACK = 1e-12;
const MOST_MOVES = 4000;

/** The descent is worked on so many hinges at first, those nearest to their bend: all others keep their side. */
const FEW = 400;
/** How many more are taken each time that one of the others changed its side after all. */
const MORE = 3;

/**
 * @param near where many x give the least sum, the one nearest to this is taken
 * @param tie how hard it is held there: adds `tie / 2 |x - near|^2`
 * @param start where to set out from; left out: the answer to a few of the hinges
 */
export function leastHinges(
  hinges: Hinges,
  near: ArrayLike<number>,
  tie: number,
  start?: ArrayLike<number>,
): LeastHinges {
  const { count } = hinges;
  let x = start ?? descend(taken(hinges, everyFew(count)), near, tie, near).x;
  for (let most = FEW; most < count; most *= MORE) {
    const heights = heightsAt(hinges, x);
    const close = closest(heights, most);
    const found = descend(taken(hinges, close), near, tie, x, pullOfOthers(hinges, heights, close));
    const after = heightsAt(hinges, found.x);
    if (sidesKept(heights, after, close)) return spread(hinges, after, close, found);
    if (sumOf(hinges, after) < sumOf(hinges, heights)) x = found.x;
  }
  return descend(hinges, near, tie, x);
}

function descend(
  hinges: Hinges,
  near: ArrayLike<number>,
  tie: number,
  start: ArrayLike<number>,
  besides: Float64Array = new Float64Array(hinges.unknowns),
): LeastHinges {
  const descent = new Descent(hinges, near, tie, start, besides);
  for (let move = 0; move < MOST_MOVES; move++) {
    if (!descent.goOn()) break;
  }
  return descent.end();
}

function heightsAt(
  { slope, height, count, unknowns: n }: Hinges,
  x: ArrayLike<number>,
  out: Float64Array = new Float64Array(count),
): Float64Array {
  for (let k = 0; k < count; k++) {
    let h = height[k]!;
    for (let j = 0; j < n; j++) h += slope[k * n + j]! * x[j]!;
    out[k] = h;
  }
  return out;
}

function everyFew(count: number): Int32Array {
  const few = Math.max(1, Math.floor(count / FEW));
  return Int32Array.from({ length: Math.ceil(count / few) }, (_, i) => i * few);
}

/** About so many hinges, those nearest to their bend, ascending. */
function closest(heights: Float64Array, most: number): Int32Array {
  // How far the nearest lie is told from every few of them.
  const sizes = Float64Array.from(everyFew(heights.length), (k) => Math.abs(heights[k]!)).sort();
  const widest = sizes[Math.floor((sizes.length * most) / heights.length)]!;
  const out = new Int32Array(heights.length);
  let count = 0;
  for (let k = 0; k < heights.length; k++) if (Math.abs(heights[k]!) <= widest) out[count++] = k;
  return out.subarray(0, count);
}

/** True where all but the close ones are on the side on which they were. */
function sidesKept(before: Float64Array, after: Float64Array, close: Int32Array): boolean {
  let at = 0;
  for (let k = 0; k < before.length; k++) {
    if (close[at] === k) at++;
    else if (before[k]! > 0 !== after[k]! > 0) return false;
  }
  return true;
}

function sumOf({ weight }: Hinges, heights: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < heights.length; k++) {
    if (heights[k]! > 0) sum += weight[k]! * heights[k]!;
  }
  return sum;
}

function taken({ slope, height, weight, unknowns: n }: Hinges, which: Int32Array): Hinges {
  const part = {
    slope: new Float64Array(n * which.length),
    height: new Float64Array(which.length),
    weight: new Float64Array(which.length),
    count: which.length,
    unknowns: n,
  };
  for (let i = 0; i < which.length; i++) {
    const k = which[i]!;
    for (let j = 0; j < n; j++) part.slope[n * i + j] = slope[n * k + j]!;
    part.height[i] = height[k]!;
    part.weight[i] = weight[k]!;
  }
  return part;
}

/** What the hinges that are not near add to the gradient: all of each one above its bend. */
function pullOfOthers(
  { slope, weight, count, unknowns: n }: Hinges,
  heights: Float64Array,
  close: Int32Array,
): Float64Array {
  const out = new Float64Array(n);
  let at = 0;
  for (let k = 0; k < count; k++) {
    if (close[at] === k) at++;
    else if (heights[k]! > 0) {
      for (let j = 0; j < n; j++) out[j] = out[j]! + weight[k]! * slope[k * n + j]!;
    }
  }
  return out;
}

/** The answer for some hinges as one for all. */
function spread(
  hinges: Hinges,
  heights: Float64Array,
  close: Int32Array,
  { x, held, shares: some }: LeastHinges,
): LeastHinges {
  const shares = () => {
    const out = new Float64Array(heights.length);
    for (let k = 0; k < heights.length; k++) if (heights[k]! > 0) out[k] = 1;
    const ofClose = some();
    for (let i = 0; i < close.length; i++) out[close[i]!] = ofClose[i]!;
    return out;
  };
  return { x, value: sumOf(hinges, heights), held: held.map((i) => close[i]!), shares };
}

class Descent {
  private readonly x: Float64Array;
  private readonly height: Float64Array;
  private readonly rate: Float64Array;
  /** By hinge: 1 above, -1 below, 0 held in its bend. */
  private readonly side: Int8Array;
  private readonly bends: Bends;
  private readonly held: Held;

  private readonly hinges: Hinges;
  private readonly near: ArrayLike<number>;
  private readonly tie: number;
  private readonly besides: Float64Array;

  /** @param besides a gradient that comes on top of the hinges' */
  constructor(
    hinges: Hinges,
    near: ArrayLike<number>,
    tie: number,
    start: ArrayLike<number>,
    besides: Float64Array,
  ) {
    this.hinges = hinges;
    this.near = near;
    this.tie = tie;
    this.besides = besides;
    const { count, unknowns } = hinges;
    this.x = Float64Array.from(start);
    this.rate = new Float64Array(count);
    this.bends = new Bends(count);
    this.held = new Held(unknowns);
    this.height = heightsAt(hinges, this.x);
    this.side = new Int8Array(count);
    for (let k = 0; k < count; k++) this.side[k] = this.height[k]! > 0 ? 1 : -1;
  }

  /** One move; false once nothing lowers the sum. */
  goOn(): boolean {
    const pull = this.gradient();
    let way = this.held.across(pull);
    if (!(Math.hypot(...way) > NOTHING)) {
      if (!this.letGo(pull)) return false;
      way = this.held.across(this.gradient());
      if (!(Math.hypot(...way) > NOTHING)) return false;
    }
    const down = way.map((v) => -v);
    return this.follow(down, -dot(way, way));
  }

  end(): LeastHinges {
    const value = sumOf(this.hinges, this.height);
    return { x: this.x, value, held: this.held.rows, shares: () => this.shares() };
  }

  private shares(): Float64Array {
    const shares = new Float64Array(this.side.length);
    for (let k = 0; k < shares.length; k++) if (this.side[k]! > 0) shares[k] = 1;
    const forces = this.held.forces(this.gradient());
    this.held.rows.forEach((row, i) => {
      shares[row] = Math.min(1, Math.max(0, forces[i]! / this.hinges.weight[row]!));
    });
    return shares;
  }

  /** Of the sum with the held hinges left out. */
  private gradient(): Float64Array {
    const { slope, weight, count, unknowns: n } = this.hinges;
    const out = Float64Array.from(
      this.x,
      (v, j) => this.besides[j]! + this.tie * (v - this.near[j]!),
    );
    for (let k = 0; k < count; k++) {
      if (this.side[k]! <= 0) continue;
      for (let j = 0; j < n; j++) out[j] = out[j]! + weight[k]! * slope[k * n + j]!;
    }
    return out;
  }

  /** Lets go of the held hinge that would lower the sum most; false where each is held by a share from 0 to 1. */
  private letGo(pull: Float64Array): boolean {
    const { weight } = this.hinges;
    const forces = this.held.forces(pull);
    let worst = -1;
    let most = FORCE_SLACK;
    this.held.rows.forEach((row, i) => {
      const beyond = Math.max(-forces[i]!, forces[i]! - weight[row]!);
      if (!(beyond > most)) return;
      worst = i;
      most = beyond;
    });
    if (worst < 0) return false;
    const row = this.held.rows[worst]!;
    this.side[row] = forces[worst]! > weight[row]! ? 1 : -1;
    this.held.remove(worst);
    return true;
  }

  /** Goes that way as far as the sum falls; takes the hinge in whose bend it ends. */
  private follow(way: Float64Array, steep: number): boolean {
    const { slope, weight, count, unknowns: n } = this.hinges;
    this.bends.clear();
    for (let k = 0; k < count; k++) {
      if (this.side[k] === 0) continue;
      let rate = 0;
      for (let j = 0; j < n; j++) rate += slope[k * n + j]! * way[j]!;
      this.rate[k] = rate;
      if (this.side[k]! * rate < 0) {
        this.bends.add(k, Math.max(0, -this.height[k]! / rate), weight[k]! * Math.abs(rate));
      }
    }
    const { row, far, passed } = this.bends.lowest(steep, this.tie * dot(way, way));
    if (!(far < Number.POSITIVE_INFINITY)) return false;
    for (let i = 0; i < passed; i++) {
      const k = this.bends.rows[i]!;
      this.side[k] = -this.side[k]!;
    }
    for (let j = 0; j < n; j++) this.x[j] = this.x[j]! + far * way[j]!;
    if (row >= 0) {
      this.side[row] = 0;
      this.held.add(row, slope.subarray(row * n, row * n + n));
    }
    heightsAt(this.hinges, this.x, this.height);
    return true;
  }
}

/** Where a straight way meets bends, and how much steeper the sum becomes at each. */
class Bends {
  readonly rows: Int32Array;
  private readonly far: Float64Array;
  private readonly steeper: Float64Array;
  private count = 0;

  constructor(most: number) {
    this.rows = new Int32Array(most);
    this.far = new Float64Array(most);
    this.steeper = new Float64Array(most);
  }

  clear(): void {
    this.count = 0;
  }

  add(row: number, far: number, steeper: number): void {
    this.rows[this.count] = row;
    this.far[this.count] = far;
    this.steeper[this.count] = steeper;
    this.count++;
  }

  /**
   * Where a sum that begins with a slope `steep` < 0, bent by `curve`, falls no more. The bends passed on the way are put
   * first in `rows`; `row` is the one it ends in, -1 where it ends between two.
   */
  lowest(steep: number, curve: number): { row: number; far: number; passed: number } {
    let from = 0;
    let to = this.count;
    let slope = steep;
    // All before `from` are passed with `slope` after them; all from `to` on are not reached.
    while (from < to) {
      const middle = this.middleOf(from, to);
      const at = this.part(from, to, middle);
      let next = slope;
      for (let i = from; i < at; i++) next += this.steeper[i]!;
      if (next + curve * middle >= 0) {
        to = at;
        continue;
      }
      // The bends at `middle` itself come first of the rest.
      let end = at;
      while (end < to && this.far[end] === middle) {
        next += this.steeper[end]!;
        if (next + curve * middle >= 0) {
          return { row: this.rows[end]!, far: middle, passed: end };
        }
        end++;
      }
      slope = next;
      from = end;
    }
    const far = curve > 0 ? -slope / curve : Number.POSITIVE_INFINITY;
    return { row: -1, far, passed: from };
  }

  /** A distance near the middle of some: of the first, the last and the one between. */
  private middleOf(from: number, to: number): number {
    const a = this.far[from]!;
    const b = this.far[(from + to) >> 1]!;
    const c = this.far[to - 1]!;
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }

  /** Puts those before `middle` first and those at it next; returns where the latter begin. */
  private part(from: number, to: number, middle: number): number {
    let at = from;
    for (let i = from; i < to; i++) if (this.far[i]! < middle) this.swap(i, at++);
    let same = at;
    for (let i = at; i < to; i++) if (this.far[i] === middle) this.swap(i, same++);
    return at;
  }

  private swap(i: number, j: number): void {
    if (i === j) return;
    const row = this.rows[i]!;
    const far = this.far[i]!;
    const steeper = this.steeper[i]!;
    this.rows[i] = this.rows[j]!;
    this.far[i] = this.far[j]!;
    this.steeper[i] = this.steeper[j]!;
    this.rows[j] = row;
    this.far[j] = far;
    this.steeper[j] = steeper;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < a.length; j++) sum += a[j]! * b[j]!;
  return sum;
}
