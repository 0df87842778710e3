import { choleskyInPlace, solveLower, solveLowerTransposed } from './cholesky.ts';

/** Rows of a linear minimax: row i is the height `b[i] + a[i] . x` over the unknowns x. */
export interface Rows {
  /** count * unknowns, row-major */
  a: ArrayLike<number>;
  /** count */
  b: ArrayLike<number>;
  count: number;
  unknowns: number;
}

/** Where the greatest height is least, and what holds it there. */
export interface MinimaxStep {
  x: Float64Array;
  /** greatest height at x, without the quadratic term */
  level: number;
  /** rows that hold it, at most unknowns + 1 */
  held: number[];
  /** their weights: positive, sum 1, and `sum weight * a + h x = 0` */
  weights: number[];
}

/** Rows within this of the level (heights are about 1) do not rise above it. */
const TOUCHES = 4 * Number.EPSILON;
/** A row with no more than this share of it outside the span of others is a mix of them. */
const DEPENDENT = 1e-10;
/** Weights of sum 1 are rounded by about this. */
const NO_WEIGHT = 1e-12;
const MOST_EXCHANGES = 500;

/**
 * Smallest of `max_i (b_i + a_i . x) + x . h x / 2`, for h symmetric and positive definite, if only
 * by little. Where the rows alone have a sharp least corner, a small h does not move it.
 *
 * The dual is worked: weights on a few rows, which are exchanged one at a time against the row that
 * rises highest above the level (Wolfe's nearest point in a polytope, Mathematical Programming 11,
 * 1976, 128-149, with heights; with a full set of rows held it is the exchange of Stiefel, 1959).
 *
 * @param start rows thought to hold; only a hint
 * @returns null when rounding lets the exchange go round in circles or h is not definite
 */
export function minimaxStep(
  rows: Rows,
  h: ArrayLike<number>,
  start: readonly number[],
): MinimaxStep | null {
  let held = startingRows(rows, h, start);
  let best = balance(rows, h, held);
  if (best === null) return null;
  for (let exchange = 0; exchange < MOST_EXCHANGES; exchange++) {
    const { row, rise } = highest(rows, best);
    if (!(rise > TOUCHES) || held.includes(row)) return answer(best, held);
    const next = takenIn(rows, h, held, best, row);
    if (next === null) return answer(best, held);
    // A row let go of as soon as it came in differs from a held one by rounding.
    if (!next.held.includes(row)) return answer(best, held);
    held = next.held;
    best = next.balance;
  }
  return null;
}

/** Rows that only touch, with no weight to speak of, are let go of. */
function answer({ x, level, weights }: Balance, held: number[]): MinimaxStep {
  const carries = weights.map((w) => w > NO_WEIGHT);
  return {
    x,
    level,
    held: held.filter((_, i) => carries[i]),
    weights: weights.filter((_, i) => carries[i]),
  };
}

/** All of the hinted rows when they hold by themselves; else the highest row alone. */
function startingRows(rows: Rows, h: ArrayLike<number>, start: readonly number[]): number[] {
  if (start.length > 0 && start.length <= rows.unknowns + 1) {
    const balanced = balance(rows, h, start);
    if (balanced?.weights.every((w) => w > 0)) return [...start];
  }
  let top = 0;
  for (let i = 1; i < rows.count; i++) if (rows.b[i]! > rows.b[top]!) top = i;
  return [top];
}

function highest({ a, b, count, unknowns }: Rows, { x, level }: Balance) {
  let row = 0;
  let rise = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    let height = b[i]! - level;
    for (let j = 0; j < unknowns; j++) height += a[i * unknowns + j]! * x[j]!;
    if (height > rise) {
      rise = height;
      row = i;
    }
  }
  return { row, rise };
}

interface Balance {
  x: Float64Array;
  level: number;
  weights: number[];
  frame: Frame;
}

/** The point where all held rows are equally high and their weights balance; null if h is not definite. */
function balance(
  { a, b, unknowns: q }: Rows,
  h: ArrayLike<number>,
  held: readonly number[],
): Balance | null {
  const frame = frameOf(a, q, held);
  const n = q + 1;
  // y is x and the level. Within the span of the held rows it is fixed by their heights.
  const y = new Float64Array(n);
  const inside = held.map((row) => -b[row]!);
  for (let k = 0; k < held.length; k++) {
    for (let i = 0; i < k; i++) inside[k]! -= frame.r[k]![i]! * inside[i]!;
    inside[k]! /= frame.r[k]![k]!;
    for (let j = 0; j < n; j++) y[j]! += inside[k]! * frame.units[k]![j]!;
  }
  if (!leastAcross(y, completed(frame.units, n), h, q)) return null;
  // What is left of the change of level and curvature is carried by the weights.
  const pull = bentBy(h, y, q);
  pull[q] = 1;
  const weights = frame.units.map((unit) => -dot(unit, pull));
  solveUpper(frame.r, weights);
  return { x: y.slice(0, q), level: y[q]!, weights, frame };
}

/** Moves y along the free directions to where level and curvature are least together. */
function leastAcross(
  y: Float64Array,
  free: Float64Array[],
  h: ArrayLike<number>,
  q: number,
): boolean {
  const count = free.length;
  if (count === 0) return true;
  const m = new Float64Array(count * count);
  const pull = bentBy(h, y, q);
  pull[q] = 1;
  const right = Float64Array.from(free, (unit) => -dot(unit, pull));
  free.forEach((unit, j) => {
    const bent = bentBy(h, unit, q);
    free.forEach((other, i) => {
      m[i * count + j] = dot(other, bent);
    });
  });
  if (!choleskyInPlace(m, count)) return false;
  solveLower(m, count, right, right);
  solveLowerTransposed(m, count, right, right);
  free.forEach((unit, k) => {
    for (let j = 0; j <= q; j++) y[j]! += right[k]! * unit[j]!;
  });
  return true;
}

/** h x with a 0 for the level after it. */
function bentBy(h: ArrayLike<number>, y: Float64Array, q: number): Float64Array {
  const out = new Float64Array(q + 1);
  for (let i = 0; i < q; i++) for (let j = 0; j < q; j++) out[i]! += h[i * q + j]! * y[j]!;
  return out;
}

/**
 * Held rows `(a, -1)` as mixes of unit vectors square to each other: row k is the sum of
 * `r[k][i] * units[i]` for i up to k.
 */
interface Frame {
  units: Float64Array[];
  r: number[][];
}

function frameOf(a: ArrayLike<number>, q: number, held: readonly number[]): Frame {
  const frame: Frame = { units: [], r: [] };
  for (const row of held) {
    const { parts, rest } = split(frame.units, lifted(a, q, row));
    const length = norm(rest);
    for (let j = 0; j <= q; j++) rest[j]! /= length;
    frame.units.push(rest);
    frame.r.push([...parts, length]);
  }
  return frame;
}

function lifted(a: ArrayLike<number>, q: number, row: number): Float64Array {
  const v = new Float64Array(q + 1);
  for (let j = 0; j < q; j++) v[j] = a[row * q + j]!;
  v[q] = -1;
  return v;
}

/** Parts of v along unit vectors and what is left; twice, since the first time rounds. */
function split(units: readonly Float64Array[], v: Float64Array) {
  const parts = new Array<number>(units.length).fill(0);
  for (let twice = 0; twice < 2; twice++) {
    for (let k = 0; k < units.length; k++) {
      const part = dot(units[k]!, v);
      parts[k]! += part;
      for (let j = 0; j < v.length; j++) v[j]! -= part * units[k]![j]!;
    }
  }
  return { parts, rest: v };
}

/** Unit vectors that, with the given ones, make a frame of the whole space. */
function completed(units: readonly Float64Array[], n: number): Float64Array[] {
  const all = [...units];
  while (all.length < n) {
    let longest: Float64Array = new Float64Array(n);
    for (let j = 0; j < n; j++) {
      const axis = new Float64Array(n);
      axis[j] = 1;
      const { rest } = split(all, axis);
      if (norm(rest) > norm(longest)) longest = rest;
    }
    const length = norm(longest);
    all.push(longest.map((v) => v / length));
  }
  return all.slice(units.length);
}

/** Solves `sum_k weight_k r[k][i] = right_i` in place, where r[k] has entries up to k only. */
function solveUpper(r: readonly (readonly number[])[], right: number[]): void {
  for (let k = right.length - 1; k >= 0; k--) {
    for (let i = k + 1; i < right.length; i++) right[k]! -= r[i]![k]! * right[i]!;
    right[k]! /= r[k]![k]!;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < a.length; j++) sum += a[j]! * b[j]!;
  return sum;
}

function norm(v: Float64Array): number {
  return Math.sqrt(dot(v, v));
}

/** Takes a row in and lets go of those whose weights would fall below zero. */
function takenIn(
  rows: Rows,
  h: ArrayLike<number>,
  held: readonly number[],
  { weights, frame }: Balance,
  row: number,
): { held: number[]; balance: Balance } | null {
  const mix = mixOf(rows, frame, row);
  if (mix === null) return settled(rows, h, [...held, row], [...weights, 0]);
  // The new row is a mix of the held ones: weight goes over to it until one of them has none.
  let out = -1;
  let share = Number.POSITIVE_INFINITY;
  mix.forEach((c, i) => {
    if (c > DEPENDENT && weights[i]! / c < share) {
      share = weights[i]! / c;
      out = i;
    }
  });
  if (out < 0) return null;
  const left = weights.map((w, i) => Math.max(w - share * mix[i]!, 0));
  const without = (_: number, i: number) => i !== out;
  return settled(rows, h, [...held.filter(without), row], [...left.filter(without), share]);
}

/** Lets go of rows, from given weights on, until those of the rest are positive. */
function settled(
  rows: Rows,
  h: ArrayLike<number>,
  held: number[],
  weights: number[],
): { held: number[]; balance: Balance } | null {
  if (held.length === 0) return null;
  const next = balance(rows, h, held);
  if (next === null) return null;
  if (next.weights.every((w) => w > 0)) return { held, balance: next };
  let out = 0;
  let share = Number.POSITIVE_INFINITY;
  next.weights.forEach((w, i) => {
    if (w > 0) return;
    const s = weights[i]! > 0 ? weights[i]! / (weights[i]! - w) : 0;
    if (s < share) {
      share = s;
      out = i;
    }
  });
  const between = weights.map((w, i) => Math.max(w + share * (next.weights[i]! - w), 0));
  const without = (_: number, i: number) => i !== out;
  return settled(rows, h, held.filter(without), between.filter(without));
}

/** The shares, of sum 1, by which a row is mixed from the held ones; null when it is not. */
function mixOf({ a, unknowns }: Rows, { units, r }: Frame, row: number): number[] | null {
  const v = lifted(a, unknowns, row);
  const length = norm(v);
  const { parts, rest } = split(units, v);
  if (norm(rest) > DEPENDENT * length) return null;
  solveUpper(r, parts);
  return parts;
}
