/** Random readings all round a circle or cylinder, and the fits by criterion. */
import {
  maximumInscribedCircle,
  minimumCircumscribedCircle,
  minimumZoneCircle,
} from '../../src/geometry/minimaxCircle.ts';
import {
  maximumInscribedCylinder,
  minimumCircumscribedCylinder,
  minimumZoneCylinder,
} from '../../src/geometry/minimaxCylinder.ts';
import { seededRandom } from '../../src/num/random.ts';
import { randomDirection, squareTo } from './generated.ts';
import type { Criterion } from './optimum.ts';

const TURN = 2 * Math.PI;

export const CRITERIA: Criterion[] = ['minimum-zone', 'maximum-inscribed', 'minimum-circumscribed'];

export const CIRCLES = {
  'minimum-zone': minimumZoneCircle,
  'maximum-inscribed': maximumInscribedCircle,
  'minimum-circumscribed': minimumCircumscribedCircle,
};

export const CYLINDERS = {
  'minimum-zone': minimumZoneCylinder,
  'maximum-inscribed': maximumInscribedCylinder,
  'minimum-circumscribed': minimumCircumscribedCylinder,
};

/**
 * Points with a lobe and noise, some 0.1 mm deep, on a part of 20 to 200 mm; the largest gap
 * between neighbors is under 120 degrees for six and less for more.
 */
export function circleOf({ seed, count }: { seed: number; count: number }): Float64Array[] {
  const random = seededRandom(seed);
  const radius = 10 + 90 * random.uniform();
  const center = [50 * random.normal(), 50 * random.normal()];
  const turn = TURN * random.uniform();
  const points = Array.from({ length: count }, (_, i) => {
    const t = ((i + 0.9 * random.uniform()) / count) * TURN;
    const r = radius + 0.03 * Math.cos(2 * t + turn) + 0.02 * random.normal();
    return [r * Math.cos(t), r * Math.sin(t)];
  });
  return center.map((c, d) => Float64Array.from(points, (p) => c + p[d]!));
}

/** The same on a cylinder 1 to 3 radii long, its axis in any direction. */
export function cylinderOf({ seed, count }: { seed: number; count: number }): Float64Array[] {
  const random = seededRandom(seed);
  const radius = 10 + 90 * random.uniform();
  const length = radius * (1 + 2 * random.uniform());
  const point = [50 * random.normal(), 50 * random.normal(), 50 * random.normal()];
  const direction = randomDirection(random);
  const [first, second] = squareTo(direction);
  const points = Array.from({ length: count }, (_, i) => {
    const t = ((7 * i + random.uniform()) / count) * TURN;
    const s = length * (i < 2 ? i - 0.5 : random.uniform() - 0.5);
    const r = radius + 0.03 * Math.cos(2 * t + s / radius) + 0.02 * random.normal();
    return { x: r * Math.cos(t), y: r * Math.sin(t), s };
  });
  return point.map((p, d) =>
    Float64Array.from(
      points,
      ({ x, y, s }) => p + x * first[d]! + y * second[d]! + s * direction[d]!,
    ),
  );
}
