/** How a metal of the table expands. */
import type { Expands, Family } from './expansion.ts';
import type { Material } from './material.ts';

/**
 * By its own figures, so that an own entry has a curve as well: what grows as fast as aluminium, what grows fast and
 * conducts badly (stainless of the 300 series), what grows fast and conducts well (brass, bronze), and all else.
 */
export function expands({ expansion, conductivity }: Material): Expands {
  return { family: familyOf(expansion, conductivity), perKelvin: expansion };
}

function familyOf(expansion: number, conductivity: number): Family {
  if (expansion >= 21.3e-6) return 'aluminium';
  if (!(expansion >= 14e-6)) return 'steel';
  return conductivity < 30 ? 'stainless' : 'copper';
}
