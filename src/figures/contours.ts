/**
 * Contours of a field on the unrolled wall, in map coordinates: x from the cut, clockwise, y inward from the rim.
 *
 * d3's contours know neither a period nor lengths: they put sample k at k + 0.5 and close their rings on the
 * border. So the field is padded with its own columns from across the cut and with its first and last rows,
 * and everything is clipped to the map. Places that are not known are NaN, and lie in no region.
 */
import { contours } from 'd3';
import type { Sampled } from './sample.ts';

export type Point = readonly [x: number, y: number];
export interface Polyline {
  readonly points: readonly Point[];
  readonly closed: boolean;
}
/** Width and height of the map in whatever unit its coordinates have. */
export interface Frame {
  readonly width: number;
  readonly height: number;
}

const PAD = 2;

interface Padded {
  readonly values: number[];
  readonly size: [number, number];
  readonly toMap: (point: ArrayLike<number>) => Point;
  /** Of the known values; -Infinity where there are none. */
  readonly greatest: number;
}

function padded(field: Sampled, frame: Frame): Padded {
  const { columns, rows, values } = field;
  const across = columns + 2 * PAD + 1;
  const down = rows + 1 + 2 * PAD;
  const out = new Array<number>(across * down);
  for (let y = 0; y < down; y++) {
    const row = Math.min(Math.max(y - PAD, 0), rows) * columns;
    for (let x = 0; x < across; x++) {
      out[y * across + x] = values[row + ((x - PAD + columns) % columns)]!;
    }
  }
  let greatest = Number.NEGATIVE_INFINITY;
  for (const value of values) if (value > greatest) greatest = value;
  const dx = frame.width / columns;
  const dy = frame.height / rows;
  return {
    values: out,
    greatest,
    size: [across, down],
    toMap: (p) => [(p[0]! - 0.5 - PAD) * dx, (p[1]! - 0.5 - PAD) * dy],
  };
}

/** Rings of the regions at and above a level, before clipping; none where no value lies there, which is most of the work. */
function ringsAbove(pad: Padded, level: number): Point[][] {
  if (!(level <= pad.greatest)) return [];
  const { coordinates } = contours().size(pad.size).contour(pad.values, level);
  return coordinates.flat().map((ring) => ring.map(pad.toMap));
}

/** Draws regions and lines of one field at any levels. */
export interface Contourer {
  /** Closed rings, to be filled by the even-odd rule, of all places whose value is at least `level`. */
  regionAbove(level: number): Point[][];
  /** The lines on which the value is `level`; none along the border of the map. */
  linesAt(level: number): Polyline[];
}

export function contourer(field: Sampled, frame: Frame): Contourer {
  const pad = padded(field, frame);
  return {
    regionAbove: (level) =>
      ringsAbove(pad, level)
        .map((ring) => clipRing(ring, frame))
        .filter((ring) => ring.length > 2),
    linesAt: (level) => ringsAbove(pad, level).flatMap((ring) => clipLine(ring, frame)),
  };
}

/** A ring cut to the frame, one side after the other. */
function clipRing(ring: readonly Point[], frame: Frame): Point[] {
  let out = ring.slice(0, -1);
  out = clipSide(out, (p) => p[0], 0, 1);
  out = clipSide(out, (p) => p[0], frame.width, -1);
  out = clipSide(out, (p) => p[1], 0, 1);
  return clipSide(out, (p) => p[1], frame.height, -1);
}

function clipSide(
  ring: readonly Point[],
  coordinate: (p: Point) => number,
  limit: number,
  sign: 1 | -1,
): Point[] {
  const out: Point[] = [];
  const inside = (p: Point) => sign * (coordinate(p) - limit) >= 0;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i]!;
    const next = ring[(i + 1) % ring.length]!;
    if (inside(p)) out.push(p);
    if (inside(p) !== inside(next)) {
      const t = (limit - coordinate(p)) / (coordinate(next) - coordinate(p));
      out.push([p[0] + t * (next[0] - p[0]), p[1] + t * (next[1] - p[1])]);
    }
  }
  return out;
}

/** The parts of a closed ring that lie inside the frame, as lines. */
function clipLine(ring: readonly Point[], frame: Frame): Polyline[] {
  const lines: Point[][] = [];
  let open: Point[] | null = null;
  let whole = true;
  for (let i = 0; i + 1 < ring.length; i++) {
    const piece = clipSegment(ring[i]!, ring[i + 1]!, frame);
    if (piece === null) {
      open = null;
      whole = false;
      continue;
    }
    const { from, to, entered, left } = piece;
    if (open === null || entered) {
      open = [from];
      lines.push(open);
    }
    open.push(to);
    if (entered || left) whole = false;
    if (left) open = null;
  }
  if (whole && lines.length === 1) return [{ points: lines[0]!, closed: true }];
  return joinEnds(lines).map((points) => ({ points, closed: false }));
}

/** A ring may begin in the middle of a line that it comes back to: the last piece then leads into the first. */
function joinEnds(lines: Point[][]): Point[][] {
  const first = lines[0];
  const last = lines[lines.length - 1];
  if (lines.length < 2 || !first || !last) return lines;
  const end = last[last.length - 1]!;
  const start = first[0]!;
  if (Math.hypot(end[0] - start[0], end[1] - start[1]) > 1e-12) return lines;
  return [[...last, ...first.slice(1)], ...lines.slice(1, -1)];
}

/** The part of a segment inside the frame, and whether it was cut at its start or its end. */
function clipSegment(a: Point, b: Point, frame: Frame) {
  const d: Point = [b[0] - a[0], b[1] - a[1]];
  let t0 = 0;
  let t1 = 1;
  const sides: [number, number][] = [
    [-d[0], a[0]],
    [d[0], frame.width - a[0]],
    [-d[1], a[1]],
    [d[1], frame.height - a[1]],
  ];
  for (const [rate, room] of sides) {
    if (rate === 0) {
      if (room < 0) return null;
      continue;
    }
    const t = room / rate;
    if (rate < 0) t0 = Math.max(t0, t);
    else t1 = Math.min(t1, t);
  }
  if (!(t0 < t1)) return null;
  const at = (t: number): Point => [a[0] + t * d[0], a[1] + t * d[1]];
  return {
    from: t0 > 0 ? at(t0) : a,
    to: t1 < 1 ? at(t1) : b,
    entered: t0 > 0,
    left: t1 < 1,
  };
}
