import { symmetricEigen } from '../num/eigen.ts';
import {
  type Cloud,
  isThick,
  liesFlat,
  meanOf,
  readCloud,
  sampleCloud,
  scatterOf,
} from './cloud.ts';
import type { FitFailure } from './ending.ts';
import { SAMPLE } from './search.ts';
import type { Vector } from './wall.ts';

/** Points in space that a wall may be fitted to, and a sample of them to start on. */
export interface Solid {
  cloud: Cloud;
  /** the cloud itself when it is small */
  sample: Cloud;
  /** mean of the sample, in scaled units */
  mean: number[];
  /** principal directions of the sample, that of the least spread first */
  principal: readonly [Vector, Vector, Vector];
  /** mean square distance of the sample from its mean along the first of them */
  thickness: number;
}

/**
 * Reads points and refuses those that lie on a line or in a plane.
 *
 * @param needed how many different points the feature needs
 * @throws RangeError when x, y and z differ in length
 */
export function readSolid(
  given: readonly [ArrayLike<number>, ArrayLike<number>, ArrayLike<number>],
  needed: number,
): Solid | FitFailure {
  const cloud = readCloud(given, needed);
  if ('status' in cloud) return cloud;
  const sample = sampleCloud(cloud, SAMPLE);
  const mean = meanOf(sample);
  const { values, vectors } = symmetricEigen(scatterOf(sample, mean), 3);
  const [across, between, along] = vectors as [number[], number[], number[]];
  // The sample is asked first: it spares a pass over all points.
  const allFlat = (acrossAll: number[][]) =>
    !isThick(values[0]!) && liesFlat(sample, mean, acrossAll) && liesFlat(cloud, mean, acrossAll);
  if (allFlat([across, between])) return { status: 'on-a-line' };
  if (allFlat([across])) return { status: 'in-a-plane' };
  const principal = [across, between, along] as unknown as [Vector, Vector, Vector];
  return { cloud, sample, mean, principal, thickness: values[0]! };
}
