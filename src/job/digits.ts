/** How many digits a figure earns: no more than its give-or-take allows. */
import type { Units } from './schema.ts';
import { inUnits } from './units.ts';

const USUAL_DECIMALS: Readonly<Record<Units, number>> = { in: 4, mm: 3 };
/** A thou and a hundredth: what is set against a limit of so much tells nothing with fewer, however badly it is known. */
const FEWEST_DECIMALS: Readonly<Record<Units, number>> = { in: 3, mm: 2 };

/**
 * Decimals that a give-or-take allows: its first digit, two where that is a 1 (0.0012, not 0.001), never more
 * than the shop's usual ones nor fewer than a thou or a hundredth. NaN or 0: the usual ones.
 */
export function decimalsFor(give: number, units: Units): number {
  const usual = USUAL_DECIMALS[units];
  const earned = decimalsOf(inUnits(give, units)) ?? usual;
  return Math.min(usual, Math.max(FEWEST_DECIMALS[units], earned));
}

/** The same for a figure of any kind: negative where tens and hundreds are all that it allows; null: NaN or 0. */
export function decimalsOf(give: number): number | null {
  if (!(give > 0) || !Number.isFinite(give)) return null;
  const first = Math.ceil(-Math.log10(give) - 1e-9);
  const leads = Number((give * 10 ** first).toPrecision(3));
  return leads < 2 ? first + 1 : first;
}
