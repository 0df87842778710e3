import { kasaCircle } from './arc.ts';
import { type Cloud, sampleCloud, scaledColumns } from './cloud.ts';
import { dot, squareTo, type Vector, type Wall, wallThrough } from './wall.ts';

/** Directions are compared on so many of the points. */
export const COARSE_SAMPLE = 256;
const DIRECTIONS = 250;
const STARTS = 8;
/** Cosine of the least angle between two starts: about a quarter of a radian. */
const APART = 0.97;

/** What a direction for the axis is worth. */
export interface Candidate<State> {
  direction: Vector;
  state: State;
  /** mean squared distance of the points from it */
  score: number;
}

/**
 * Cylinders to start a search from: along the best directions, and last the flat wall, for arcs
 * that hardly bend.
 *
 * @param principal the principal directions of the points, that of the least spread first
 */
export function cylinderStarts(
  sample: Cloud,
  mean: readonly number[],
  principal: readonly [Vector, Vector, Vector],
): Wall[] {
  const points = scaledColumns(sampleCloud(sample, COARSE_SAMPLE));
  const seen = [new Float64Array(points[0]!.length), new Float64Array(points[0]!.length)];
  const walls = bestDirections(principal, (d) => alongDirection(points, seen, mean, d));
  const [across, , along] = principal;
  const flat: Wall = { p: [mean[0]!, mean[1]!, mean[2]!], a: along, m: across, k: 0 };
  return [...walls, flat];
}

/** The best cylinder along one of the principal directions, or null. */
export function principalStart(
  few: Cloud,
  mean: readonly number[],
  principal: readonly Vector[],
): Wall | null {
  const points = scaledColumns(few);
  const seen = [new Float64Array(few.count), new Float64Array(few.count)];
  let best: Candidate<Wall> | null = null;
  for (const direction of principal) {
    const candidate = alongDirection(points, seen, mean, direction);
    if (candidate !== null && !(candidate.score >= (best?.score ?? Number.POSITIVE_INFINITY))) {
      best = candidate;
    }
  }
  return best?.state ?? null;
}

/**
 * States along the principal axes of the points, which is right for long and for short bores, and
 * along the best few of 250 directions spread over a hemisphere, which is right for those between.
 */
export function bestDirections<State>(
  principal: readonly Vector[],
  measure: (direction: Vector) => Candidate<State> | null,
): State[] {
  const measured = (directions: readonly Vector[]) =>
    directions.map(measure).filter((candidate) => candidate !== null);
  const chosen = measured(principal);
  const spread = measured(hemisphere(DIRECTIONS)).sort((a, b) => a.score - b.score);
  let left = STARTS;
  for (const candidate of spread) {
    if (left === 0) break;
    if (chosen.some((c) => Math.abs(dot(c.direction, candidate.direction)) > APART)) continue;
    chosen.push(candidate);
    left--;
  }
  return chosen.map(({ state }) => state);
}

/**
 * The algebraic circle of the points seen along a direction; null when they look like a line.
 * `seen` is room for the two coordinates of every point as seen.
 */
function alongDirection(
  points: readonly Float64Array[],
  seen: readonly Float64Array[],
  mean: readonly number[],
  direction: Vector,
): Candidate<Wall> | null {
  const [x, y, z] = points as [Float64Array, Float64Array, Float64Array];
  const [u, v] = seen as [Float64Array, Float64Array];
  const [e1, e2] = squareTo(direction);
  for (let i = 0; i < x.length; i++) {
    u[i] = x[i]! * e1[0] + y[i]! * e1[1] + z[i]! * e1[2];
    v[i] = x[i]! * e2[0] + y[i]! * e2[1] + z[i]! * e2[2];
  }
  const circle = kasaCircle(u, v);
  if (circle === null) return null;
  let score = 0;
  for (let i = 0; i < u.length; i++) {
    const off = Math.sqrt((u[i]! - circle.cx) ** 2 + (v[i]! - circle.cy) ** 2) - circle.r;
    score += (off * off) / u.length;
  }
  const center: Vector = [
    circle.cx * e1[0] + circle.cy * e2[0],
    circle.cx * e1[1] + circle.cy * e2[1],
    circle.cx * e1[2] + circle.cy * e2[2],
  ];
  return { direction, state: wallThrough(mean, direction, center, circle.r), score };
}

/** Directions spread evenly over half a sphere, on a spiral that turns by the golden angle. */
function hemisphere(count: number): Vector[] {
  const turn = Math.PI * (3 - Math.sqrt(5));
  return Array.from({ length: count }, (_, i) => {
    const z = (i + 0.5) / count;
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(i * turn), r * Math.sin(i * turn), z];
  });
}
