/**
 * What is taken to be likely of a worn bore before any reading: design of the prior, in one place.
 *
 * Each lobe's coefficients vary along the depth as a constant, a slope and a smooth part, independent from lobe
 * to lobe. Even lobes fall as 1 / (n^2 - 1), as a crescent's do; the first must be wide, since a crescent's
 * first lobe is 2.36 times its second (Fourier series of the half-wave cosine); odd lobes from 3 up are never zero. A local part, short in angle and depth, stands for dents and gouges.
 */
import { LOBES } from './instruments.ts';
import type { Smoothness } from './types.ts';

/** Standard deviations that are not learned, mm. */
const SIZE_OFFSET = 1;
const SIZE_SLOPE = 0.3;
/** First lobe where radii are taken about an axis of the repairer's: how far off that axis may stand. */
const DATUM_OFFSET = 1;
const DATUM_LEAN = 0.5;
const ODD_FLOOR = 0.004;
/** Odd lobes beside even ones of about their number: a part smaller than the bore that wears into it leaves both. */
const ODD_SHARE = 0.6;
/**
 * A crescent's first lobe is (w / 2) / (2 w / 3 pi) = 2.36 times its second; wider by 1.7, since the oval that scales it
 * may be met small by chance and a part smaller than the bore has more first lobe still. Set on simulated crescents read
 * by diameters (tests/laws/surface).
 */
const FIRST_RATIO = (1.7 * (3 * Math.PI)) / 4;

/** How much less the first lobe bends along the depth than its size would let it: wear fades, axes stay straight. */
const FIRST_LOBE_BEND = 0.12;

/** Angular width of the local part, radians: about three quarters of a clock hour either way. */
const LOCAL_ANGLE = 0.38;
const SMOOTH_SHARE = 0.6;

/** Variance of each kind of change along the depth, for one lobe. */
export interface DepthShape {
  readonly constant: number;
  readonly slope: number;
  readonly smooth: number;
  readonly local: number;
  /** Of a spot's shapes alone: which spot's table holds all of it, instead of the others. */
  readonly spot?: number;
}

/** Ratio of lobe n's standard deviation to the oval's, n >= 2. */
function lobeRatio(n: number): number {
  const fall = 3 / (n * n - 1);
  return n % 2 === 0 ? fall : ODD_SHARE * fall;
}

/** Fourier weights of a bump of LOCAL_ANGLE on the circle; they sum to 1, so `local` is its sd at a place. */
const localShares = (() => {
  const w = Array.from({ length: LOBES + 1 }, (_, n) =>
    n === 0 ? 0.5 : Math.exp((-n * n * LOCAL_ANGLE * LOCAL_ANGLE) / 2),
  );
  const sum = w.reduce((a, b) => a + b, 0);
  return w.map((x) => x / sum);
})();

/** Variance of lobe n >= 2's amplitude, mm2, for an oval of standard deviation `lobe`. */
export function lobeVariance(n: number, lobe: number): number {
  return (lobeRatio(n) * lobe) ** 2 + oddFloor(n) ** 2;
}

/** The part of `lobeVariance` that does not follow the oval: odd lobes exist in round bores too. */
export function oddFloor(n: number): number {
  return n % 2 === 1 && n > 1 ? ODD_FLOOR * (8 / (n * n - 1)) : 0;
}

/** How a lobe's unit variance spreads over constant, slope and smooth part. */
export const ALONG = { constant: 1, slope: 1, smooth: SMOOTH_SHARE } as const;

/** Variance of the local part in lobe n, for a local standard deviation of 1 at a place. */
export function localShare(n: number): number {
  return localShares[n]!;
}

/** Prior variances of lobe n (0: size), mm2. `datum`: radii about an axis that may stand off the bore's. */
export function depthShape(n: number, s: Smoothness, datum: boolean): DepthShape {
  const local = s.local * s.local * localShares[n]!;
  if (n === 0) {
    return { constant: SIZE_OFFSET ** 2, slope: SIZE_SLOPE ** 2, smooth: s.size ** 2, local };
  }
  if (n > 1) {
    const v = lobeVariance(n, s.lobe);
    return {
      constant: v * ALONG.constant,
      slope: v * ALONG.slope,
      smooth: v * ALONG.smooth,
      local,
    };
  }
  const first = (FIRST_RATIO * s.lobe) ** 2;
  return {
    constant: first + (datum ? DATUM_OFFSET ** 2 : 0),
    slope: first + (datum ? DATUM_LEAN ** 2 : 0),
    smooth: FIRST_LOBE_BEND * SMOOTH_SHARE * first,
    local,
  };
}

/** Prior variances of the amount of a known shape of that share, mm2, for wear of standard deviation `worn`. */
export function knownShapeAlong(share: number, worn: number = USUAL.worn.median): DepthShape {
  const v = (share * worn) ** 2;
  return {
    constant: v * ALONG.constant,
    slope: v * ALONG.slope,
    smooth: v * ALONG.smooth,
    local: 0,
  };
}

/**
 * Where nothing was learned: median of each figure's prior, and its spread as a factor (natural log). Narrow enough that
 * five readings more do not throw the figures about, or a map would look less sure for having been measured where it
 * pays (tests/laws/next); wide enough for bores from nearly round to worn by half a millimetre (tests/laws/calibration).
 */
export const USUAL = {
  lobe: { median: 0.03, spread: 0.75 },
  size: { median: 0.03, spread: 1.0 },
  /** Share of the bore's length. */
  length: { median: 0.5, spread: 0.36 },
  local: { median: 0.004, spread: 0.35 },
  worn: { median: 0.15, spread: 1 },
} as const;
