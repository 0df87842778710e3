/**
 * Proves a minimax circle, cylinder or cone from its result alone, with formulas of its own: where
 * the contacts lie, that nothing lies beyond them, that their weighted pushes balance, and that no
 * slip which keeps them all level makes the feature better. First and second order conditions of
 * a minimax: e.g. J. Nocedal and S. Wright, Numerical Optimization, 2nd ed. (2006), chapter 12.
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { lastPlace, squareTo, type Vector } from './generated.ts';

export type Criterion = 'minimum-zone' | 'maximum-inscribed' | 'minimum-circumscribed';

/** A row with less weight than this holds nothing. */
const LEAST_WEIGHT = 1e-12;

/** What a minimax fit claims. `center` for a circle, `axis` for a cylinder, both angles for a cone. */
export interface Claimed {
  center?: readonly number[];
  axis?: { point: readonly number[]; direction: readonly number[] };
  diameter: number;
  halfAngle?: number;
  deviation: { min: number; max: number; range: number };
  contacts: readonly number[];
  multipliers: readonly number[];
}

/** A point as seen from the axis: across in two directions, and along it. */
export interface Seen {
  u: number;
  v: number;
  s: number;
}

/** The points from a claimed feature's own axis; a circle's axis stands square to the paper. */
export function seenFrom(columns: readonly ArrayLike<number>[], claimed: Claimed): Seen[] {
  const [x, y, z] = columns;
  if (claimed.axis === undefined || z === undefined) {
    const [a, b] = claimed.center as [number, number];
    return Array.from(x!, (value, i) => ({ u: value - a, v: y![i]! - b, s: 0 }));
  }
  const { point, direction } = claimed.axis;
  const along = direction as Vector;
  const [first, second] = squareTo(along);
  const [px, py, pz] = point as Vector;
  return Array.from(x!, (value, i) => {
    const [qx, qy, qz] = [value - px, y![i]! - py, z[i]! - pz];
    return {
      u: qx * first[0] + qy * first[1] + qz * first[2],
      v: qx * second[0] + qy * second[1] + qz * second[2],
      s: qx * along[0] + qy * along[1] + qz * along[2],
    };
  });
}

/**
 * Distance from an axis (for a cone: square to its wall) after the axis was shifted by a1, a2 and
 * leant by b1, b2 (tangents) and the half-angle, `angle`, grew by `wider`.
 */
export function heightOf(seen: Seen, angle: number, move: readonly number[]): number {
  const [a1 = 0, a2 = 0, b1 = 0, b2 = 0, wider = 0] = move;
  const length = Math.hypot(b1, b2, 1);
  const [dx, dy, dz] = [b1 / length, b2 / length, 1 / length];
  const [x, y, z] = [seen.u - a1, seen.v - a2, seen.s];
  const across = Math.hypot(y * dz - z * dy, z * dx - x * dz, x * dy - y * dx);
  const along = x * dx + y * dy + z * dz;
  return across * Math.cos(angle + wider) - along * Math.sin(angle + wider);
}

/** How far along a wall points lie from where a lean turns it: what a lean of one moves them. */
export function reachOf(seen: readonly Seen[], angle: number): number {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return seen.reduce(
    (most, { u, v, s }) => Math.max(most, Math.abs(s * cos + Math.hypot(u, v) * sin)),
    0,
  );
}

/** Change of that distance per move, at no move: 2 for a circle, 4 for a cylinder, 5 for a cone. */
export function gradientOf({ u, v, s }: Seen, angle: number, moves: number): number[] {
  const across = Math.hypot(u, v);
  const [n1, n2] = [u / across, v / across];
  const cos = Math.cos(angle);
  const slant = s * cos + across * Math.sin(angle);
  return [-n1 * cos, -n2 * cos, -n1 * slant, -n2 * slant, -slant].slice(0, moves);
}

/**
 * Second change of the weighted distances per two moves (lengths of the moves as in `scale`), by
 * central differences 1e-3 of `radius` apart: off by some 1e-6 of 1 / radius (fourth order) and
 * 1e-8 of it (rounding).
 */
export function bendOf(
  seen: readonly Seen[],
  weights: readonly number[],
  angle: number,
  scale: readonly number[],
  radius: number,
): number[][] {
  const apart = 1e-3 * radius;
  const at = (i: number, si: number, j: number, sj: number) => {
    const move = scale.map((c, k) => apart * c * ((k === i ? si : 0) + (k === j ? sj : 0)));
    return seen.reduce((sum, point, k) => sum + weights[k]! * heightOf(point, angle, move), 0);
  };
  return scale.map((_, i) =>
    scale.map(
      (__, j) =>
        (at(i, 0.5, j, 0.5) - at(i, 0.5, j, -0.5) - at(i, -0.5, j, 0.5) + at(i, -0.5, j, -0.5)) /
        (apart * apart),
    ),
  );
}

/** Directions, of length 1, that every row leaves alone: singular value under 1e-7 of the largest. */
export function leftAlone(rows: readonly (readonly number[])[]): number[][] {
  const width = rows[0]!.length;
  // Rows of nothing make it tall, so that all right-hand directions come out.
  const tall = [...rows.map((row) => [...row])];
  while (tall.length < width) tall.push(new Array<number>(width).fill(0));
  const svd = new SingularValueDecomposition(new Matrix(tall));
  const values = svd.diagonal;
  const turned = svd.rightSingularVectors;
  const least = 1e-7 * Math.max(...values);
  return values.flatMap((value, k) => (value > least ? [] : [turned.getColumn(k)]));
}

/** Least of `d h d` over unit directions d spanned by `span` (columns square to each other). */
export function leastBend(h: readonly (readonly number[])[], span: readonly number[][]): number {
  const inner = span.map((a) =>
    span.map((b) =>
      a.reduce((s, ai, i) => s + ai * h[i]!.reduce((t, v, j) => t + v * b[j]!, 0), 0),
    ),
  );
  if (inner.length === 0) return Number.POSITIVE_INFINITY;
  const shift = Math.max(...inner.flat().map(Math.abs)) * inner.length;
  const lifted = new Matrix(inner.map((row, i) => row.map((v, j) => (i === j ? v + shift : v))));
  // Lifted until positive definite, its singular values are its eigenvalues.
  return Math.min(...new SingularValueDecomposition(lifted).diagonal) - shift;
}

/**
 * What speaks against a claimed optimum, one line each; nothing when it is proved.
 *
 * Lengths may be off by 64 units in the last place of the largest coordinate or the radius: half a unit for each
 * coordinate of the center as written, as much for the direction, a few for the distances as
 * worked out here; and a distance inside a fit, of a dozen roundings in a unit that may be four
 * times the coordinates' own, told from another such one. Pushes may be off by as much over the
 * shorter of radius and reach, since so much turns a normal. Contacts that make no corner let the
 * axis slip, and only the curvature of the wall brings it back: a tenth of what an answer may be
 * off is then allowed besides, 1e-10 mm for a circle and 1e-9 mm for an axis.
 */
export function faults(
  columns: readonly Float64Array[],
  criterion: Criterion,
  claimed: Claimed,
): string[] {
  const found: string[] = [];
  const near = 64 * lastPlace([...columns, Float64Array.of(claimed.diameter / 2)]);
  const check = (what: string, value: number, target: number, within: number) => {
    if (!(Math.abs(value - target) <= within)) {
      found.push(`${what}: ${value} and not ${target} (within ${within})`);
    }
  };
  const angle = claimed.halfAngle ?? 0;
  const moves = claimed.axis === undefined ? 2 : claimed.halfAngle === undefined ? 4 : 5;
  const seen = seenFrom(columns, claimed);
  const size = (claimed.diameter / 2) * Math.cos(angle);
  const deviations = seen.map((point) => heightOf(point, angle, []) - size);
  const { low, high } = extremes(deviations);
  check('least deviation', claimed.deviation.min, low, near);
  check('greatest deviation', claimed.deviation.max, high, near);
  check('range', claimed.deviation.range, high - low, near);
  const [lowest, highest] = {
    'minimum-zone': [-claimed.deviation.range / 2, claimed.deviation.range / 2],
    'maximum-inscribed': [0, claimed.deviation.max],
    'minimum-circumscribed': [claimed.deviation.min, 0],
  }[criterion] as [number, number];
  check('inner bound', low, lowest, near);
  check('outer bound', high, highest, near);
  if (claimed.axis !== undefined) found.push(...axisFaults(columns, claimed.axis, seen, moves));
  const { contacts, multipliers } = claimed;
  found.push(...rowFaults(contacts, multipliers, seen.length, criterion));
  if (found.length > 0) return found;
  contacts.forEach((row, k) => {
    const out =
      criterion === 'minimum-zone' ? multipliers[k]! > 0 : criterion !== 'maximum-inscribed';
    // A gap costs the optimum as much as the contact weighs, taken as a sixteenth at least.
    const gap = near / Math.max(Math.abs(multipliers[k]!), 1 / 16);
    check(`contact ${row}`, deviations[row]!, out ? highest : lowest, gap);
  });
  const held = contacts.map((row) => seen[row]!);
  const reach = reachOf(seen, angle);
  const scale = [1, 1, 1 / reach, 1 / reach, 1 / reach].slice(0, moves);
  const radius = Math.min(...held.map(({ u, v }) => Math.hypot(u, v)));
  const gradients = held.map((point) =>
    gradientOf(point, angle, moves).map((value, j) => value * scale[j]!),
  );
  // In a zone the middle radius is free to follow.
  const zone = criterion === 'minimum-zone';
  const slips = leftAlone(zone ? gradients.map((row) => [...row, -1]) : gradients);
  const loose = slips.length === 0 ? 0 : moves === 2 ? 1e-10 : 1e-9;
  const steady = (near + loose) / Math.min(radius, moves > 2 ? reach : radius);
  scale.forEach((_, j) => {
    const push = gradients.reduce((sum, row, k) => sum + multipliers[k]! * row[j]!, 0);
    check(`push along move ${j}`, push, 0, steady);
  });
  const sign = criterion === 'maximum-inscribed' ? -1 : 1;
  const weights = multipliers.map((m) => sign * m);
  const bend = bendOf(held, weights, angle, scale, radius);
  const least = leastBend(zone ? widened(bend) : bend, slips);
  if (!(least >= -1e-5 / radius)) found.push(`a slip makes it better: curvature ${least}`);
  return found;
}

function extremes(values: readonly number[]): { low: number; high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!(value >= low)) low = value;
    if (!(value <= high)) high = value;
  }
  return { low, high };
}

function axisFaults(
  columns: readonly Float64Array[],
  { direction }: NonNullable<Claimed['axis']>,
  seen: readonly Seen[],
  moves: number,
): string[] {
  const found: string[] = [];
  const length = Math.hypot(...direction);
  if (!(Math.abs(length - 1) <= 4 * Number.EPSILON)) found.push(`direction of length ${length}`);
  const largest = Math.max(...direction.map(Math.abs));
  if (moves === 4 && !direction.includes(largest)) found.push(`direction ${direction} points down`);
  const span = extremes(seen.map(({ s }) => s));
  const level = seen.reduce((sum, { s }) => sum + s, 0) / seen.length;
  const rounding = Number.EPSILON * (span.high - span.low) * seen.length;
  if (!(Math.abs(level) <= 64 * lastPlace([...columns]) + rounding)) {
    found.push(`point ${level} off the level of the mean`);
  }
  return found;
}

function rowFaults(
  contacts: readonly number[],
  multipliers: readonly number[],
  count: number,
  criterion: Criterion,
): string[] {
  const found: string[] = [];
  const zone = criterion === 'minimum-zone';
  if (contacts.length < 2) found.push(`${contacts.length} contacts`);
  if (contacts.length !== multipliers.length) found.push(`${multipliers.length} multipliers`);
  contacts.forEach((row, k) => {
    if (!(Number.isInteger(row) && row >= 0 && row < count)) found.push(`row ${row}`);
    if (k > 0 && !(row > contacts[k - 1]!)) found.push(`rows not rising at ${row}`);
  });
  const total = (side: number) =>
    multipliers.reduce((sum, m) => sum + (Math.sign(m) === side ? m : 0), 0);
  if (!multipliers.every((m) => (zone ? Math.abs(m) : m) > LEAST_WEIGHT))
    found.push(`multipliers ${multipliers}`);
  // A few numbers of at most 1, each rounded, and the system they were solved from.
  if (!(Math.abs(total(1) - 1) <= 1e-13)) found.push(`outward multipliers sum to ${total(1)}`);
  if (zone && !(Math.abs(total(-1) + 1) <= 1e-13)) found.push(`inward ones sum to ${total(-1)}`);
  return found;
}

/** With one more move that bends nothing. */
function widened(bend: readonly (readonly number[])[]): number[][] {
  return [...bend.map((row) => [...row, 0]), new Array<number>(bend.length + 1).fill(0)];
}
