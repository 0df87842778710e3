/** Figures as the notebook writes them: no more digits than the readings earn. */

import { decimalsFor } from '../job/digits.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatLength, formatPerSide, inUnits } from '../job/units.ts';

export interface Written {
  /** `0.0031 in per side`. */
  perSide(mm: number): string;
  /** `2.0031 in across`. */
  across(mm: number): string;
  /** `2.0031 in`, where the words around say the rest. */
  plain(mm: number): string;
  /** `2.0031`, where the words around say the unit too. NaN: an en dash. */
  bare(mm: number): string;
}

/** @param give how well the figures are known, mm; NaN: as well as the shop ever writes them */
export function written(units: Units, give: number): Written {
  const digits = decimalsFor(give, units);
  return {
    perSide: (mm) => formatPerSide(mm, units, digits),
    across: (mm) => formatAcross(mm, units, digits),
    plain: (mm) => formatLength(mm, units, digits),
    bare: (mm) => (Number.isNaN(mm) ? '–' : inUnits(mm, units).toFixed(digits)),
  };
}
