/**
 * What each instrument sees of the bore, lobe by lobe.
 *
 * R(theta) = c0 + sum over n of (a_n cos n theta + b_n sin n theta). Every instrument is a sum of a few radii,
 * weighted, so its reading is linear in (c0, a_1, b_1, a_2, b_2, ...): the weights are its gains. A two-point
 * gauge has no gain on odd lobes, a self-centring three-leg gauge only on c0 and lobes 3, 6, 9 (ISO 4292).
 */
import { THREE_LEG, type Touch, TWO_POINT } from '../geometry/gaugeResponse.ts';
import type { Instrument } from '../job/schema.ts';
import type { SetupPrior, Sighting } from './types.ts';

/** Highest lobe that the surface carries: at 14 a local dent 20 degrees wide is still drawn to 0.2 %. */
export const LOBES = 14;
/** c0, then cosine and sine of lobes 1 to LOBES. */
export const TERMS = 2 * LOBES + 1;

/** Column of lobe n's cosine; its sine is the next. */
export function cosineColumn(n: number): number {
  return 2 * n - 1;
}

/** Which radii an instrument adds up, from its stated position on. */
export function touches(instrument: Instrument, sign: number): readonly Touch[] {
  switch (instrument) {
    case 'two-point':
      return TWO_POINT;
    case 'three-leg':
      return THREE_LEG;
    case 'radius':
      return [{ turn: 0, weight: 1 }];
    case 'sweep':
    case 'wall':
      return [{ turn: 0, weight: sign }];
  }
}

/**
 * Gains of a row of readings.
 * @returns count * TERMS, row by row; gains that cancel are exactly 0.
 */
export function gains(sightings: readonly Sighting[], setups: readonly SetupPrior[]): Float64Array {
  const out = new Float64Array(sightings.length * TERMS);
  sightings.forEach((s, i) => {
    const row = i * TERMS;
    const sign = setups[s.setup]?.sign ?? 1;
    for (const { turn, weight } of touches(s.instrument, sign)) {
      out[row] = out[row]! + weight;
      for (let n = 1; n <= LOBES; n++) {
        const angle = n * (s.theta + turn);
        const c = row + cosineColumn(n);
        out[c] = out[c]! + weight * Math.cos(angle);
        out[c + 1] = out[c + 1]! + weight * Math.sin(angle);
      }
    }
    for (let k = row; k < row + TERMS; k++) if (Math.abs(out[k]!) < 1e-12) out[k] = 0;
  });
  return out;
}

/** Lobe numbers from 1 that at least one of these readings responds to. */
export function seenLobes(gain: Float64Array): number[] {
  const seen: number[] = [];
  for (let n = 1; n <= LOBES; n++) {
    for (let row = cosineColumn(n); row < gain.length; row += TERMS) {
      if (gain[row] !== 0 || gain[row + 1] !== 0) {
        seen.push(n);
        break;
      }
    }
  }
  return seen;
}

/** How many times the bore's radius goes into one reading: what "per side" means for this instrument. */
export function sizeGain(instrument: Instrument): number {
  return instrument === 'two-point' || instrument === 'three-leg' ? 2 : 1;
}
