/**
 * A part that warms or cools in air as one piece: all of it at one temperature, which holds while the heat goes through
 * the metal far more easily than into the air (Biot's number under 0.1, as textbooks of heat transfer say).
 */
import type { Conducts } from './conduction.ts';

export interface Part {
  /** Diameters and length, mm. */
  readonly inside: number;
  readonly outside: number;
  readonly length: number;
  readonly metal: Conducts;
}

export interface Cooling {
  /** Seconds in which the difference from the air falls to 37 % (1 / e). */
  readonly time: number;
  /** Film times volume over surface over conductivity; under 0.1 the part is at one temperature. */
  readonly biot: number;
  /** kg. */
  readonly mass: number;
}

/** Above this the middle lags behind the skin. */
export const ONE_PIECE = 0.1;

const MM = 1e-3;

/** @param film W/(m² K), over inside, outside and both ends */
export function coolingOf({ inside, outside, length, metal }: Part, film: number): Cooling {
  const [a, b, l] = [(inside / 2) * MM, (outside / 2) * MM, length * MM];
  const ends = Math.PI * (b ** 2 - a ** 2);
  const surface = 2 * Math.PI * (a + b) * l + 2 * ends;
  const volume = ends * l;
  const mass = volume * metal.density;
  const sized = inside >= 0 && outside > inside && length > 0;
  return {
    time: sized ? (mass * metal.heat) / (film * surface) : Number.NaN,
    biot: sized ? (film * volume) / (surface * metal.conductivity) : Number.NaN,
    mass: sized ? mass : Number.NaN,
  };
}

/** °C after so many seconds in air. */
export function after({ time }: Cooling, from: number, air: number, seconds: number): number {
  return air + (from - air) * Math.exp(-seconds / time);
}
