/** What goes into which bore, in a sentence: above all else that is said of a fit. */
import type { Seated } from '../evaluate/fit/seated.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth } from '../job/units.ts';
import { WAY_TITLES } from './wayNames.ts';

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
