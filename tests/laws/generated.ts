/**
 * Points whose least-squares circle or cylinder is known beforehand: deviations square to every
 * column of the Jacobian leave the chosen feature the best one. Written from the idea of
 * M. G. Cox and A. B. Forbes, Strategies for Testing Assessment Software, NPL Report DITC 211/92
 * (1992). Lengths in mm.
 */
import type { Random } from '../../src/num/random.ts';

export type Vector = [number, number, number];

export interface CircleAsked {
  count: number;
  center: [number, number];
  radius: number;
  /** radians; one reading lies at random in each of `count` even parts of it */
  arc: number;
  /** largest deviation, per side */
  form: number;
  /** odd power of the normal deviations: 1 for usual ones, 5 for a few far outliers */
  tail: number;
}

export interface CylinderAsked {
  point: Vector;
  direction: Vector;
  radius: number;
  length: number;
  /** angle and place along the axis (-1/2 to 1/2 of the length) of every reading */
  places: { angle: number; z: number }[];
  form: number;
  tail: number;
}

/** What the fit must find; `range` is exact before the coordinates are rounded. */
export interface Known {
  columns: Float64Array[];
  range: number;
}

export function knownCircle(random: Random, asked: CircleAsked): Known {
  const { count, center, radius, arc, form, tail } = asked;
  const angles = Array.from({ length: count }, (_, i) => ((i + random.uniform()) / count) * arc);
  const cos = Float64Array.from(angles, Math.cos);
  const sin = Float64Array.from(angles, Math.sin);
  const e = deviations(random, [cos, sin, new Float64Array(count).fill(1)], form, tail);
  return {
    columns: [
      cos.map((c, i) => center[0] + (radius + e[i]!) * c),
      sin.map((s, i) => center[1] + (radius + e[i]!) * s),
    ],
    range: Math.max(...e) - Math.min(...e),
  };
}

export function knownCylinder(random: Random, asked: CylinderAsked): Known {
  const { point, direction, radius, length, places, form, tail } = asked;
  const [first, second] = squareTo(direction);
  const cos = Float64Array.from(places, ({ angle }) => Math.cos(angle));
  const sin = Float64Array.from(places, ({ angle }) => Math.sin(angle));
  const z = Float64Array.from(places, (place) => place.z);
  const jacobian = [
    cos,
    sin,
    cos.map((c, i) => c * z[i]!),
    sin.map((s, i) => s * z[i]!),
    new Float64Array(places.length).fill(1),
  ];
  const e = deviations(random, jacobian, form, tail);
  const columns = point.map((p, d) =>
    e.map(
      (dev, i) =>
        p +
        z[i]! * length * direction[d]! +
        (radius + dev) * (cos[i]! * first[d]! + sin[i]! * second[d]!),
    ),
  );
  const { low, high } = e.reduce(
    (r, v) => ({ low: Math.min(r.low, v), high: Math.max(r.high, v) }),
    { low: 0, high: 0 },
  );
  return { columns, range: high - low };
}

/** Random deviations square to every column, the largest of size `form`. */
export function deviations(
  random: Random,
  columns: Float64Array[],
  form: number,
  tail: number,
): Float64Array {
  const e = Float64Array.from(columns[0]!, () => random.normal() ** tail);
  const basis: Float64Array[] = [];
  for (const column of columns) {
    const rest = column.slice();
    // Twice is enough (Kahan and Parlett): the second time takes what rounding left.
    for (let k = 0; k < 2; k++) for (const unit of basis) removePart(rest, unit);
    const length = Math.sqrt(dot(rest, rest));
    basis.push(rest.map((v) => v / length));
  }
  for (let k = 0; k < 3; k++) for (const unit of basis) removePart(e, unit);
  const largest = e.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
  return e.map((v) => (v * form) / largest);
}

function removePart(from: Float64Array, unit: Float64Array): void {
  const part = dot(from, unit);
  for (let i = 0; i < from.length; i++) from[i] = from[i]! - part * unit[i]!;
}

export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function unit(v: Vector): Vector {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
}

export function squareTo(a: Vector): [Vector, Vector] {
  const first = unit(cross(a, Math.abs(a[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
  return [first, cross(a, first)];
}

export function randomDirection(random: Random): Vector {
  return unit([random.normal(), random.normal(), random.normal()]);
}

/** One unit in the last place of the largest coordinate. */
export function lastPlace(columns: Float64Array[]): number {
  const largest = columns.reduce(
    (m, column) => column.reduce((n, v) => Math.max(n, Math.abs(v)), m),
    0,
  );
  return 2 ** (Math.floor(Math.log2(largest)) - 52);
}
