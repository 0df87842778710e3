/** How much metal comes off in all: what is sure to, what is likely to, and what possibly may. */
import type { Removal } from '../bore/types.ts';
import { decimalsOf } from '../job/digits.ts';

export interface Amounts {
  /** `0.4 g`; null where none of it is sure. */
  readonly sure: string | null;
  readonly likely: string;
  readonly possible: string;
  /** `140 mm³`, the likely volume. */
  readonly volume: string;
}

/** A gram is weighed to a hundredth at best, and nobody asks for more. */
const MOST_DECIMALS = 2;

/** Decimals that a mass in grams has earned. */
export function massDecimals({
  sureMass,
  possibleMass,
}: Pick<Removal, 'sureMass' | 'possibleMass'>): number {
  return Math.min(MOST_DECIMALS, decimalsOf((possibleMass - sureMass) / 2) ?? MOST_DECIMALS);
}

/** Decimals that the volume has earned, mm3; negative: tens, hundreds. */
export function volumeDecimals({
  mass,
  volume,
  sureMass,
  possibleMass,
}: Pick<Removal, 'mass' | 'volume' | 'sureMass' | 'possibleMass'>): number {
  const perGram = mass > 0 ? volume / mass : Number.NaN;
  return decimalsOf(((possibleMass - sureMass) / 2) * perGram) ?? 0;
}

/** As many digits as half of the way from the sure to the possible amount allows. */
export function amountWords(
  removal: Pick<Removal, 'mass' | 'volume' | 'sureMass' | 'possibleMass'>,
): Amounts {
  const { mass, volume, sureMass, possibleMass } = removal;
  const decimals = massDecimals({ sureMass, possibleMass });
  const grams = (g: number) => `${earned(g, decimals)} g`;
  return {
    sure: Number(earned(sureMass, decimals)) > 0 ? grams(sureMass) : null,
    likely: grams(mass),
    possible: grams(possibleMass),
    volume: `${earned(volume, volumeDecimals(removal))} mm³`,
  };
}

/** Negative decimals: to tens, hundreds. */
export function earned(value: number, decimals: number): string {
  const step = 10 ** -decimals;
  return decimals >= 0 ? value.toFixed(decimals) : String(Math.round(value / step) * step);
}

/** `surely 0.4 g of steel to come off, likely 1.1 g, possibly up to 2.6 g`. */
export function sayAmounts(removal: Removal): string {
  const { sure, likely, possible } = amountWords(removal);
  const rest = `likely ${likely}, possibly up to ${possible}`;
  return sure === null
    ? `none of the steel is sure to come off; ${rest}`
    : `surely ${sure} of steel to come off, ${rest}`;
}
