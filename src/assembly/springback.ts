/** How far a boss that was squeezed springs back when the jaws let go: an estimate with its range. */
import { lobeMoves } from './ring.ts';
import { hotShares, STEEL_MODULUS, STEEL_POISSON } from './steel.ts';

export interface Squeezed {
  /** Diameters of bore and boss, mm. */
  readonly bore: number;
  readonly boss: number;
  /** Yield strength at 20 °C, MPa. */
  readonly yield: number;
  /** Of the metal while it is squeezed, °C. */
  readonly heat: number;
}

export interface Range {
  readonly least: number;
  readonly most: number;
}

/** A full section of a rectangle carries 1.5 times the moment at which its edge begins to yield. */
const FULL_SECTION = 1.5;

/**
 * What a bore squeezed across gives back, across, mm, never negative.
 *
 * A ring that yields carries no more than its limit load, and gives back what that load had bent it elastically. The load
 * is taken as two lobes on the outside. Least: the edge of the bore begins to yield at the heated metal's strength, and the
 * ring springs with cold steel's modulus, as most of it is cold or the jaws are held until it is. Most: the full section
 * has yielded, and it springs with the modulus of the heat. Strength and modulus by EN 1993-1-2:2005, table 3.1.
 *
 * @returns null where a size is missing or makes no ring, or the heat lies outside the table
 */
export function springback({ bore, boss, yield: strength, heat }: Squeezed): Range | null {
  const hot = hotShares(heat);
  const load = lobeMoves({ bore, outside: boss, poisson: STEEL_POISSON }, 2, 'outside');
  // The load at which the bore's edge yields, and how far the bore then moved across: two sides of half the diameter.
  const pressure = (strength * hot.yield) / Math.abs(load.hoop);
  const across = (Math.abs(load.bore) * pressure * bore) / STEEL_MODULUS;
  const most = (FULL_SECTION * across) / hot.modulus;
  return across >= 0 && most >= across && Number.isFinite(most) ? { least: across, most } : null;
}
