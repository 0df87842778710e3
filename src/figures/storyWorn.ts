/** The first half of the story in words: how the hole was when new, and how it is worn now. */
import type { Pattern } from '../bore/patternTypes.ts';
import type { Section } from '../bore/types.ts';
import type { BoreFacts, Evaluation } from '../evaluate.ts';
import { roundGive } from '../geometry/roundGive.ts';
import type { Feature, Units } from '../job/schema.ts';
import { formatAcross, formatDepth, inUnits } from '../job/units.ts';
import { inSheets } from './everyday.ts';
import { nearPair } from './nearClock.ts';
import type { Chapter } from './storyChapters.ts';
import type { Told } from './storyTypes.ts';
import { written } from './written.ts';

/** A size that was chosen, without digits that only a measurement would need: `2.000 in across`. */
function round(mm: number, units: Units): string {
  const usual = units === 'in' ? 3 : 2;
  const figure = inUnits(mm, units);
  const short = Math.abs(figure - Number(figure.toFixed(usual))) < 1e-9;
  return formatAcross(mm, units, short ? usual : undefined);
}

export function sayNew({ nominal }: BoreFacts, feature: Feature, units: Units): Told {
  const held =
    feature.bushings.length > 0
      ? 'held its bushing tight'
      : 'gave its pin no more room than grease needs';
  if (nominal.from === 'typed') {
    return { say: `New, this hole was round, ${round(nominal.mm, units)}, and ${held}.`, more: [] };
  }
  const size =
    nominal.from === 'default'
      ? `Its size when new is not written down; the size of its bushing, ${formatAcross(nominal.mm, units)}, is taken for it.`
      : 'Its size when new is not written down.';
  return { say: `New, this hole was round and ${held}.`, more: [size] };
}

/** One thing that is wrong with the shape. */
interface Fault {
  /** mm, for which is worse. */
  readonly size: number;
  readonly say: string;
  readonly more: string;
}

export function sayWorn(
  chapter: Chapter | null,
  { nominal }: BoreFacts,
  length: number,
  joint: Evaluation['joint'] | null,
  units: Units,
): Told {
  if (chapter === null) {
    return { say: 'How it is worn is not measured yet.', more: ['The first readings show it.'] };
  }
  const { sections, patterns } = chapter.seen;
  const faults = [
    ...outOfRound(sections, length, units),
    ...patterns.named.flatMap((one) => alongOrLobed(one, units)),
  ].sort((a, b) => b.size - a.size);
  const size = grown(sections, nominal, units);
  const [worst, ...others] = faults;
  if (worst === undefined) {
    return size ?? { say: 'Now, as far as the readings can show, it is still round.', more: [] };
  }
  return {
    say: `Now it is ${worst.say}.`,
    more: [
      [worst.more, inSheets(worst.size, units)].filter((text) => text !== '').join(' '),
      ...others.map(({ say, more }) => `It is also ${say}. ${more}`.trim()),
      ...(size === null ? [] : size.more.slice(0, 1)),
      ...playNow(joint, units),
    ],
  };
}

function outOfRound(sections: readonly Section[], length: number, units: Units): Fault[] {
  const known = sections.filter((one) => one.outOfRound > roundGive(one));
  if (known.length === 0) return [];
  const worst = known.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const give = roundGive(worst);
  const say = written(units, give);
  const least = Math.min(...sections.map((one) => one.outOfRound));
  const alike = !(worst.outOfRound - least > 2 * give);
  const where = alike ? 'much the same all the way through' : `most ${nearWhere(worst.z, length)}`;
  return [
    {
      size: worst.outOfRound,
      say:
        `worn out of round: ${say.plain(worst.outOfRound)} wider across ${nearPair(worst.greatest.theta)} ` +
        `than across ${nearPair(worst.least.theta)} on the clock, ${where}`,
      more: `Give or take ${say.plain(give)}, read ${formatDepth(worst.z, units)} deep.`,
    },
  ];
}

function nearWhere(z: number, length: number): string {
  if (z < length / 3) return 'near the rim';
  return z > (2 * length) / 3 ? 'near the far end' : 'in the middle';
}

const ALONG: Readonly<Partial<Record<Pattern['name'], (face: Pattern['face']) => string>>> = {
  taper: (face) => `tapered, wider towards ${end(face)}`,
  'bell-one': (face) => `opened like a bell at ${end(face)}`,
  'bell-both': () => 'opened like a bell at both ends',
  barrel: () => 'fatter in the middle than at its ends',
  waist: () => 'tighter in the middle than at its ends',
  step: (face) => `stepped, the side towards ${end(face)} being the wider one`,
};

function end(face: Pattern['face']): string {
  return face === 'A' ? 'the rim' : 'the far end';
}

function alongOrLobed({ name, amount, give, face }: Pattern, units: Units): Fault[] {
  const say = written(units, give);
  const doubt = `Give or take ${say.plain(give)}`;
  if (name === 'three-lobed') {
    return [
      {
        size: amount,
        say: `no longer round: on the way round the wall goes out and in three times, by ${say.perSide(amount)}, so a round bushing would touch at three places only`,
        more: `${doubt}; across it measures much the same everywhere.`,
      },
    ];
  }
  const shape = ALONG[name];
  if (shape === undefined) return [];
  return [
    {
      size: amount,
      say: `${shape(face)}, by ${say.across(amount)}`,
      more: `${doubt}.`,
    },
  ];
}

/** How much wider it is than new at its widest; null where that is not known or within the give-or-take. */
function grown(
  sections: readonly Section[],
  nominal: BoreFacts['nominal'],
  units: Units,
): Told | null {
  if (nominal.from !== 'typed' || sections.length === 0) return null;
  const widest = sections.reduce((a, b) => (b.greatest.diameter > a.greatest.diameter ? b : a));
  const give = Math.hypot(widest.give, roundGive(widest));
  const over = widest.greatest.diameter - nominal.mm;
  const say = written(units, give);
  const sentence = `At its widest it is ${say.across(widest.greatest.diameter)}, ${say.plain(Math.abs(over))} ${over < 0 ? 'less' : 'more'} than new, give or take ${say.plain(give)}.`;
  if (!(over > give)) {
    return {
      say: 'Now, as far as the readings can show, it is still round and no wider than new.',
      more: [sentence],
    };
  }
  return {
    say: `Now it is still round, as far as the readings can show, but ${say.across(over)} larger than new.`,
    more: [sentence, inSheets(over, units)].filter((text) => text !== ''),
  };
}

/** Of one pin in one hole; where there are more, Read tells of each. */
function playNow(joint: Evaluation['joint'] | null, units: Units): string[] {
  // What a new bushing leaves is no part of how it was found.
  const [play, ...more] = (joint?.plays ?? []).filter(({ fitted }) => !fitted);
  if (play === undefined || more.length > 0 || !(play.loosest.mm > play.loosest.give)) return [];
  const say = written(units, play.loosest.give);
  return [
    `The pin has ${say.across(play.loosest.mm)} of play in its bushing now, give or take ${say.plain(play.loosest.give)}, at its loosest.`,
  ];
}
