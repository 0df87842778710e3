/** What every drawing shares: its letters, and how a line becomes a path. */
import type { Point } from '../figures/contours.ts';

export const LETTERS = "'IBM Plex Mono', Consolas, 'DejaVu Sans Mono', monospace";
/** For words; figures stand in `LETTERS`. */
export const WORDS = "Barlow, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif";
/** Width of a letter of `LETTERS` as a share of its height. */
export const LETTER = 0.6;

/** A path through points, scaled; two decimals are a hundredth of a pixel. */
export function pathOf(
  points: readonly Point[],
  closed: boolean,
  scaleX: number,
  scaleY: number,
): string {
  if (points.length === 0) return '';
  const text = points.map(([x, y]) => `${round(x * scaleX)} ${round(y * scaleY)}`);
  return `M${text.join('L')}${closed ? 'Z' : ''}`;
}

export function round(value: number): number {
  return Math.round(value * 100) / 100;
}
