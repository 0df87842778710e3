/** What stands where the repairer has not said otherwise. Always shown, always editable. */
import type { Typed, Units } from './schema.ts';
import { lengthMm, MM_PER_INCH } from './units.ts';

/** Press fit for a hand-fitted bushing seat, across: common practice. The machine maker's figure wins. */
export function defaultPressFit(units: Units): Typed {
  return units === 'in' ? { text: '0.002', unit: 'in' } : { text: '0.05', unit: 'mm' };
}

export function defaultPressFitMm(units: Units): number {
  return lengthMm(defaultPressFit(units));
}

/**
 * Running clearance of a greased, hand-fitted pin, across, mm: 0.002 in per inch of pin and 0.002 in more, at
 * least 0.004 in. Judgement from published new clearances of such joints (about 0.002 to 0.012 in); NaN where
 * the pin is not known.
 */
export function defaultClearanceMm(pinMm: number): number {
  if (!(pinMm > 0)) return Number.NaN;
  return Math.max(0.004 * MM_PER_INCH, 0.002 * pinMm + 0.002 * MM_PER_INCH);
}
