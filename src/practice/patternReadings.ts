/** What each gauge would read in a made-up bore, and how much there was to be seen: millimetres, without noise. */
import type { Instrument } from '../job/schema.ts';
import type { MadePattern, Scale } from './patterns.ts';
import { placesOn, read } from './simulate.ts';
import type { Truth } from './wear.ts';

export type Shown = Exclude<Instrument, 'radius'>;

/** Rows are depths, columns clock positions. */
export interface GaugeReadings {
  readonly instrument: Shown;
  readonly thetas: readonly number[];
  readonly depths: readonly number[];
  /**
   * Over what it reads in the new bore: across (two-point, three-leg) or per side (wall); a needle (sweep) over
   * where it stood at the first place.
   */
  readonly values: readonly (readonly number[])[];
}

/** How much of it there is, per side, mm: how uneven the wall is round the clock and along the depth at most. */
export interface ToBeSeen {
  readonly round: number;
  readonly along: number;
  /** Difference of opposite places, halved: what no diameter holds. */
  readonly sides: number;
  /** Mean departure from new. */
  readonly size: number;
}

const HOUR = Math.PI / 6;
const upTo = (count: number, step: number) => Array.from({ length: count }, (_, i) => i * step);
/** Six pairs; a third of a turn, after which three legs stand as before; eight positions. */
const CLOCKS: Readonly<Record<Shown, readonly number[]>> = {
  'two-point': upTo(6, HOUR),
  'three-leg': upTo(4, HOUR),
  sweep: upTo(8, 1.5 * HOUR),
  wall: upTo(8, 1.5 * HOUR),
};
const ORDER: readonly Shown[] = ['two-point', 'three-leg', 'sweep', 'wall'];

export function patternReadings(pattern: MadePattern, scale: Scale): GaugeReadings[] {
  const truth = pattern.truth(scale);
  const depths = pattern.depths.map((share) => share * scale.length);
  return ORDER.map((instrument) => {
    const thetas = CLOCKS[instrument];
    const boss = 1.5 * scale.radius;
    const reader = { noise: 0, resolution: 0, seed: 1, boss };
    const all = read(truth, instrument, placesOn(thetas, depths), reader);
    const across = instrument === 'two-point' || instrument === 'three-leg';
    const fresh = across ? 2 * scale.radius : instrument === 'wall' ? boss - scale.radius : all[0]!;
    return {
      instrument,
      thetas,
      depths,
      values: depths.map((_, row) =>
        all.slice(row * thetas.length, (row + 1) * thetas.length).map((value) => value - fresh),
      ),
    };
  });
}

const ANGLES = 120;

export function toBeSeen(truth: Truth, radius: number, depths: readonly number[]): ToBeSeen {
  const angles = upTo(ANGLES, (2 * Math.PI) / ANGLES);
  const rows = depths.map((z) => {
    const out = angles.map((theta) => truth(theta, z) - radius);
    const sides = out.map((e, i) => Math.abs(e - out[(i + ANGLES / 2) % ANGLES]!) / 2);
    return {
      mean: out.reduce((sum, e) => sum + e, 0) / ANGLES,
      round: Math.max(...out) - Math.min(...out),
      sides: Math.max(...sides),
    };
  });
  const means = rows.map(({ mean }) => mean);
  return {
    round: Math.max(...rows.map(({ round }) => round)),
    along: Math.max(...means) - Math.min(...means),
    sides: Math.max(...rows.map(({ sides }) => sides)),
    size: means.reduce((sum, mean) => sum + mean, 0) / means.length,
  };
}
