import type { Problem } from '../num/gaussNewton.ts';
import type { Block } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';

export type Vector = readonly [number, number, number];

/**
 * A cylinder told by a point p of its wall, the unit direction a of its axis, the unit normal m
 * of the wall at p (square to a, pointing away from the axis) and the curvature k = 1 / radius,
 * >= 0, all in a cloud's scaled units. k = 0 is a plane.
 */
export interface Wall {
  p: Vector;
  a: Vector;
  m: Vector;
  k: number;
}

/** Below this curvature (points span about 1) one column is worked out another way. */
export const NEARLY_FLAT = 0.05;
/** The mean of the points fixes the normal while it is this far (of a radius) off the axis. */
export const OFF_AXIS = 0.3;

/**
 * Signed distances f to a cylinder with its five moves: p along its normal; axis leaning towards
 * the normal; normal rolled about the axis; axis leaning sideways, in units of curvature; and the
 * curvature. With z the distance along the axis from p, and c, t, v the columns of the circle
 * (see arc.ts), df = -c, -z c, t, z t, v: apart from the last, each pair is a constant and a slope
 * along the axis, which the place of p amid the points keeps well apart.
 */
export function wallProblem(cloud: Cloud, mean: readonly number[]): Problem<Wall> {
  return {
    unknowns: 5,
    residuals: cloud.count,
    rows: (wall, from, to, block) => wallRows(cloud, wall, from, to, block),
    move: (wall, step) => amidst(moved(wall, step), mean),
  };
}

function wallRows(cloud: Cloud, wall: Wall, from: number, to: number, block: Block): void {
  const { p, a, m, k } = wall;
  const [x, y, z] = cloud.columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = cloud.middle as [number, number, number];
  const [along, pitch, roll, yaw, bend] = block.columns as Float64Array[];
  const [px, py, pz] = p;
  const [ax, ay, az] = a;
  const [mx, my, mz] = m;
  const [sx, sy, sz] = cross(a, m);
  const inverse = 1 / cloud.scale;
  const flat = k < NEARLY_FLAT;
  const perSquare = flat ? 0 : 1 / (k * k);
  for (let i = from; i < to; i++) {
    const qx = (x[i]! - x0) * inverse - px;
    const qy = (y[i]! - y0) * inverse - py;
    const qz = (z[i]! - z0) * inverse - pz;
    const depth = qx * ax + qy * ay + qz * az;
    const out = qx * mx + qy * my + qz * mz;
    const side = qx * sx + qy * sy + qz * sz;
    const wm = 1 + k * out;
    const ws = k * side;
    const length = Math.sqrt(wm * wm + ws * ws);
    const per = length > 0 ? 1 / length : 0;
    const c = wm * per;
    const t = side * per;
    const row = i - from;
    along![row] = -c;
    pitch![row] = -depth * c;
    roll![row] = t;
    yaw![row] = depth * t;
    bend![row] = flat ? (t * t) / (1 + c) : (1 - c) * perSquare;
    block.residuals[row] = (2 * out + k * (out * out + side * side)) / (1 + length);
  }
}

function moved({ p, a, m, k }: Wall, step: Float64Array): Wall {
  const [along, pitch, roll, yawCurved, bend] = step as unknown as number[];
  const yaw = k > 0 ? -yawCurved! / k : 0;
  const s = cross(a, m);
  const axis = unit(add(a, m, pitch!, s, yaw));
  const normal = add(m, a, -pitch!, s, roll!);
  const next = k + bend!;
  const sign = next < 0 ? -1 : 1;
  const square = unit(add(normal, axis, -dot(normal, axis), axis, 0));
  return {
    p: add(p, m, along!, m, 0),
    a: axis,
    // A wall bent the other way is the same wall with its normal turned round.
    m: [sign * square[0], sign * square[1], sign * square[2]],
    k: Math.abs(next),
  };
}

/** The same cylinder told by the wall point nearest the mean (or at its depth, if that is open). */
function amidst({ p, a, m, k }: Wall, mean: readonly number[]): Wall {
  const q: Vector = [mean[0]! - p[0], mean[1]! - p[1], mean[2]! - p[2]];
  const level = add(p, a, dot(q, a), a, 0);
  const s = cross(a, m);
  const out = dot(q, m);
  const side = dot(q, s);
  const wm = 1 + k * out;
  const ws = k * side;
  const length = Math.hypot(wm, ws);
  if (!(length > OFF_AXIS)) return { p: level, a, m, k };
  const f = (2 * out + k * (out * out + side * side)) / (1 + length);
  const normal = unit(add([0, 0, 0], m, wm / length, s, ws / length));
  const foot = add(add(level, m, out, s, side), normal, -f, normal, 0);
  return { p: foot, a, m: unit(add(normal, a, -dot(normal, a), a, 0)), k };
}

/** A cylinder by its axis direction a, a point of the axis and its radius, scaled. */
export function wallThrough(
  mean: readonly number[],
  a: Vector,
  center: Vector,
  radius: number,
): Wall {
  const [first] = squareTo(a);
  return amidst({ p: add(center, first, radius, first, 0), a, m: first, k: 1 / radius }, mean);
}

/** Two unit vectors square to a unit vector and to each other. */
export function squareTo(a: Vector): [Vector, Vector] {
  const least = Math.min(Math.abs(a[0]), Math.abs(a[1]), Math.abs(a[2]));
  const pick = a.findIndex((value) => Math.abs(value) === least);
  const first = unit(cross(a, [pick === 0 ? 1 : 0, pick === 1 ? 1 : 0, pick === 2 ? 1 : 0]));
  return [first, cross(a, first)];
}

/** Least and greatest signed distance, scaled, the first row of each, and the longest z. */
export interface WallDeviations {
  low: number;
  high: number;
  lowRow: number;
  highRow: number;
  reach: number;
}

/**
 * The deviations of the rows of a cloud.
 *
 * @param parts stretches of rows, from and to (not included), in rising order, to look at
 */
export function wallDeviations(
  cloud: Cloud,
  wall: Wall,
  parts: readonly (readonly [number, number])[] = [[0, cloud.count]],
): WallDeviations {
  const seen: WallDeviations = {
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    lowRow: 0,
    highRow: 0,
    reach: 0,
  };
  for (const [from, to] of parts) seeRows(seen, cloud, wall, from, to);
  return seen;
}

function seeRows(
  seen: WallDeviations,
  cloud: Cloud,
  { p, a, m, k }: Wall,
  from: number,
  to: number,
): void {
  const [x, y, z] = cloud.columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = cloud.middle as [number, number, number];
  const s = cross(a, m);
  const inverse = 1 / cloud.scale;
  let { low, high, lowRow, highRow, reach } = seen;
  for (let i = from; i < to; i++) {
    const qx = (x[i]! - x0) * inverse - p[0];
    const qy = (y[i]! - y0) * inverse - p[1];
    const qz = (z[i]! - z0) * inverse - p[2];
    const depth = Math.abs(qx * a[0] + qy * a[1] + qz * a[2]);
    const out = qx * m[0] + qy * m[1] + qz * m[2];
    const side = qx * s[0] + qy * s[1] + qz * s[2];
    const wm = 1 + k * out;
    const ws = k * side;
    const f = (2 * out + k * (out * out + side * side)) / (1 + Math.sqrt(wm * wm + ws * ws));
    if (depth > reach) reach = depth;
    if (f < low) {
      low = f;
      lowRow = i;
    }
    if (f > high) {
      high = f;
      highRow = i;
    }
  }
  Object.assign(seen, { low, high, lowRow, highRow, reach });
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** base + first * s + second * t */
export function add(base: Vector, first: Vector, s: number, second: Vector, t: number): Vector {
  return [
    base[0] + first[0] * s + second[0] * t,
    base[1] + first[1] * s + second[1] * t,
    base[2] + first[2] * s + second[2] * t,
  ];
}

export function unit(v: Vector): Vector {
  const length = Math.hypot(v[0], v[1], v[2]);
  return [v[0] / length, v[1] / length, v[2] / length];
}

/** The longest way along an axis direction from a place to any point, scaled. */
export function reachAlong(cloud: Cloud, p: Vector, a: Vector): number {
  const [x, y, z] = cloud.columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = cloud.middle as [number, number, number];
  const inverse = 1 / cloud.scale;
  let reach = 0;
  for (let i = 0; i < cloud.count; i++) {
    const qx = (x[i]! - x0) * inverse - p[0];
    const qy = (y[i]! - y0) * inverse - p[1];
    const qz = (z[i]! - z0) * inverse - p[2];
    reach = Math.max(reach, Math.abs(qx * a[0] + qy * a[1] + qz * a[2]));
  }
  return reach;
}

/**
 * Signed distances alone, scaled.
 *
 * @param to not included
 * @param out those of rows `from` to `to`, from 0
 */
export function wallDistances(
  cloud: Cloud,
  { p, a, m, k }: Wall,
  from: number,
  to: number,
  out: Float64Array,
): void {
  const [x, y, z] = cloud.columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = cloud.middle as [number, number, number];
  const [px, py, pz] = p;
  const [mx, my, mz] = m;
  const [sx, sy, sz] = cross(a, m);
  const inverse = 1 / cloud.scale;
  for (let i = from; i < to; i++) {
    const qx = (x[i]! - x0) * inverse - px;
    const qy = (y[i]! - y0) * inverse - py;
    const qz = (z[i]! - z0) * inverse - pz;
    const above = qx * mx + qy * my + qz * mz;
    const side = qx * sx + qy * sy + qz * sz;
    const wm = 1 + k * above;
    const ws = k * side;
    out[i - from] =
      (2 * above + k * (above * above + side * side)) / (1 + Math.sqrt(wm * wm + ws * ws));
  }
}
