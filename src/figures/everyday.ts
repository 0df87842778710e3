/**
 * Sizes and weights beside things that everybody has held. Common knowledge: office paper of 80 g a square metre is about
 * 0.1 mm thick, and a small paper clip weighs about 1 g.
 */
import type { Units } from './steps.ts';

const SHEET_MM = 0.1;
const SHEET: Readonly<Record<Units, string>> = { in: '0.004 in', mm: '0.1 mm' };
const CLIP_GRAMS = 1;
/** Nobody pictures more than this many. */
const MOST = 20;

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** `three`; figures from ten on. */
export function countWord(count: number): string {
  return COUNTS[count] ?? String(count);
}

/** One sentence for a length in sheets of paper; empty where it is none, or too much to picture. */
export function inSheets(mm: number, units: Units): string {
  const sheets = mm / SHEET_MM;
  if (!(sheets > 0.05) || !(sheets < MOST + 0.5)) return '';
  const one = `a sheet of office paper is about ${SHEET[units]} thick`;
  if (sheets < 0.35) return `Far less than a sheet of paper: ${one}.`;
  if (sheets < 0.75) return `About half a sheet of paper: ${one}.`;
  const count = Math.round(sheets);
  return count === 1
    ? `About one sheet of paper: ${one}.`
    : `About ${countWord(count)} sheets of paper laid together: ${one}.`;
}

/** One sentence for a weight in paper clips; empty likewise. */
export function inClips(grams: number): string {
  const clips = grams / CLIP_GRAMS;
  if (!(clips > 0) || !(clips < MOST + 0.5)) return '';
  if (clips < 0.75) return 'That is less than a small paper clip weighs, about 1 g.';
  const count = Math.round(clips);
  return count === 1
    ? 'That is about the weight of one small paper clip.'
    : `That is about the weight of ${countWord(count)} small paper clips.`;
}
