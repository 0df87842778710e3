/**
 * The ways of a worn pin, each in full, and which is advised: by stated rules, the first that holds. Judgement of the trade;
 * the limits are the job's.
 */
import type { LandPlaces } from './lands.ts';
import { type About, volumeBetween } from './outside.ts';
import { SEATED, STEEL } from './removal.ts';
import type { Field, Grid } from './types.ts';

export type PinWayName = 'leave' | 'turn-round' | 'turn-down' | 'spray' | 'weld' | 'replace';

/** Metal in mm3 and g; sizes across, mm; NaN: not told. */
export interface PinWay {
  readonly name: PinWayName;
  readonly possible: boolean;
  /** Size that it runs at afterwards: the mean at its smallest place where it is left as it is. */
  readonly size: number;
  readonly volumeOn: number;
  readonly massOn: number;
  readonly volumeOff: number;
  readonly massOff: number;
  /** Most that stays short of the finished size where the load bears, per side. */
  readonly short: number;
  /** Play of the least diameter in a hole of finished size and running clearance, across. */
  readonly play: number;
  /** Bending strength against the finished size: goes as the cube of the diameter of sound steel. */
  readonly strength: number;
  /** What it is turned to before metal is sprayed on, across, and how thick that ends, per side; NaN: nothing is. */
  readonly core: number;
  readonly coat: number;
}

/**
 * Metal sprayed on holds by the roughness under it alone. So it wants a pocket turned for it, at least so deep under the
 * finished size (0.015 in, as makers of spraying powders give it for steel shafts), ends that slope up to a shoulder (45
 * degrees, likewise), and is not built up at will: the most here is judgement, well under what arc and flame spraying can
 * lay on steel (0.250 in, published guides). What is ground off again is judgement too. Per side, mm.
 */
export const SPRAY = { leastDeep: 0.381, most: 1.5, finish: 0.25 } as const;

export interface Turned {
  /** Most that is short where the load would bear, per side: opposite, and with the ends changed. NaN: not told. */
  readonly opposite: number;
  readonly ended: number;
}

/** Half of the clock that a load bears on, either side of its middle: a hand's width of a loaded pin. Judgement. */
const BEARS = Math.PI / 3;

/**
 * What turning the pin would bring under the load: by half a turn, and end for end.
 *
 * @param sideSeen false where the readings do not tell one side from the other: half a turn is then not told
 */
export function turnedRound(
  { theta, z }: Grid,
  short: Field,
  { places, land }: LandPlaces,
  sideSeen: boolean,
): Turned {
  const columns = theta.length;
  const most = (counts: (k: number) => boolean) => {
    let found = Number.NaN;
    short.forEach((e, k) => {
      if (counts(k) && !(e <= found)) found = e;
    });
    return found;
  };
  const onLand = (k: number) => places[k] === SEATED;
  const worst = short.reduce((at, e, k) => (onLand(k) && !(e <= short[at]!) ? k : at), -1);
  if (worst < 0) return { opposite: Number.NaN, ended: Number.NaN };
  const across = theta[worst % columns]! + Math.PI;
  const bears = (k: number) => Math.cos(theta[k % columns]! - across) >= Math.cos(BEARS);
  const length = z[z.length - 1]!;
  // Row by row the place that would come here with the ends changed; the grid is even in depth.
  const mirrored = (k: number) => {
    const row = Math.floor(k / columns);
    const other = Math.round(((length - z[row]!) / length) * (z.length - 1));
    return land[other * columns + (k % columns)]! >= 0;
  };
  return {
    opposite: sideSeen ? most((k) => onLand(k) && bears(k)) : Number.NaN,
    ended: most(mirrored),
  };
}

export interface PinMatter {
  readonly about: About;
  readonly on: LandPlaces;
  readonly short: Field;
  readonly turned: Turned;
  /** Across, mm. */
  readonly finished: number;
  readonly clearance: number;
  readonly leastDiameter: number;
  /** What it would be turned down to. */
  readonly smaller: number;
  readonly length: number;
  /** True where a running stretch goes out over an end of the pin: it has no shoulder there. */
  readonly overEnd: boolean;
  /** Of the build-up as planned. */
  readonly deposit: { readonly volume: number; readonly thickness: Field };
}

export function pinWays(m: PinMatter): PinWay[] {
  const { far, turn } = m.about;
  const { share } = m.on;
  const radius = m.finished / 2;
  const worst = m.short.reduce(
    (most, e, k) => (m.on.places[k] === SEATED ? Math.max(most, e) : most),
    Number.NEGATIVE_INFINITY,
  );
  const round = leastOf(m.turned);
  const down = volumeBetween(
    turn,
    share,
    () => m.smaller / 2,
    (k) => far[k]!,
  );
  const welded = (k: number) =>
    far[k]! + (m.deposit.thickness[k]! > 0 ? m.deposit.thickness[k]! : 0);
  const turnedOff = volumeBetween(turn, share, () => radius, welded);
  const loose = m.clearance + m.finished - m.leastDiameter;
  const bar = (Math.PI / 4) * m.finished ** 2 * m.length;
  const way = (name: PinWayName, of: Partial<PinWay>): PinWay => {
    const { volumeOn = 0, volumeOff = 0, size = m.finished } = of;
    return {
      name,
      possible: true,
      size,
      volumeOn,
      massOn: volumeOn * STEEL,
      volumeOff,
      massOff: volumeOff * STEEL,
      short: 0,
      play: m.clearance,
      strength: (size / m.finished) ** 3,
      core: Number.NaN,
      coat: Number.NaN,
      ...of,
    };
  };
  return [
    way('leave', { size: m.leastDiameter, short: Math.max(0, worst), play: loose }),
    way('turn-round', {
      possible: !Number.isNaN(round),
      size: m.leastDiameter,
      short: Number.isNaN(round) ? round : Math.max(0, round),
      play: loose,
    }),
    way('turn-down', { possible: m.smaller > 0, size: m.smaller, volumeOff: down }),
    way('spray', sprayed(m, worst)),
    way('weld', { volumeOn: m.deposit.volume, volumeOff: turnedOff }),
    way('replace', { volumeOn: bar }),
  ];
}

/** A pocket under the lowest place, sprayed full and ground to size. @param worst most that is short, per side */
function sprayed({ about: { far, turn }, on, finished, overEnd }: PinMatter, worst: number) {
  const coat = Math.max(SPRAY.leastDeep, worst);
  const radius = finished / 2;
  const core = radius - coat;
  const off = (inner: number, outer: (k: number) => number) =>
    volumeBetween(turn, on.share, () => inner, outer);
  return {
    possible: !overEnd && coat <= SPRAY.most && core > 0,
    core: 2 * core,
    coat,
    strength: (core / radius) ** 3,
    volumeOn: off(core, () => radius + SPRAY.finish),
    volumeOff: off(core, (k) => far[k]!) + off(radius, () => radius + SPRAY.finish),
  };
}

/** The better of half a turn and end for end. */
function leastOf({ opposite, ended }: Turned): number {
  if (Number.isNaN(opposite)) return ended;
  return Number.isNaN(ended) ? opposite : Math.min(opposite, ended);
}

/** What the advice rests on. */
export type PinReason =
  | 'good-enough'
  | 'other-side'
  | 'skin'
  | 'skin-unknown'
  | 'crack'
  | 'little-to-turn'
  | 'weldable'
  | 'not-weldable';

export interface PinAdvice {
  /** Null: something must be said first. */
  readonly way: PinWayName | null;
  readonly reason: PinReason;
}

export interface PinRules {
  readonly acceptLow: number;
  readonly turnDownMost: number;
  readonly skin: 'plain' | 'hardened' | 'plated' | null;
  readonly crackSeen: boolean;
  /** False for iron, and where nobody qualified has signed for a part that carries people. */
  readonly weldable: boolean;
}

/** Play that a joint may have before it is mended: so many times its clearance when new. Judgement of the trade. */
const PLAY_TIMES = 3;

export function pinAdvice(
  ways: readonly PinWay[],
  { clearance, finished }: Pick<PinMatter, 'clearance' | 'finished'>,
  rules: PinRules,
): PinAdvice {
  const of = (name: PinWayName) => ways.find((one) => one.name === name)!;
  if (rules.crackSeen) return { way: 'replace', reason: 'crack' };
  const [leave, round, down] = [of('leave'), of('turn-round'), of('turn-down')];
  const tight = (one: PinWay) => one.play <= PLAY_TIMES * clearance;
  if (leave.short <= rules.acceptLow && tight(leave))
    return { way: 'leave', reason: 'good-enough' };
  if (round.possible && round.short <= rules.acceptLow && tight(round)) {
    return { way: 'turn-round', reason: 'other-side' };
  }
  if (rules.skin === null) return { way: null, reason: 'skin-unknown' };
  if (rules.skin !== 'plain') return { way: 'replace', reason: 'skin' };
  if (down.possible && finished - down.size <= rules.turnDownMost) {
    return { way: 'turn-down', reason: 'little-to-turn' };
  }
  return rules.weldable
    ? { way: 'weld', reason: 'weldable' }
    : { way: 'replace', reason: 'not-weldable' };
}

/** The least diameter on the stretches, across, mm: straight across the clock, whatever the centre. NaN without any. */
export function leastDiameter(mean: Field, columns: number, { places }: LandPlaces): number {
  let least = Number.NaN;
  const half = columns / 2;
  for (let k = 0; k < mean.length; k++) {
    const row = k - (k % columns);
    const other = row + (((k % columns) + half) % columns);
    const across = mean[k]! + mean[other]!;
    if (places[k] === SEATED && places[other] === SEATED && !(across >= least)) least = across;
  }
  return least;
}
