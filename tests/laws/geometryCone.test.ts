/**
 * Least-squares cones on hundreds of sets with a known answer, and against another optimiser.
 *
 * The bar is 1e-9 mm + 1e-9 of the form error, and for far-off coordinates four units in their
 * last place times the conditioning that the fit itself reports: each coordinate was rounded by
 * half a unit when the set was written, so the conditioning is put to the test too. Angles: 1e-9
 * rad and the same rounding at both ends of the length.
 */
import { describe, expect, it } from 'vitest';
import { fitCone } from '../../src/geometry/cone.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { dot, lastPlace, randomDirection, type Vector } from './generated.ts';
import { type ConeAsked, knownCone, meanAlong } from './generatedCone.ts';
import { otherwise } from './otherwise.ts';
import { doubled, type Places, rings, scattered, tilted } from './placings.ts';

const TURN = 2 * Math.PI;

interface Kind {
  places: Places;
  /** length over radius; less where the cone would come to a point */
  slim: number;
  halfAngle: (random: Random) => number;
  form: (radius: number) => number;
  off: number;
  tail?: number;
  direction: (random: Random) => Vector;
}

/** From 1e-4 to 1 rad, as many in each tenfold. */
const anyAngle = (random: Random) => 10 ** (-4 + 4 * random.uniform());

const usual: Omit<Kind, 'places'> = {
  slim: 1.5,
  halfAngle: anyAngle,
  form: () => 0.1,
  off: 1,
  direction: randomDirection,
};
const round = scattered(60, TURN);
const few = { form: () => 0.005 };

const KINDS: Record<string, Kind> = {
  'any half-angle, any direction': { ...usual, places: round },
  'half-angle 0': { ...usual, places: round, halfAngle: () => 0 },
  'half-angle 1e-4': { ...usual, places: round, halfAngle: () => 1e-4 },
  'a bore that tapers by 1e-3': { ...usual, places: rings(8, 5), halfAngle: () => 1e-3 },
  'half-angle 0.1, tilted 30 degrees': {
    ...usual,
    places: rings(8, 5),
    halfAngle: () => 0.1,
    direction: tilted(30),
  },
  'half-angle 0.5, upright': {
    ...usual,
    places: rings(8, 5),
    halfAngle: () => 0.5,
    direction: tilted(0),
  },
  'half-angle 1': { ...usual, places: round, halfAngle: () => 1 },
  'half-angle 80 degrees': { ...usual, places: round, halfAngle: () => (80 * Math.PI) / 180 },
  'six angles by three depths': { ...usual, places: rings(6, 3), form: () => 0.02 },
  'six angles by two depths': { ...usual, places: rings(6, 2), form: () => 0.02 },
  'every point twice': { ...usual, places: doubled(rings(7, 3)) },
  'exact cones': { ...usual, places: scattered(40, TURN), form: () => 0 },
  'exact cylinders': {
    ...usual,
    places: scattered(40, TURN),
    form: () => 0,
    halfAngle: () => 0,
  },
  'form error 1e-7 of the radius': { ...usual, places: round, form: (r) => 1e-7 * r },
  'length and width alike': {
    ...usual,
    places: scattered(80, TURN),
    slim: 2.45,
    halfAngle: (random) => 0.3 * random.uniform(),
  },
  'long and thin': {
    ...usual,
    places: scattered(80, TURN),
    slim: 40,
    halfAngle: (random) => 0.02 * random.uniform(),
  },
  'short and wide': { ...usual, ...few, places: scattered(80, TURN), slim: 0.1 },
  'far outliers': { ...usual, places: scattered(80, TURN), form: () => 1, tail: 5 },
  'half a turn': { ...usual, places: scattered(60, TURN / 2) },
  'an arc of 60 degrees': { ...usual, ...few, places: scattered(80, TURN / 6) },
  'an arc of 20 degrees': { ...usual, places: scattered(200, TURN / 18), form: () => 0.0002 },
  'a million radii from the origin': { ...usual, places: round, off: 1e6 },
  'a far-off arc of 120 degrees': { ...usual, places: scattered(80, TURN / 3), off: 1e6 },
  'thousands of points': { ...usual, places: scattered(3000, TURN) },
};

describe('cones with a known answer', () => {
  for (const [name, kind] of Object.entries(KINDS)) {
    it(`${name}: 40 sets`, () => {
      const random = seededRandom(name.length + 200);
      for (let set = 0; set < 40; set++) checkCone(random, kind);
    });
  }

  it('a million points, ring by ring', () => {
    const random = seededRandom(8);
    const places: Places = (r) =>
      Array.from({ length: 1_000_000 }, (_, i) => ({
        angle: ((i % 1000) * TURN) / 1000 + 1e-4 * r.uniform(),
        z: Math.floor(i / 1000) / 999 - 0.5,
      }));
    checkCone(random, { ...usual, places });
  });
});

function checkCone(random: Random, kind: Kind): void {
  const radius = 10 + 90 * random.uniform();
  const halfAngle = kind.halfAngle(random);
  const pointed = (1.8 * radius) / Math.tan(halfAngle);
  const asked: ConeAsked = {
    point: [0, 0, 0].map(() => kind.off * radius * random.normal()) as Vector,
    direction: kind.direction(random),
    radius,
    halfAngle,
    length: Math.min(kind.slim * radius, pointed),
    places: shuffled(random, kind.places(random)),
    form: kind.form(radius),
    tail: kind.tail ?? 1,
  };
  const { columns, range } = knownCone(random, asked);
  const fit = fitCone(columns[0]!, columns[1]!, columns[2]!);
  if (fit.status !== 'ok') throw new Error(fit.status);
  const rounding = 4 * lastPlace(columns) * fit.conditioning;
  const near = 1e-9 + 1e-9 * asked.form + rounding;
  const { point, direction } = fit.axis;
  // Without a taper nothing tells which way it widens.
  const turned = halfAngle > 0 ? 1 : Math.sign(dot(direction, asked.direction));
  const along = meanAlong(asked, columns);
  const off = point.map((v, d) => v - asked.point[d]! - along * asked.direction[d]!);
  expect(Math.hypot(...off)).toBeLessThan(near);
  const lean = Math.hypot(...direction.map((v, d) => v - turned * asked.direction[d]!));
  const nearAngle = 1e-9 + (2 * rounding) / asked.length;
  expect(lean).toBeLessThan(nearAngle);
  expect(Math.abs(fit.halfAngle - halfAngle)).toBeLessThan(nearAngle);
  const across = 2 * (radius + along * Math.tan(halfAngle));
  expect(Math.abs(fit.diameter - across)).toBeLessThan(near);
  expect(Math.abs(fit.deviation.range - range)).toBeLessThan(near);
}

function shuffled<Item>(random: Random, items: Item[]): Item[] {
  for (let i = items.length - 1; i > 0; i--) {
    const j = Math.floor((i + 1) * random.uniform());
    [items[i], items[j]] = [items[j]!, items[i]!];
  }
  return items;
}

/**
 * ml-levenberg-marquardt differentiates by central differences of 1e-4, whose error, 1e-8 /
 * radius^2, moves the answer by less than 1e-7 where deviations are tenths of a mm.
 */
describe('least squares by another optimiser', () => {
  it('finds the same cone, 40 times', () => {
    const random = seededRandom(13);
    for (let set = 0; set < 40; set++) {
      const start = [5 * random.normal(), 5 * random.normal(), 0.1 * random.normal()];
      start.push(0.1 * random.normal(), 20 + 30 * random.uniform(), 0.4 * random.uniform());
      const [a, b, slopeX, slopeY, radius, halfAngle] = start as [...Vector, ...Vector];
      const points = Array.from({ length: 30 }, () => {
        const t = TURN * random.uniform();
        const z = 40 * random.uniform() - 20;
        const r = radius + Math.tan(halfAngle) * z + 0.1 * random.normal();
        return [a + slopeX * z + r * Math.cos(t), b + slopeY * z + r * Math.sin(t), z] as const;
      });
      const [x, y, z] = [0, 1, 2].map((d) => points.map((p) => p[d]!)) as [
        number[],
        number[],
        number[],
      ];
      const distance = ([px, py, sx, sy, r, h]: number[], i: number) => {
        const [dx, dy, dz] = [x[i]! - px!, y[i]! - py!, z[i]!];
        const size = Math.hypot(sx!, sy!, 1);
        const along = (dx * sx! + dy * sy! + dz) / size;
        const foot = along / size;
        const out = Math.hypot(dx - foot * sx!, dy - foot * sy!, dz - foot);
        return (out - r!) * Math.cos(h!) - along * Math.sin(h!);
      };
      const squares = (parameters: number[]) =>
        x.reduce((s, _, row) => s + distance(parameters, row) ** 2, 0);
      const { parameters: other } = otherwise(x.length, start, distance);
      const fit = fitCone(x, y, z);
      if (fit.status !== 'ok') throw new Error(fit.status);
      const { point, direction } = fit.axis;
      const up = Math.sign(direction[2]);
      const [sx, sy] = [direction[0] / direction[2], direction[1] / direction[2]];
      const taper = up * fit.halfAngle;
      // The radius where the axis passes z = 0.
      const atZero = fit.diameter / 2 - (point[2] / Math.abs(direction[2])) * Math.tan(taper);
      const own = [point[0] - sx * point[2], point[1] - sy * point[2], sx, sy, atZero, taper];
      expect(squares(own)).toBeLessThanOrEqual(squares(other) * (1 + 1e-12));
      own.forEach((value, d) => {
        expect(Math.abs(value - other[d]!)).toBeLessThan(1e-6 * fit.conditioning);
      });
    }
  });
});
