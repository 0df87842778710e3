/** The removal map: how much metal to take off where, per side, and what that comes to. */
import type { Field, Grid, Removal, WearSurface } from './types.ts';

/** Plain steel, g per mm3 (7850 kg/m3). */
export const STEEL = 7.85e-3;

/** Standard deviations by which a place may be larger or smaller than at the mean. */
const SURE = 2;

/** A stretch of wall where nothing may be ground: depths in mm, theta NaN for all round, width round the bore. */
export interface Keepout {
  readonly from: number;
  readonly to: number;
  readonly theta: number;
  readonly width: number;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * @param deviation per side in the target's frame; negative stands proud
 * @param sd its standard deviation
 * @param seats depths on which a bushing sits: nothing is asked off outside them
 * @returns sure, likely and possible metal, per side, never negative; NaN in a keepout
 */
export function removalMap(
  surface: WearSurface,
  deviation: Field,
  sd: Field,
  seats: readonly Span[],
  keepouts: readonly Keepout[],
): Removal {
  const places = wallPlaces(surface, seats, keepouts);
  /** Metal where the bore is so many standard deviations larger than at the mean. */
  const metal = (larger: number) =>
    deviation.map((e, k) => {
      if (places[k] === KEPT_OFF) return Number.NaN;
      return places[k] === SEATED ? Math.max(0, -e - larger * sd[k]!) : 0;
    });
  const [sure, likely, possible] = [metal(SURE), metal(0), metal(-SURE)];
  const volume = metalVolume(surface, likely);
  const grams = (field: Field) => metalVolume(surface, field) * STEEL;
  return {
    deviation,
    sd,
    likely,
    sure,
    possible,
    firstPass: firstPass(likely, sure),
    volume,
    mass: volume * STEEL,
    sureMass: grams(sure),
    possibleMass: grams(possible),
  };
}

/**
 * What a first pass may take: at most half of what is likely left, and no nearer to the target than the give-or-take,
 * which is as much as is sure. Common practice: the rest waits for a new measurement.
 *
 * @param likely, sure per side, mm, never negative; NaN where nothing may be ground
 * @returns per side, mm; NaN where either is
 */
export function firstPass(likely: Field, sure: Field): Field {
  return likely.map((metal, k) => Math.min(metal / 2, sure[k]!));
}

/** What a place of the wall is to the map: nothing asked of it, metal may be asked off, nothing may be ground. */
export const SEATED = 1;
export const KEPT_OFF = 2;

/** 1 where the bushing sits and metal may be taken off, 2 in a keepout, 0 elsewhere; as long as a field. */
export function wallPlaces(
  { grid: { theta, z }, mean }: Pick<WearSurface, 'grid' | 'mean'>,
  seats: readonly Span[],
  keepouts: readonly Keepout[],
): Uint8Array {
  const out = new Uint8Array(mean.length);
  for (let iz = 0, k = 0; iz < z.length; iz++) {
    const seated = seats.some((s) => z[iz]! >= s.from - 1e-9 && z[iz]! <= s.to + 1e-9);
    for (let it = 0; it < theta.length; it++, k++) {
      if (keepouts.some((q) => covers(q, theta[it]!, z[iz]!, mean[k]!))) out[k] = KEPT_OFF;
      else if (seated) out[k] = SEATED;
    }
  }
  return out;
}

function covers(q: Keepout, theta: number, z: number, radius: number): boolean {
  if (z < q.from || z > q.to) return false;
  if (Number.isNaN(q.theta)) return true;
  const turn = Math.abs(Math.atan2(Math.sin(theta - q.theta), Math.cos(theta - q.theta)));
  return turn * radius <= q.width / 2;
}

/** Volume of a layer on the wall, mm3: integral of t (R + t / 2) over angle and depth, end rows counted half. */
export function metalVolume(surface: WearSurface, thickness: Field): number {
  const { z } = surface.grid;
  const share = cellShares(surface.grid);
  let sum = 0;
  for (let iz = 0, k = 0; iz < z.length; iz++) {
    let row = 0;
    for (let it = 0; it < surface.grid.theta.length; it++, k++) {
      const t = thickness[k]!;
      if (t > 0) row += t * (surface.mean[k]! + t / 2);
    }
    sum += row * share[iz]!;
  }
  return sum;
}

/** Angle times depth of one place of each row, rad mm. */
export function cellShares(grid: Grid): Float64Array {
  const last = grid.z.length - 1;
  const turn = (2 * Math.PI) / grid.theta.length;
  return grid.z.map((_, i) => {
    const before = i > 0 ? grid.z[i]! - grid.z[i - 1]! : 0;
    const after = i < last ? grid.z[i + 1]! - grid.z[i]! : 0;
    return (turn * (before + after)) / 2;
  });
}
