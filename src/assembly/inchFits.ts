/**
 * Press fits of ANSI B4.1-1967, thousandths of an inch, as printed in Machinery's Handbook (27th edition, table 11; 31st
 * edition, tables 11 and 12), 0 to 7.09 in. The row of force fits from 3.94 to 4.73 in is from memory.
 */

/** Upper limit of the hole (its lower one is 0); lower and upper limit of the shaft. */
export type InchLimits = readonly [hole: number, lower: number, upper: number];
type Row<K extends string> = { readonly to: number } & { readonly [name in K]?: InchLimits };

export type ForceClass = 'FN1' | 'FN2' | 'FN3' | 'FN4' | 'FN5';
export type LocationClass = 'LN1' | 'LN2' | 'LN3';

/** FN1: light drive; FN2: medium; FN3: heavy; FN4 and FN5: force. Inches, up to and with. */
export const FORCE_FITS: readonly Row<ForceClass>[] = [
  force(0.12, [0.25, 0.3, 0.5], [0.4, 0.6, 0.85], null, [0.4, 0.7, 0.95], [0.6, 0.9, 1.3]),
  force(0.24, [0.3, 0.4, 0.6], [0.5, 0.7, 1], null, [0.5, 0.9, 1.2], [0.7, 1.2, 1.7]),
  force(0.4, [0.4, 0.5, 0.75], [0.6, 1, 1.4], null, [0.6, 1.2, 1.6], [0.9, 1.4, 2]),
  force(0.56, [0.4, 0.5, 0.8], [0.7, 1.2, 1.6], null, [0.7, 1.4, 1.8], [1, 1.6, 2.3]),
  force(0.71, [0.4, 0.6, 0.9], [0.7, 1.2, 1.6], null, [0.7, 1.4, 1.8], [1, 1.8, 2.5]),
  force(0.95, [0.5, 0.7, 1.1], [0.8, 1.4, 1.9], null, [0.8, 1.6, 2.1], [1.2, 2.2, 3]),
  force(1.19, [0.5, 0.8, 1.2], [0.8, 1.4, 1.9], [0.8, 1.6, 2.1], [0.8, 1.8, 2.3], [1.2, 2.5, 3.3]),
  force(1.58, [0.6, 0.9, 1.3], [1, 1.8, 2.4], [1, 2, 2.6], [1, 2.5, 3.1], [1.6, 3, 4]),
  force(1.97, [0.6, 1, 1.4], [1, 1.8, 2.4], [1, 2.2, 2.8], [1, 2.8, 3.4], [1.6, 4, 5]),
  force(2.56, [0.7, 1.3, 1.8], [1.2, 2, 2.7], [1.2, 2.5, 3.2], [1.2, 3.5, 4.2], [1.8, 5, 6.2]),
  force(3.15, [0.7, 1.4, 1.9], [1.2, 2.2, 2.9], [1.2, 3, 3.7], [1.2, 4, 4.7], [1.8, 6, 7.2]),
  force(3.94, [0.9, 1.8, 2.4], [1.4, 2.8, 3.7], [1.4, 3.5, 4.4], [1.4, 5, 5.9], [2.2, 7, 8.4]),
  force(4.73, [0.9, 2, 2.6], [1.4, 3, 3.9], [1.4, 4, 4.9], [1.4, 6, 6.9], [2.2, 8, 9.4]),
  force(5.52, [1, 2.2, 2.9], [1.6, 3.5, 4.5], [1.6, 5, 6], [1.6, 7, 8], [2.5, 10, 11.6]),
  force(6.3, [1, 2.5, 3.2], [1.6, 4, 5], [1.6, 5, 6], [1.6, 7, 8], [2.5, 12, 13.6]),
  force(7.09, [1, 2.8, 3.5], [1.6, 4.5, 5.5], [1.6, 6, 7], [1.6, 8, 9], [2.5, 12, 13.6]),
];

/** Locational interference: for accuracy of place, not to carry a load by friction alone. Inches, up to and with. */
export const LOCATION_FITS: readonly Row<LocationClass>[] = [
  location(0.12, [0.25, 0.25, 0.45], [0.4, 0.4, 0.65], [0.4, 0.5, 0.75]),
  location(0.24, [0.3, 0.3, 0.5], [0.5, 0.5, 0.8], [0.5, 0.6, 0.9]),
  location(0.4, [0.4, 0.4, 0.65], [0.6, 0.6, 1], [0.6, 0.8, 1.2]),
  location(0.71, [0.4, 0.4, 0.8], [0.7, 0.7, 1.1], [0.7, 1, 1.4]),
  location(1.19, [0.5, 0.5, 1], [0.8, 0.8, 1.3], [0.8, 1.2, 1.7]),
  location(1.97, [0.6, 0.6, 1.1], [1, 1, 1.6], [1, 1.4, 2]),
  location(3.15, [0.7, 0.8, 1.3], [1.2, 1.4, 2.1], [1.2, 1.6, 2.3]),
  location(4.73, [0.9, 1, 1.6], [1.4, 1.6, 2.5], [1.4, 2, 2.9]),
  location(7.09, [1, 1.2, 1.9], [1.6, 1.8, 2.8], [1.6, 2.5, 3.5]),
];

function force(
  to: number,
  FN1: InchLimits,
  FN2: InchLimits,
  FN3: InchLimits | null,
  FN4: InchLimits,
  FN5: InchLimits,
): Row<ForceClass> {
  return { to, FN1, FN2, ...(FN3 && { FN3 }), FN4, FN5 };
}

function location(to: number, LN1: InchLimits, LN2: InchLimits, LN3: InchLimits) {
  return { to, LN1, LN2, LN3 };
}
