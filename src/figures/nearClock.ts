/**
 * Clock positions in sentences: to a quarter of an hour (7.5 degrees), which is as near as a place is marked on metal
 * with a paint pen, and nearer than the direction of an oval is known.
 */
import { clockText, hourText, pairText } from '../job/clock.ts';

const QUARTER = (2 * Math.PI) / 48;

/** A place that is a quarter but for its last digits is that quarter. */
const ROUNDING = 1e-6;

function near(theta: number): number {
  return Math.round(theta / QUARTER) * QUARTER;
}

/** `2:30`. */
export function nearClock(theta: number): string {
  return clockText(near(theta));
}

/** `2:15` for a little past it: the quarter before, or after. */
export function clockBefore(theta: number): string {
  return clockText(Math.floor(theta / QUARTER + ROUNDING) * QUARTER);
}

export function clockAfter(theta: number): string {
  return clockText(Math.ceil(theta / QUARTER - ROUNDING) * QUARTER);
}

/** `12–6`. */
export function nearPair(theta: number): string {
  return pairText(near(theta));
}

/** `2:30`, `6`. */
export function nearHour(theta: number): string {
  return hourText(near(theta));
}
