/**
 * Where a hole stands to a straight bar through it. The wall lies from the bar by R(theta) + x sin(theta) + y cos(theta)
 * less the bar's own radius, to first order: with opposite places, the centre is off by half of their difference. mm.
 */
import { linearLeastSquares } from '../num/leastSquares.ts';

export interface BarPlace {
  readonly theta: number;
  /** From the bar to the wall there, less anything that is the same all round. */
  readonly far: number;
}

export interface BarCentre {
  /** Of the hole, from the bar: x to 3 o'clock, y to 12. */
  readonly x: number;
  readonly y: number;
  /** How far the readings miss a round hole about that centre: root of the mean square, per degree of freedom; NaN: three places. */
  readonly miss: number;
}

/** Places that lie so that an error grows by more than this do not fix a centre: as three within two hours. */
const WORST = 12;

/**
 * @param wall how far the wall stands out of a circle about the hole's own axis at a clock position, where that is known
 * @returns null where the places do not go round
 */
export function barCentre(
  places: readonly BarPlace[],
  wall: (theta: number) => number = () => 0,
): BarCentre | null {
  const a = places.flatMap(({ theta }) => [1, Math.sin(theta), Math.cos(theta)]);
  const b = places.map(({ theta, far }) => far - wall(theta));
  const fit = linearLeastSquares(a, b, places.length, 3);
  if (fit.status !== 'ok' || !(fit.conditioning < WORST)) return null;
  const spare = places.length - 3;
  return {
    x: fit.x[1]!,
    y: fit.x[2]!,
    miss: spare > 0 ? Math.sqrt(fit.sumSquares / spare) : Number.NaN,
  };
}
