/**
 * Reading a field between its grid points. The clock is periodic, the depth is not.
 * `grid.theta` is even from 0 without the closing turn; `grid.z` ascends and need not be even.
 */

interface Grid {
  readonly theta: Float64Array;
  readonly z: Float64Array;
}

const TURN = 2 * Math.PI;

/** A field drawn out on an even mesh that begins at the cut: `values[row * columns + column]`. */
export interface Sampled {
  /** Columns round the bore, without the closing one. */
  readonly columns: number;
  /** Steps along the depth; there are rows + 1 rows, the first at the rim, the last at the bottom. */
  readonly rows: number;
  /** Clock position of the first column, radians. */
  readonly cut: number;
  readonly values: Float64Array;
}

/** An angle brought into [0, 2 pi). */
export function turned(angle: number): number {
  const rest = angle - TURN * Math.floor(angle / TURN);
  return rest >= TURN ? 0 : rest;
}

/** Index of the interval of ascending `z` that holds `at`; the first or last one outside. */
function intervalOf(z: Float64Array, at: number): number {
  let low = 0;
  let high = z.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (z[middle]! <= at) low = middle;
    else high = middle;
  }
  return low;
}

/** Value of a field at a place by straight lines between grid points; NaN outside the depth or beside NaN. */
export function linearAt(grid: Grid, field: Float64Array, theta: number, z: number): number {
  const columns = grid.theta.length;
  const last = grid.z.length - 1;
  if (!(z >= grid.z[0]! - 1e-9 && z <= grid.z[last]! + 1e-9) || !Number.isFinite(theta)) {
    return Number.NaN;
  }
  const u = (turned(theta) / TURN) * columns;
  const i = Math.min(Math.floor(u), columns - 1);
  const next = (i + 1) % columns;
  const k = intervalOf(grid.z, z);
  const below = Math.min(k + 1, last);
  const du = u - i;
  const dz = below === k ? 0 : clamp01((z - grid.z[k]!) / (grid.z[below]! - grid.z[k]!));
  const at = (row: number) => between(field[row * columns + i]!, field[row * columns + next]!, du);
  return between(at(k), at(below), dz);
}

/** A value a share `t` of the way from a to b; the far end has no say where t is 0 or 1, NaN or not. */
function between(a: number, b: number, t: number): number {
  return t <= 1e-12 ? a : t >= 1 - 1e-12 ? b : a + t * (b - a);
}

function clamp01(t: number): number {
  return Math.min(1, Math.max(0, t));
}

/**
 * A field on an even mesh of `columns` x `rows`, by cubics through its grid points (Catmull-Rom round the
 * clock, Hermite along the depth), by straight lines beside NaN. Grid points that the mesh shares keep their
 * values.
 */
export function resample(
  grid: Grid,
  field: Float64Array,
  columns: number,
  rows: number,
  cut: number,
): Sampled {
  const round = roundClock(grid, field, columns, cut);
  const values = new Float64Array(columns * (rows + 1));
  const last = grid.z.length - 1;
  for (let row = 0; row <= rows; row++) {
    const z = grid.z[0]! + ((grid.z[last]! - grid.z[0]!) * row) / rows;
    const into = values.subarray(row * columns, (row + 1) * columns);
    if (last === 0) into.set(round);
    else alongDepth(grid.z, round, intervalOf(grid.z, z), z, into);
  }
  return { columns, rows, cut, values };
}

/** Every row of the grid, drawn out round the clock: grid.z.length * columns. */
function roundClock(grid: Grid, field: Float64Array, columns: number, cut: number): Float64Array {
  const n = grid.theta.length;
  const out = new Float64Array(grid.z.length * columns);
  const { at, weights } = roundPlaces(n, columns, cut);
  // Row by row, as they lie in memory.
  for (let row = 0; row < grid.z.length; row++) {
    const start = row * n;
    for (let column = 0, k = 0; column < columns; column++, k += 4) {
      const [a, b] = [field[start + at[k + 1]!]!, field[start + at[k + 2]!]!];
      const before = (b - field[start + at[k]!]!) / 2;
      const after = (field[start + at[k + 3]!]! - a) / 2;
      out[row * columns + column] = hermite(a, b, before, after, weights, WEIGHTS * column);
    }
  }
  return out;
}

/** Of each column the four of `n` grid points about it, the second and third next to it, and its `weightsAt`. */
function roundPlaces(n: number, columns: number, cut: number) {
  const at = new Int32Array(4 * columns);
  const weights = new Float64Array(WEIGHTS * columns);
  for (let column = 0; column < columns; column++) {
    const u = (turned(cut + (TURN * column) / columns) / TURN) * n;
    const i = Math.min(Math.floor(u), n - 1);
    at.set([(i + n - 1) % n, i, (i + 1) % n, (i + 2) % n], 4 * column);
    weights.set(weightsAt(u - i), WEIGHTS * column);
  }
  return { at, weights };
}

/** One row at depth z, between rows k and k + 1. */
function alongDepth(
  z: Float64Array,
  field: Float64Array,
  k: number,
  at: number,
  into: Float64Array,
) {
  const columns = into.length;
  const span = z[k + 1]! - z[k]!;
  const weights = weightsAt(clamp01((at - z[k]!) / span));
  const before = Math.max(k - 1, 0);
  const after = Math.min(k + 2, z.length - 1);
  const near = span / (z[k + 1]! - z[before]!);
  const far = span / (z[after]! - z[k]!);
  for (let c = 0; c < columns; c++) {
    const a = field[k * columns + c]!;
    const b = field[(k + 1) * columns + c]!;
    const slopeA = near * (b - field[before * columns + c]!);
    const slopeB = far * (field[after * columns + c]! - a);
    into[c] = hermite(a, b, slopeA, slopeB, weights, 0);
  }
}

/** Numbers that `weightsAt` gives. */
const WEIGHTS = 5;

/** A share `t` of the way along an interval, and what its ends and the slopes there count for: t, a, b, slope at a, at b. */
function weightsAt(t: number): Float64Array {
  const [t2, t3] = [t * t, t * t * t];
  return Float64Array.of(t, 2 * t3 - 3 * t2 + 1, 3 * t2 - 2 * t3, t3 - 2 * t2 + t, t3 - t2);
}

/** @param weights `weightsAt`, from index `k` on */
function hermite(
  a: number,
  b: number,
  slopeA: number,
  slopeB: number,
  weights: Float64Array,
  k: number,
): number {
  const ends = a * weights[k + 1]! + b * weights[k + 2]!;
  const value = ends + slopeA * weights[k + 3]! + slopeB * weights[k + 4]!;
  // What is not known leaves no slope beside it.
  return Number.isFinite(value) ? value : between(a, b, weights[k]!);
}
