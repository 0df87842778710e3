import type { Circle } from './arc.ts';

export type Corners = readonly [number, number, number];

/** Circle through three points; null when they lie on a line to rounding. */
export function circleThrough(x: Float64Array, y: Float64Array, [a, b, c]: Corners): Circle | null {
  const bx = x[b]! - x[a]!;
  const by = y[b]! - y[a]!;
  const cx = x[c]! - x[a]!;
  const cy = y[c]! - y[a]!;
  const twice = 2 * (bx * cy - by * cx);
  const bb = bx * bx + by * by;
  const cc = cx * cx + cy * cy;
  if (!(Math.abs(twice) > 4 * Number.EPSILON * Math.sqrt(bb * cc))) return null;
  const u = (cy * bb - by * cc) / twice;
  const v = (bx * cc - cx * bb) / twice;
  return { cx: x[a]! + u, cy: y[a]! + v, r: Math.hypot(u, v) };
}

/** Cosines within this of 0 leave open on which side of a right angle a corner is. */
const RIGHT = 1e-9;

/** The widest corner of a triangle: below, at (to rounding) or above a right angle. */
export function widestCorner(
  x: Float64Array,
  y: Float64Array,
  corners: Corners,
): 'acute' | 'right' | 'obtuse' {
  let least = 1;
  for (let i = 0; i < 3; i++) {
    const at = corners[i]!;
    const one = corners[(i + 1) % 3]!;
    const two = corners[(i + 2) % 3]!;
    const ux = x[one]! - x[at]!;
    const uy = y[one]! - y[at]!;
    const vx = x[two]! - x[at]!;
    const vy = y[two]! - y[at]!;
    const cosine = (ux * vx + uy * vy) / Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
    if (!(cosine >= least)) least = cosine;
  }
  if (least > RIGHT) return 'acute';
  return least < -RIGHT ? 'obtuse' : 'right';
}
