import type { Circle } from './arc.ts';
import { triangulated } from './inscribedCircles.ts';
import { type Corners, circleThrough } from './triangles.ts';

/**
 * A straight piece of a Voronoi diagram: from (x, y) as far as (x + u, y + v), or without end; all
 * its places have the same distance to two points, one of which is `row`.
 */
interface Piece {
  x: number;
  y: number;
  u: number;
  v: number;
  endless: boolean;
  row: number;
}

/** Voronoi diagram: its pieces, and the circles about its corners. */
interface Diagram {
  pieces: Piece[];
  corners: Circle[];
}

/** A ring: center, and outer less inner radius. */
export interface Ring {
  cx: number;
  cy: number;
  /** outer radius */
  r: number;
  width: number;
}

/**
 * The narrowest few of all rings that hold every point and touch two of them inside and two
 * outside, narrowest first. Their centers are where a piece of the nearest-point diagram crosses
 * one of the farthest-point diagram, or (when more points touch) a corner of either.
 */
export function narrowestRings(x: Float64Array, y: Float64Array, most: number): Ring[] {
  const mesh = triangulated(x, y);
  const hull = Array.from(mesh.hull);
  const near = nearestDiagram(x, y, mesh);
  const far = farthestDiagram(x, y, hull);
  const rings: Ring[] = [];
  const keep = (cx: number, cy: number, outer: number, inner: number) => {
    const width = outer - inner;
    if (rings.length === most && !(width < rings[most - 1]!.width)) return;
    if (rings.length === most) rings.pop();
    rings.push({ cx, cy, r: outer, width });
    for (let i = rings.length - 1; i > 0 && rings[i]!.width < rings[i - 1]!.width; i--) {
      [rings[i], rings[i - 1]] = [rings[i - 1]!, rings[i]!];
    }
  };
  const distance = (cx: number, cy: number, row: number) => Math.hypot(x[row]! - cx, y[row]! - cy);
  for (const a of near.pieces) {
    for (const b of far.pieces) {
      const at = crossing(a, b);
      if (at === null) continue;
      keep(at.cx, at.cy, distance(at.cx, at.cy, b.row), distance(at.cx, at.cy, a.row));
    }
  }
  for (const { cx, cy, r } of near.corners) {
    let outer = 0;
    for (const row of hull) outer = Math.max(outer, distance(cx, cy, row));
    keep(cx, cy, outer, r);
  }
  for (const { cx, cy, r } of far.corners) {
    let inner = Number.POSITIVE_INFINITY;
    for (let row = 0; row < x.length; row++) inner = Math.min(inner, distance(cx, cy, row));
    keep(cx, cy, r, inner);
  }
  return rings;
}

function nearestDiagram(
  x: Float64Array,
  y: Float64Array,
  { triangles, halfedges }: { triangles: Uint32Array; halfedges: Int32Array },
): Diagram {
  const centers = Array.from({ length: triangles.length / 3 }, (_, t) =>
    circleThrough(x, y, [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!]),
  );
  const pieces: Piece[] = [];
  for (let e = 0; e < triangles.length; e++) {
    const twin = halfedges[e]!;
    if (twin >= 0 && twin < e) continue;
    const from = centers[Math.floor(e / 3)]!;
    const to = twin < 0 ? null : centers[Math.floor(twin / 3)]!;
    const a = triangles[e]!;
    const b = triangles[e % 3 === 2 ? e - 2 : e + 1]!;
    // Delaunator's triangles run so that their inside lies to the right of a side.
    const out = { u: -(y[b]! - y[a]!), v: x[b]! - x[a]! };
    const third = triangles[e % 3 === 0 ? e + 2 : e - 1]!;
    const inward = out.u * (x[third]! - x[a]!) + out.v * (y[third]! - y[a]!) > 0 ? -1 : 1;
    pushPiece(pieces, from, to, { u: inward * out.u, v: inward * out.v }, a);
  }
  return { pieces, corners: centers.filter((c) => c !== null) };
}

/** A piece between two corners; where one is out of reach, from the other along `outward`. */
function pushPiece(
  pieces: Piece[],
  from: Circle | null,
  to: Circle | null,
  outward: { u: number; v: number },
  row: number,
): void {
  if (from !== null && to !== null) {
    const [u, v] = [to.cx - from.cx, to.cy - from.cy];
    pieces.push({ x: from.cx, y: from.cy, u, v, endless: false, row });
  } else if (from !== null) {
    pieces.push({ x: from.cx, y: from.cy, ...outward, endless: true, row });
  } else if (to !== null) {
    pieces.push({ x: to.cx, y: to.cy, u: -outward.u, v: -outward.v, endless: true, row });
  }
}

/**
 * The farthest-point diagram of the corners of a convex hull. Its triangles are those whose circle
 * holds all points: on a side, the corner that sees it under the least angle makes one.
 */
function farthestDiagram(x: Float64Array, y: Float64Array, hull: readonly number[]): Diagram {
  const pieces: Piece[] = [];
  const corners: Circle[] = [];
  const waiting: { first: number; last: number; parent: Circle | null }[] = [
    { first: 0, last: hull.length - 1, parent: null },
  ];
  const inwardOf = (first: number, last: number) => {
    const [a, b] = [hull[first]!, hull[last]!];
    const normal = { u: -(y[b]! - y[a]!), v: x[b]! - x[a]! };
    // Any other corner tells the inside.
    const other = hull.find((row) => row !== a && row !== b)!;
    const side = normal.u * (x[other]! - x[a]!) + normal.v * (y[other]! - y[a]!) < 0 ? -1 : 1;
    return { u: side * normal.u, v: side * normal.v };
  };
  while (waiting.length > 0) {
    const { first, last, parent } = waiting.pop()!;
    if (last - first < 2) {
      pushPiece(pieces, parent, null, inwardOf(first, last), hull[first]!);
      continue;
    }
    const apex = flattest(x, y, hull, first, last);
    const triangle: Corners = [hull[first]!, hull[apex]!, hull[last]!];
    const circle = circleThrough(x, y, triangle);
    if (circle !== null) corners.push(circle);
    if (first === 0 && last === hull.length - 1) {
      pushPiece(pieces, circle, null, inwardOf(first, last), hull[first]!);
    } else if (circle !== null && parent !== null) {
      pushPiece(pieces, parent, circle, { u: 0, v: 0 }, hull[first]!);
    }
    waiting.push({ first, last: apex, parent: circle }, { first: apex, last, parent: circle });
  }
  return { pieces, corners };
}

/** The corner between two others that sees their side under the least angle. */
function flattest(
  x: Float64Array,
  y: Float64Array,
  hull: readonly number[],
  first: number,
  last: number,
): number {
  const [a, b] = [hull[first]!, hull[last]!];
  let best = first + 1;
  let greatest = Number.NEGATIVE_INFINITY;
  for (let i = first + 1; i < last; i++) {
    const row = hull[i]!;
    const [ux, uy] = [x[a]! - x[row]!, y[a]! - y[row]!];
    const [vx, vy] = [x[b]! - x[row]!, y[b]! - y[row]!];
    const cotangent = (ux * vx + uy * vy) / Math.abs(ux * vy - uy * vx);
    if (cotangent > greatest) {
      greatest = cotangent;
      best = i;
    }
  }
  return best;
}

/** Rounding that may lie between a crossing and the end of a piece, as a share of the piece. */
const BARELY = 1e-9;

function crossing(a: Piece, b: Piece): { cx: number; cy: number } | null {
  const cross = a.u * b.v - a.v * b.u;
  if (cross === 0) return null;
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const s = (dx * b.v - dy * b.u) / cross;
  if (!(s >= -BARELY) || (!a.endless && s > 1 + BARELY)) return null;
  const t = (dx * a.v - dy * a.u) / cross;
  if (!(t >= -BARELY) || (!b.endless && t > 1 + BARELY)) return null;
  return { cx: a.x + s * a.u, cy: a.y + s * a.v };
}
