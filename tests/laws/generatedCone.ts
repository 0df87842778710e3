/**
 * Points whose least-squares cone is known beforehand, made as generated.ts makes cylinders:
 * deviations square to the wall and, over all points, to every column of the Jacobian of the
 * distances there. A foot on the wall at distance z along the axis, with outward normal
 * n = u cos(h) - a sin(h), has the columns n.x, n.y (shifts), u.x l, u.y l with
 * l = z cos(h) + r(z) sin(h) (leans: the moment of n about the origin of z), 1 (radius) and z
 * (half-angle: the distance along the wall, but for a factor). Lengths in mm.
 */
import type { Random } from '../../src/num/random.ts';
import { deviations, dot, type Known, squareTo, type Vector } from './generated.ts';

export interface ConeAsked {
  /** of the axis, in the middle of the length */
  point: Vector;
  /** towards where it widens */
  direction: Vector;
  /** square to the axis, at `point` */
  radius: number;
  /** radians */
  halfAngle: number;
  length: number;
  /** angle and place along the axis (-1/2 to 1/2 of the length) of the foot of every reading */
  places: { angle: number; z: number }[];
  form: number;
  tail: number;
}

export function knownCone(random: Random, asked: ConeAsked): Known {
  const { point, direction, radius, halfAngle, length, places, form, tail } = asked;
  const [first, second] = squareTo(direction);
  const [ch, sh] = [Math.cos(halfAngle), Math.sin(halfAngle)];
  const cos = Float64Array.from(places, ({ angle }) => Math.cos(angle));
  const sin = Float64Array.from(places, ({ angle }) => Math.sin(angle));
  const z = Float64Array.from(places, (place) => place.z * length);
  const r = z.map((v) => radius + v * Math.tan(halfAngle));
  const moment = z.map((v, i) => (v * ch + r[i]! * sh) / radius);
  const jacobian = [
    cos,
    sin,
    cos.map((c, i) => c * moment[i]!),
    sin.map((s, i) => s * moment[i]!),
    new Float64Array(places.length).fill(1),
    z.map((v) => v / length),
  ];
  const e = deviations(random, jacobian, form, tail);
  const columns = point.map((p, d) =>
    e.map(
      (dev, i) =>
        p +
        (z[i]! - dev * sh) * direction[d]! +
        (r[i]! + dev * ch) * (cos[i]! * first[d]! + sin[i]! * second[d]!),
    ),
  );
  return {
    columns,
    range: e.reduce((m, v) => Math.max(m, v), 0) - e.reduce((m, v) => Math.min(m, v), 0),
  };
}

/** How far the mean of the points lies from `point` along the axis. */
export function meanAlong({ point, direction }: ConeAsked, columns: Float64Array[]): number {
  const mean = columns.map((column, d) => {
    const sum = column.reduce((s, v) => s + (v - point[d]!), 0);
    return sum / column.length;
  });
  return dot(mean, direction);
}
