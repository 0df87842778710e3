/**
 * Round the clock: is there an oval, does it lie off the clock's own pairs, and is there a third lobe.
 *
 * Each depth is fitted by itself (`depthLobes.ts`), so that nothing is believed beforehand. Two questions are asked of all
 * depths: is their mean other than nothing, and are they together; a wave is named where a bore without it would show
 * as much once in a hundred surveys or less, both questions counted (Bonferroni's factor of 2).
 */
import { chanceAbove } from '../geometry/axisLine.ts';
import { polarWave } from '../geometry/harmonics.ts';
import type { OvalAt } from '../geometry/ovalTurn.ts';
import type { Pattern } from './patternTypes.ts';

const BY_CHANCE = 0.01;
/** What a repairer would not call a shape, per side, mm: an oval of 0.0001 in across. */
const LEAST = 0.0006;
/**
 * Off the clock: farther than this from both 12-6 and 3-9. There two readings at 90 degrees show less than 71 % of the
 * oval (cos 45 degrees), which is where they mislead.
 */
const OFF_CLOCK = Math.PI / 8;

/** A wave found round all depths. */
export interface WaveRound {
  /** Per side, mm, of the mean over the depths; or of the depth that shows it best where they do not agree. */
  readonly amplitude: number;
  readonly sd: number;
  /** First crest clockwise from 12; its standard deviation. */
  readonly theta: number;
  readonly thetaSd: number;
  readonly chance: number;
  /** Each depth along the same crest, per side, signed. */
  readonly depths: readonly { readonly z: number; readonly amount: number; readonly sd: number }[];
}

/** @returns null where the depths show no wave of n lobes above their give-or-take */
export function waveRound(n: number, at: readonly OvalAt[]): WaveRound | null {
  if (at.length === 0) return null;
  const pooled = meanOf(at);
  const alone = at.reduce((sum, one) => sum + square(one), 0);
  const ofMean = chanceAbove(square(pooled), 2);
  const ofAll = chanceAbove(alone, 2 * at.length);
  const chance = Math.min(1, 2 * Math.min(ofMean, ofAll));
  if (!(chance < BY_CHANCE)) return null;
  const best = at.reduce((a, b) => (square(b) > square(a) ? b : a));
  const shown = ofMean < BY_CHANCE ? pooled : best;
  const wave = polarWave(shown.a, shown.b, shown.aa, shown.ab, shown.bb);
  if (!(wave.amplitude > LEAST)) return null;
  const [c, s] = [Math.cos(wave.phase), Math.sin(wave.phase)];
  const first = wave.phase < 0 ? wave.phase + 2 * Math.PI : wave.phase;
  return {
    amplitude: wave.amplitude,
    sd: wave.amplitudeSd,
    theta: first / n,
    thetaSd: wave.phaseSd / n,
    chance,
    depths: at.map(({ z, a, b, aa, ab, bb }) => ({
      z,
      amount: a * c + b * s,
      sd: Math.sqrt(aa * c * c + 2 * ab * c * s + bb * s * s),
    })),
  };
}

/** Mean by inverse covariances, with its own. */
function meanOf(at: readonly OvalAt[]): OvalAt {
  let [aa, ab, bb, a, b] = [0, 0, 0, 0, 0];
  for (const one of at) {
    const det = one.aa * one.bb - one.ab * one.ab;
    const [u, v, w] = [one.bb / det, -one.ab / det, one.aa / det];
    aa += u;
    ab += v;
    bb += w;
    a += u * one.a + v * one.b;
    b += v * one.a + w * one.b;
  }
  const det = aa * bb - ab * ab;
  const [u, v, w] = [bb / det, -ab / det, aa / det];
  return { z: at[0]!.z, a: u * a + v * b, b: v * a + w * b, aa: u, ab: v, bb: w };
}

/** How far from nothing, in its own standard deviations, squared: 2 expected by chance. */
function square({ a, b, aa, ab, bb }: OvalAt): number {
  return (a * a * bb - 2 * a * b * ab + b * b * aa) / (aa * bb - ab * ab);
}

/** Where the wave stands out of two standard deviations: first and last such depth, and whether all do. */
function shownAt({ depths }: WaveRound): Pick<Pattern, 'from' | 'to' | 'everywhere'> {
  const shown = depths.filter(({ amount, sd }) => amount > 2 * sd);
  const some = shown.length > 0 ? shown : depths;
  return {
    from: some[0]!.z,
    to: some.at(-1)!.z,
    everywhere: shown.length === depths.length && depths.length > 1,
  };
}

/** The oval as out-of-round across: its diameters differ by four times the amplitude. */
export function ovalPattern(oval: WaveRound): Pattern {
  return {
    name: 'egg-or-oval',
    rule: 'chance',
    sure: oval.chance,
    amount: 4 * oval.amplitude,
    give: 8 * oval.sd,
    per: 'across',
    theta: oval.theta,
    face: null,
    ...shownAt(oval),
  };
}

export function offTheClock(oval: WaveRound): Pattern[] {
  const quarter = Math.PI / 2;
  const off = Math.abs(oval.theta - quarter * Math.round(oval.theta / quarter));
  if (!(off > OFF_CLOCK) || !(oval.thetaSd < OFF_CLOCK)) return [];
  return [{ ...ovalPattern(oval), name: 'off-the-clock' }];
}

/** A part smaller than the bore that wears into one side leaves a third lobe of up to half its second. */
const OF_A_CRESCENT = 0.6;

/** Three lobes of their own: none where they may belong to wear on one side. */
export function threeLobed(at: readonly OvalAt[], oval: WaveRound | null): Pattern[] {
  const third = waveRound(3, at);
  if (third === null) return [];
  const owed = oval === null ? 0 : OF_A_CRESCENT * oval.amplitude;
  if (!(third.amplitude - 2 * third.sd > owed)) return [];
  return [
    {
      name: 'three-lobed',
      rule: 'chance',
      sure: third.chance,
      amount: third.amplitude,
      give: 2 * third.sd,
      per: 'side',
      theta: third.theta,
      face: null,
      ...shownAt(third),
    },
  ];
}
