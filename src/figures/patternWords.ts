/** What wore, in words: each pattern with its evidence, how sure, likely causes, and what to check next. */
import type { OpenQuestion, Pattern } from '../bore/patternTypes.ts';
import type { Section } from '../bore/types.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { angleApart } from '../job/clock.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { EYES, PATTERN_FACTS, type PatternFacts } from './patternTable.ts';
import { outOfRoundGive } from './sectionGive.ts';
import { type Written, written } from './written.ts';

export interface PatternSaid extends PatternFacts {
  readonly name: Pattern['name'];
  /** Sentences with the figures, their give-or-take and how sure. */
  readonly evidence: string;
}

export interface WhatWore {
  readonly patterns: readonly PatternSaid[];
  /** Why nothing is named, or what besides cannot be told. */
  readonly open: readonly string[];
  readonly eyes: string;
}

/** @returns null where nothing was read yet, or a bushing that has not run */
export function whatWore(
  survey: SurveyEvaluation,
  { facts }: Pick<BoreEvaluation, 'facts'>,
  units: Units,
): WhatWore | null {
  if (survey.surface === null || survey.stage === 'fitted') return null;
  const { named, open } = survey.patterns;
  const none =
    named.length > 0 ? [] : ['No wear pattern stands above the give-or-take of these readings.'];
  return {
    patterns: named.map((one) => ({
      ...PATTERN_FACTS[one.name],
      name: one.name,
      evidence: [
        shown(one, units),
        mostAt(one, survey.sections, units),
        alongLoad(one, facts.load),
        sure(one),
      ]
        .filter((part) => part !== '')
        .join(' '),
    })),
    open: [...none, ...open.filter((one) => !saidAlready(one, named)).map((one) => OPEN[one])],
    eyes: EYES,
  };
}

/** Egg or oval has its own words beside the pattern; lobes matter most where nothing else was found. */
function saidAlready(one: OpenQuestion, named: readonly Pattern[]): boolean {
  if (one === 'sides') return named.some(({ name }) => name === 'egg-or-oval');
  return one === 'lobes' && named.length > 0;
}

const OPEN: Readonly<Record<OpenQuestion, string>> = {
  sides:
    'Diameters alone cannot tell an egg from an oval, or which side wore. The wall of the boss, read at both ends of the long way, would tell.',
  'sides-weak':
    'The one-sided readings cannot tell an egg from an oval: where the old centre was is not known well enough. Read the ' +
    'wall on a boss that is round outside, or sweep rim, middle and bottom in one set-up.',
  along:
    'The shape along the depth cannot be told: two fit alike, and readings at more depths would part them.',
  'few-clocks': 'An oval cannot be told from fewer than three clock pairs: read the ones between.',
  'few-depths':
    'Taper, bell-mouth, barrel and step cannot be told from fewer than three depths: read the middle and both ends.',
  'three-leg': 'An oval cannot be told: a three-leg gauge reads the mean of it at every turn.',
  lobes:
    'Three lobes cannot be told: across they read alike everywhere. If a plug of the size read does not enter, sweep it.',
};

/** Causes and next looks as two plain sentences. */
export function adviceOf({ causes, check, alike }: PatternFacts): string[] {
  const likely = `Likely from ${listed(causes, 'or')}.`;
  const next = `Look next at ${listed(check, 'and')}.`;
  return [likely, next, ...(alike === '' ? [] : [alike])];
}

function listed(words: readonly string[], last: string): string {
  const some = words.some((word) => word.includes(','));
  if (words.length < 2) return words.join('');
  const between = some ? '; ' : ', ';
  return `${words.slice(0, -1).join(between)}${some ? ';' : ''} ${last} ${words.at(-1)}`;
}

/** The figures. */
function shown(one: Pattern, units: Units): string {
  const say = written(units, one.give);
  const amount = `${say.plain(one.amount)}`;
  const doubt = `give or take ${say.bare(one.give)}`;
  const where = depths(one, units);
  switch (one.name) {
    case 'egg':
      return `${larger(one, amount, doubt)}, ${where}. The worn side is ${nearClock(one.theta)}.`;
    case 'oval':
    case 'egg-or-oval':
      return `${larger(one, amount, doubt)}, ${where}.`;
    case 'off-the-clock':
      return `It runs along ${nearPair(one.theta)}.`;
    case 'crossed':
      return (
        `It is out of round by ${amount} across, ${doubt}: worn towards ${nearClock(one.theta)} near face A, ` +
        `towards ${nearClock(one.theta + Math.PI)} near the far end.`
      );
    case 'three-lobed':
      return `Three times round, its wall goes out and in by ${amount} per side, ${doubt}, widest at ${crests(one)}, ${where}.`;
    case 'dent': {
      const place =
        one.per === 'across'
          ? `Across ${nearPair(one.theta)} it reads ${amount} smaller, ${doubt}, than its neighbours lead one to expect`
          : `At ${nearClock(one.theta)} the wall stands ${amount} per side proud, ${doubt}`;
      return `${place}, ${where}.`;
    }
    default:
      return along(one, say, units);
  }
}

/** Where an oval or an egg is plainly deeper than on the whole. */
function mostAt(one: Pattern, sections: readonly Section[], units: Units): string {
  if (one.name !== 'egg' && one.name !== 'oval' && one.name !== 'egg-or-oval') return '';
  const worst = sections.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const give = Math.hypot(one.give, outOfRoundGive(worst));
  if (!(worst.outOfRound - one.amount > give)) return '';
  const say = written(units, outOfRoundGive(worst));
  return `It is most ${formatDepth(worst.z, units)} deep: ${say.plain(worst.outOfRound)} across, give or take ${say.bare(outOfRoundGive(worst))}.`;
}

function larger({ theta }: Pattern, amount: string, doubt: string): string {
  const narrow = nearPair(theta + Math.PI / 2);
  return `Across ${nearPair(theta)} it is ${amount} larger than across ${narrow}, ${doubt}`;
}

function along(one: Pattern, say: Written, units: Units): string {
  const amount = `${say.plain(one.amount)} across, give or take ${say.bare(one.give)}`;
  const end = one.face === 'A' ? 'face A' : 'the far end';
  const deep = (z: number) => formatDepth(z, units);
  switch (one.name) {
    case 'taper':
      return `It widens evenly towards ${end}, over its length by ${amount}.`;
    case 'bell-one':
      return one.face === 'A'
        ? `It opens towards face A over the first ${deep(one.to)}, by ${amount}.`
        : `It opens towards the far end from ${deep(one.from)} deep on, by ${amount}.`;
    case 'bell-both':
      return `It opens towards both ends, by ${amount}.`;
    case 'barrel':
      return `Its middle is larger than its ends by ${amount}.`;
    case 'waist':
      return `Its middle is smaller than its ends by ${amount}.`;
    case 'step':
      return `Its size jumps at about ${deep(one.from)} deep, by ${amount}; the side towards ${end} is the wider one.`;
    case 'round-but-big':
      return `It is larger than new by ${amount}, and nothing else of its shape comes near that.`;
    default:
      return `About its own depth's shape one reading strays by ${say.plain(one.amount)} (one standard deviation), give or take ${say.bare(one.give)}: more than its gauge and a hand explain.`;
  }
}

function depths({ from, to, everywhere }: Pattern, units: Units): string {
  if (everywhere) return 'at every depth';
  if (from === to) return `${formatDepth(from, units)} deep`;
  return `from ${formatDepth(from, units)} to ${formatDepth(to, units)} deep`;
}

function crests({ theta }: Pattern): string {
  const [a, b, c] = [0, 1, 2].map((k) => nearClock(theta + (2 * Math.PI * k) / 3));
  return `${a}, ${b} and ${c}`;
}

/** An hour on the clock. */
const ALONG_LOAD = Math.PI / 6;

/** Where the load was stated: whether the wear lies along it. */
function alongLoad(one: Pattern, load: number): string {
  if (Number.isNaN(load)) return '';
  const said = nearClock(load);
  if (one.name === 'egg') {
    return angleApart(one.theta, load) <= ALONG_LOAD
      ? `That is where the load pulls (${said}).`
      : `The load was said to pull towards ${said}: check the clock of both.`;
  }
  if (one.name !== 'oval' && one.name !== 'egg-or-oval') return '';
  return angleApart(one.theta, load, Math.PI) <= ALONG_LOAD
    ? `That lies along the load (${said}).`
    : `The load was said to pull towards ${said}, which is not along it: check the clock of both.`;
}

/** By what rule it is told, and how plainly. */
function sure({ name, rule, sure: by }: Pattern): string {
  if (name === 'off-the-clock') return '';
  switch (rule) {
    case 'chance':
      return `A bore without it would read like this ${rarely(by)}.`;
    case 'odds':
      return `Where the centres lie fits that ${times(by)} better than the next best.`;
    case 'BIC':
      return by > 10
        ? 'That fits the readings plainly better than a straight bore would.'
        : 'That fits the readings clearly better than a straight bore would.';
    case 'sds':
      return name === 'rough' ? '' : `That is ${Math.floor(by / 2)} times its give-or-take.`;
    case 'stated':
      return 'The side is as you said: diameters cannot show it.';
  }
}

function rarely(chance: number): string {
  if (chance < 1e-6) return 'less than once in a million surveys';
  const power = 10 ** Math.floor(-Math.log10(chance));
  return `less than once in ${power.toLocaleString('en')} surveys`;
}

/** From 2 ln of the ratio of likelihoods. */
function times(odds: number): string {
  const ratio = Math.exp(odds / 2);
  return ratio > 1000 ? 'more than 1,000 times' : `${Number(ratio.toPrecision(1))} times`;
}
