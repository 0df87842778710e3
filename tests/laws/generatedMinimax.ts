/**
 * Points whose minimum-zone, maximum inscribed or minimum circumscribed feature is known
 * beforehand: a few contacts are put on the bounds where their pushes, with weights of one sign
 * each, balance; all other points lie strictly within. Written from the idea of A. B. Forbes and
 * H. D. Minh, International Journal of Metrology and Quality Engineering 3 (2012) 145-150.
 * Lengths in mm.
 */
import { inverse, Matrix, solve } from 'ml-matrix';
import type { Random } from '../../src/num/random.ts';
import { squareTo, type Vector } from './generated.ts';
import { bendOf, type Criterion, gradientOf, leastBend, leftAlone, type Seen } from './optimum.ts';

/** Angle about the axis, and place along it as a part (-1/2 to 1/2) of the length. */
export interface Place {
  angle: number;
  z: number;
}

export interface Asked {
  feature: 'circle' | 'cylinder' | 'cone';
  criterion: Criterion;
  /** a point of the axis; for a circle its first two numbers are the center */
  point: Vector;
  direction: Vector;
  /** at `point` */
  radius: number;
  length: number;
  /** 0 for circles and cylinders */
  halfAngle: number;
  places: Place[];
  /** width of the zone, or farthest point from an inscribed or circumscribed feature */
  form: number;
  /** part of the form that points which are no contacts use: small for lone outliers */
  used: number;
  /** contacts are chosen as the best conditioned of so many sets */
  choices: number;
  /** circumscribed with fewer contacts than would make a corner: 2 for a circle, 3 or 4 */
  few?: 2 | 3 | 4;
}

export interface Known {
  columns: Float64Array[];
  range: number;
  /** contacts by row, with multipliers as the fits give them */
  contacts: { row: number; multiplier: number }[];
  /** most that unit errors of the contacts move the axis or the radius; NaN with few contacts */
  conditioning: number;
}

const FREE = { circle: 2, cylinder: 4, cone: 5 };
/** No contact pushes with less than this part of all. */
const LEAST_WEIGHT = 0.02;
/** Contacts of a regular grid may balance in many ways: they then hold no corner. */
const WORST = 1e4;

export function knownMinimax(random: Random, asked: Asked): Known {
  const { criterion, form, used } = asked;
  const places = [...asked.places];
  const { held, conditioning } = asked.few ? fewContacts(random, asked) : corner(random, asked);
  for (const { row, place } of held) places[row] = place;
  const e = inside(random, places).map((v) => {
    if (criterion === 'minimum-zone') return 0.49 * used * form * v;
    const off = form * (0.02 + 0.49 * used * (v + 1));
    return criterion === 'maximum-inscribed' ? off : -off;
  });
  for (const { row, multiplier } of held) {
    e[row] = criterion === 'minimum-zone' ? (Math.sign(multiplier) * form) / 2 : 0;
  }
  return {
    columns: columnsOf(asked, places, e),
    range: Math.max(...e) - Math.min(...e),
    contacts: held.map(({ row, multiplier }) => ({ row, multiplier })),
    conditioning,
  };
}

interface Held {
  row: number;
  place: Place;
  multiplier: number;
}

/** As many contacts as unknowns and one: where the null vector of their pushes has the signs. */
function corner(random: Random, asked: Asked): { held: Held[]; conditioning: number } {
  const zone = asked.criterion === 'minimum-zone';
  const free = FREE[asked.feature];
  let best: { held: Held[]; conditioning: number } | null = null;
  let accepted = 0;
  for (let attempt = 0; accepted < asked.choices; attempt++) {
    if (attempt > 100_000) throw new Error('no contacts that balance among these places');
    const rows = drawn(random, asked.places.length, free + (zone ? 2 : 1));
    const pushes = rows.map((row) => {
      const push = pushOf(asked.places[row]!, free);
      return zone ? [...push, 1] : push;
    });
    const weights = balanceOf(pushes);
    if (weights === null) continue;
    const total = weights.reduce((s, w) => s + Math.abs(w), 0) / (zone ? 2 : 1);
    const multipliers = weights.map((w) => w / total);
    if (!multipliers.every((m) => (zone ? Math.abs(m) : m) > LEAST_WEIGHT)) continue;
    const levels = new Matrix(
      pushes.map((push, i) => [...push, zone ? Math.sign(multipliers[i]!) : 1]),
    );
    const conditioning = largestSum(levels);
    if (!(conditioning < WORST)) continue;
    accepted++;
    if (best === null || conditioning < best.conditioning) {
      const held = rows.map((row, i) => ({
        row,
        place: asked.places[row]!,
        multiplier: multipliers[i]!,
      }));
      best = { held, conditioning };
    }
  }
  return best!;
}

/** Largest sum of the sizes in a row of the inverse; infinite when there is none. */
function largestSum(matrix: Matrix): number {
  try {
    const rows = inverse(matrix).to2DArray();
    return Math.max(...rows.map((row) => row.reduce((s, v) => s + Math.abs(v), 0)));
  } catch {
    return Number.POSITIVE_INFINITY;
  }
}

/** Null vector of the pushes, one more than each has parts; null when rounding leaves it open. */
function balanceOf(pushes: readonly number[][]): number[] | null {
  const last = pushes[pushes.length - 1]!;
  const columns = last.map((_, j) => pushes.slice(0, -1).map((push) => push[j]!));
  try {
    const w = solve(new Matrix(columns), new Matrix(last.map((v) => [-v]))).to1DArray();
    return w.every((v) => Math.abs(v) < 1e3) ? [...w, 1] : null;
  } catch {
    return null;
  }
}

/**
 * Circumscribed features that stand on fewer contacts: across one diameter; across diameters of
 * one plane through the axis; or four all round at depths that balance, chosen so that a slip of
 * the axis that leaves them level makes it larger.
 */
function fewContacts(random: Random, asked: Asked): { held: Held[]; conditioning: number } {
  const rows = drawn(random, asked.places.length, asked.few!);
  for (;;) {
    const { angles, depths, weights } = fewPlaces(random, asked.few!);
    const held = rows.map((row, i) => ({
      row,
      place: { angle: angles[i]!, z: depths[i]! },
      multiplier: weights[i]!,
    }));
    if (Math.min(...weights) > LEAST_WEIGHT && stands(asked, held)) {
      return { held, conditioning: Number.NaN };
    }
  }
}

function fewPlaces(random: Random, few: 2 | 3 | 4) {
  const start = 2 * Math.PI * random.uniform();
  const across = start + Math.PI;
  if (few === 2) return { angles: [start, across], depths: [0, 0], weights: [0.5, 0.5] };
  if (few === 3) {
    const middle = 0.6 * random.uniform() - 0.3;
    return {
      angles: [start, across, start],
      depths: [-0.5, middle, 0.5],
      weights: [(0.5 - middle) / 2, 0.5, (0.5 + middle) / 2],
    };
  }
  const angles = [0, 1, 2, 3].map((k) => start + (k + 0.8 * random.uniform()) * (Math.PI / 2));
  const normals = angles.map((t) => [Math.cos(t), Math.sin(t)]);
  const mix = [0, 0, 0, 0];
  for (let left = 0; left < 4; left++) {
    const three = [0, 1, 2, 3].filter((k) => k !== left);
    const w = balanceOf(three.map((k) => normals[k]!));
    if (w?.every((v) => v > 0)) {
      const total = w.reduce((s, v) => s + v, 0) / (0.2 + random.uniform());
      three.forEach((k, i) => {
        mix[k]! += w[i]! / total;
      });
    }
  }
  const total = mix.reduce((s, v) => s + v, 0);
  const weights = mix.map((w) => w / total);
  const depths = balanceOf(normals.map((n, i) => [weights[i]! * n[0]!, weights[i]! * n[1]!, 1]));
  const most = Math.max(...(depths ?? [1]).map(Math.abs));
  return { angles, depths: (depths ?? [0, 0, 0, 0]).map((d) => d / (2 * most)), weights };
}

function stands(asked: Asked, held: readonly Held[]): boolean {
  const { feature, radius, length } = asked;
  const free = FREE[feature];
  const seen: Seen[] = held.map(({ place: { angle, z } }) => ({
    u: radius * Math.cos(angle),
    v: radius * Math.sin(angle),
    s: z * length,
  }));
  const scale = [1, 1, 2 / length, 2 / length].slice(0, free);
  const weights = held.map(({ multiplier }) => multiplier);
  const gradients = seen.map((s) => gradientOf(s, 0, free).map((v, j) => v * scale[j]!));
  const balanced = scale.every(
    (_, j) => Math.abs(gradients.reduce((s, g, i) => s + weights[i]! * g[j]!, 0)) < 1e-12,
  );
  const bend = bendOf(seen, weights, 0, scale, radius);
  return balanced && leastBend(bend, leftAlone(gradients)) > 0.05 / radius;
}

/** Change of a contact's distance per shift, lean (at the ends) and half-angle (there too). */
function pushOf({ angle, z }: Place, free: number): number[] {
  const [n1, n2] = [Math.cos(angle), Math.sin(angle)];
  return [n1, n2, 2 * z * n1, 2 * z * n2, 2 * z].slice(0, free);
}

function drawn(random: Random, count: number, wanted: number): number[] {
  const rows = new Set<number>();
  while (rows.size < wanted) rows.add(Math.floor(random.uniform() * count));
  return [...rows].sort((a, b) => a - b);
}

/** Lobes that turn along the depth, and noise; between -1 and 1. */
function inside(random: Random, places: readonly Place[]): number[] {
  const lobes = [2, 3, 5].map((n) => ({
    n,
    size: random.normal() / n,
    turn: 6 * random.uniform(),
    twist: random.normal(),
  }));
  const values = places.map(({ angle, z }) =>
    lobes.reduce(
      (s, { n, size, turn, twist }) => s + size * Math.cos(n * angle + turn + twist * z),
      0.2 * random.normal(),
    ),
  );
  const largest = values.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
  return values.map((v) => v / largest);
}

/** The wall point of every place, moved off square to the wall by e. */
function columnsOf(asked: Asked, places: readonly Place[], e: readonly number[]): Float64Array[] {
  const { feature, point, direction, radius, length, halfAngle } = asked;
  const flat = feature === 'circle';
  const [first, second]: [Vector, Vector] = flat
    ? [
        [1, 0, 0],
        [0, 1, 0],
      ]
    : squareTo(direction);
  const [sin, cos, tan] = [Math.sin(halfAngle), Math.cos(halfAngle), Math.tan(halfAngle)];
  return (flat ? [0, 1] : [0, 1, 2]).map((d) =>
    Float64Array.from(places, ({ angle, z }, i) => {
      const foot = z * length;
      const across = radius + foot * tan + e[i]! * cos;
      const along = flat ? 0 : foot - e[i]! * sin;
      const out = Math.cos(angle) * first[d]! + Math.sin(angle) * second[d]!;
      return point[d]! + across * out + along * direction[d]!;
    }),
  );
}
