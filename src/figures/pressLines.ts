/**
 * Where a bushing presses, as lines on the unrolled wall: x in radians clockwise from the cut, y in mm from the rim, so
 * that the flat map and the piece in three dimensions draw the very same.
 */
import type { RoundFit } from '../evaluate/fit/round.ts';
import type { Seated } from '../evaluate/fit/seated.ts';
import { contourer, type Point, type Polyline } from './contours.ts';
import type { PressLevel } from './pressLevels.ts';
import { resample, type Sampled } from './sample.ts';
import { simplified } from './simplified.ts';

export interface PressLine {
  /** Index into the levels: the higher, the harder. */
  readonly level: number;
  readonly text: string;
  readonly lines: readonly Polyline[];
}

export interface PressLines {
  /** Depths between which it sits, as far as the grid of the wall tells. */
  readonly from: number;
  readonly to: number;
  readonly lines: readonly PressLine[];
  /** Where touching ends and a gap begins. */
  readonly edge: readonly Polyline[];
  /** Closed rings, to be filled by the even-odd rule: it does not touch. */
  readonly gaps: readonly (readonly Point[])[];
  /** The same ruled along the depth. */
  readonly ruled: readonly { readonly x: number; readonly from: number; readonly to: number }[];
}

const TURN = 2 * Math.PI;
/** Mesh on which the lines are found, at most; as fine round the bore as the grid of a wall. */
const COLUMNS = 120;
const ROWS = 48;
/** Lines are straightened by no more than this, radians and share of the seat's depth: a third of a pixel on a map. */
const STRAIGHT = 0.0035;

/** @param cut clock position that the map begins at, radians */
export function pressLines(
  { grid }: Seated['wall'],
  fit: Pick<RoundFit, 'rows' | 'pressure' | 'gap' | 'greatest' | 'widest'>,
  levels: readonly PressLevel[],
  cut: number,
): PressLines {
  const [first, last] = fit.rows;
  const columns = grid.theta.length;
  const z = grid.z.slice(first, last + 1);
  const [from, to] = [z[0]!, z[z.length - 1]!];
  const deep = to - from;
  if (!(deep > 0)) return { from, to, lines: [], edge: [], gaps: [], ruled: [] };
  const seat = (field: Float64Array) => field.subarray(first * columns, (last + 1) * columns);
  const [pressure, open] = [seat(fit.pressure), opening(seat(fit.pressure), seat(fit.gap), fit)];
  const part = { theta: grid.theta, z };
  const drawn = (field: Float64Array) => resample(part, field, COLUMNS, ROWS, cut);
  const frame = { width: TURN, height: deep };
  const kept = drawn(open);
  const whole = (field: Float64Array) => contourer(drawn(filled(field, columns)), frame);
  const placed = (lines: readonly Polyline[]) =>
    lines.flatMap((line) => onSeat(line, kept, deep)).map((line) => lowered(line, from, deep));
  const lower = (points: Point[]) => lowered({ points, closed: true }, from, deep).points;
  const force = whole(pressure);
  const gapes = fit.widest.value > 0;
  const apart = contourer(kept, frame);
  const edges = open.some(Number.isNaN) ? whole(open) : apart;
  return {
    from,
    to,
    lines: levels.map(({ mpa, text }, level) => ({
      level,
      text,
      lines: placed(force.linesAt(mpa)),
    })),
    edge: gapes ? placed(edges.linesAt(LEAST)) : [],
    gaps: gapes ? apart.regionAbove(LEAST).map(lower) : [],
    ruled: gapes ? ruled(kept, from, deep) : [],
  };
}

/** Every so many columns a gap is ruled. */
const RULED = 2;

/** Where the opening is above nothing, column by column; straight between the rows. */
function ruled({ columns, rows, values }: Sampled, from: number, deep: number) {
  const out: { x: number; from: number; to: number }[] = [];
  for (let column = 0; column < columns; column += RULED) {
    const at = (row: number) => values[row * columns + column]! - LEAST;
    const depth = (row: number) => from + (row / rows) * deep;
    let begun = Number.NaN;
    for (let row = 0; row <= rows + 1; row++) {
      const [before, now] = [
        row > 0 ? at(row - 1) : Number.NaN,
        row <= rows ? at(row) : Number.NaN,
      ];
      const open = now > 0;
      if (open === before > 0) continue;
      // Beside what is kept off, and at the ends, there is nothing to go between.
      const between = before / (before - now);
      const z = depth(Number.isNaN(between) ? (open ? row : row - 1) : row - 1 + between);
      if (open) begun = z;
      else if (z > begun) out.push({ x: (column / columns) * TURN, from: begun, to: z });
    }
  }
  return out;
}

/** What stands for touching: no more than this share of the greatest pressure or gap. */
const LEAST = 1e-6;

/** Above 0 the share of the widest gap, below 0 that of the greatest pressure: its zero is the edge of what touches. */
function opening(
  pressure: Float64Array,
  gap: Float64Array,
  { greatest, widest }: Pick<RoundFit, 'greatest' | 'widest'>,
): Float64Array {
  const hard = greatest.value > 0 ? greatest.value : 1;
  const wide = widest.value > 0 ? widest.value : 1;
  return pressure.map((p, k) => (p > 0 ? -p / hard : gap[k]! / wide));
}

/**
 * Places that are kept off take what the nearest place of their depth has, or else the nearest depth: lines that were
 * found there are taken out again, and so none of them runs along the edge of a grease hole.
 */
function filled(field: Float64Array, columns: number): Float64Array {
  if (!field.some(Number.isNaN)) return field;
  const out = field.slice();
  const rows = field.length / columns;
  const bare: number[] = [];
  for (let row = 0; row < rows; row++) {
    const own = field.subarray(row * columns, (row + 1) * columns);
    if (own.every(Number.isNaN)) bare.push(row);
    else
      out.set(
        own.map((_, i) => nearestRound(own, i)),
        row * columns,
      );
  }
  for (const row of bare) {
    const from = nearestRow(row, rows, bare);
    if (from < 0) continue;
    out.copyWithin(row * columns, from * columns, (from + 1) * columns);
  }
  return out;
}

function nearestRound(row: Float64Array, i: number): number {
  const n = row.length;
  for (let far = 0; far <= n / 2; far++) {
    const [after, before] = [row[(i + far) % n]!, row[(i - far + n) % n]!];
    if (!Number.isNaN(after)) return after;
    if (!Number.isNaN(before)) return before;
  }
  return Number.NaN;
}

/** -1: all are bare. */
function nearestRow(row: number, rows: number, bare: readonly number[]): number {
  for (let far = 1; far < rows; far++) {
    for (const other of [row - far, row + far]) {
      if (other >= 0 && other < rows && !bare.includes(other)) return other;
    }
  }
  return -1;
}

/** The parts of a line where the bushing is to be held. @param kept NaN where it is not */
function onSeat(line: Polyline, kept: Sampled, deep: number): Polyline[] {
  const { columns, rows, values } = kept;
  const isKept = ([x, y]: Point) => {
    const column = Math.round((x / TURN) * columns) % columns;
    return !Number.isNaN(values[Math.round((y / deep) * rows) * columns + column]!);
  };
  const points = line.closed ? [...line.points, line.points[0]!] : line.points;
  if (points.every(isKept)) return [line];
  const parts: Point[][] = [[]];
  for (const point of points) {
    if (isKept(point)) parts[parts.length - 1]!.push(point);
    else parts.push([]);
  }
  return parts.filter((one) => one.length > 1).map((one) => ({ points: one, closed: false }));
}

function lowered({ points, closed }: Polyline, from: number, deep: number): Polyline {
  const straight = simplified(closed ? [...points, points[0]!] : points, STRAIGHT, deep);
  const kept = closed ? straight.slice(0, -1) : straight;
  return { points: kept.map(([x, y]): Point => [x, from + y]), closed };
}
