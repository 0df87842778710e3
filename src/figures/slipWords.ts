/** Heat and cold for slipping a bushing in, in words: the same on the page and in the report. */

import type { Chosen, Heat, HeatFault, HeatRow } from '../evaluate/fit/heat.ts';
import type { BushingFit } from '../evaluate/fit.ts';
import { bossStated } from '../job/heatFacts.ts';
import type { Cold } from '../job/heatSchema.ts';
import type { Units } from '../job/schema.ts';
import { degrees, degreesApart, degreesBare } from './degrees.ts';
import { forceText } from './loads.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { slipAgainst, UNSEEN } from './slipAgainst.ts';
import { colourSaid, HAND_WARM } from './temperColours.ts';
import { type Written, written } from './written.ts';

export const COLD_NAMES: Readonly<Record<Cold, string>> = {
  'as-it-is': 'as it lies in the shop',
  freezer: 'from a freezer',
  'dry-ice': 'from dry ice',
  nitrogen: 'from liquid nitrogen',
  own: 'at the temperature typed for it',
};

/** Where it is chilled; not said of one that lies in the shop. */
export const CHILLED_IN: Readonly<Record<Cold, string>> = {
  'as-it-is': 'in the shop',
  freezer: 'in a freezer',
  'dry-ice': 'in dry ice',
  nitrogen: 'in liquid nitrogen',
  own: 'as cold as typed',
};

/** How long it lies there. Shop practice. */
const SOAKS: Readonly<Partial<Record<Cold, string>>> = {
  freezer:
    'Leave the bushing in the freezer for two hours or more: the middle of its wall is last.',
  'dry-ice': 'Pack the bushing in dry ice until it stops hissing, up to four hours.',
  nitrogen: 'Lower the bushing into the nitrogen slowly, and leave it until the boiling dies down.',
};

const SHORT_NAMES: Readonly<Record<Cold, string>> = {
  'as-it-is': 'as it lies',
  freezer: 'freezer',
  'dry-ice': 'dry ice',
  nitrogen: 'nitrogen',
  own: 'as typed',
};

export interface SlipRow {
  readonly cold: Cold;
  /** In a sentence, and at the head of a row. */
  readonly name: string;
  readonly short: string;
  /** Bare, in the degrees of the job. */
  readonly taken: string;
  readonly entry: string;
  /** Bare, across. */
  readonly smaller: string;
  /** Of the boss: bare; tells of heat. */
  readonly boss: string;
  readonly off: string;
  readonly verdict: string;
}

export interface SlipWords {
  /** What was typed and cannot be, and why nothing is told. */
  readonly wrong: readonly string[];
  /** What must be won: no step. */
  readonly needs: readonly string[];
  readonly rows: readonly SlipRow[];
  /** The chosen way: hot where the boss is heated. */
  readonly chosen: readonly string[];
  readonly cautions: readonly string[];
  /** True where the chosen way takes heat. */
  readonly hot: boolean;
}

export function slipWords(
  { heat, press }: Pick<BushingFit, 'heat' | 'press'>,
  units: Units,
): SlipWords {
  const { facts, fault, chosen, rows } = heat;
  const text = written(units, Number.NaN);
  const untold = facts.cold === 'own' && Number.isNaN(facts.own) && facts.wrong.length === 0;
  const wrong = [
    ...facts.wrong,
    ...(untold ? ['Type how cold the bushing is: until then it is counted as it lies.'] : []),
    ...(fault === null ? [] : [faultWords(fault, heat, units)]),
  ];
  const told = fault === null || fault === 'bushing-hotter';
  const hot = chosen !== null && chosen.off > HAND_WARM;
  return {
    wrong,
    needs: told && chosen ? needsWords(heat, text, units) : [],
    rows: told ? rows.map((row) => rowWords(row, text, units)) : [],
    chosen:
      fault === null && chosen
        ? [...chosenWords(heat, chosen, text, units), ...pressedWords(press, units)]
        : [],
    cautions: fault === null && chosen ? cautionWords(heat, chosen, hot) : [],
    hot,
  };
}

/** Why nothing is told of heat, in a sentence. */
export function faultWords(fault: HeatFault, { boss, facts }: Heat, units: Units): string {
  const stated = bossStated(facts);
  const [at, coolest] = [degrees(Math.max(...stated), units), degrees(Math.min(...stated), units)];
  switch (fault) {
    case 'loose':
      return 'The bushing is nowhere larger than the bore: it slips in without heat or cold, and nothing holds it.';
    case 'no-size':
      return 'Heat and cold are counted once the bushing’s outside and some of the wall that it sits on are known.';
    case 'boss-melts':
      return `At ${at} the boss would melt: ${boss.name} begins to at ${degrees(boss.melts, units)}. Type the boss’s temperature anew.`;
    case 'boss-past':
      return `${at} is past any fit, and past 600 °C (1112 °F), to which expansion is counted: type the boss’s temperature anew.`;
    case 'boss-cold':
      return `${coolest} is colder than −200 °C (−328 °F), down to which metal is counted: type the boss’s temperature anew.`;
    case 'bushing-past':
      return `The bushing’s ${degrees(facts.own, units)} lies outside −200 to 600 °C (−328 to 1112 °F), within which expansion is counted: type it anew.`;
    case 'bushing-hotter':
      return 'The bushing is warmer than the boss: that closes the gap instead of opening it. Chill the bushing, or warm the boss.';
  }
}

function needsWords(
  { press, room, facts, boss, bushing }: Heat,
  text: Written,
  units: Units,
): string[] {
  const usual =
    facts.room >= 0 ? '' : ' (the usual: 0.001 of the diameter, never under 0.001 in (0.025 mm))';
  return [
    `At its tightest place the bushing stands ${text.across(press)} over the bore. To slip in it wants ${text.across(room)} of room besides${usual}: ${text.across(press + room)} must be won by heat and cold.`,
    `Counted for ${bushing.name} in ${boss.name}, by temperature and not with one figure: the colder it is, the less a degree shrinks it, and steel in liquid nitrogen ends a quarter short of its everyday figure. Makes of one metal differ by 5 % or so. Air and tools are at ${degrees(facts.shop.value, units)}.`,
    'Freezer, dry ice and liquid nitrogen freeze skin at a touch: dry insulated gloves and a face shield. Dry ice and nitrogen take the place of the air you breathe: moving air, never in a pit, a closed room or a closed vessel.',
  ];
}

function rowWords(row: HeatRow, text: Written, units: Units): SlipRow {
  const verdict = {
    cold: 'cold is enough',
    heat: 'not too hot',
    over: Number.isNaN(row.off) ? 'never enough' : 'too hot for it',
  }[row.verdict];
  return {
    cold: row.cold,
    name: COLD_NAMES[row.cold],
    short: SHORT_NAMES[row.cold],
    taken: degreesBare(row.taken, units),
    entry: degreesBare(row.entry, units),
    smaller: Math.abs(row.smaller) < UNSEEN ? '–' : text.bare(row.smaller).replace('-', '−'),
    boss: row.verdict === 'cold' ? 'no heat' : degreesBare(row.boss, units),
    off: row.verdict === 'cold' ? '–' : degreesBare(row.off, units),
    verdict,
  };
}

function chosenWords(heat: Heat, chosen: Chosen, text: Written, units: Units): string[] {
  const { facts, mixed, limits, hardened, bushing, shorter } = heat;
  const { row, boss, off } = chosen;
  const against = slipAgainst(heat, units);
  const warm = off > facts.shop.value + 0.5;
  const says = [
    `Bushing ${COLD_NAMES[row.cold]}, boss ${
      warm ? `at ${degrees(off, units)}` : 'not heated'
    }: after ${facts.carry.value} seconds in air the bushing is at ${degrees(row.entry, units)} and the boss at ${degrees(boss, units)} when they touch, and ${roomSaid(chosen.room, text)}.`,
  ];
  says.push(...unevenWords(chosen, facts.probes.length, text, units));
  says.push(against.room ?? 'That is the room wanted.');
  if (against.boss !== null) says.push(against.boss);
  if (off > HAND_WARM) {
    says.push(
      heat.colours
        ? `Clean bright steel shows ${colourSaid(off)} at that heat. Longer heat deepens the colour, and oil or scale hides it: go by a temperature stick or a probe at four places, and let the colour only warn.`
        : `No colour warns on ${heat.boss.name}: go by a temperature stick or a probe at four places.`,
    );
  }
  if (against.bushing !== null) says.push(against.bushing);
  else if (mixed > facts.shop.value + 5) {
    says.push(
      `Once both have evened out the bushing is at about ${degrees(mixed, units)}; it (${hardened ? 'hardened' : bushing.name}) may have ${degrees(limits.bushing, units)}.`,
    );
  }
  if (Math.abs(shorter) > 10 * UNSEEN) {
    says.push(
      `Cold, the bushing is also ${text.plain(shorter)} shorter: hold it against its stop until it grips, and measure its depth when all is at one temperature.`,
    );
  }
  return says;
}

/** The same seat without heat or cold, for comparison. */
function pressedWords({ holds }: BushingFit['press'], units: Units): string[] {
  if (holds === null || !(holds.high.force > 0)) return [];
  return [
    `Pressed in without heat or cold instead, it takes ${forceText(holds.low.force, units)} to ${forceText(holds.high.force, units)}, and scrapes the roughness off on its way.`,
  ];
}

function roomSaid(room: number, text: Written): string {
  if (Number.isNaN(room)) return 'what room stands between them is not known';
  return room > 0
    ? `${text.across(room)} of room stands between them`
    : `the bushing is still ${text.across(-room)} too large`;
}

function unevenWords(
  { uneven, oval, least, room }: Chosen,
  probes: number,
  text: Written,
  units: Units,
): string[] {
  if (uneven === null) return [];
  if (probes === 1) {
    return [
      'The boss was measured at one place only: whether it is as warm all round is not known. Measure it at four.',
    ];
  }
  const says = [];
  if (uneven.side.celsius > 1) {
    says.push(
      `The boss is warmest towards ${nearClock(uneven.side.theta)}, ${degreesApart(uneven.side.celsius, units)} over its mean of ${degrees(uneven.mean, units)}. A warmer side alone moves the bore and leaves it round: its size goes by the mean.`,
    );
  }
  if (uneven.pair.celsius > 1) {
    says.push(
      `Both sides along ${nearPair(uneven.pair.theta)} are warmer than those between, by ${degreesApart(2 * uneven.pair.celsius, units)}: that draws the bore tight along them, by ${text.bare(oval.least)} to ${text.across(oval.most)}. Room ${least > 0 ? 'there' : 'is none there'}: ${text.across(Math.max(0, least))} at least, ${text.across(room)} on the mean.`,
    );
  }
  if (says.length === 0) says.push('The boss is as warm all round as it was measured.');
  return says;
}

function cautionWords({ hardened, facts, boss }: Heat, { row }: Chosen, hot: boolean): string[] {
  const says = [];
  if (row.taken < facts.shop.value - 5) {
    says.push(
      ...(row.cold in SOAKS ? [SOAKS[row.cold]!] : []),
      'Very cold metal burns skin at once: dry insulated gloves, long sleeves, face shield. Wipe off frost and oil just before it goes in: both bite.',
    );
  }
  if (row.cold === 'dry-ice' || row.cold === 'nitrogen') {
    says.push(
      row.cold === 'nitrogen'
        ? 'One measure of liquid nitrogen becomes near 700 of gas and takes the place of the air you breathe: moving air, never in a pit, a closed room or a closed vessel; oxygen stays at 19.5 % or above.'
        : 'Dry ice gives off a gas that pools low and cannot be breathed: moving air, never in a pit, a closed room or a closed vessel.',
    );
  }
  if (hardened) {
    says.push(
      'Hardened part: any colour on it means stop, it is softer already. Never strike it, cold least of all: it chips.',
    );
    if (row.cold === 'nitrogen') {
      says.push(
        'Deep cold can make a hardened bushing a little larger for good: ask its maker, or try one and measure it.',
      );
    }
  }
  if (hot) {
    says.push(
      `Heat the boss, not the bushing, evenly and all round${boss.name === 'plain steel' ? '' : ` (${boss.name}: below the heat at which it was hardened, tempered or aged)`}.`,
      'An oven makes it even all round. With a torch keep the flame moving, and measure at four places: the side with more metal stays cooler.',
      'Grease and oil off first: they smoke well under these heats and can catch fire; no figure for that is safe.',
    );
  }
  return says;
}
