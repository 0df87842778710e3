/**
 * A spot: one place of the wall that departs from the rest by more than the rest departs from itself.
 *
 * A gouge is in few places, so that one figure for the whole wall's dents is too small inside it and too large
 * everywhere else. A spot adds variance where it is and nowhere else: small humps of unknown height, a few round the
 * clock by a few along the depth, each the less likely to be high the farther from the middle. Heights are Gaussian, so
 * the posterior stays exact.
 */
import type { KnownShape } from './crescent.ts';
import { cosineColumn, LOBES, TERMS } from './instruments.ts';
import type { Spot } from './types.ts';

/** Standard deviation of a hump and distance to the next: radians (0.4 of a clock hour), and share of the length. */
const HUMP_ANGLE = 0.2;
const HUMP_SHARE = 0.07;
/** How far humps from the middle count, in steps of a hump (one standard deviation of their variance). */
const FAR = 1.5;

/** Which steps there are humps at, and how high each may be, so that the variance at the middle is 1. */
const STEPS: readonly number[] = [-2, -1, 0, 1, 2];
const HEIGHTS = (() => {
  const heights = STEPS.map((s) => Math.exp((-s * s) / (4 * FAR * FAR)));
  const middle = STEPS.reduce((sum, s, i) => sum + (heights[i]! * Math.exp((-s * s) / 2)) ** 2, 0);
  return heights.map((h) => h / Math.sqrt(middle));
})();

/** Fourier amplitudes of a hump of height 1 at 0: a Gaussian wrapped on the circle. */
const AMPLITUDES = Array.from(
  { length: LOBES + 1 },
  (_, n) =>
    ((n === 0 ? 1 : 2) * HUMP_ANGLE * Math.exp((-n * n * HUMP_ANGLE * HUMP_ANGLE) / 2)) /
    Math.sqrt(2 * Math.PI),
);

function hump(theta: number, height: number): Float64Array {
  const out = new Float64Array(TERMS);
  AMPLITUDES.forEach((a, n) => {
    if (n === 0) out[0] = height * a;
    else {
      out[cosineColumn(n)] = height * a * Math.cos(n * theta);
      out[cosineColumn(n) + 1] = height * a * Math.sin(n * theta);
    }
  });
  return out;
}

/**
 * Round the clock. Of a spot that may as well be straight across there are two alike, independent of each other; they
 * are told as their even and odd halves, so that what diameters see stays apart from what they do not.
 */
export function spotShapes({ theta, across }: Spot): KnownShape[] {
  const humps = STEPS.map((s, i) => hump(theta + s * HUMP_ANGLE, HEIGHTS[i]!));
  if (!across) return humps.map((profile) => ({ profile, share: 1 }));
  return [0, 1].flatMap((odd) =>
    humps.map((profile) => ({
      // Each of the two is half the sum and half the difference: twice the half, over the root of two.
      profile: profile.map((a, c) => (((c + 1) >> 1) % 2 === odd ? Math.SQRT2 * a : 0)),
      share: 1,
    })),
  );
}

/** The hump in the middle of a spot, by itself: what readings are first asked for. */
export function middleHump(theta: number): Float64Array {
  return hump(theta, 1);
}

/** How much of the hump in the middle there is at each depth. */
export function middleAlong(z: number, depths: ArrayLike<number>, length: number): Float64Array {
  return Float64Array.from(depths, (at) => gaussian((at - z) / (HUMP_SHARE * length)));
}

/** How much there is of each hump at each depth, hump by hump; one standard deviation. */
export function depthHumps(z: number, depths: ArrayLike<number>, length: number): Float64Array[] {
  return STEPS.map((s, i) =>
    Float64Array.from(depths, (at) => HEIGHTS[i]! * gaussian((at - z) / (HUMP_SHARE * length) - s)),
  );
}

/** Covariance along the depth, mm2: rows.length * columns.length. */
export function alongSpot(
  { z, sd }: Spot,
  rows: ArrayLike<number>,
  columns: ArrayLike<number>,
  length: number,
): Float64Array {
  const there = depthHumps(z, rows, length);
  const here = depthHumps(z, columns, length);
  const out = new Float64Array(rows.length * columns.length);
  there.forEach((a, s) => {
    const b = here[s]!;
    for (let i = 0, k = 0; i < a.length; i++) {
      const own = sd * sd * a[i]!;
      for (let j = 0; j < b.length; j++, k++) out[k] = out[k]! + own * b[j]!;
    }
  });
  return out;
}

function gaussian(x: number): number {
  return Math.exp((-x * x) / 2);
}
