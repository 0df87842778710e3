/** The second half of the story in words: what is to be done, and how it will be, or is, when done. */
import type { Removal, Zone } from '../bore/types.ts';
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { roundGive } from '../geometry/roundGive.ts';
import type { Decisions, Feature, Units } from '../job/schema.ts';
import { bushingOutsideMm } from '../job/sizes.ts';
import { formatAcross, formatLength, lengthMm } from '../job/units.ts';
import { amountWords } from './amountWords.ts';
import { countWord, inClips } from './everyday.ts';
import { nearClock } from './nearClock.ts';
import { type Chapter, type Chapters, shapeToCome } from './storyChapters.ts';
import type { Told } from './storyTypes.ts';
import { percentText } from './tradeOffWords.ts';
import { written } from './written.ts';

type Way = NonNullable<Decisions['way']>;
type Seating = NonNullable<SurveyEvaluation['seating']>;
type Share = Seating['suit'];

/** What goes before the grinding, by the way that was chosen; ways that grind alone have none. */
const FIRST: Readonly<Partial<Record<Way, string>>> = {
  squeeze: 'We close the hole a little with heat, then',
  weld: 'We build the worn places up with weld, then',
};
/** What goes in where the old size is given up. */
const INTO: Readonly<Partial<Record<Way, string>>> = {
  shim: 'with thin steel strip around it',
  oversize: 'made larger to suit',
  sleeve: 'in a sleeve',
};

/** Already closed or built up when these readings were taken. */
const PAST: Readonly<Partial<Record<Chapter['typed']['stage'], string>>> = {
  'after-squeezing': 'The hole has been closed with heat;',
  'after-build-up': 'The worn places have been built up with weld;',
};

export function sayWork(
  { work }: Chapters,
  { bushingOutside }: BoreFacts,
  { decisions, bushings }: Feature,
  units: Units,
): Told {
  if (work === null) {
    return { say: 'What is to be done shows once it is measured.', more: [] };
  }
  if (decisions.way === 'leave') {
    return { say: 'We leave the metal as it is: that was decided.', more: [] };
  }
  const { target, removal, zones } = work.seen;
  if (target === null || removal === null) {
    return {
      say: 'What is to be done shows once the new bushing is measured.',
      more: ['Its outside diameter sets the size that the hole is ground to.'],
    };
  }
  const way = decisions.way ?? 'undecided';
  const past = PAST[work.typed.stage];
  const first = past ?? FIRST[way];
  const so =
    bushings.length > 1 && bushingOutside.mm > target.diameter
      ? `so that both bushings press in, the smaller ${formatAcross(bushingOutside.mm, units)}`
      : goesIn(bushingOutside.mm, target.diameter, INTO[way], units);
  if (past === undefined && FIRST[way] !== undefined) {
    return {
      say: `${first} take off what still stands in the way, ${so}.`,
      more: [
        `How much there will be to take off shows when it is measured again, cold. Ground as it is, without that, it would be ${sayMass(removal)}.`,
      ],
    };
  }
  const we = first === undefined ? 'We' : `${first} we`;
  if (!(removal.volume > 0)) {
    return {
      say: `${first === undefined ? 'Nothing' : `${first} nothing`} is likely to stand in the way: there is nothing to grind.`,
      more: [`Within the give-or-take, up to ${amountWords(removal).possible} may stand.`],
    };
  }
  return {
    say: `${we} take metal off only where it stands in the way: ${placesOf(zones)}, ${inAll(removal)}, ${so}.`,
    more: [
      `${sayMass(removal)}. ${inClips(Number.parseFloat(amountWords(removal).likely))}`
        .trim()
        .replace(/^./, (c) => c.toUpperCase()),
    ],
  };
}

/** `so that a bushing of 2.0061 in across presses in`. */
function goesIn(outside: number, target: number, extra: string | undefined, units: Units): string {
  const how = extra === undefined ? '' : ` ${extra}`;
  if (!(outside > 0) || extra !== undefined) {
    return `down to ${formatAcross(target, units)}, so that a bushing${how} presses in`;
  }
  if (outside > target) return `so that a bushing of ${formatAcross(outside, units)} presses in`;
  return `down to ${formatAcross(target, units)}, in which a bushing of ${formatAcross(outside, units)} would be loose`;
}

/** What comes off, all places together. */
function inAll(removal: Removal): string {
  const { likely } = amountWords(removal);
  return Number.parseFloat(likely) > 0 ? `likely ${likely} in all` : 'hardly any in all';
}

function sayMass(removal: Removal): string {
  const { sure, likely, possible } = amountWords(removal);
  return sure === null
    ? `likely ${likely}, possibly up to ${possible}, none of it sure within the give-or-take`
    : `surely ${sure}, likely ${likely}, possibly up to ${possible}`;
}

/** Places that are named one by one; more are counted. */
const NAMED = 3;

/** Where the high spots are: `at two places, round 3:15 and 8:45`. */
function placesOf(zones: readonly Zone[]): string {
  const high = zones.filter(({ kind }) => kind === 'high');
  if (high.length === 0) return 'here and there';
  if (high.some(({ allRound }) => allRound)) return 'all round';
  const clocks = [...new Set(high.map(({ theta }) => nearClock(theta)))];
  if (clocks.length > NAMED) return `at ${countWord(clocks.length)} places`;
  const last = clocks.at(-1);
  const list = clocks.length === 1 ? last : `${clocks.slice(0, -1).join(', ')} and ${last}`;
  return `at ${clocks.length === 1 ? 'one place' : `${countWord(clocks.length)} places`}, round ${list}`;
}

export function sayDone(
  { worn, work, after, fitted: inside }: Chapters,
  facts: BoreFacts,
  feature: Feature,
  units: Units,
): Told {
  if (after === null && feature.decisions.way === 'leave') {
    return { say: 'It stays as it is now: no metal comes off, and none is added.', more: [] };
  }
  const told = after ?? work;
  if (told === null) return { say: 'How it will sit is not known yet.', more: [] };
  const { seating } = told.seen;
  const hand = seating?.hand ?? null;
  if (seating === null || hand === null || Number.isNaN(hand.likely)) {
    return {
      say: 'How the new bushing will sit shows once it is measured.',
      more: after === null ? [] : [measuredAs(after, units)],
    };
  }
  const fitted = inside !== null;
  const sits = `the bushing ${fitted ? 'sits' : 'will sit'} on ${shareWords(hand)} its seat`;
  const [pin, room] = pinIn(facts, feature, { told, read: inside }, units);
  const rest = [within(hand), ...gapWords(seating, units), room].filter((text) => text !== '');
  if (after === null) {
    if (shapeToCome({ worn, work, after, fitted: inside }, feature)) {
      return {
        say: `Done, the bushing sits all round where the metal was brought back${pin}; how well shows when it is measured after the heat.`,
        more: [`Without it, ${sits}.`, room].filter((text) => text !== ''),
      };
    }
    return { say: `Done, as planned: ${sits}${pin}.`, more: rest };
  }
  const begins = fitted ? 'Done, and measured:' : `So far, measured after “${after.typed.name}”:`;
  return { say: `${begins} ${sits}${pin}.`, more: [measuredAs(after, units), ...rest] };
}

/** How far the share may be out; empty where it cannot. */
function within({ least, most }: Share): string {
  const [from, to] = [least, most].map((likely) => percentText({ likely }));
  return from === to ? '' : `Within the give-or-take of the readings it could be ${from} to ${to}.`;
}

function shareWords(share: Share): string {
  const text = percentText(share);
  return text === '100 %' ? 'all, or as good as all, of' : `about ${text} of`;
}

/** Once the bushing's own bore was read, no more is guessed at. */
function roomRead({ seen, typed }: Chapter, pin: number, units: Units): [string, string] {
  const across = seen.sections.map(({ least, meanDiameter }) =>
    least.diameter > 0 ? least.diameter : meanDiameter,
  );
  const room = Math.min(...across) - pin;
  return room > 0
    ? [
        ', and the pin turns in it with room for grease',
        `That room is ${formatAcross(room, units)} at the tightest, read as “${typed.name}” with the bushing in.`,
      ]
    : [
        '',
        `The pin does not turn: as read with the bushing in, it is ${formatAcross(-room, units)} larger than the bushing’s bore.`,
      ];
}

/** How round it was when it was last read. */
function measuredAs({ typed, seen: { sections } }: Chapter, units: Units): string {
  const when = typed.when === undefined ? '' : `, ${typed.when}`;
  if (sections.length === 0) return `Read as “${typed.name}”${when}.`;
  const worst = sections.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const give = roundGive(worst);
  const say = written(units, give);
  return `Read as “${typed.name}”${when}: out of round by ${say.across(worst.outOfRound)} at most, give or take ${say.plain(give)}.`;
}

function gapWords({ gap, behind }: Seating, units: Units): string[] {
  if (!(behind > gap.give)) return [];
  const say = written(units, gap.give);
  return [
    `Where the hole was already wider a gap stays between bushing and metal, ${say.perSide(behind)} at most, near ${nearClock(gap.theta)}, give or take ${say.plain(gap.give)}.`,
  ];
}

/** The pin's part of the sentence, and what is known of its room; both empty where there is no bushing at all. */
function pinIn(
  { bushingOutside }: BoreFacts,
  feature: Feature,
  { told, read }: { readonly told: Chapter; readonly read: Chapter | null },
  units: Units,
): [string, string] {
  const { target } = told.seen;
  const bushing = feature.bushings.find((one) => bushingOutsideMm(one) > 0);
  const inside = lengthMm(bushing?.inside);
  const pins = (feature.pin?.diameters ?? []).map((one) => lengthMm(one)).filter((mm) => mm > 0);
  if (target === null || !(inside > 0) || pins.length === 0) {
    return [
      '',
      'What room the pin will have for grease is not known: the pin’s size or the bushing’s inside is not written down.',
    ];
  }
  if (read !== null) return roomRead(read, Math.max(...pins), units);
  const free = inside - Math.max(...pins);
  // The hole of a pressed bushing closes by no more than its press fit; the trade plans on all of it.
  const pressed = free - Math.max(0, bushingOutside.mm - target.diameter);
  const between = `${formatLength(pressed, units).split(' ')[0]} to ${formatAcross(free, units)}`;
  if (!(pressed > 0)) {
    return [
      '',
      `The pin may not turn: it has ${formatAcross(free, units)} of room in the bushing as bought, and pressing may close all of that. Measure the bushing’s inside once it is in.`,
    ];
  }
  return [
    ', and the pin turns in it with room for grease',
    `That room is ${between}, the less the more the bushing closes when it is pressed in.`,
  ];
}
