/**
 * The bore's frame for points from a scanner: its axis, where 12 o'clock is, and which way is inward.
 */
import { seededRandom } from '../num/random.ts';
import { fitCylinder } from './cylinder.ts';
import type { FitFailure } from './ending.ts';
import type { Vector } from './wall.ts';

type Columns = readonly [x: Float64Array, y: Float64Array, z: Float64Array];

/** Right-angled and of length 1 each; the depth of a point p is inward . (p - origin). */
export interface ScanFrame {
  /**
   * own: the points' own axes are the bore's (x to 3 o'clock, y to 12, z inward from face A); drawn: the same with z
   * outward, as a right-handed drawing of face A has it; scanner: any other.
   */
  readonly kind: 'own' | 'drawn' | 'scanner';
  readonly origin: Vector;
  /** Towards 3 o'clock and 12 o'clock, seen looking in at face A. */
  readonly three: Vector;
  readonly twelve: Vector;
  readonly inward: Vector;
  /** Middle one of the points' distances from the axis. */
  readonly radius: number;
  /** Points farther off the radius than this are no wall: a face, a hole, something else in view. */
  readonly limit: number;
}

export type FrameFailure =
  | FitFailure
  /** share of the points that lie farther off the best round than any wear takes a wall */
  | { status: 'not-round'; share: number };

/** The points' own z axis is the bore's where this share of them lies within that share of one radius of it. */
const OWN_SHARE = 0.9;
const OWN_NEAR = 0.03;
/** So much of the depths lies on one side of 0 where z is counted from face A. */
const ONE_SIDE = 0.98;
/** Wear this deep, as a share of the radius, leaves no bore to grind. */
const FAR = 0.08;
const MOST_ASTRAY = 0.2;
/** Points on which the axis is looked for while some are taken out. */
const SOME = 16384;
const MOST_ROUNDS = 30;

/**
 * @param columns finite, of one length and one length unit
 */
export function scanFrame(columns: Columns): ScanFrame | FrameFailure {
  const some = sampleOf(columns);
  const own = ownFrame(some);
  if (own !== null) return own;
  const start = axisOfMost(some);
  if ('status' in start) return start;
  const near = nearAxis(columns, start);
  const share = 1 - near[0].length / columns[0].length;
  if (share > MOST_ASTRAY) return { status: 'not-round', share };
  const fit = fitCylinder(...near);
  if (fit.status !== 'ok') return fit;
  return frameAbout(fit.axis.point, fit.axis.direction, fit.diameter / 2);
}

/** Depth along, and clock position and distance from the frame's axis; in the points' unit, radians 0 to 2 pi. */
export function unroll(
  [x, y, z]: Columns,
  { origin, three, twelve, inward }: ScanFrame,
): { theta: Float64Array; depth: Float64Array; radius: Float64Array } {
  const count = x.length;
  const theta = new Float64Array(count);
  const depth = new Float64Array(count);
  const radius = new Float64Array(count);
  const [ox, oy, oz] = origin;
  const [tx, ty, tz] = three;
  const [ux, uy, uz] = twelve;
  const [ix, iy, iz] = inward;
  for (let i = 0; i < count; i++) {
    const px = x[i]! - ox;
    const py = y[i]! - oy;
    const pz = z[i]! - oz;
    const right = tx * px + ty * py + tz * pz;
    const up = ux * px + uy * py + uz * pz;
    const angle = Math.atan2(right, up);
    theta[i] = angle < 0 ? angle + 2 * Math.PI : angle;
    depth[i] = ix * px + iy * py + iz * pz;
    radius[i] = Math.sqrt(right * right + up * up);
  }
  return { theta, depth, radius };
}

/** One point from each of `SOME` even stretches of rows; all where they are fewer. */
function sampleOf(columns: Columns): Columns {
  const count = columns[0].length;
  if (count <= SOME) return columns;
  const random = seededRandom(SOME);
  const rows = Int32Array.from({ length: SOME }, (_, k) =>
    Math.floor(((k + random.uniform()) * count) / SOME),
  );
  return columns.map((column) =>
    Float64Array.from(rows, (row) => column[row]!),
  ) as unknown as Columns;
}

function ownFrame([x, y, z]: Columns): ScanFrame | null {
  const radius = middleOf(x.map((one, i) => Math.hypot(one, y[i]!)));
  const near = (i: number) => Math.abs(Math.hypot(x[i]!, y[i]!) - radius) <= OWN_NEAR * radius;
  let [round, inside, outside] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    if (!near(i)) continue;
    round++;
    if (z[i]! >= 0) inside++;
    if (z[i]! <= 0) outside++;
  }
  if (!(round >= OWN_SHARE * x.length)) return null;
  const frame = { origin: [0, 0, 0], three: [1, 0, 0], twelve: [0, 1, 0], radius } as const;
  const limit = FAR * radius;
  if (inside >= ONE_SIDE * round) return { ...frame, limit, kind: 'own', inward: [0, 0, 1] };
  if (outside >= ONE_SIDE * round) return { ...frame, limit, kind: 'drawn', inward: [0, 0, -1] };
  return null;
}

interface Axis {
  readonly point: Vector;
  readonly direction: Vector;
  readonly radius: number;
  readonly limit: number;
}

/** The least-squares cylinder of those points that lie near it, found by taking out what does not. */
function axisOfMost(columns: Columns): Axis | FrameFailure {
  let kept = columns;
  let before = -1;
  for (let round = 0; ; round++) {
    const fit = fitCylinder(...kept);
    if (fit.status !== 'ok') return fit;
    const { point, direction } = fit.axis;
    const radius = fit.diameter / 2;
    const off = offAxis(columns, point, direction).map((r) => Math.abs(r - radius));
    // Far points that still pull the fit are more than the middle one is off: it is followed down to the last limit.
    const limit = Math.max(FAR * radius, 4 * middleOf(off));
    const axis = { point, direction, radius, limit };
    const near = off.reduce((count, d) => count + (d <= limit ? 1 : 0), 0);
    const share = 1 - near / columns[0].length;
    if (near === before || round === MOST_ROUNDS) {
      const wide = limit > FAR * radius;
      return wide || share > MOST_ASTRAY ? { status: 'not-round', share } : axis;
    }
    before = near;
    kept = columns.map((column) => column.filter((_, i) => off[i]! <= limit)) as unknown as Columns;
  }
}

function nearAxis(columns: Columns, { point, direction, radius, limit }: Axis): Columns {
  const off = offAxis(columns, point, direction);
  let count = 0;
  for (let i = 0; i < off.length; i++) if (Math.abs(off[i]! - radius) <= limit) count++;
  if (count === off.length) return columns;
  const out = columns.map(() => new Float64Array(count));
  for (let i = 0, at = 0; i < off.length; i++) {
    if (!(Math.abs(off[i]! - radius) <= limit)) continue;
    for (let c = 0; c < 3; c++) out[c]![at] = columns[c]![i]!;
    at++;
  }
  return out as unknown as Columns;
}

function offAxis([x, y, z]: Columns, p: Vector, a: Vector): Float64Array {
  const out = new Float64Array(x.length);
  for (let i = 0; i < out.length; i++) {
    const qx = x[i]! - p[0];
    const qy = y[i]! - p[1];
    const qz = z[i]! - p[2];
    const along = qx * a[0] + qy * a[1] + qz * a[2];
    out[i] = Math.sqrt(Math.max(0, qx * qx + qy * qy + qz * qz - along * along));
  }
  return out;
}

/**
 * Coordinates of a scanner are right-handed. Face A is the end towards the + of the axis that runs nearest to the
 * bore's, as z comes towards the one who looks at a drawing; 12 o'clock is where + y points, + z where y runs along the
 * bore. Looking inward with 12 up, 3 o'clock is inward x twelve.
 */
function frameAbout(origin: Vector, a: Vector, radius: number): ScanFrame {
  const largest = a.map(Math.abs).reduce((best, size, k, all) => (size > all[best]! ? k : best), 0);
  const sign = a[largest]! > 0 ? -1 : 1;
  const inward: Vector = [sign * a[0], sign * a[1], sign * a[2]];
  const up: Vector = largest === 1 ? [0, 0, 1] : [0, 1, 0];
  const along = dot(up, inward);
  const twelve = unit([
    up[0] - along * inward[0],
    up[1] - along * inward[1],
    up[2] - along * inward[2],
  ]);
  const three: Vector = [
    inward[1] * twelve[2] - inward[2] * twelve[1],
    inward[2] * twelve[0] - inward[0] * twelve[2],
    inward[0] * twelve[1] - inward[1] * twelve[0],
  ];
  return { kind: 'scanner', origin, three, twelve, inward, radius, limit: FAR * radius };
}

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function unit(a: Vector): Vector {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
}

/** The middle one; NaN for none. */
function middleOf(values: Float64Array): number {
  const sorted = values.slice().sort();
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
