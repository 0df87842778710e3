/** The seconds that are left once cold and warm metal touch, in words. */
import type { Clock, Help } from '../evaluate/fit/clock.ts';
import type { Heat } from '../evaluate/fit/heat.ts';
import type { Seated } from '../evaluate/fit/seated.ts';
import type { Units } from '../job/schema.ts';
import { degrees } from './degrees.ts';
import { COLD_NAMES } from './slipWords.ts';
import { HAND_WARM } from './temperColours.ts';
import { type Written, written } from './written.ts';

export interface ClockWords {
  /** Why nothing is told; empty where something is. */
  readonly missing: readonly string[];
  readonly says: readonly string[];
  readonly helps: readonly string[];
  /** What to do when it stops half-way. */
  readonly stuck: readonly string[];
}

export function clockWords(
  clock: Clock | null,
  heat: Heat,
  seated: Seated,
  units: Units,
): ClockWords {
  if (clock === null) {
    return { missing: missingWords(heat, seated), says: [], helps: [], stuck: [] };
  }
  const text = written(units, Number.NaN);
  return {
    missing: [],
    says: saysWords(clock, heat),
    helps: helpWords(clock, heat, units),
    stuck: stuckWords(clock, heat, text, units),
  };
}

function missingWords({ chosen, fault }: Heat, { inside, outside, boss }: Seated): string[] {
  if (fault !== null) return [];
  const says = [];
  if (!(inside > 0))
    says.push('Give the bushing’s inside diameter: the seconds until the gap closes follow.');
  else if (!(inside < outside))
    says.push('The bushing is as large inside as outside: look at both sizes.');
  if (!(boss.outside > 0))
    says.push('Give the boss’s outside diameter: the seconds until the gap closes follow.');
  else if (!(boss.outside > outside))
    says.push('The boss is no larger outside than its bore: look at both sizes.');
  if (says.length === 0 && !(chosen !== null && chosen.least > 0)) {
    says.push('There is no room when they touch, so that no seconds are left.');
  }
  return says;
}

/** `8 seconds`, `2.5 minutes`, and so on: no more digits than it is known by. */
export function timeSaid(seconds: number): string {
  if (Number.isNaN(seconds)) return 'more than four hours';
  if (seconds < 1.5) return 'about a second';
  if (seconds < 120) return `${Math.round(seconds)} seconds`;
  if (seconds < 7200) return `${Math.round(seconds / 60)} minutes`;
  return `${Math.round(seconds / 3600)} hours`;
}

/** Whether what is left when they touch is enough to be home: even at the worst, as usual, or not. */
export function enoughTime({ usual, soonest, needs }: Clock): 'always' | 'usually' | 'never' {
  // What does not close within hours lasts.
  const lasts = ({ seconds }: Clock['usual']) => !(seconds < needs);
  return lasts(soonest) ? 'always' : lasts(usual) ? 'usually' : 'never';
}

const ENOUGH = {
  always: 'That is enough even at the worst.',
  usually: 'That is enough as usual, and not at the worst: win more time first.',
  never: 'That is not enough: win more time before anybody starts.',
} as const;

function saysWords(clock: Clock, { facts }: Heat): string[] {
  const { usual, soonest, latest, needs, contact } = clock;
  const sure = soonest.seconds;
  const says = [
    `From the moment they touch, the gap closes in about ${timeSaid(usual.seconds)}: as little as ${timeSaid(sure)} and as much as ${timeSaid(latest.seconds)}, as heat crosses faster or slower.`,
    `To be home takes ${needs} seconds${facts.stop === 'eye' ? `, ${facts.find.value} of them to find the depth by eye` : ' against a stop'}. ${ENOUGH[enoughTime(clock)]}`,
    `Counted with ${Math.round(contact.usual)} W/m²K between the two${
      facts.contact > 0 ? '' : ' at first, through the air that lies between them'
    } (${Math.round(contact.least)} to ${Math.round(contact.most)}); the boss is known within 10 °C (18 °F), the bushing within 5 °C (9 °F), and the wall as it was measured. Counted as if all of it were in at once, and as a plain ring: heavier metal around keeps the boss warm longer.`,
  ];
  if (clock.lags) {
    says.push(
      'On the way through the air the inside lags behind the skin here: the skin’s temperature falls faster than told.',
    );
  }
  return says;
}

function helpWords({ helps, usual }: Clock, { facts, rows }: Heat, units: Units): string[] {
  const then = ({ seconds, gain }: Help) =>
    gain < 0.5
      ? `${timeSaid(usual.seconds)} as before: no gain`
      : `${timeSaid(seconds)} instead of ${timeSaid(usual.seconds)}`;
  const named = ({ what, to }: Help) =>
    what === 'hotter'
      ? `Boss at ${degrees(Number(to), units)}${Number(to) > HAND_WARM ? ', once the questions about heat under Plan are answered' : ''}`
      : what === 'colder'
        ? `Bushing ${COLD_NAMES[rows.find(({ cold }) => cold === to)!.cold]}`
        : `Carried in ${to} seconds, not ${facts.carry.value}`;
  const says = helps.map((help) => `${named(help)}: ${then(help)}.`);
  says.push(
    facts.stop === 'eye'
      ? `A stop collar or a stepped driver that ends at the right depth: the ${facts.find.value} seconds for finding it are saved.`
      : 'The stop is counted already: nothing is lost with finding the depth.',
  );
  return says;
}

function stuckWords(
  { recovery, cold }: Clock,
  { press, facts, boss }: Heat,
  text: Written,
  units: Units,
): string[] {
  const { most, at, free, off, before, skin } = recovery;
  const flame = `${facts.flame.value} kW into the outside for ${Math.round(off)} seconds`;
  const outcome =
    free === null
      ? `frees at most ${text.across(most)} of the ${text.across(press)} press fit, ${timeSaid(at)} after the flame is lit: the rest takes a press or a puller, and that is the moment to use it`
      : `frees all of it from ${Math.round(free.from)} to ${Math.round(free.to)} seconds after the flame is lit; most, ${text.across(most)}, at ${Math.round(at)}`;
  return [
    'If it stops half-way: press it on or pull it out at once, while it still has seconds. Do not chase it with heat in place: the bushing warms as well, and grips harder.',
    `Once both are at one temperature heat all round brings nothing. Then make all of it cold, ${degrees(cold, units)} say, and warm only the outside of the boss, briefly: ${flame} ${outcome}.${
      Math.abs(before) > 2.5e-3
        ? ` The cold by itself ${before > 0 ? 'loosens' : 'tightens'} it by ${text.across(Math.abs(before))}, as the two metals shrink differently.`
        : ''
    }`,
    `The skin of the boss reaches ${degrees(skin, units)} then (${boss.name}). A burr raised on the way costs the part: look at bore and bushing before it goes in again.`,
  ];
}
