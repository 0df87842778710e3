/** What goes into which bore, in a sentence: above all else that is said of a fit. */
import type { Seated } from '../evaluate/fit/seated.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth } from '../job/units.ts';
import { WAY_TITLES } from './wayNames.ts';

/** Of a bushing that was read once in, where nothing is known of the bore behind it. */
export const NO_WALL =
  'Too little is known of the bore behind this bushing (readings from before it went in, the bushing’s outside diameter): what holds it cannot be worked out, how freely the pin runs can.';

export function fitHead({ outside, from, seat, wall }: Seated, units: Units): string {
  const size = formatAcross(outside, units);
  const bought = from === 'measured' ? `measures ${size}` : `is made to ${size}`;
  const into =
    wall.kind === 'measured' || wall.way === 'leave'
      ? 'the bore as it is measured'
      : `the bore as “${WAY_TITLES[wall.way]}” is to leave it, ${formatAcross(wall.target, units)}`;
  const to = Number.isFinite(seat.to) ? ` to ${formatDepth(seat.to, units)}` : ' to the far end';
  return `The bushing ${bought} and sits from ${formatDepth(seat.from, units)}${to} deep in ${into}.`;
}
