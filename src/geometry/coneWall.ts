import type { Problem } from '../num/gaussNewton.ts';
import type { Block } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';
import { type Extremes, extremesOf } from './extremes.ts';
import {
  add,
  cross,
  dot,
  NEARLY_FLAT,
  OFF_AXIS,
  unit,
  type Vector,
  type Wall,
  wallDistances,
} from './wall.ts';

/**
 * A cone told as a cylinder is (see wall.ts), by a point p of its wall, the unit direction a of its
 * axis, the unit vector m square to a that leads from the axis to p, and k = 1 / radius >= 0, the
 * radius measured square to the axis at p; and by the half-angle `taper`, in radians between
 * -pi / 2 and pi / 2, positive where the cone widens along a. All in a cloud's scaled units. A
 * taper of 0 is a cylinder.
 */
export interface ConeWall extends Wall {
  taper: number;
}

/**
 * Signed distances f to a cone, square to its wall and positive away from the axis, with six moves:
 * p along m; wall pitched about p; m rolled about the axis; wall turned about its normal at p, in
 * units of curvature; curvature; and curvature growing along the wall while the wall at p stays.
 *
 * With g the distance from the axis less the radius at p, and z the distance along the axis from p,
 * f = g cos(taper) - z sin(taper), and the foot of a point lies s = z cos(taper) + g sin(taper)
 * farther along the wall than p. With c, t, v the columns of the circle (see arc.ts),
 * df = -c cos, -s c, t cos, s t cos, v cos, s v: three constants, each with its slope along the
 * wall. At a taper of 0 the first five are those of the cylinder. The sixth stands in place of the
 * half-angle, which moves like the pitch on a narrow arc: what tells them apart there is how much
 * the curvature grows, and that is the unknown.
 *
 * `move` is smooth, and these columns are its exact derivatives, so that second differences of f
 * under it are second derivatives. Points beyond the apex count as far outside.
 */
export function coneProblem(cloud: Cloud, mean: readonly number[]): Problem<ConeWall> {
  return {
    unknowns: 6,
    residuals: cloud.count,
    rows: (cone, from, to, block) => coneRows(cloud, cone, from, to, block),
    move: (cone, step) => coneAmidst(moved(cone, step), mean),
  };
}

function coneRows(cloud: Cloud, cone: ConeWall, from: number, to: number, block: Block): void {
  const { p, a, m, k, taper } = cone;
  const [x, y, z] = cloud.columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = cloud.middle as [number, number, number];
  const [along, pitch, roll, yaw, bend, flare] = block.columns as Float64Array[];
  const { residuals } = block;
  const [px, py, pz] = p;
  const [ax, ay, az] = a;
  const [mx, my, mz] = m;
  const [sx, sy, sz] = cross(a, m);
  const cos = Math.cos(taper);
  const sin = Math.sin(taper);
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
    const t = side * per * cos;
    const v = flat ? (side * side * per * per) / (1 + c) : (1 - c) * perSquare;
    const g = (2 * out + k * (out * out + side * side)) / (1 + length);
    const foot = depth * cos + g * sin;
    const row = i - from;
    along![row] = -c * cos;
    pitch![row] = -foot * c;
    roll![row] = t;
    yaw![row] = foot * t;
    bend![row] = v * cos;
    flare![row] = foot * v;
    residuals[row] = g * cos - depth * sin;
  }
}

function moved({ p, a, m, k, taper }: ConeWall, step: Float64Array): ConeWall {
  const [along, pitchOnly, rollOnly, yawCurved, bend, flare] = step as unknown as number[];
  const opening = k > 0 ? flare! / (k * k) : 0;
  const pitch = pitchOnly! + opening;
  const yaw = k > 0 ? -yawCurved! / k : 0;
  const s = cross(a, m);
  // A turn about the normal of the wall is one across the axis and one about it.
  const roll = rollOnly! + Math.sin(taper) * yaw;
  const across = Math.cos(taper) * yaw;
  const axis = unit(add(a, m, pitch, s, across));
  const normal = add(m, a, -pitch, s, roll);
  const square = unit(add(normal, axis, -dot(normal, axis), axis, 0));
  const next = (k + bend!) * Math.exp(-Math.tan(taper) * Math.atan(pitch));
  // A wall bent the other way is the same wall with its normal, and so its taper, turned round.
  const sign = next < 0 ? -1 : 1;
  return {
    p: add(p, m, along!, m, 0),
    a: axis,
    m: [sign * square[0], sign * square[1], sign * square[2]],
    k: Math.abs(next),
    taper: sign * withinQuarter(taper - Math.atan(opening)),
  };
}

/** Past a quarter turn a wall is the same as one half a turn back, seen from its other side. */
function withinQuarter(taper: number): number {
  if (taper > Math.PI / 2) return taper - Math.PI;
  return taper < -Math.PI / 2 ? taper + Math.PI : taper;
}

/** The same cone told by a wall point level with the mean and, where that is told, beside it. */
function coneAmidst({ p, a, m, k, taper }: ConeWall, mean: readonly number[]): ConeWall {
  const q: Vector = [mean[0]! - p[0], mean[1]! - p[1], mean[2]! - p[2]];
  const depth = dot(q, a);
  const growth = depth * Math.tan(taper);
  const wider = 1 + k * growth;
  // Beyond the apex there is no wall to tell it by.
  if (!(wider > 0)) return { p, a, m, k, taper };
  const curvature = k / wider;
  const s = cross(a, m);
  const level = add(p, a, depth, m, growth);
  const out = dot(q, m) - growth;
  const side = dot(q, s);
  const wm = 1 + curvature * out;
  const ws = curvature * side;
  const length = Math.hypot(wm, ws);
  if (!(length > OFF_AXIS)) return { p: level, a, m, k: curvature, taper };
  const gap = (2 * out + curvature * (out * out + side * side)) / (1 + length);
  const normal = unit(add([0, 0, 0], m, wm / length, s, ws / length));
  const place = add(add(level, m, out, s, side), normal, -gap, normal, 0);
  const square = unit(add(normal, a, -dot(normal, a), a, 0));
  return { p: place, a, m: square, k: curvature, taper };
}

/** Axis, radius and half-angle of a cone, in a cloud's scaled units. */
export interface ConeShape {
  /** on the axis, level with the mean of the points */
  point: Vector;
  /** length 1, towards where the cone widens */
  direction: Vector;
  /** square to the axis, at `point` */
  radius: number;
  /** radians, >= 0 */
  halfAngle: number;
}

/** What a cone looks like level with `mean`; meaningless where k is 0. */
export function coneShape({ p, a, m, k, taper }: ConeWall, mean: readonly number[]): ConeShape {
  const depth = dot([mean[0]! - p[0], mean[1]! - p[1], mean[2]! - p[2]], a);
  return {
    point: add(p, m, -1 / k, a, depth),
    direction: taper < 0 ? [-a[0], -a[1], -a[2]] : a,
    radius: 1 / k + depth * Math.tan(taper),
    halfAngle: Math.abs(taper),
  };
}

/** The cone of such a shape, whose `point` may be any of its axis where the radius is positive. */
export function coneThrough(mean: readonly number[], shape: ConeShape, toward: Vector): ConeWall {
  const { point, direction, radius, halfAngle } = shape;
  const p = add(point, toward, radius, toward, 0);
  return coneAmidst({ p, a: direction, m: toward, k: 1 / radius, taper: halfAngle }, mean);
}

/**
 * Rows: axis along the normal and sideways at p, the same two for the lean at `reach` from it,
 * radius at p and at `reach` from it; each per unknown of the search.
 */
export function axisAndRadii({ k, taper }: ConeWall, reach: number): number[][] {
  const bend = 1 / (k * k);
  const tan = Math.tan(taper);
  const cos = Math.cos(taper);
  return [
    [1, -tan / k, 0, 0, bend, (-tan * bend) / k],
    [0, 0, -1 / k, Math.sin(taper) * bend, 0, 0],
    [0, reach, 0, 0, 0, reach * bend],
    [0, 0, 0, (-reach * cos) / k, 0, 0],
    [0, 0, 0, 0, -bend, 0],
    [0, 0, 0, 0, 0, (-reach * bend) / (cos * cos)],
  ];
}

/** Least and greatest signed distance, scaled. */
export function coneDeviations(cloud: Cloud, cone: ConeWall): Extremes {
  return extremesOf(cloud.count, (from, to, out) => coneDistances(cloud, cone, from, to, out));
}

/**
 * Signed distances alone, scaled.
 *
 * @param to not included
 * @param out those of rows `from` to `to`, from 0
 */
export function coneDistances(
  cloud: Cloud,
  { p, a, m, k, taper }: ConeWall,
  from: number,
  to: number,
  out: Float64Array,
): void {
  wallDistances(cloud, { p, a, m, k }, from, to, out);
  const [x, y, z] = cloud.columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = cloud.middle as [number, number, number];
  const cos = Math.cos(taper);
  const sin = Math.sin(taper);
  const inverse = 1 / cloud.scale;
  for (let i = from; i < to; i++) {
    const qx = (x[i]! - x0) * inverse - p[0];
    const qy = (y[i]! - y0) * inverse - p[1];
    const qz = (z[i]! - z0) * inverse - p[2];
    out[i - from] = out[i - from]! * cos - (qx * a[0] + qy * a[1] + qz * a[2]) * sin;
  }
}
