import type { Problem } from '../num/gaussNewton.ts';
import type { Block } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';
import { type Extremes, extremesOf } from './extremes.ts';

/**
 * A circle told by one of its points p, the unit normal m there (pointing away from the center)
 * and the curvature k = 1 / radius, >= 0, all in a cloud's scaled units. k = 0 is a straight line.
 */
export interface Arc {
  px: number;
  py: number;
  mx: number;
  my: number;
  k: number;
}

/** Below this curvature (points span about 1) one column is worked out another way. */
const NEARLY_STRAIGHT = 0.05;
/** The mean of the points fixes the place p while it is this far (of a radius) off the center. */
const OFF_CENTER = 0.3;

/**
 * Signed distances f to a circle with the three moves: p along its normal, normal turned about p
 * (positive towards the tangent (-my, mx)), curvature.
 *
 * With q from p to the point, w = m + k q and u = w / |w| the outward direction there:
 * f = (2 q.m + k q.q) / (1 + |w|), which loses no digits however flat the arc, and
 * df = -u.m, (q.t) / |w|, (1 - u.m) / k^2.
 */
export function arcProblem(cloud: Cloud, mean: readonly number[]): Problem<Arc> {
  return {
    unknowns: 3,
    residuals: cloud.count,
    rows: (arc, from, to, block) => arcRows(cloud, arc, from, to, block),
    move: (arc, step) => atMean(moved(arc, step), mean),
  };
}

function arcRows(cloud: Cloud, arc: Arc, from: number, to: number, block: Block): void {
  const { px, py, mx, my, k } = arc;
  const [x, y] = cloud.columns as [Float64Array, Float64Array];
  const [x0, y0] = cloud.middle as [number, number];
  const [along, turn, bend] = block.columns as [Float64Array, Float64Array, Float64Array];
  const inverse = 1 / cloud.scale;
  const straight = k < NEARLY_STRAIGHT;
  const perSquare = straight ? 0 : 1 / (k * k);
  for (let i = from; i < to; i++) {
    const qx = (x[i]! - x0) * inverse - px;
    const qy = (y[i]! - y0) * inverse - py;
    const a = qx * mx + qy * my;
    const b = qy * mx - qx * my;
    const wa = 1 + k * a;
    const wb = k * b;
    const length = Math.sqrt(wa * wa + wb * wb);
    // At the very center every direction is outward, and none is taken.
    const per = length > 0 ? 1 / length : 0;
    const c = wa * per;
    const t = b * per;
    const row = i - from;
    along[row] = -c;
    turn[row] = t;
    // The same number twice: the first keeps its digits on a flat arc, the second all round.
    bend[row] = straight ? (t * t) / (1 + c) : (1 - c) * perSquare;
    block.residuals[row] = (2 * a + k * (a * a + b * b)) / (1 + length);
  }
}

function moved({ px, py, mx, my, k }: Arc, step: Float64Array): Arc {
  const along = step[0]!;
  const cos = Math.cos(step[1]!);
  const sin = Math.sin(step[1]!);
  const next = {
    px: px + along * mx,
    py: py + along * my,
    mx: cos * mx - sin * my,
    my: cos * my + sin * mx,
    k: k + step[2]!,
  };
  const length = Math.hypot(next.mx, next.my);
  // A circle bent the other way is the same circle with its normal turned round.
  const sign = next.k < 0 ? -1 : 1;
  next.mx *= sign / length;
  next.my *= sign / length;
  next.k *= sign;
  return next;
}

/** The same circle told by its point nearest the mean, where the three moves differ most. */
function atMean(arc: Arc, mean: readonly number[]): Arc {
  const { px, py, mx, my, k } = arc;
  const qx = mean[0]! - px;
  const qy = mean[1]! - py;
  const a = qx * mx + qy * my;
  const b = qy * mx - qx * my;
  const wa = 1 + k * a;
  const wb = k * b;
  const length = Math.hypot(wa, wb);
  if (!(length > OFF_CENTER)) return arc;
  const f = (2 * a + k * (a * a + b * b)) / (1 + length);
  const ux = (wa * mx - wb * my) / length;
  const uy = (wa * my + wb * mx) / length;
  return { px: mean[0]! - f * ux, py: mean[1]! - f * uy, mx: ux, my: uy, k };
}

/** A circle by center and radius, in scaled units. */
export interface Circle {
  cx: number;
  cy: number;
  r: number;
}

/** Center and radius to an arc at the point nearest the mean; any point when it is the center. */
export function arcThrough(mean: readonly number[], { cx, cy, r }: Circle): Arc {
  const dx = mean[0]! - cx;
  const dy = mean[1]! - cy;
  const d = Math.hypot(dx, dy);
  const [mx, my] = d > 0 ? [dx / d, dy / d] : [1, 0];
  return { px: cx + r * mx, py: cy + r * my, mx, my, k: 1 / r };
}

/**
 * Circle with the least sum of (distance squared - radius squared) squared (I. Kasa, IEEE
 * Transactions on Instrumentation and Measurement 25, 1976, 8-14): a start only, since it is too
 * small on short arcs. Null when the points leave it open.
 */
export function kasaCircle(x: Float64Array, y: Float64Array): Circle | null {
  const count = x.length;
  let mx = 0;
  let my = 0;
  for (let i = 0; i < count; i++) {
    mx += x[i]!;
    my += y[i]!;
  }
  mx /= count;
  my /= count;
  let uu = 0;
  let uv = 0;
  let vv = 0;
  let uz = 0;
  let vz = 0;
  for (let i = 0; i < count; i++) {
    const u = x[i]! - mx;
    const v = y[i]! - my;
    const z = u * u + v * v;
    uu += u * u;
    uv += u * v;
    vv += v * v;
    uz += u * z;
    vz += v * z;
  }
  const determinant = uu * vv - uv * uv;
  if (!(determinant > 1e-14 * (uu + vv) ** 2)) return null;
  const u = (uz * vv - vz * uv) / (2 * determinant);
  const v = (vz * uu - uz * uv) / (2 * determinant);
  return { cx: mx + u, cy: my + v, r: Math.sqrt(u * u + v * v + (uu + vv) / count) };
}

/**
 * Signed distances alone, scaled.
 *
 * @param out those of rows `from` to `to` (not included), from 0
 */
export function arcDistances(
  cloud: Cloud,
  { px, py, mx, my, k }: Arc,
  from: number,
  to: number,
  out: Float64Array,
): void {
  const x = cloud.columns[0]!;
  const y = cloud.columns[1]!;
  const x0 = cloud.middle[0]!;
  const y0 = cloud.middle[1]!;
  const inverse = 1 / cloud.scale;
  for (let i = from; i < to; i++) {
    const qx = (x[i]! - x0) * inverse - px;
    const qy = (y[i]! - y0) * inverse - py;
    const a = qx * mx + qy * my;
    const b = qy * mx - qx * my;
    const wa = 1 + k * a;
    const wb = k * b;
    out[i - from] = (2 * a + k * (a * a + b * b)) / (1 + Math.sqrt(wa * wa + wb * wb));
  }
}

/** Least and greatest signed distance, scaled. */
export function arcDeviations(cloud: Cloud, arc: Arc): Extremes {
  return extremesOf(cloud.count, (from, to, out) => arcDistances(cloud, arc, from, to, out));
}
