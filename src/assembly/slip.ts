/** How warm and how cold the two parts must be for a bushing to slip into its bore. Millimetres across, °C. */
import { celsiusAt, type Expands, strainAt } from './expansion.ts';

export interface Mating {
  /** Least the bore is at 20 °C, where the bushing is tightest, across, mm. */
  readonly bore: number;
  /** Outside of the bushing at 20 °C, across, mm. */
  readonly bushing: number;
  readonly bossMetal: Expands;
  readonly bushingMetal: Expands;
}

/** Bore less bushing at these temperatures, across, mm: positive slips, negative is still tight. */
export function openingAt(mating: Mating, boss: number, bushing: number): number {
  const { bore, bushing: outside, bossMetal, bushingMetal } = mating;
  return bore * (1 + strainAt(bossMetal, boss)) - outside * (1 + strainAt(bushingMetal, bushing));
}

/** °C of the boss for this much room round a bushing this cold; NaN: none within −200 to 600 °C. */
export function bossFor(
  { bore, bushing: outside, bossMetal, bushingMetal }: Mating,
  room: number,
  bushing: number,
): number {
  const wanted = outside * (1 + strainAt(bushingMetal, bushing)) + room;
  return celsiusAt(bossMetal, wanted / bore - 1);
}

/** °C of the bushing for this much room in a boss this warm; NaN: none within −200 to 600 °C. */
export function bushingFor(
  { bore, bushing: outside, bossMetal, bushingMetal }: Mating,
  room: number,
  boss: number,
): number {
  const wanted = bore * (1 + strainAt(bossMetal, boss)) - room;
  return celsiusAt(bushingMetal, wanted / outside - 1);
}

/** The usual room at entry, across, mm: 0.001 of the diameter or 0.001 in, the greater (DIN 7190-1 and shop practice). */
export function usualRoom(diameter: number): number {
  return Math.max(0.001 * diameter, 0.0254);
}

/** Where cold comes from: °C (the dry ice's and the nitrogen's as makers of gases give them). */
export const BATHS = { freezer: -18, dryIce: -78.5, nitrogen: -195.8 } as const;
