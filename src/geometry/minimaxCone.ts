import { type Cloud, meanOf, readCloud } from './cloud.ts';
import { fitCone } from './cone.ts';
import {
  axisAndRadii,
  type ConeWall,
  coneDistances,
  coneProblem,
  coneShape,
  coneThrough,
} from './coneWall.ts';
import { upright } from './cylinder.ts';
import type { FitFailure } from './ending.ts';
import type { ConePlace, Minimax } from './fitted.ts';
import { gainOf, signedMultipliers } from './holding.ts';
import { type Held, tightenAll } from './tightenAll.ts';
import { reachAlong, squareTo, type Vector } from './wall.ts';

export type MinimaxCone = (Minimax & ConePlace) | FitFailure;

/**
 * Cone whose coaxial zone that holds all points, two cones of the same half-angle at an even
 * distance, is narrowest (the profile zone of ISO 1101 for a cone of no given size or angle), near
 * the least-squares cone, its axis in any direction.
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @param z as many as x
 * @throws RangeError when x, y and z differ in length
 */
export function minimumZoneCone(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  z: ArrayLike<number>,
): MinimaxCone {
  const least = fitCone(x, y, z);
  if (least.status !== 'ok') return least;
  const cloud = readCloud([x, y, z], 6);
  if ('status' in cloud) return cloud;
  const { middle, scale } = cloud;
  const mean = meanOf(cloud);
  const { direction } = least.axis;
  const shape = {
    point: least.axis.point.map((v, d) => (v - middle[d]!) / scale) as unknown as Vector,
    direction,
    radius: least.diameter / 2 / scale,
    halfAngle: least.halfAngle,
  };
  const start = coneThrough(mean, shape, squareTo(direction)[0]);
  const feature = { problemOn: (of: Cloud) => coneProblem(of, mean), distances: coneDistances };
  const held = tightenAll(cloud, feature, start, 'both', 6);
  return described(cloud, held, mean);
}

function described(cloud: Cloud, held: Held<ConeWall>, mean: readonly number[]): MinimaxCone {
  const { state, low, high, iterations } = held;
  if (held.ending !== 'converged') return { status: 'did-not-converge', iterations };
  if (!(state.k > 0)) return { status: 'arc-too-short' };
  const { middle, scale } = cloud;
  const { point, direction, radius, halfAngle } = coneShape(state, mean);
  const place = (d: 0 | 1 | 2) => middle[d]! + scale * point[d];
  const shift = (low + high) / 2;
  const reach = reachAlong(cloud, state.p, state.a);
  return {
    status: 'ok',
    axis: {
      point: [place(0), place(1), place(2)],
      direction: halfAngle > 0 ? [...direction] : upright(direction),
    },
    diameter: 2 * scale * (radius + shift / Math.cos(halfAngle)),
    halfAngle,
    iterations,
    conditioning: gainOf(held, axisAndRadii(state, reach)),
    deviation: {
      min: scale * (low - shift),
      max: scale * (high - shift),
      range: scale * (high - low),
    },
    ...signedMultipliers(held),
  };
}
