/** What is wrong with a figure as it was typed, and what counts until it is put right. */
import type { Typed } from './schema.ts';
import { readLength, saysUnit } from './units.ts';

/** How small a length may be: `any`, not below nothing, or above it. */
export type Least = 'any' | 'none' | 'above none';

/**
 * @param usual what counts instead; left out: nothing does
 * @returns a sentence's beginning; null: nothing is wrong
 */
export function lengthFault(
  typed: Typed | undefined,
  least: Least = 'any',
  usual?: Typed,
): string | null {
  if (typed === undefined) return null;
  const read = readLength(typed);
  const why = read.ok ? tooSmall(typed, read.mm, least) : read.why;
  if (why === '') return null;
  return usual === undefined ? why : `${why}; ${textOf(usual)} counts until then`;
}

/** '' where it is not. */
function tooSmall({ text }: Typed, mm: number, least: Least): string {
  if (least === 'above none' && !(mm > 0)) return `“${text}” is no size: it is to be above 0`;
  if (least === 'none' && !(mm >= 0)) return `“${text}” is below 0, which it cannot be`;
  return '';
}

function textOf({ text, unit }: Typed): string {
  return saysUnit(text) ? text.trim() : `${text.trim()} ${unit}`;
}
