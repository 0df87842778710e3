/**
 * The fit of one bushing in short: whether it goes in, holds and lets the pin turn, and how many seconds there are. One
 * sentence each, the answer first, the same for page and report.
 */
import type { PressCase, PressPart } from '../evaluate/fit/press.ts';
import type { BushingFit } from '../evaluate/fit.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross } from '../job/units.ts';
import { BOUND_ONLY, beyond } from './beyondYield.ts';
import { clockWords } from './clockWords.ts';
import { forceText, torqueText } from './loads.ts';
import { clearanceOf, nearlyWords, openedTo } from './runningShort.ts';
import { looseWords, seatLead } from './seatWords.ts';
import { capital } from './sentence.ts';
import { slipAgainst } from './slipAgainst.ts';
import { type SlipShort, secondsShort, slipShort } from './slipShort.ts';
import { faultWords } from './slipWords.ts';
import { percentOf } from './wayWords.ts';
import { written } from './written.ts';

/** The parts of one bushing's fit, as page and report name them. */
export type BushingPartName = 'press' | 'round' | 'running' | 'heat' | 'clock';

export const PART_TITLES: Readonly<Record<BushingPartName, string>> = {
  press: 'Press fit',
  round: 'Where it presses',
  running: 'How freely the pin runs',
  heat: 'Heat and cold',
  clock: 'The clock',
};

export interface ShortAnswer {
  readonly asks: 'goes-in' | 'holds' | 'turns' | 'seconds';
  readonly question: string;
  readonly says: string;
  /** Where it is told in full. */
  readonly parts: readonly BushingPartName[];
}

/** @param open whether steps with heat may be told */
export function fitAnswers(one: BushingFit, units: Units, open: boolean): ShortAnswer[] {
  return [
    {
      asks: 'goes-in',
      question: 'Goes in?',
      says: goesIn(one, units, open),
      parts: ['press', 'heat'],
    },
    { asks: 'holds', question: 'Holds?', says: holds(one.press, units), parts: ['press', 'round'] },
    { asks: 'turns', question: 'Pin turns?', says: turns(one, units), parts: ['running'] },
    { asks: 'seconds', question: 'How long?', says: seconds(one, units, open), parts: ['clock'] },
  ];
}

function goesIn({ press, heat }: BushingFit, units: Units, open: boolean): string {
  const { local, holds: held } = press;
  if (Number.isNaN(local.mean)) return 'Not known: the size of the bushing or of its seat is not.';
  const text = written(units, local.give);
  const fit =
    local.greatest - local.least < 1e-9
      ? `the press fit is ${text.across(local.mean)}, the same everywhere`
      : `the press fit is ${text.plain(local.least)} at the least, ${text.plain(local.mean)} on the mean and ${text.across(local.greatest)} at the most`;
  if (heat.fault === 'loose') {
    return `It slips in by itself, without press, heat or cold: ${fit}.`;
  }
  const pressed =
    held !== null && held.high.force > 0
      ? [
          `Pressed cold it takes ${forceText(held.low.force, units)} to ${forceText(held.high.force, units)}${beyond(press) === null ? '' : `, ${BOUND_ONLY}`}`,
        ]
      : [];
  const slipped = slipInWords(slipShort(heat, units, open), pressed.length > 0);
  const ways = [...pressed, ...(slipped === null ? [] : [slipped])].join('; ');
  const faulty = heatFault(heat, units);
  return capital(`${ways === '' ? '' : `${ways}; `}${fit}.${faulty === null ? '' : ` ${faulty}`}`);
}

/** What of the temperatures cannot be, so that no way with heat or cold is told. */
function heatFault(heat: BushingFit['heat'], units: Units): string | null {
  const { fault } = heat;
  return fault === null || fault === 'loose' || fault === 'no-size'
    ? null
    : faultWords(fault, heat, units);
}

/** @param pressed whether another way was told before it */
function slipInWords({ is, must, by, lacks, over }: SlipShort, pressed: boolean): string | null {
  switch (is) {
    case 'untold':
      return null;
    case 'waits':
      return `to slip in, ${must} must be won by heat and cold, told once the questions about heat are answered`;
    case 'short':
      return `to slip in, ${must} must be won, and the ${by} leave ${lacks} of that open`;
    case 'over':
      return `to slip in, ${must} must be won, and not by the ${by}: ${over.charAt(0).toLowerCase()}${over.slice(1).replace(/\.$/, '')}`;
    case 'enough':
      return `${pressed ? 'or ' : ''}it slips in with the ${by}, which win the ${must} that it takes`;
  }
}

function holds(press: PressPart, units: Units): string {
  const { local, cases, holds: grip } = press;
  if (Number.isNaN(local.mean)) return 'Not known: the size of the bushing or of its seat is not.';
  const loose = looseWords(press, units);
  if (loose !== null) return `No: ${loose}`;
  const past = beyond(press);
  if (past !== null) {
    return unsafe(press, past, written(units, local.give).across(local.greatest), units);
  }
  const lead = seatLead(press, units);
  if (cases === null || grip === null) {
    return `${lead}; what it bears follows once the sizes below are known.`;
  }
  return `${lead}; it bears at least ${forceText(grip.low.force, units)} along and ${torqueText(grip.low.torque, units)} before it turns; ${stressWords(press, cases.greatest)}`;
}

/** Past its strength a ring no longer springs back: what is counted for springy rings is only the most that it can be. */
function unsafe({ yields }: PressPart, past: string, greatest: string, units: Units): string {
  const first = Math.min(yields.boss, yields.bushing);
  return `Not safely: at its tightest place the press fit is ${greatest}, more than ${past} can bear: from ${formatAcross(first, units)} on it gives for good or cracks instead of holding tighter. Take a smaller press fit. Pressures, forces and how far the bore closes in are ${BOUND_ONLY}.`;
}

/** As if the whole seat were as tight as its tightest place. */
function stressWords({ boss, bushing }: PressPart, { bossLoad, bushingLoad }: PressCase): string {
  const of = (brittle: boolean) => (brittle ? 'tensile strength' : 'yield strength');
  const [its, their] = [of(boss.brittle), of(bushing.brittle)];
  const loads =
    its === their
      ? `the boss to ${percentOf(bossLoad.share)} and the bushing to ${percentOf(bushingLoad.share)} of their ${its}`
      : `the boss to ${percentOf(bossLoad.share)} of its ${its} and the bushing to ${percentOf(bushingLoad.share)} of its ${their}`;
  return `were it as tight all round as at its tightest place, it would load ${loads}.`;
}

function turns({ running, press }: BushingFit, units: Units): string {
  const { pin, free, installed, limits, safe, measured } = running;
  const text = written(units, Number.NaN);
  if (pin === null) return 'Not known: nobody measured the pin.';
  // What was read once it was in counts, whatever the sizes before that were.
  if (measured === null && free !== null && !(free.tightest > 0)) {
    return `No: by their sizes the pin is ${text.across(-free.tightest)} larger than the bushing’s bore even before that goes in.`;
  }
  if (installed === null) {
    const left = Number.isNaN(safe)
      ? ''
      : `, and ${text.across(safe)} would be left at the tightest if all of the press fit closed its bore`;
    return free === null
      ? 'Not known: the bushing’s inside diameter is not given.'
      : `Before the bushing goes in its bore is ${text.plain(free.tightest)} to ${text.across(free.loosest)} larger than the pin${left}.`;
  }
  const read = measured === null ? '' : 'as read once the bushing was in, ';
  const bound = measured === null && beyond(press) !== null ? `, its closing-in ${BOUND_ONLY}` : '';
  const clears = `${clearanceOf(installed, units)}${bound}`;
  const least = text.across(limits.least.mm);
  switch (installed.verdict) {
    case 'stuck':
      return `No: ${read}it clears the pin by ${clears}, and at least ${least} is wanted: ${openedTo(installed, units)}`;
    case 'tight':
      return `Too tight: ${read}it clears the pin by ${clears}, and at least ${least} is wanted: ${openedTo(installed, units)}`;
    case 'near':
      return `As near as can be told: ${read}it clears the pin by ${clears}, and at least ${least} is wanted: ${nearlyWords(installed, measured !== null, units)}`;
    case 'worn':
      return `It rattles: ${read}it clears the pin by ${clears}, past the ${text.across(limits.worn.mm)} from which a joint counts as worn out.`;
    case 'wide':
      return `Yes, loosely: ${read}it clears the pin by ${clears}, and at most ${text.across(limits.most.mm)} is wanted when new.`;
    case 'good':
      return `Yes: ${read}it clears the pin by ${clears}, between the ${text.plain(limits.least.mm)} and ${text.across(limits.most.mm)} that are wanted.`;
  }
}

function seconds({ clock, heat, seated }: BushingFit, units: Units, open: boolean): string {
  if (heat.fault === 'loose') return 'As long as you like: without heat or cold nothing closes.';
  if (slipShort(heat, units, open).is === 'waits')
    return 'Told once the questions about heat are answered.';
  const faulty = heatFault(heat, units);
  if (faulty !== null) return `Not known. ${faulty}`;
  const against = slipAgainst(heat, units);
  const over = against.boss ?? against.bushing;
  if (over !== null) return `Not to be begun this way. ${over}`;
  if (clock === null) {
    const [why] = clockWords(clock, heat, seated, units).missing;
    return `Not known. ${why ?? 'The temperatures below do not let it in.'}`;
  }
  return secondsShort(clock);
}
