/**
 * The wear patterns of the trade's catalogue as made-up bores, each a plain formula of clock position and depth, of any
 * size. How they look is common practice of the trade (no published source).
 */
import type { PatternName } from '../bore/patternTypes.ts';
import { seededRandom } from '../num/random.ts';
import * as wear from './wear.ts';

/** Those that readings can show, and those that only eyes or a second bore can. */
export type GalleryName =
  | Exclude<PatternName, 'egg-or-oval' | 'rough'>
  | 'scored-along'
  | 'scored-round'
  | 'galled'
  | 'pitted'
  | 'two-ear-skew';

/** mm: radius when new, depth, and how far the wall departs from new at most, per side. */
export interface Scale {
  readonly radius: number;
  readonly length: number;
  readonly size: number;
}

export interface MadePattern {
  readonly name: GalleryName;
  /** How far it departs from new at most, per side, mm, as it is usually met. */
  readonly usual: number;
  /** Depths that are read, and where it is cut across, as shares of the length. */
  readonly depths: readonly number[];
  readonly cuts: readonly number[];
  /** Clock position where it shows most. */
  readonly theta: number;
  truth(scale: Scale): wear.Truth;
}

const THOU = 0.0254;
const HOUR = Math.PI / 6;
const THREE = [0.07, 0.5, 0.93];
const FIVE = [0.07, 0.25, 0.5, 0.75, 0.93];

type Parts = (scale: Scale) => wear.Part[];

function made(
  name: GalleryName,
  thouPerSide: number,
  parts: Parts,
  rest: Partial<Pick<MadePattern, 'depths' | 'cuts' | 'theta'>> = {},
): MadePattern {
  return {
    name,
    usual: thouPerSide * THOU,
    depths: THREE,
    cuts: [0.5],
    theta: Math.PI,
    ...rest,
    truth: (scale) => wear.wornBore(scale.radius, parts(scale)),
  };
}

/** A wearing part is a little smaller than its hole: one part in a thousand of the radius. */
const worn = ({ radius, size }: Scale, theta: number, along?: wear.Along) =>
  wear.crescent(radius, size, radius / 1000, theta, along);

/** From nothing at the short way to all of it at the long way. */
const ovalTowards = ({ size }: Scale, theta: number) => [
  wear.round(size / 2, wear.throughout),
  wear.oval(2 * size, theta),
];

/** Hollows that may run into each other: the deepest counts. */
function deepest(hollows: readonly wear.Part[]): wear.Part {
  return (theta, z) => Math.max(...hollows.map((one) => one(theta, z)));
}

/** Grooves along the bore, no two alike. */
const grooves: Parts = ({ radius, length, size }) => {
  const random = seededRandom(14);
  const all = Array.from({ length: 11 }, (_, i) =>
    wear.gouge(size * (0.45 + 0.55 * (i === 0 ? 1 : random.uniform())), radius, {
      theta: 2 * Math.PI * random.uniform(),
      z: length * (0.35 + 0.3 * random.uniform()),
      halfWidth: 0.09 * radius,
      halfLength: length * (0.35 + 0.3 * random.uniform()),
    }),
  );
  return [deepest(all)];
};

/** Pits thrown over the wall, no two alike. */
const pits: Parts = ({ radius, length, size }) => {
  const random = seededRandom(17);
  const all = Array.from({ length: 34 }, (_, i) => {
    const wide = radius * (0.07 + 0.08 * random.uniform());
    return wear.gouge(size * (0.35 + 0.65 * (i === 0 ? 1 : random.uniform())), radius, {
      theta: 2 * Math.PI * random.uniform(),
      z: length * random.uniform(),
      halfWidth: wide,
      halfLength: wide,
    });
  });
  return [deepest(all)];
};

const ring = (at: number, wide: number) => (z: number) => Math.exp(-(((z - at) / wide) ** 2));

/** Metal smeared up beside the place that it was torn from. */
const galled: Parts = ({ radius, length, size }) => {
  const half = { halfWidth: 0.32 * radius, halfLength: 0.2 * length };
  const torn = { theta: 4.3 * HOUR, z: 0.42 * length };
  const smeared = { theta: 5.2 * HOUR, z: 0.55 * length };
  return [
    wear.gouge(size, radius, { ...torn, ...half }),
    wear.gouge(-0.8 * size, radius, { ...smeared, ...half }),
  ];
};

const bell = (face: 'A' | 'B', { size, length }: Scale) =>
  wear.round(size, wear.mouth('quadratic', 0.28 * length, face, length));

/** In the order of the catalogue. */
export const MADE_PATTERNS: readonly MadePattern[] = [
  made('egg', 18, (s) => [worn(s, Math.PI)]),
  made('oval', 5, (s) => ovalTowards(s, 0), { theta: 0 }),
  made('off-the-clock', 5, (s) => ovalTowards(s, 1.5 * HOUR), { theta: 1.5 * HOUR }),
  made('taper', 9, (s) => [wear.round(s.size, wear.between(1, 2 / 9, s.length))], {
    cuts: [0.07, 0.93],
  }),
  made('bell-one', 4.5, (s) => [bell('A', s)], { depths: FIVE, cuts: [0.07] }),
  made('bell-both', 4, (s) => [bell('A', s), bell('B', s)], { depths: FIVE, cuts: [0.07] }),
  made('barrel', 5, (s) => [wear.barrel(s.size, s.length)], { depths: FIVE }),
  made('waist', 3, (s) => [wear.waist(s.size, s.length)], { depths: FIVE, cuts: [0.07] }),
  made(
    'crossed',
    9,
    (s) => [
      worn(s, 0, wear.fading(0.5 * s.length)),
      worn(s, Math.PI, (z) => wear.fading(0.5 * s.length)(s.length - z)),
    ],
    { cuts: [0.07, 0.93], theta: 0 },
  ),
  made('three-lobed', 3, (s) => [wear.lobes(3, s.size, 0)], { theta: 0 }),
  made(
    'dent',
    5,
    (s) => [
      wear.gouge(-s.size, s.radius, {
        theta: 5 * HOUR,
        z: s.length / 2,
        halfWidth: 0.36 * s.radius,
        halfLength: s.length / 2,
      }),
    ],
    { theta: 5 * HOUR },
  ),
  made('step', 3, (s) => [wear.step(s.size, 0.4 * s.length)], { depths: FIVE, cuts: [0.07] }),
  made('round-but-big', 6, (s) => [wear.round(s.size, wear.throughout)]),
  made('scored-along', 3, grooves, { depths: FIVE }),
  made(
    'scored-round',
    4,
    (s) => [
      wear.round(s.size, ring(0.22 * s.length, 0.025 * s.length)),
      wear.round(0.7 * s.size, ring(0.31 * s.length, 0.02 * s.length)),
    ],
    { depths: [0.07, 0.22, 0.27, 0.5, 0.93], cuts: [0.22] },
  ),
  made('galled', 4, galled, { depths: FIVE, theta: 4.3 * HOUR, cuts: [0.45] }),
  made('pitted', 4, pits, { depths: FIVE }),
  made('two-ear-skew', 0, () => []),
];
