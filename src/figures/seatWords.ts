/** How a bushing sits in the bore: before it is pressed in, as sizes have it, and once it is pressed in and has bent to the wall. */
import type { PressPart } from '../evaluate/fit/press.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearClock } from './nearClock.ts';
import { percentOf } from './wayWords.ts';
import { written } from './written.ts';

/** Why nothing presses on it; as the end of a sentence, with its full stop; null: something does. */
export function looseWords({ local, facts, round }: PressPart, units: Units): string | null {
  const { mm } = facts.loss;
  if (local.mean > mm && (round === null || round.touching > 0)) return null;
  const text = written(units, local.give);
  const fit = `the press fit is ${text.plain(local.least)} at the least, ${text.plain(local.mean)} on the mean and ${text.across(local.greatest)} at the most`;
  return local.mean > 0 && mm > 0
    ? `${fit}, and roughness takes ${written(units, Number.NaN).across(mm)} of it, so that on the whole nothing is left to press on the bushing and hold it.`
    : `${fit}, so that on the whole nothing presses on it.`;
}

/** Whether the wall holds it once it is in, then how the sizes stood before that. */
export function seatLead(press: PressPart, units: Units): string {
  const { local, round } = press;
  const text = written(units, local.give);
  const least = `the least press fit is ${text.across(local.least)}`;
  const at = `at ${nearClock(local.theta)}, ${formatDepth(local.z, units)} deep`;
  if (round === null) {
    return local.least < 0
      ? `Not everywhere before it is pressed in: ${least} ${at}${tightShare(press)}. How far it bends to the wall follows once the sizes below are known`
      : `Yes: ${least}`;
  }
  const before = local.least < 0 ? `; before it is pressed in, ${least} ${at}` : `; ${least}`;
  const share = local.least < 0 ? tightShare(press) : '';
  return `${touchLead(press, units)}${before}${share}`;
}

function touchLead({ round }: PressPart, units: Units): string {
  const { touching, widest } = round!;
  if (!(widest.value > 0)) return 'Yes: pressed in, it touches all of its seat';
  const gap = written(units, Number.NaN).perSide(widest.value);
  return `Not everywhere: pressed in, it touches ${touched(touching)} of its seat, and a gap of up to ${gap} is left at ${nearClock(widest.theta)}, ${formatDepth(widest.z, units)} deep`;
}

/** Never all where a gap is left, never none where it touches. */
export function touched(touching: number): string {
  return `${Math.min(99, Math.max(1, Math.round(100 * touching)))} %`;
}

function tightShare({ held }: PressPart): string {
  return Number.isNaN(held.likely) ? '' : `, and ${percentOf(held.likely)} of the seat is tight`;
}

/** The wall that stands off before pressing, and what becomes of that; null: it stands off nowhere. */
export function offWords({ local, round }: PressPart, units: Units): string | null {
  if (!(local.least < 0)) return null;
  const { perSide } = written(units, local.give);
  const before = `Before it is pressed in, the wall stands ${perSide(-local.least / 2)} off the bushing at ${nearClock(local.theta)}, ${formatDepth(local.z, units)} deep.`;
  if (round === null) return before;
  if (!(round.touching > 0)) return before;
  return round.widest.value > 0
    ? `${before} Pressed in, it bends and touches ${touched(round.touching)} of its seat; a gap of up to ${written(units, Number.NaN).perSide(round.widest.value)} is left.`
    : `${before} Pressed in, it bends and touches all of its seat.`;
}
