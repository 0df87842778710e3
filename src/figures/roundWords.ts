/** Where a bushing presses in the bore as it is, and what becomes of its own bore: the same for page and report. */
import type { RoundFit, RoundMissing, RoundPart } from '../evaluate/fit/round.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { pressureText } from './loads.ts';
import { nearHour, nearPair } from './nearClock.ts';
import { touched } from './seatWords.ts';
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

function touchesNowhere({ widest, loss }: RoundFit, units: Units): string {
  const { perSide, across } = written(units, Number.NaN);
  if (loss > 0) {
    return `The bushing is held nowhere: the ${across(loss)} that roughness takes leaves nothing of its press fit.`;
  }
  return `The bushing is held nowhere: it is no larger than the bore, and the widest gap is ${perSide(widest.value)} ${at(widest, units)}.`;
}

function touch({ touching, widest }: RoundFit, units: Units): string {
  const { perSide } = written(units, Number.NaN);
  if (!(widest.value > 0)) return 'Pressed in, the bushing touches all of its seat.';
  return (
    `Pressed in, the bushing touches ${touched(touching)} of its seat. The widest gap that is left is ${perSide(widest.value)} ` +
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

function shape(fit: RoundFit, units: Units): string {
  const { hole, closedIn, boreOutOfRound, holeSpan, boreSpan } = fit;
  const { across } = written(units, Number.NaN);
  const { mm, z, theta } = hole.outOfRound;
  const comesIn = `Its own bore comes in by ${across(closedIn)} on the mean`;
  const radial = holeSpan?.perSide ?? 0;
  if (!(mm > ROUND_ENOUGH || radial > ROUND_ENOUGH)) return `${comesIn}, and stays round.`;
  const long =
    mm > ROUND_ENOUGH ? `, ${formatDepth(z, units)} deep, long from ${nearPair(theta)}` : '';
  const odd = [holeSpan, boreSpan].some((span) => (span?.lobes ?? 0) % 2 === 1);
  return (
    `${comesIn}, and ends out of round by ${across(mm)} at worst${long}${byRadius(holeSpan, units)}. The wall that it is ` +
    `pressed into is out of round by ${across(boreOutOfRound)}${byRadius(boreSpan, units)}: a bushing does not round a bore, it ` +
    `follows it.${odd ? ' An odd number of lobes reads nearly alike across everywhere: its radius tells, and a straight pin.' : ''}`
  );
}

/** Greatest less least radius, and the lobes that make it. */
function byRadius(span: RoundFit['holeSpan'], units: Units): string {
  if (span === null || !(span.perSide > ROUND_ENOUGH)) return '';
  const { perSide } = written(units, Number.NaN);
  const lobes = span.lobes > 1 ? `, ${LOBES[span.lobes] ?? `${span.lobes} lobes`}` : '';
  return `, and by radius about its middle by ${perSide(span.perSide)}${lobes}`;
}

const LOBES: Readonly<Record<number, string>> = {
  2: 'an oval',
  3: 'three lobes',
  4: 'four lobes',
  5: 'five lobes',
  6: 'six lobes',
};

/** mm: what is written as nothing. */
const ROUND_ENOUGH = 0.00127;
