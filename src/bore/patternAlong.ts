/**
 * Along the depth: the shape that the profile tells, where it is not just wear on one side that fades; and a bore that
 * is round and straight but larger than new.
 */
import type { WaveRound } from './patternRound.ts';
import type { Pattern, PatternName } from './patternTypes.ts';
import { type DepthMean, profileOf } from './profile.ts';
import type { Profile, ProfileShape } from './types.ts';

/** "Strong" evidence against a straight bore, as a difference of BIC (Kass and Raftery 1995). */
const STRONG = 6;

type Uneven = Exclude<ProfileShape, 'straight' | 'not-told'>;
const NAMES: Readonly<Record<Uneven, PatternName>> = {
  taper: 'taper',
  'bell-at-A': 'bell-one',
  'bell-at-B': 'bell-one',
  'bell-both': 'bell-both',
  barrel: 'barrel',
  waist: 'waist',
  step: 'step',
};

/** A crescent w deep widens the mean diameter by 2w/pi and is 8w/(3 pi) out of round: three quarters of that. */
const OF_A_CRESCENT = 0.75;

/**
 * @param means size of each depth by itself
 * @param oval named round the clock; null none
 */
export function alongPattern(
  profile: Profile,
  means: readonly DepthMean[],
  oval: WaveRound | null,
  length: number,
): Pattern[] {
  const { shape } = profile;
  if (shape === 'straight' || shape === 'not-told') return [];
  const sure = overStraight(profile);
  if (!(sure > STRONG)) return [];
  if (oval !== null && fadesOnly(shape, means, oval, length)) return [];
  return [patternOf(profile, shape, means, sure, length)];
}

function overStraight({ candidates, shape }: Profile): number {
  const of = (name: ProfileShape) => candidates.find((c) => c.shape === name)?.criterion;
  return (of('straight') ?? Number.NaN) - (of(shape) ?? Number.NaN);
}

/** Wear on one side that fades widens the mean where it is deepest: less that, does the shape still stand? */
function fadesOnly(
  shape: ProfileShape,
  means: readonly DepthMean[],
  oval: WaveRound,
  length: number,
): boolean {
  const less = means.map((m) => {
    const at = nearest(oval, m.z);
    const owed = OF_A_CRESCENT * 4;
    return {
      z: m.z,
      diameter: m.diameter - owed * at.amount,
      sd: Math.hypot(m.sd, owed * at.sd),
    };
  });
  const rest = profileOf(less, length);
  return rest === null || rest.shape !== shape || !(overStraight(rest) > STRONG);
}

function nearest(oval: WaveRound, z: number) {
  return oval.depths.reduce((a, b) => (Math.abs(b.z - z) < Math.abs(a.z - z) ? b : a));
}

function patternOf(
  profile: Profile,
  shape: Uneven,
  means: readonly DepthMean[],
  sure: number,
  length: number,
): Pattern {
  const [first, last] = [means[0]!.z, means.at(-1)!.z];
  const { reach } = profile;
  const spread = Math.max(...means.map(({ sd }) => sd));
  const step = shape === 'step';
  return {
    name: NAMES[shape],
    rule: 'BIC',
    sure,
    amount: shape === 'taper' ? Math.abs(profile.taper) * length : profile.depthOfShape,
    // A difference of two levels, each known as well as one depth at least.
    give: shape === 'taper' ? 2 * profile.taperSd * length : 2 * Math.SQRT2 * spread,
    per: 'across',
    theta: Number.NaN,
    from: shape === 'bell-at-B' ? length - reach : step ? reach : first,
    to: shape === 'bell-at-A' ? reach : step ? reach : last,
    everywhere: false,
    face: faceOf(profile, shape, means),
  };
}

/** The face that it opens to; of a step, the one on the wider side. */
function faceOf(profile: Profile, shape: Uneven, means: readonly DepthMean[]): 'A' | 'B' | null {
  switch (shape) {
    case 'bell-at-A':
      return 'A';
    case 'bell-at-B':
      return 'B';
    case 'taper':
      return profile.taper < 0 ? 'A' : 'B';
    case 'step': {
      const mean = (list: readonly DepthMean[]) =>
        list.reduce((sum, m) => sum + m.diameter, 0) / list.length;
      const above = means.filter(({ z }) => z < profile.reach);
      const below = means.filter(({ z }) => z >= profile.reach);
      return mean(above) > mean(below) ? 'A' : 'B';
    }
    default:
      return null;
  }
}

/**
 * Larger than new bores differ among themselves: the tolerance of grade IT8 for this size, by the formula of ISO 286-1
 * (25 i with i = 0.45 D^(1/3) + 0.001 D, D in mm, i in micrometres).
 */
function tolerance(size: number): number {
  return (25 * (0.45 * Math.cbrt(size) + 0.001 * size)) / 1000;
}

/** A pattern larger than this share of what the bore has grown is the matter, and not the size. */
const SHARE = 1 / 3;

/** @param nominal new size across as stated, mm; NaN not stated */
export function roundButBig(
  means: readonly DepthMean[],
  nominal: number,
  others: readonly Pattern[],
): Pattern[] {
  if (means.length === 0 || !(nominal > 0)) return [];
  const mean = means.reduce((sum, m) => sum + m.diameter, 0) / means.length;
  const give = 2 * Math.max(...means.map(({ sd }) => sd));
  const grown = mean - nominal;
  if (!(grown - give > tolerance(nominal))) return [];
  const across = ({ amount, per }: Pattern) => (per === 'side' ? 2 : 1) * amount;
  if (others.some((one) => across(one) > SHARE * grown)) return [];
  return [
    {
      name: 'round-but-big',
      rule: 'sds',
      sure: (2 * grown) / give,
      amount: grown,
      give,
      per: 'across',
      theta: Number.NaN,
      from: means[0]!.z,
      to: means.at(-1)!.z,
      everywhere: true,
      face: null,
    },
  ];
}
