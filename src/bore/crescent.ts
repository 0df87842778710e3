/**
 * Wear on one stated side: shapes that are known round the clock, each in an amount of its own at every depth.
 *
 * A part smaller than the bore by c per side that has worn w deep towards theta leaves, to first order,
 * R = max(0, (w + c) cos(t - theta) - c): a crescent. It is linear in w for a given c / w, so the posterior stays exact
 * with the amounts as further unknowns: the crescent itself, what a smaller part would change of it, and what some
 * minutes of the clock more would, since a side is said to the hour.
 */
import { cosineColumn, LOBES, TERMS } from './instruments.ts';

/** Amplitudes of the lobes, for an amount of 1 mm at the middle of the crescent. */
export interface KnownShape {
  readonly profile: Float64Array;
  /** Standard deviation of the amount, as a share of that of the wear. */
  readonly share: number;
}

/** Clearance of the wearing part as a share of the wear: the usual one, and one that is large. */
const USUAL_SMALLER = 0.25;
const MUCH_SMALLER = 1;
const SMALLER_SHARE = 0.6;
/** A third of an hour either way, one standard deviation, radians. */
const SAID_TO = 0.17;

const STEPS = 720;

function crescentAt(turn: number, smaller: number): number {
  return Math.max(0, (1 + smaller) * Math.cos(turn) - smaller);
}

/** Fourier amplitudes (cosines only) of an even shape, from its values all round; lobes 0 to LOBES. */
function cosines(shape: (turn: number) => number): number[] {
  return Array.from({ length: LOBES + 1 }, (_, n) => {
    let sum = 0;
    for (let i = 0; i < STEPS; i++) {
      const turn = (2 * Math.PI * i) / STEPS;
      sum += shape(turn) * Math.cos(n * turn);
    }
    return ((n === 0 ? 1 : 2) * sum) / STEPS;
  });
}

const USUAL = cosines((turn) => crescentAt(turn, USUAL_SMALLER));
const SMALLER = cosines((turn) => crescentAt(turn, MUCH_SMALLER) - crescentAt(turn, USUAL_SMALLER));

/** @param theta the worn side, radians; NaN: none stated, no shapes */
export function crescentShapes(theta: number): KnownShape[] {
  if (Number.isNaN(theta)) return [];
  const facing = (amplitudes: readonly number[]) => {
    const out = new Float64Array(TERMS);
    amplitudes.forEach((a, n) => {
      if (n === 0) out[0] = a;
      else {
        out[cosineColumn(n)] = a * Math.cos(n * theta);
        out[cosineColumn(n) + 1] = a * Math.sin(n * theta);
      }
    });
    return out;
  };
  const turned = new Float64Array(TERMS);
  for (let n = 1; n <= LOBES; n++) {
    turned[cosineColumn(n)] = -n * USUAL[n]! * Math.sin(n * theta);
    turned[cosineColumn(n) + 1] = n * USUAL[n]! * Math.cos(n * theta);
  }
  return [
    { profile: facing(USUAL), share: 1 },
    { profile: facing(SMALLER), share: SMALLER_SHARE },
    { profile: turned, share: SAID_TO },
  ];
}
