/** Where a bushing presses in the bore as it is, and what becomes of its own bore: the same for page and report. */
import type { RoundFit, RoundMissing, RoundPart } from '../evaluate/fit/round.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { pressureText } from './loads.ts';
import { nearHour, nearPair } from './nearClock.ts';
import { written } from './written.ts';

const MISSING: Readonly<Record<RoundMissing, string>> = {
  inside:
    'Give the bushing’s inside diameter: where it presses and what shape its bore takes follow.',
  outside: 'Give the bushing’s outside diameter: where it presses follows.',
  'boss-size':
    'Give the outside diameter of the boss: where the bushing presses and what shape its bore takes follow.',
  'bushing-wall': 'By its sizes the bushing is no smaller inside than outside: check both.',
  'boss-wall':
    'By their sizes the boss is no larger outside than the bushing that goes into it: check both.',
  seat: 'Nothing of the measured wall is a seat of this bushing: check the depths of the seat and what is kept off.',
};

export const ROUND_TAKEN =
  'Worked out for metal that springs and does not yield, without friction, each depth by itself; the bushing keeps ' +
  'straight and settles where nothing pushes it aside. Nothing pulls: where wall and bushing would part, a gap is left.';

export function roundWords(part: RoundPart, units: Units): string[] {
  if (part.missing !== null) return [MISSING[part.missing]];
  const { fit } = part;
  return fit.touching > 0 ? [...touchWords(fit, units), shape(fit, units)] : touchWords(fit, units);
}

/** How much of it touches, and how hard. */
export function touchWords(fit: RoundFit, units: Units): string[] {
  if (!(fit.touching > 0)) return [touchesNowhere(fit, units)];
  return [touch(fit, units), pressures(fit, units)];
}

function at({ theta, z }: { readonly theta: number; readonly z: number }, units: Units): string {
  return `at ${nearHour(theta)} o’clock, ${formatDepth(z, units)} deep`;
}

function touchesNowhere({ widest }: RoundFit, units: Units): string {
  const { perSide } = written(units, Number.NaN);
  return `The bushing is held nowhere: it is no larger than the bore, and the widest gap is ${perSide(widest.value)} ${at(widest, units)}.`;
}

function touch({ touching, widest }: RoundFit, units: Units): string {
  const { perSide } = written(units, Number.NaN);
  if (!(widest.value > 0)) return 'Pressed in, the bushing touches all of its seat.';
  const share = Math.min(99, Math.max(1, Math.round(100 * touching)));
  return (
    `Pressed in, the bushing touches ${share} % of its seat. The widest gap that is left is ${perSide(widest.value)} ` +
    `${at(widest, units)}: nothing holds it there.`
  );
}

function pressures({ least, mean, greatest }: RoundFit, units: Units): string {
  const low =
    least.value > 0 ? `${pressureText(least.value, units)} ${at(least, units)}` : 'nothing';
  return (
    `It presses with ${pressureText(mean, units)} on the mean: from ${low} to ${pressureText(greatest.value, units)} ` +
    `${at(greatest, units)}.`
  );
}

function shape({ hole, closedIn, boreOutOfRound }: RoundFit, units: Units): string {
  const { across, plain } = written(units, Number.NaN);
  const { mm, z, theta } = hole.outOfRound;
  const comesIn = `Its own bore comes in by ${across(closedIn)} on the mean`;
  if (!(mm > ROUND_ENOUGH)) return `${comesIn}, and stays round.`;
  return (
    `${comesIn}, and ends out of round by ${plain(mm)} across at worst, ${formatDepth(z, units)} deep, long from ` +
    `${nearPair(theta)}. The wall that it is pressed into is out of round by ${plain(boreOutOfRound)} across: a bushing does ` +
    'not round a bore, it follows it.'
  );
}

/** Across, mm: what is written as nothing. */
const ROUND_ENOUGH = 0.00127;
