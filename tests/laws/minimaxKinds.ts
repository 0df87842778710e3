/** The kinds of sets that minimax fits are put to, each made anew by a seed. */
import type { Random } from '../../src/num/random.ts';
import { randomDirection, type Vector } from './generated.ts';
import { type Asked, type Known, knownMinimax, type Place } from './generatedMinimax.ts';
import type { Criterion } from './optimum.ts';
import { rings, tilted } from './placings.ts';

const TURN = 2 * Math.PI;

export interface Kind {
  name: string;
  feature: Asked['feature'];
  criterion: Criterion;
  places: (random: Random) => Place[];
  /** in mm, for a radius */
  form: (radius: number) => number;
  /** how far off the origin is, in radii */
  off: number;
  /** length over radius */
  slim: number;
  direction: (random: Random) => Vector;
  halfAngle: number;
  used: number;
  choices: number;
  few?: 2 | 3 | 4;
  twice: boolean;
}

const scattered =
  (count: number, arc: number) =>
  (random: Random): Place[] => {
    const start = random.uniform() * TURN;
    return Array.from({ length: count }, (_, i) => ({
      angle: start + (i < 2 ? i * arc : random.uniform() * arc),
      z: i < 4 ? i / 3 - 0.5 : random.uniform() - 0.5,
    }));
  };

const usual = {
  form: () => 0.1,
  off: 1,
  slim: 1.5,
  direction: randomDirection,
  halfAngle: 0,
  used: 1,
  choices: 20,
  twice: false,
};

type Variant = Partial<Kind> & { name: string };

/** Hard data that suit every feature and criterion. */
const ROUND: Variant[] = [
  { name: 'all round' },
  { name: 'form error 1e-7 of the radius', form: (r) => 1e-7 * r },
  { name: 'form error 1e-2 of the radius', form: (r) => 1e-2 * r, choices: 60 },
  { name: 'a million radii from the origin', off: 1e6 },
  { name: 'every point twice', twice: true },
  { name: 'lone outliers', form: () => 0.5, used: 0.02, choices: 60 },
  { name: 'badly placed contacts', form: () => 0.005, choices: 1 },
  { name: 'half the wall and a little', places: scattered(60, 0.6 * TURN), form: () => 0.01 },
  { name: 'thousands of points', places: scattered(3000, TURN) },
];

const ARCS: Variant[] = [
  { name: 'an arc of 60 degrees', places: scattered(60, TURN / 6), form: () => 0.005 },
  {
    name: 'a far-off arc of 60 degrees',
    places: scattered(60, TURN / 6),
    form: () => 0.01,
    off: 1e6,
  },
];

const SOLID: Variant[] = [
  { name: 'tilted 30 degrees, 8 angles by 5 depths', places: rings(8, 5), direction: tilted(30) },
  { name: 'upright, 8 angles by 5 depths', places: rings(8, 5), direction: tilted(0) },
  { name: 'long and thin', slim: 30 },
  { name: 'short and wide', slim: 0.2, form: () => 0.005 },
];

const of = (
  feature: Asked['feature'],
  criterion: Criterion,
  base: Partial<Kind>,
  variants: readonly Variant[],
): Kind[] =>
  variants.map((variant) => ({
    ...usual,
    places: scattered(feature === 'circle' ? 24 : 60, TURN),
    ...base,
    feature,
    criterion,
    ...variant,
  }));

const TWO_DEPTHS: Variant = {
  name: 'five angles by two depths',
  places: rings(5, 2),
  form: () => 0.02,
};

export const KINDS: Kind[] = [
  ...of('circle', 'minimum-zone', {}, [
    ...ROUND,
    ...ARCS,
    { name: 'ten points', places: scattered(10, TURN) },
    { name: 'an arc of 10 degrees', places: scattered(80, TURN / 36), form: () => 0.0002 },
  ]),
  ...of('circle', 'minimum-circumscribed', {}, [
    ...ROUND,
    { name: 'ten points, two contacts', places: scattered(10, TURN), few: 2 },
    { name: 'two contacts', few: 2 },
    { name: 'two contacts, far off', few: 2, off: 1e6 },
    { name: 'two contacts, form error 1e-7 of the radius', few: 2, form: (r) => 1e-7 * r },
  ]),
  ...of('circle', 'maximum-inscribed', {}, ROUND),
  ...of('cylinder', 'minimum-zone', {}, [...ROUND, ...ARCS, ...SOLID, TWO_DEPTHS]),
  ...of('cylinder', 'minimum-circumscribed', {}, [
    ...ROUND,
    ...SOLID,
    { name: 'three contacts', few: 3, slim: 3 },
    { name: 'four contacts', few: 4, slim: 4 },
    { name: 'four contacts, every point twice', few: 4, slim: 4, twice: true },
  ]),
  ...of('cylinder', 'maximum-inscribed', {}, [...ROUND, ...SOLID]),
  ...of('cone', 'minimum-zone', { halfAngle: 0.05, form: () => 0.05 }, [
    ...ROUND,
    ...ARCS,
    ...SOLID,
    { name: 'a taper of a thousandth', halfAngle: 0.001 },
    { name: 'a blunt cone', halfAngle: 0.6 },
    { name: 'six angles by three depths', places: rings(6, 3) },
  ]),
];

/** A part of 20 to 200 mm of a kind, and what is known of it. */
export function made(random: Random, kind: Kind): { asked: Asked; known: Known } {
  const radius = 10 + 90 * random.uniform();
  const asked: Asked = {
    feature: kind.feature,
    criterion: kind.criterion,
    point: [0, 0, 0].map(() => kind.off * radius * random.normal()) as Vector,
    direction: kind.direction(random),
    radius,
    length: kind.slim * radius,
    halfAngle: kind.halfAngle,
    places: kind.places(random),
    form: kind.form(radius),
    used: kind.used,
    choices: kind.choices,
    ...(kind.few === undefined ? {} : { few: kind.few }),
  };
  const known = knownMinimax(random, asked);
  if (!kind.twice) return { asked, known };
  return {
    asked,
    known: { ...known, columns: known.columns.map((c) => Float64Array.from([...c, ...c])) },
  };
}
