import { largestEigenvalue } from '../num/eigen.ts';
import type { Solution } from '../num/gaussNewton.ts';
import { invertNormal } from '../num/normalEquations.ts';
import { type Cloud, meanOf } from './cloud.ts';
import { coneStarts } from './coneStart.ts';
import { axisAndRadii, type ConeWall, coneDeviations, coneProblem, coneShape } from './coneWall.ts';
import { cylinderOfSample, LEAN_KNOWN, upright } from './cylinder.ts';
import type { FitFailure } from './ending.ts';
import type { ConePlace, LeastSquares } from './fitted.ts';
import { bestEndOfMany, magnification, polish, SURE, standardError } from './search.ts';
import { readSolid, type Solid } from './solid.ts';
import { reachAlong } from './wall.ts';

/**
 * A taper that the points do not tell is no failure: the half-angle is then near 0, and no better
 * than the conditioning times the error of a reading over half the length of the points.
 */
export type ConeFit = (LeastSquares & ConePlace) | FitFailure;

/**
 * Cone with the least sum of squared orthogonal distances, its axis in any direction and its
 * half-angle anything from 0, a cylinder, up. It may narrow or widen any way.
 *
 * Searches as the cylinder does (see cylinder.ts), with unknowns that stay apart when the cone is a
 * cylinder (see coneWall.ts), from the cones along several directions and from the least-squares
 * cylinder. Six points may lie exactly on several cones: the one that is smallest amid the points
 * is reported. Large sets are first solved on 2048 of their points. Nothing is allocated per point
 * when the coordinates are Float64Arrays.
 *
 * Points at one depth lie in a plane and are refused so; a narrow arc on which the lean of the axis
 * and the half-angle cannot be told apart is `arc-too-short`.
 *
 * @param x any length unit; the answer is in the same one
 * @param y as many as x
 * @param z as many as x
 * @throws RangeError when x, y and z differ in length
 */
export function fitCone(x: ArrayLike<number>, y: ArrayLike<number>, z: ArrayLike<number>): ConeFit {
  const solid = readSolid([x, y, z], 6);
  if ('status' in solid) return solid;
  const { cloud, sample } = solid;
  const coarse = coneOfSample(solid);
  const mean = meanOf(cloud);
  const best = sample === cloud ? coarse : polish(coneProblem(cloud, mean), coarse);
  if (best.ending !== 'converged') {
    return { status: 'did-not-converge', iterations: best.iterations };
  }
  return describe(cloud, mean, best);
}

function coneOfSample(solid: Solid): Solution<ConeWall> {
  const { sample, mean, principal } = solid;
  const cylinder = cylinderOfSample(solid).state;
  const starts = [...coneStarts(sample, mean, principal), { ...cylinder, taper: 0 }];
  return bestEndOfMany(
    (cloud) => coneProblem(cloud, mean),
    sample,
    starts,
    (cone) => cone.k,
  );
}

function describe(
  cloud: Cloud,
  mean: readonly number[],
  { state, normal, iterations }: Solution<ConeWall>,
): ConeFit {
  const inverse = invertNormal(normal);
  if (inverse === null) return { status: 'arc-too-short' };
  const error = standardError(cloud, normal);
  const unknown = openIn(state, inverse, error);
  if (unknown !== null) return unknown;
  const { low, high, lowRow, highRow } = coneDeviations(cloud, state);
  const reach = reachAlong(cloud, state.p, state.a);
  const { middle, scale } = cloud;
  const { point, direction, radius, halfAngle } = coneShape(state, mean);
  const place = (d: 0 | 1 | 2) => middle[d]! + scale * point[d];
  return {
    status: 'ok',
    axis: {
      point: [place(0), place(1), place(2)],
      direction: halfAngle > 0 ? [...direction] : upright(direction),
    },
    diameter: 2 * scale * radius,
    halfAngle,
    iterations,
    conditioning: magnification(axisAndRadii(state, reach), inverse, cloud.count),
    deviation: { min: scale * low, max: scale * high, range: scale * (high - low) },
    contacts: [lowRow, highRow],
  };
}

type Row = number[];

/** What the points leave open, or null. `error` is the standard error of one distance. */
function openIn(state: ConeWall, inverse: Float64Array, error: number): FitFailure | null {
  const at = (t: number[], u: number[]) => product(t, inverse, u);
  // The curvature of the wall itself: a cone opened wide is as flat as a narrow arc is.
  const { k, taper } = state;
  const bent = [0, -k * Math.sin(taper), 0, 0, Math.cos(taper), 0];
  if (!(k * Math.cos(taper) > SURE * error * Math.sqrt(at(bent, bent)))) {
    return { status: 'arc-too-short' };
  }
  const [, , pitch, yaw, , opened] = axisAndRadii(state, 1) as [Row, Row, Row, Row, Row, Row];
  const both = [at(pitch, pitch), at(pitch, yaw), at(yaw, pitch), at(yaw, yaw)];
  if (error * Math.sqrt(largestEigenvalue(both, 2)) <= LEAN_KNOWN) return null;
  // Were the half-angle known, would the lean be?
  const spread = at(opened, opened);
  const left = both.map((value, i) => {
    const [t, u] = [i < 2 ? pitch : yaw, i % 2 === 0 ? pitch : yaw];
    return value - (at(t, opened) * at(u, opened)) / spread;
  });
  const known = error * Math.sqrt(largestEigenvalue(left, 2)) <= LEAN_KNOWN;
  return { status: known ? 'arc-too-short' : 'too-short-along-axis' };
}

/** t inverse u */
function product(t: readonly number[], inverse: Float64Array, u: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < t.length; i++) {
    for (let j = 0; j < u.length; j++) sum += t[i]! * inverse[i * u.length + j]! * u[j]!;
  }
  return sum;
}
