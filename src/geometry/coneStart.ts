import { dampedStep } from '../num/normalEquations.ts';
import { type Cloud, sampleCloud, scaledColumns } from './cloud.ts';
import { type ConeWall, coneThrough } from './coneWall.ts';
import { bestDirections, type Candidate, COARSE_SAMPLE } from './cylinderStart.ts';
import { squareTo, type Vector } from './wall.ts';

/**
 * Cones to start a search from, along the directions in which the algebraic cone fits best.
 *
 * @param principal the principal directions of the points
 */
export function coneStarts(
  sample: Cloud,
  mean: readonly number[],
  principal: readonly Vector[],
): ConeWall[] {
  const points = scaledColumns(sampleCloud(sample, COARSE_SAMPLE));
  const seen = points.map((column) => new Float64Array(column.length));
  return bestDirections(principal, (d) => alongDirection(points, seen, mean, d));
}

/**
 * The cone of the points seen along a direction; null when they look like a line or a disc. `seen`
 * is room for the coordinates of every point from the mean: two square to the direction, one along.
 */
function alongDirection(
  points: readonly Float64Array[],
  seen: readonly Float64Array[],
  mean: readonly number[],
  direction: Vector,
): Candidate<ConeWall> | null {
  const [x, y, z] = points as [Float64Array, Float64Array, Float64Array];
  const [u, v, w] = seen as [Float64Array, Float64Array, Float64Array];
  const [e1, e2] = squareTo(direction);
  for (let i = 0; i < x.length; i++) {
    const qx = x[i]! - mean[0]!;
    const qy = y[i]! - mean[1]!;
    const qz = z[i]! - mean[2]!;
    u[i] = qx * e1[0] + qy * e1[1] + qz * e1[2];
    v[i] = qx * e2[0] + qy * e2[1] + qz * e2[2];
    w[i] = qx * direction[0] + qy * direction[1] + qz * direction[2];
  }
  const cone = algebraicCone(u, v, w);
  if (cone === null) return null;
  const { cu, cv, radius, taper } = cone;
  const cos = Math.cos(taper);
  const sin = Math.sin(taper);
  let score = 0;
  for (let i = 0; i < u.length; i++) {
    const off = Math.sqrt((u[i]! - cu) ** 2 + (v[i]! - cv) ** 2) - radius;
    score += (off * cos - w[i]! * sin) ** 2 / u.length;
  }
  const place = (d: 0 | 1 | 2) => mean[d]! + cu * e1[d] + cv * e2[d];
  const point: Vector = [place(0), place(1), place(2)];
  const shape = { point, direction, radius, halfAngle: taper };
  return { direction, state: coneThrough(mean, shape, e1), score };
}

/** Center and radius at w = 0, half-angle (radians, positive where it widens along w). */
interface Cone {
  cu: number;
  cv: number;
  radius: number;
  taper: number;
}

/** Unknowns of the algebraic cone, and those left when the points lie at two depths only. */
const UNKNOWNS = 5;
const WITHOUT_SQUARE = 4;

/**
 * Linear least squares of u^2 + v^2 = 2 cu u + 2 cv v + h + n w + q w^2, taken for the cone with
 * h = radius^2 - cu^2 - cv^2 and n = 2 radius tan(taper): a start only. Null when it is left open.
 */
function algebraicCone(u: Float64Array, v: Float64Array, w: Float64Array): Cone | null {
  const matrix = new Float64Array(UNKNOWNS * UNKNOWNS);
  const gradient = new Float64Array(UNKNOWNS);
  const row = new Float64Array(UNKNOWNS);
  for (let i = 0; i < u.length; i++) {
    row[0] = 2 * u[i]!;
    row[1] = 2 * v[i]!;
    row[2] = 1;
    row[3] = w[i]!;
    row[4] = w[i]! * w[i]!;
    const square = u[i]! * u[i]! + v[i]! * v[i]!;
    for (let j = 0; j < UNKNOWNS; j++) {
      for (let k = 0; k <= j; k++) matrix[j * UNKNOWNS + k]! += row[j]! * row[k]!;
      gradient[j]! -= row[j]! * square;
    }
  }
  const full = dampedStep({ matrix, gradient, sumSquares: 0 }, 0);
  const found = full ?? dampedStep(leading({ matrix, gradient }, WITHOUT_SQUARE), 0);
  if (found === null) return null;
  const [cu, cv, h, n] = found as unknown as [number, number, number, number];
  const radius = Math.sqrt(h + cu * cu + cv * cv);
  if (!(radius > 0)) return null;
  return { cu, cv, radius, taper: Math.atan(n / (2 * radius)) };
}

/** The normal equations of the first `n` unknowns alone. */
function leading(all: { matrix: Float64Array; gradient: Float64Array }, n: number) {
  const p = all.gradient.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) matrix[i * n + j] = all.matrix[i * p + j]!;
  }
  return { matrix, gradient: all.gradient.slice(0, n), sumSquares: 0 };
}
