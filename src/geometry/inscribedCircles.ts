import Delaunator from 'delaunator';
import type { Circle } from './arc.ts';
import { type Cloud, scaledColumns } from './cloud.ts';
import { type Corners, circleThrough, widestCorner } from './triangles.ts';

/** Above so many points only those are asked that a circle about the given center can touch. */
export const MANY = 20_000;
/** More points than this are not triangulated: so many are left of a circle without form error only. */
const MOST = 100_000;
/** Points this near a circle, in scaled units, touch it. */
const TOUCHES = 1e-12;
/** Contacts whose widest opening falls short of half a turn by less than this hold nothing. */
const OPEN = 1e-9;

/**
 * Widest turn, in radians, without a point in it as seen from (cx, cy) in scaled units; of many
 * points to a thousandth of a turn, on the low side.
 */
export function widestOpening(cloud: Cloud, cx: number, cy: number): number {
  const [x, y] = cloud.columns as [Float64Array, Float64Array];
  const x0 = cloud.middle[0]! + cloud.scale * cx;
  const y0 = cloud.middle[1]! + cloud.scale * cy;
  if (cloud.count <= MANY)
    return widestGap(Array.from(x, (v, i) => Math.atan2(y[i]! - y0, v - x0)));
  const step = (2 * Math.PI) / BINS;
  const hit = new Uint8Array(BINS + 1);
  for (let i = 0; i < x.length; i++) {
    hit[Math.floor((Math.atan2(y[i]! - y0, x[i]! - x0) + Math.PI) / step)] = 1;
  }
  const angles: number[] = [];
  hit.forEach((one, bin) => {
    if (one > 0) angles.push(bin * step);
  });
  return widestGap(angles) - step;
}

/**
 * Every circle with no point of the cloud inside that is larger than all circles near it, by the
 * distance of its center from (cx, cy); scaled units. Such a circle goes through the corners of a
 * Delaunay triangle that holds its center. Null when too many points are left to look at.
 */
export function inscribedCircles(cloud: Cloud, cx: number, cy: number): Circle[] | null {
  const [x, y] = scaledColumns(cloud) as [Float64Array, Float64Array];
  const kept = x.length > MANY ? touchable(x, y, cx, cy) : null;
  if ((kept?.length ?? x.length) > MOST) return null;
  const u = kept === null ? x : Float64Array.from(kept, (i) => x[i]!);
  const v = kept === null ? y : Float64Array.from(kept, (i) => y[i]!);
  const { triangles } = triangulated(u, v);
  const found: Circle[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const corners: Corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const widest = widestCorner(u, v, corners);
    if (widest === 'obtuse') continue;
    const circle = circleThrough(u, v, corners);
    if (circle === null) continue;
    // With a right corner the circle is held only if a fourth point lies on its other side.
    if (widest === 'acute' || isHeld(u, v, circle)) found.push(circle);
  }
  const off = (c: Circle) => (c.cx - cx) ** 2 + (c.cy - cy) ** 2;
  return found.sort((a, b) => off(a) - off(b) || b.r - a.r);
}

export function triangulated(x: Float64Array, y: Float64Array): Delaunator<Float64Array> {
  const coords = new Float64Array(2 * x.length);
  for (let i = 0; i < x.length; i++) {
    coords[2 * i] = x[i]!;
    coords[2 * i + 1] = y[i]!;
  }
  return new Delaunator(coords);
}

/** Whether the points that touch a circle leave no opening of half a turn. */
function isHeld(x: Float64Array, y: Float64Array, { cx, cy, r }: Circle): boolean {
  const angles: number[] = [];
  for (let i = 0; i < x.length; i++) {
    const dx = x[i]! - cx;
    const dy = y[i]! - cy;
    if (Math.abs(Math.sqrt(dx * dx + dy * dy) - r) <= TOUCHES) angles.push(Math.atan2(dy, dx));
  }
  return widestGap(angles) < Math.PI - OPEN;
}

/** Widest turn between neighbors of some angles, in radians. */
function widestGap(angles: number[]): number {
  angles.sort((a, b) => a - b);
  let widest = 2 * Math.PI + angles[0]! - angles[angles.length - 1]!;
  for (let i = 1; i < angles.length; i++) widest = Math.max(widest, angles[i]! - angles[i - 1]!);
  return widest;
}

const BINS = 4096;

/**
 * The points that a circle about (cx, cy) with no point inside can touch; null when any may. Seen
 * in the mirror of a circle about that center, every such circle holds all points inside it, so it
 * can touch corners of their convex hull only. Those well inside a rough hull are left out.
 */
function touchable(x: Float64Array, y: Float64Array, cx: number, cy: number): number[] | null {
  const u = x.map((v) => v - cx);
  const v = y.map((w) => w - cy);
  for (let i = 0; i < u.length; i++) {
    const square = u[i]! ** 2 + v[i]! ** 2;
    if (!(square > 0)) return null;
    u[i]! /= square;
    v[i]! /= square;
  }
  const far = new Float64Array(BINS);
  const rows = new Int32Array(BINS).fill(-1);
  for (let i = 0; i < u.length; i++) {
    const bin = Math.min(Math.floor((turnOf(u[i]!, v[i]!) * BINS) / 4), BINS - 1);
    const square = u[i]! ** 2 + v[i]! ** 2;
    if (square > far[bin]!) {
      far[bin] = square;
      rows[bin] = i;
    }
  }
  const rough = rows.filter((row) => row >= 0);
  const hull = Array.from(
    triangulated(
      Float64Array.from(rough, (i) => u[i]!),
      Float64Array.from(rough, (i) => v[i]!),
    ).hull,
    (i) => rough[i]!,
  ).sort((a, b) => turnOf(u[a]!, v[a]!) - turnOf(u[b]!, v[b]!));
  if (!surrounds(u, v, hull)) return null;
  return insideOut(u, v, hull);
}

/** A number from 0 to 4 that rises with the angle, much faster than an arctangent. */
function turnOf(u: number, v: number): number {
  const part = v / (Math.abs(u) + Math.abs(v));
  if (u >= 0) return part >= 0 ? part : 4 + part;
  return 2 - part;
}

/** Whether corners in rising order of angle go about the origin with no step of half a turn. */
function surrounds(u: Float64Array, v: Float64Array, hull: readonly number[]): boolean {
  return (
    hull.length > 2 &&
    hull.every((a, i) => {
      const b = hull[(i + 1) % hull.length]!;
      return u[a]! * v[b]! - v[a]! * u[b]! > 0;
    })
  );
}

/** Rows on or outside the sides of a hull; its corners are among them. */
function insideOut(u: Float64Array, v: Float64Array, hull: readonly number[]): number[] {
  const turns = hull.map((i) => turnOf(u[i]!, v[i]!));
  const rows: number[] = [];
  for (let i = 0; i < u.length; i++) {
    const turn = turnOf(u[i]!, v[i]!);
    let low = 0;
    let high = turns.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (turns[middle]! <= turn) low = middle + 1;
      else high = middle;
    }
    const b = hull[low % hull.length]!;
    const a = hull[(low + hull.length - 1) % hull.length]!;
    const [eu, ev] = [u[b]! - u[a]!, v[b]! - v[a]!];
    const outside = ev * (u[i]! - u[a]!) - eu * (v[i]! - v[a]!);
    if (outside >= -TOUCHES * Math.hypot(eu, ev) * Math.hypot(u[i]!, v[i]!)) rows.push(i);
  }
  return rows;
}
