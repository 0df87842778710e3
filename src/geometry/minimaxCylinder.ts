import { type Cloud, meanOf } from './cloud.ts';
import { endsAndRadius, fitCylinder, plainlyNear, upright } from './cylinder.ts';
import type { FitFailure } from './ending.ts';
import type { CylinderPlace, Minimax } from './fitted.ts';
import { gainOf, signedMultipliers } from './holding.ts';
import { readSolid, type Solid } from './solid.ts';
import { type Held, tightenAll } from './tightenAll.ts';
import type { Sides } from './tightRows.ts';
import {
  reachAlong,
  type Vector,
  type Wall,
  wallDistances,
  wallProblem,
  wallThrough,
} from './wall.ts';

export type MinimaxCylinder = (Minimax & CylinderPlace) | FitFailure;

type Coordinates = [x: ArrayLike<number>, y: ArrayLike<number>, z: ArrayLike<number>];

/**
 * Cylinder whose coaxial zone that holds all points is narrowest (ISO 1101 cylindricity zone; ISO
 * 12180-1 minimum zone reference cylinders), near the least-squares cylinder, its axis in any
 * direction.
 *
 * @param points x, y, z, as many of each; any length unit, and the answer is in the same one
 * @throws RangeError when x, y and z differ in length
 */
export function minimumZoneCylinder(...points: Coordinates): MinimaxCylinder {
  return tightCylinder(points, 'both');
}

/**
 * Smallest cylinder that holds all points (ISO 12180-1 minimum circumscribed reference cylinder),
 * near the least-squares one.
 *
 * @param points as for the zone
 * @throws RangeError when x, y and z differ in length
 */
export function minimumCircumscribedCylinder(...points: Coordinates): MinimaxCylinder {
  return tightCylinder(points, 'outer');
}

/**
 * Largest cylinder with no point inside (ISO 12180-1 maximum inscribed reference cylinder): the
 * largest in the neighborhood of the least-squares one.
 *
 * @param points as for the zone
 * @throws RangeError when x, y and z differ in length
 */
export function maximumInscribedCylinder(...points: Coordinates): MinimaxCylinder {
  return tightCylinder(points, 'inner');
}

function tightCylinder(points: Coordinates, sides: Sides): MinimaxCylinder {
  const solid = readSolid(points, 5);
  if ('status' in solid) return solid;
  const { cloud, mean } = solid;
  const start = plainlyNear(solid)?.state ?? leastSquares(points, solid);
  if ('status' in start) return start;
  const feature = { problemOn: (of: Cloud) => wallProblem(of, mean), distances: wallDistances };
  const held = tightenAll(cloud, feature, start, sides, sides === 'both' ? 5 : 4);
  return described(cloud, held);
}

/** The wall of the least-squares cylinder, or why there is none. */
function leastSquares(points: Coordinates, { cloud, mean }: Solid): Wall | FitFailure {
  const least = fitCylinder(...points);
  if (least.status !== 'ok') return least;
  const { middle, scale } = cloud;
  const place = least.axis.point.map((v, d) => (v - middle[d]!) / scale) as unknown as Vector;
  return wallThrough(mean, least.axis.direction, place, least.diameter / 2 / scale);
}

function described(cloud: Cloud, held: Held<Wall>): MinimaxCylinder {
  const { state, low, high, iterations, task } = held;
  if (held.ending === 'slipped') return { status: 'not-all-round' };
  if (held.ending !== 'converged') return { status: 'did-not-converge', iterations };
  const { p, a, m, k } = state;
  if (!(k > 0)) return { status: 'arc-too-short' };
  const { middle, scale } = cloud;
  const shift = task.sides === 'outer' ? high : task.sides === 'inner' ? low : (low + high) / 2;
  // p is level with the mean of a sample.
  const mean = meanOf(cloud);
  const along = a.reduce((s, v, d) => s + v * (mean[d]! - p[d]!), 0);
  const place = (d: 0 | 1 | 2) => middle[d]! + scale * (p[d] - m[d] / k + along * a[d]);
  const reach = reachAlong(cloud, p, a);
  return {
    status: 'ok',
    axis: { point: [place(0), place(1), place(2)], direction: upright(a) },
    diameter: 2 * scale * (1 / k + shift),
    iterations,
    conditioning: gainOf(
      held,
      endsAndRadius(k, reach).map((row) => row.slice(0, task.moves)),
    ),
    deviation: {
      min: scale * (low - shift),
      max: scale * (high - shift),
      range: scale * (high - low),
    },
    ...signedMultipliers(held),
  };
}
