/** A shift as a repairer says it: how far, and toward which hour of the clock. */
import { clockText } from '../job/clock.ts';
import type { Units } from '../job/schema.ts';
import { formatLength } from '../job/units.ts';

const MINUTE = Math.PI / 360;

/** Clock position of a shift, to a minute of the clock (half a degree): `3:00`. @param x to 3 o'clock, y to 12 */
export function towardClock(x: number, y: number): string {
  return clockText(Math.round(Math.atan2(x, y) / MINUTE) * MINUTE, true);
}

/** `0.0020 in toward 4:30`; `not at all`. mm */
export function sayToward(x: number, y: number, units: Units): string {
  const far = formatLength(Math.hypot(x, y), units);
  return Number.parseFloat(far) > 0 ? `${far} toward ${towardClock(x, y)}` : 'not at all';
}
