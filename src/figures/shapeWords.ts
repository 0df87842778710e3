/** What the readings show, in plain sentences: round each depth, along the depth, and which way it is worn. */
import type { OvalTurn, Profile, ProfileShape, Section } from '../bore/types.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import { roundGive } from '../geometry/roundGive.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { axisSentences } from './axisWords.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { type Sentence, said } from './sentence.ts';
import { written } from './written.ts';

export function shapeSentences(survey: SurveyEvaluation, length: number, units: Units): Sentence[] {
  const { sections, profile, axis, ovalTurn } = survey;
  return [
    ...roundSentences(sections, ovalTurn, hasEnoughClocks(survey), units),
    ...(profile === null ? [] : alongSentences(profile, meansGive(sections), length, units)),
    ...(axis === null ? [] : axisSentences(axis, length, units)),
    ...lobeSentences(sections, units),
  ];
}

/** An oval can hide between two clock positions, not between three. */
const ENOUGH_CLOCKS = 3;

function hasEnoughClocks({ sightings }: SurveyEvaluation): boolean {
  const clocks = new Set(sightings.map(({ theta }) => Math.round((theta % Math.PI) * 100)));
  return clocks.size >= ENOUGH_CLOCKS;
}

/** Out-of-round where it is greatest and where it is least, and which way it runs. */
function roundSentences(
  sections: readonly Section[],
  turn: OvalTurn | null,
  enoughClocks: boolean,
  units: Units,
): Sentence[] {
  const known = sections.filter(({ outOfRound }) => Number.isFinite(outOfRound));
  if (known.length === 0) return [];
  const worst = known.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const best = known.reduce((a, b) => (b.outOfRound < a.outOfRound ? b : a));
  const give = roundGive(worst);
  const { bare, plain } = written(units, give);
  const deep = (section: Section) => `${formatDepth(section.z, units)} deep`;
  if (worst.outOfRound <= give) {
    const begins = enoughClocks
      ? 'Round, as far as these readings can show: out-of-round is '
      : 'The clock positions read here agree, which does not make it round: they differ by ';
    return [
      said(
        begins,
        plain(worst.outOfRound),
        ` across at most, ${deep(worst)}, within their give-or-take of ${plain(give)}.`,
      ),
    ];
  }
  const wide = nearPair(worst.greatest.theta);
  const narrow = nearPair(worst.least.theta);
  const out = [
    said(
      `Out of round. Across ${wide} it is `,
      plain(worst.outOfRound),
      ` wider than across ${narrow}, ${deep(worst)}, give or take ${plain(give)}.`,
    ),
  ];
  if (best !== worst) {
    const least = roundGive(best);
    const there = best.outOfRound <= least ? ', which is as good as round' : '';
    const { plain: leastPlain } = written(units, least);
    out.push(
      said(
        `Out-of-round is least ${deep(best)}: `,
        leastPlain(best.outOfRound),
        ` across, give or take ${leastPlain(least)}${there}.`,
      ),
    );
  }
  const turned = known.filter((section) => section.outOfRound > roundGive(section));
  if (turned.length > 1) {
    out.push(turn === null ? directionSentence(turned, bare) : turnSentence(turn, units));
  }
  return out;
}

/** 15 degrees: half of an hour on the clock, as near as a repairer marks a direction. */
const SAME_WAY = Math.PI / 12;

function directionSentence(out: readonly Section[], bare: (mm: number) => string): Sentence {
  const [first, last] = [out[0]!, out.at(-1)!];
  const turn = Math.abs(Math.sin(first.greatest.theta - last.greatest.theta));
  if (turn <= Math.sin(SAME_WAY)) {
    return said(`Its long way lies along ${nearPair(first.greatest.theta)} all the way down.`);
  }
  const size = `${bare(first.outOfRound)} and ${bare(last.outOfRound)} across`;
  return said(
    `Its long way turns with the depth: along ${nearPair(first.greatest.theta)} near the rim, along ` +
      `${nearPair(last.greatest.theta)} near the bottom (${size}).`,
  );
}

/** Which way the oval runs where enough depths show it to compare. */
function turnSentence(turn: OvalTurn, units: Units): Sentence {
  const [first, last] = [nearPair(turn.first), nearPair(turn.last)];
  switch (turn.kind) {
    case 'same':
      return said(`Its long way lies along ${first} all the way down.`);
    case 'steady':
      return said(
        `Its long way turns steadily with the depth: along ${first} near the rim, along ${last} near the bottom.`,
      );
    case 'at-once':
      return said(
        `Its long way turns all at once: along ${first} near the rim, along ${last} from ${formatDepth(turn.from, units)} deep on.`,
      );
    case 'not-told':
      return said(
        `Its long way turns with the depth: along ${first} near the rim, along ${last} near the bottom; whether ` +
          'steadily or all at once, readings at more depths would tell.',
      );
  }
}

const NAMES: Readonly<Record<ProfileShape, string>> = {
  straight: 'straight',
  taper: 'a straight taper',
  'bell-at-A': 'a bell-mouth at face A',
  'bell-at-B': 'a bell-mouth at the far end',
  'bell-both': 'a bell-mouth at both ends',
  barrel: 'a barrel',
  waist: 'a waist',
  step: 'a step',
  'not-told': 'not told',
};

/** Two standard deviations of the difference of two depths' mean diameters, across, mm. */
function meansGive(sections: readonly Section[]): number {
  return Math.SQRT2 * Math.max(...sections.map(({ give }) => give));
}

/** @param give of the difference of two mean diameters, mm */
function alongSentences(profile: Profile, give: number, length: number, units: Units): Sentence[] {
  const { shape } = profile;
  if (shape === 'not-told') return untold(profile);
  if (shape === 'straight') {
    return [
      said('Along the depth its mean size stays the same, as far as these readings can show.'),
    ];
  }
  if (shape === 'taper') return [taperSentence(profile, length, units)];
  const { plain } = written(units, give);
  const reach = formatDepth(profile.reach, units);
  const [opens, over] = OPENS[shape];
  return [
    said(
      opens,
      plain(profile.depthOfShape),
      ` across${over.replace('#', reach)}, give or take ${plain(give)}${evidence(profile)}.`,
    ),
  ];
}

function taperSentence(profile: Profile, length: number, units: Units): Sentence {
  const give = 2 * profile.taperSd * length;
  const { plain } = written(units, give);
  const rise = profile.taper * length;
  return said(
    `It widens evenly towards ${rise > 0 ? 'the bottom' : 'the rim'}: by `,
    plain(Math.abs(rise)),
    ` across over its length, give or take ${plain(give)}${evidence(profile)}.`,
  );
}

/** What opens where, and over what depth: `#` stands for the reach. */
const OPENS: Readonly<
  Record<Exclude<ProfileShape, 'straight' | 'taper' | 'not-told'>, readonly [string, string]>
> = {
  'bell-at-A': ['It opens towards the rim, like a bell: by ', ', over the first #'],
  'bell-at-B': ['It opens towards the far end, like a bell: by ', ', over the last #'],
  'bell-both': ['It opens towards both ends, like a bell: by ', ', over # at each'],
  barrel: ['It is fattest in the middle, like a barrel: by ', ''],
  waist: ['It is tightest in the middle, like a waist: by ', ''],
  step: ['Its size jumps by ', ' at about # deep'],
};

/**
 * How plainly the readings speak for the shape over the next best one. Steps of the difference of BIC as Kass and
 * Raftery put them into words (Journal of the American Statistical Association 90, 1995): 2, 6, 10.
 */
function evidence({ evidence: by, candidates }: Profile): string {
  const next = candidates[1];
  if (next === undefined || !(by > 0)) return '';
  const plainly = by > 10 ? 'plainly' : by > 6 ? 'clearly' : 'a little';
  return `; that fits the readings ${plainly} better than ${NAMES[next.shape]} does`;
}

function untold({ candidates }: Profile): Sentence[] {
  const [a, b] = candidates;
  if (a === undefined || b === undefined) return [];
  return [
    said(
      `Along the depth these readings fit ${NAMES[a.shape]} and ${NAMES[b.shape]} about equally well; ` +
        'readings at more depths would tell.',
    ),
  ];
}

/** Lobes beyond the oval that stand out of the give-or-take, each at the depth where it is largest. */
function lobeSentences(sections: readonly Section[], units: Units): Sentence[] {
  const largest = new Map<
    number,
    { section: Section; amplitude: number; give: number; theta: number }
  >();
  for (const section of sections) {
    for (const { n, amplitude, sd, theta } of section.lobes) {
      const give = 2 * sd;
      if (n < 3 || !(amplitude > Math.max(section.give, give))) continue;
      const known = largest.get(n);
      if (known === undefined || amplitude > known.amplitude) {
        largest.set(n, { section, amplitude, give, theta });
      }
    }
  }
  return [...largest].map(([n, { section, amplitude, give, theta }]) => {
    const wide = Array.from({ length: n }, (_, k) => nearClock(theta + (2 * Math.PI * k) / n));
    const { plain } = written(units, give);
    return said(
      `${COUNTS[n] ?? n}-lobed as well: `,
      plain(amplitude),
      ` per side, give or take ${plain(give)}, widest at ${listed(wide)}, ${formatDepth(section.z, units)} deep.`,
    );
  });
}

const COUNTS: Readonly<Record<number, string>> = { 3: 'Three', 4: 'Four', 5: 'Five', 6: 'Six' };

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
