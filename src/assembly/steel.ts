/** Plain steel, cold and hot. Megapascals, degrees Celsius, grams, millimetres. */

/** g per mm3 (7850 kg/m3). */
export const STEEL_DENSITY = 7.85e-3;

/** EN 1993-1-1:2005, 3.2.6. */
export const STEEL_MODULUS = 210_000;

/** Poisson's ratio, EN 1993-1-1:2005, 3.2.6. */
export const STEEL_POISSON = 0.3;

/**
 * EN 1993-1-2:2005, table 3.1: effective yield strength and modulus of hot-rolled carbon steel as shares of those at
 * 20 °C. Other steels differ.
 */
const HOT = [
  { at: 20, yield: 1, modulus: 1 },
  { at: 100, yield: 1, modulus: 1 },
  { at: 200, yield: 1, modulus: 0.9 },
  { at: 300, yield: 1, modulus: 0.8 },
  { at: 400, yield: 1, modulus: 0.7 },
  { at: 500, yield: 0.78, modulus: 0.6 },
  { at: 600, yield: 0.47, modulus: 0.31 },
  { at: 700, yield: 0.23, modulus: 0.13 },
  { at: 800, yield: 0.11, modulus: 0.09 },
  { at: 900, yield: 0.06, modulus: 0.0675 },
  { at: 1000, yield: 0.04, modulus: 0.045 },
  { at: 1100, yield: 0.02, modulus: 0.0225 },
  { at: 1200, yield: 0, modulus: 0 },
] as const;

export interface HotShares {
  /** Of the yield strength, 0 to 1. */
  readonly yield: number;
  /** Of the modulus, 0 to 1. */
  readonly modulus: number;
}

/** Straight between the rows of the table, as it says; NaN outside 20 to 1200 °C. */
export function hotShares(celsius: number): HotShares {
  const next = HOT.findIndex(({ at }) => celsius <= at);
  if (!(celsius >= HOT[0].at) || next < 0) return { yield: Number.NaN, modulus: Number.NaN };
  const above = HOT[next]!;
  const below = HOT[Math.max(0, next - 1)]!;
  const way = above === below ? 0 : (celsius - below.at) / (above.at - below.at);
  const between = (key: 'yield' | 'modulus') => below[key] + way * (above[key] - below[key]);
  return { yield: between('yield'), modulus: between('modulus') };
}
