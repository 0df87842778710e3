/**
 * Clock positions in sentences: to a quarter of an hour (7.5 degrees), which is as near as a place is marked on metal
 * with a paint pen, and nearer than the direction of an oval is known.
 */
import { clockText, hourText, pairText } from '../job/clock.ts';

const QUARTER = (2 * Math.PI) / 48;

function near(theta: number): number {
  return Math.round(theta / QUARTER) * QUARTER;
}

/** `2:30`. */
export function nearClock(theta: number): string {
  return clockText(near(theta));
}

/** `12–6`. */
export function nearPair(theta: number): string {
  return pairText(near(theta));
}

/** `2:30`, `6`. */
export function nearHour(theta: number): string {
  return hourText(near(theta));
}
