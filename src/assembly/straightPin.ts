/**
 * The largest straight pin that passes through several holes at once: over the four figures of a straight line (where it
 * lies, how it leans) the least distance from it to any wall is made as great as can be. Each step is a linear minimax of
 * the distances as they change; they are taken anew about the line that it gives, until nothing more is promised, so that
 * the end is exact for the walls given. mm.
 */
import { minimaxStep, type Rows } from '../num/minimaxStep.ts';

/** x to 3 o'clock, y to 12, both at z = 0; leans in mm per mm of z. */
export interface Line {
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
}

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly radius: number;
}

/** The wall of one hole in the pin's frame, z along the pin. */
export interface HoleWall {
  /** Places of the wall, as many of each; those with a NaN count for nothing. */
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly z: ArrayLike<number>;
  /** Exact circles beside them, square to z: of a hole that is known by its size alone, one at each of its ends. */
  readonly circles: readonly Circle[];
}

/** A place of a wall: how far from the pin's line, towards which clock position seen from it, and its station. */
export interface WallPlace {
  readonly distance: number;
  readonly theta: number;
  readonly z: number;
}

export interface StraightPin {
  readonly diameter: number;
  readonly line: Line;
  /** Where the line comes nearest to the wall of each hole, in their order. */
  readonly nearest: readonly WallPlace[];
  /** What holds it: it cannot be larger by moving or leaning. `hole` is a place in the list of holes. */
  readonly contacts: readonly (WallPlace & { readonly hole: number })[];
}

const MOST_STEPS = 40;
const MOST_HALVINGS = 12;
/** Of the radius: a gain below this is rounding. */
const NO_GAIN = 1e-11;
/** Curvature in units of the radius: holds still what no wall holds. */
const STILL = 1e-9;
/** A line that moves by more radii than this is held by nothing: a wall does not go all round. */
const FREE = 2;
/** Of what lies between the nearest and the farthest place: those are asked first. */
const NEAR = 0.1;
/** Directions in which a circle is asked at first; the one that counts is added at each step. */
const DIRECTIONS = 24;

/** @returns null where a hole has no place at all, or nothing holds the pin */
export function straightPin(holes: readonly HoleWall[]): StraightPin | null {
  const set = placesOf(holes);
  if (holes.length === 0 || new Set(set.hole).size < holes.length) return null;
  let line = startOf(set);
  askCircles(set, line);
  let distance = distances(set, line);
  let held: readonly number[] = [];
  for (let step = 0; step < MOST_STEPS; step++) {
    const least = leastOf(distance);
    if (!(least > 0)) return null;
    const next = promised(set, line, distance, least);
    if (next === null) return null;
    held = next.held;
    if (!(next.radius - least > NO_GAIN * least)) break;
    const better = climb(set, line, least, next.move);
    if (better === null && set.circles.length === 0) break;
    line = better ?? line;
    distance = distances(set, line);
  }
  return described(set, line, distance, held, holes.length);
}

/** All places that are asked about and which hole each is of; circles become places where they are asked. */
interface Places {
  readonly x: number[];
  readonly y: number[];
  readonly z: number[];
  readonly hole: number[];
  readonly circles: readonly (Circle & { readonly hole: number })[];
  /** Of the stations: lean is counted about it, over half of their span. */
  readonly middle: number;
  readonly half: number;
}

function placesOf(holes: readonly HoleWall[]): Places {
  const circles = holes.flatMap((one, hole) => one.circles.map((circle) => ({ ...circle, hole })));
  const set = { x: [] as number[], y: [] as number[], z: [] as number[], hole: [] as number[] };
  holes.forEach(({ x, y, z }, hole) => {
    for (let i = 0; i < x.length; i++) add(set, x[i]!, y[i]!, z[i]!, hole);
  });
  for (const circle of circles) {
    for (let k = 0; k < DIRECTIONS; k++) {
      addOfCircle(set, circle, (2 * Math.PI * k) / DIRECTIONS);
    }
  }
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const z of set.z) [low, high] = [Math.min(low, z), Math.max(high, z)];
  const half = (high - low) / 2;
  return { ...set, circles, middle: (low + high) / 2, half: half > 0 ? half : 1 };
}

type Columns = Pick<Places, 'x' | 'y' | 'z' | 'hole'>;

function add(set: Columns, x: number, y: number, z: number, hole: number): void {
  if (!Number.isFinite(x + y + z)) return;
  set.x.push(x);
  set.y.push(y);
  set.z.push(z);
  set.hole.push(hole);
}

function addOfCircle(
  set: Columns,
  { x, y, z, radius, hole }: Places['circles'][number],
  theta: number,
) {
  add(set, x + radius * Math.sin(theta), y + radius * Math.cos(theta), z, hole);
}

/** Adds the place of each circle that the line comes nearest to. */
function askCircles(set: Places, line: Line): void {
  for (const circle of set.circles) {
    const [x, y] = [line.x + line.leanX * circle.z, line.y + line.leanY * circle.z];
    addOfCircle(set, circle, Math.atan2(x - circle.x, y - circle.y));
  }
}

/** Along z through the middle of all places. */
function startOf({ x, y }: Places): Line {
  const mean = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0) / of.length;
  return { x: mean(x), y: mean(y), leanX: 0, leanY: 0 };
}

/** Square to the line, of every place. */
function distances(set: Places, line: Line): Float64Array {
  const along = Math.hypot(1, line.leanX, line.leanY);
  const [ax, ay, az] = [line.leanX / along, line.leanY / along, 1 / along];
  const distance = new Float64Array(set.x.length);
  for (let i = 0; i < distance.length; i++) {
    const [px, py, pz] = [set.x[i]! - line.x, set.y[i]! - line.y, set.z[i]!];
    const [u, v, w] = [py * az - pz * ay, pz * ax - px * az, px * ay - py * ax];
    distance[i] = Math.sqrt(u * u + v * v + w * w);
  }
  return distance;
}

function leastOf(distance: Float64Array): number {
  return distance.reduce((least, d) => Math.min(least, d), Number.POSITIVE_INFINITY);
}

/** Shift x, shift y (in radii), lean x, lean y (in radii over half of the span). */
const MOVES = 4;
const CURVATURE = Float64Array.from({ length: MOVES * MOVES }, (_, i) =>
  i % (MOVES + 1) === 0 ? STILL : 0,
);

/**
 * The move that promises most, first of the places near the line alone: what it promises there is never less than what all
 * of them would let it, so that no promise is the end, and a place that stops the move is near at the next step.
 */
function promised(set: Places, line: Line, distance: Float64Array, least: number) {
  const far = distance.reduce((most, d) => Math.max(most, d), 0);
  for (const share of [NEAR, 1]) {
    const near: number[] = [];
    for (let i = 0; i < distance.length; i++) {
      if (distance[i]! <= least + share * (far - least)) near.push(i);
    }
    const found = minimaxStep(rowsOf(set, line, distance, near, least), CURVATURE, []);
    if (found?.x.every((move) => Math.abs(move) < FREE)) {
      return {
        move: found.x,
        radius: least * (1 - found.level),
        held: found.held.map((i) => near[i]!),
      };
    }
  }
  return null;
}

/** Heights are the distances turned over, in radii; a place holds the line square to it, at the foot on it. */
function rowsOf(
  set: Places,
  line: Line,
  distance: Float64Array,
  near: readonly number[],
  radius: number,
): Rows {
  const a = new Float64Array(near.length * MOVES);
  const b = new Float64Array(near.length);
  const square = line.leanX * line.leanX + line.leanY * line.leanY + 1;
  near.forEach((i, row) => {
    const [px, py, z] = [set.x[i]! - line.x, set.y[i]! - line.y, set.z[i]!];
    const foot = (px * line.leanX + py * line.leanY + z) / square;
    const away = distance[i]!;
    const [x, y] = [(px - foot * line.leanX) / away, (py - foot * line.leanY) / away];
    const lever = (foot - set.middle) / set.half;
    b[row] = 1 - away / radius;
    a[row * MOVES] = x;
    a[row * MOVES + 1] = y;
    a[row * MOVES + 2] = lever * x;
    a[row * MOVES + 3] = lever * y;
  });
  return { a, b, count: near.length, unknowns: MOVES };
}

/** The line moved, by a half or a quarter where the whole move takes it nearer to a wall; null where none helps. */
function climb(set: Places, line: Line, radius: number, move: Float64Array): Line | null {
  for (let share = 1, tries = 0; tries < MOST_HALVINGS; tries++, share /= 2) {
    const [x, y, leanX, leanY] = Array.from(move, (one) => share * radius * one);
    const next = {
      x: line.x + x! - (leanX! * set.middle) / set.half,
      y: line.y + y! - (leanY! * set.middle) / set.half,
      leanX: line.leanX + leanX! / set.half,
      leanY: line.leanY + leanY! / set.half,
    };
    askCircles(set, next);
    if (leastOf(distances(set, next)) > radius) return next;
  }
  return null;
}

function described(
  set: Places,
  line: Line,
  distance: Float64Array,
  held: readonly number[],
  holes: number,
): StraightPin {
  const place = (i: number): WallPlace => ({
    distance: distance[i]!,
    theta: towards(
      set.x[i]! - line.x - line.leanX * set.z[i]!,
      set.y[i]! - line.y - line.leanY * set.z[i]!,
    ),
    z: set.z[i]!,
  });
  const nearest = new Array<number>(holes).fill(-1);
  set.hole.forEach((hole, i) => {
    const best = nearest[hole]!;
    if (best < 0 || distance[i]! < distance[best]!) nearest[hole] = i;
  });
  return {
    diameter: 2 * leastOf(distance),
    line,
    nearest: nearest.map(place),
    contacts: held.map((i) => ({ ...place(i), hole: set.hole[i]! })),
  };
}

/** Clock position, 0 to 2 pi, of a direction. */
function towards(x: number, y: number): number {
  const theta = Math.atan2(x, y);
  return theta < 0 ? theta + 2 * Math.PI : theta;
}
