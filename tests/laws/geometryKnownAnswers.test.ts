/**
 * Least-squares circles and cylinders on hundreds of sets with a known answer.
 *
 * The bar is 1e-9 mm + 1e-9 of the form error, and for far-off coordinates four units in their
 * last place times the conditioning that the fit itself reports: each coordinate was rounded by
 * half a unit when the set was written, so the conditioning is put to the test too.
 */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import {
  type CylinderAsked,
  dot,
  knownCircle,
  knownCylinder,
  lastPlace,
  randomDirection,
  type Vector,
} from './generated.ts';
import { doubled, type Places, rings, scattered, tilted } from './placings.ts';

const TURN = 2 * Math.PI;

interface CircleKind {
  count: number;
  arc: number;
  form: (radius: number) => number;
  off: number;
  tail?: number;
}

const CIRCLES: Record<string, CircleKind> = {
  'all round': { count: 24, arc: TURN, form: () => 0.3, off: 1 },
  'four readings': { count: 4, arc: 4, form: () => 0.02, off: 1 },
  'an arc of 60 degrees': { count: 30, arc: TURN / 6, form: () => 0.01, off: 1 },
  'an arc of 10 degrees': { count: 60, arc: TURN / 36, form: () => 0.0005, off: 1 },
  'form error 1e-7 of the radius': { count: 40, arc: TURN, form: (r) => 1e-7 * r, off: 1 },
  'exact circles': { count: 12, arc: TURN, form: () => 0, off: 1 },
  'deep wear': { count: 50, arc: TURN, form: (r) => 0.1 * r, off: 1 },
  'far outliers': { count: 40, arc: TURN, form: () => 3, off: 1, tail: 5 },
  'a million radii from the origin': { count: 24, arc: TURN, form: () => 0.1, off: 1e6 },
  'a far-off arc of 60 degrees': { count: 40, arc: TURN / 6, form: () => 0.01, off: 1e6 },
  'thousands of points': { count: 5000, arc: TURN, form: () => 0.1, off: 1 },
};

describe('circles with a known answer', () => {
  for (const [name, kind] of Object.entries(CIRCLES)) {
    it(`${name}: 100 sets`, () => {
      const random = seededRandom(name.length);
      for (let set = 0; set < 100; set++) checkCircle(random, kind);
    });
  }
});

function checkCircle(random: Random, { count, arc, form, off, tail = 1 }: CircleKind): void {
  const radius = 10 + 90 * random.uniform();
  const center: [number, number] = [off * radius * random.normal(), off * radius * random.normal()];
  const asked = { count, center, radius, arc, form: form(radius), tail };
  const { columns, range } = knownCircle(random, asked);
  const fit = fitCircle(columns[0]!, columns[1]!);
  if (fit.status !== 'ok') throw new Error(fit.status);
  const near = 1e-9 + 1e-9 * asked.form + 4 * lastPlace(columns) * fit.conditioning;
  expect(Math.hypot(fit.center[0] - center[0], fit.center[1] - center[1])).toBeLessThan(near);
  expect(Math.abs(fit.diameter - 2 * radius)).toBeLessThan(near);
  expect(Math.abs(fit.deviation.range - range)).toBeLessThan(near);
}

interface CylinderKind {
  places: Places;
  /** length over radius */
  slim: number;
  form: (radius: number) => number;
  off: number;
  tail?: number;
  direction: (random: Random) => Vector;
}

const usual = { slim: 1.5, form: () => 0.1, off: 1, direction: randomDirection };

const CYLINDERS: Record<string, CylinderKind> = {
  'any direction': { ...usual, places: scattered(60, TURN) },
  'tilted 30 degrees, 8 angles by 5 depths': {
    ...usual,
    places: rings(8, 5),
    direction: tilted(30),
  },
  'upright, 8 angles by 5 depths': { ...usual, places: rings(8, 5), direction: tilted(0) },
  'five angles by two depths': { ...usual, places: rings(5, 2), form: () => 0.02 },
  'every point twice': { ...usual, places: doubled(rings(7, 3)) },
  'exact cylinders': { ...usual, places: scattered(40, TURN), form: () => 0 },
  'form error 1e-7 of the radius': {
    ...usual,
    places: scattered(40, TURN),
    form: (r) => 1e-7 * r,
  },
  'length and width alike': { ...usual, places: scattered(80, TURN), slim: 2.45 },
  'long and thin': { ...usual, places: scattered(80, TURN), slim: 40 },
  'short and wide': { ...usual, places: scattered(80, TURN), slim: 0.1, form: () => 0.005 },
  'far outliers': { ...usual, places: scattered(80, TURN), form: () => 3, tail: 5 },
  'half a turn': { ...usual, places: scattered(60, TURN / 2) },
  'an arc of 60 degrees': { ...usual, places: scattered(80, TURN / 6), form: () => 0.005 },
  'an arc of 20 degrees': { ...usual, places: scattered(200, TURN / 18), form: () => 0.0002 },
  'a million radii from the origin': { ...usual, places: scattered(60, TURN), off: 1e6 },
  'thousands of points': { ...usual, places: scattered(5000, TURN) },
};

describe('cylinders with a known answer', () => {
  for (const [name, kind] of Object.entries(CYLINDERS)) {
    it(`${name}: 60 sets`, () => {
      const random = seededRandom(name.length + 100);
      for (let set = 0; set < 60; set++) checkCylinder(random, kind);
    });
  }

  it('a million points, ring by ring', () => {
    const random = seededRandom(7);
    const places: Places = (r) =>
      Array.from({ length: 1_000_000 }, (_, i) => ({
        angle: ((i % 1000) * TURN) / 1000 + 1e-4 * r.uniform(),
        z: Math.floor(i / 1000) / 999 - 0.5,
      }));
    checkCylinder(random, { ...usual, places });
  });
});

function checkCylinder(random: Random, kind: CylinderKind): void {
  const radius = 10 + 90 * random.uniform();
  const point = [0, 0, 0].map(() => kind.off * radius * random.normal()) as Vector;
  const asked: CylinderAsked = {
    point,
    direction: kind.direction(random),
    radius,
    length: kind.slim * radius,
    places: kind.places(random),
    form: kind.form(radius),
    tail: kind.tail ?? 1,
  };
  const { columns, range } = knownCylinder(random, asked);
  const fit = fitCylinder(columns[0]!, columns[1]!, columns[2]!);
  if (fit.status !== 'ok') throw new Error(fit.status);
  const near = 1e-9 + 1e-9 * asked.form + 4 * lastPlace(columns) * fit.conditioning;
  const { direction } = asked;
  // Both ends of the wall: offset of the axis there, square to the known one.
  for (const end of [-0.5, 0.5]) {
    const at = point.map((p, d) => p + end * asked.length * direction[d]!);
    const along = dot(
      at.map((v, d) => v - fit.axis.point[d]!),
      fit.axis.direction,
    );
    const gap = at.map((v, d) => v - fit.axis.point[d]! - along * fit.axis.direction[d]!);
    expect(Math.hypot(...gap)).toBeLessThan(near);
  }
  const lean = Math.hypot(
    ...fit.axis.direction.map(
      (v, d) => v - Math.sign(dot(fit.axis.direction, direction)) * direction[d]!,
    ),
  );
  expect(lean).toBeLessThan(1e-9 + (8 * lastPlace(columns) * fit.conditioning) / asked.length);
  expect(Math.abs(fit.diameter - 2 * radius)).toBeLessThan(near);
  expect(Math.abs(fit.deviation.range - range)).toBeLessThan(near);
}
