/** What changed between two stages, in plain sentences: depth by depth across, how much metal, where most, and how sure. */

import { decimalsOf } from '../job/digits.ts';
import type { Stage, Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { earned } from './amountWords.ts';
import { nearClock, nearPair } from './nearClock.ts';
import { linearAt } from './sample.ts';
import { type Sentence, said } from './sentence.ts';
import type { StageChange } from './stageChange.ts';
import { doubtOf } from './wall.ts';
import { written } from './written.ts';

/** Directions asked at a depth: every half hour of half a turn. */
const PAIRS = 12;
/** Plain steel, g per mm3. */
const STEEL = 7.85e-3;

/**
 * @param kind what was done before the later stage was measured
 * @param step mm between contours of the map of the change, against which doubt is judged
 */
export function stageSentences(
  found: StageChange,
  kind: Stage,
  step: number,
  units: Units,
): Sentence[] {
  return [
    ...depthSentences(found, units),
    ...metalSentences(found, kind),
    ...mostSentence(found, units),
    ...doubtSentence(found, step),
    said(frameWords(found)),
  ];
}

interface Across {
  readonly theta: number;
  /** mm across, positive where it opened; two standard deviations. */
  readonly change: number;
  readonly give: number;
}

/** One sentence a depth that the later stage was read at; depths where nothing can be shown share one. */
function depthSentences(found: StageChange, units: Units): Sentence[] {
  const quiet: string[] = [];
  const out: Sentence[] = [];
  for (const { z } of found.after.sections) {
    const pairs = acrossAt(found, z);
    const deep = `${formatDepth(z, units)} deep`;
    const words = pairs.length === 0 ? null : depthWords(pairs, units);
    if (words === null) quiet.push(formatDepth(z, units));
    else out.push({ ...words, before: `${deep}: ${words.before}` });
  }
  if (quiet.length === 0) return out;
  const where =
    quiet.length === found.after.sections.length ? 'At every depth read' : `${listed(quiet)} deep`;
  return [...out, said(`${where}: no change of size that these readings can show.`)];
}

function acrossAt({ grid, change, giveAcross }: StageChange, z: number): Across[] {
  return Array.from({ length: PAIRS }, (_, i) => (Math.PI * i) / PAIRS)
    .map((theta) => ({
      theta,
      change: linearAt(grid, change, theta, z) + linearAt(grid, change, theta + Math.PI, z),
      give: linearAt(grid, giveAcross, theta, z),
    }))
    .filter((pair) => Number.isFinite(pair.change));
}

function depthWords(pairs: readonly Across[], units: Units): Sentence | null {
  const opened = pairs.reduce((a, b) => (b.change > a.change ? b : a));
  const closed = pairs.reduce((a, b) => (b.change < a.change ? b : a));
  const told = [opened, closed].map((one) => Math.abs(one.change) > one.give);
  const sameWay = Math.sign(opened.change) === Math.sign(closed.change);
  // Alike all round as far as can be told: one figure says it.
  const give = Math.max(opened.give, closed.give);
  const mean = pairs.reduce((sum, one) => sum + one.change, 0) / pairs.length;
  const alike = sameWay && opened.change - closed.change < give;
  if (alike && told.every(Boolean)) {
    if (!(Math.abs(mean) > give)) return null;
    return moved('all round it ', { theta: 0, change: mean, give }, units);
  }
  const items = [closed, opened]
    .filter(
      (one, i) => told[1 - i]! && (i === 0 ? one.change < 0 || sameWay : one.change > 0 || sameWay),
    )
    .sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
  if (items.length === 0) return null;
  const [first, second] = items;
  const words = moved(`${nearPair(first!.theta)} `, first!, units);
  if (second === undefined) return words;
  const more = moved(`${nearPair(second.theta)} `, second, units);
  return {
    ...words,
    after: `${words.after.slice(0, -1)}; ${more.before}${more.figure}${more.after}`,
  };
}

/** `12–6 closed by`, `0.0060 in across`, `, give or take 0.0008.` */
function moved(where: string, { change, give }: Across, units: Units): Sentence {
  const { across, bare } = written(units, give);
  const way = change < 0 ? 'closed' : 'opened';
  return said(`${where}${way} by `, across(Math.abs(change)), `, give or take ${bare(give)}.`);
}

function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

/** Steel between the two walls, g, at the mean and a give-or-take less and more at every place. */
export function metalBetween(
  { grid, radius, change, give }: StageChange,
  sign: 1 | -1,
): { likely: number; least: number; most: number } {
  const columns = grid.theta.length;
  const last = grid.z.length - 1;
  const sums = { likely: 0, least: 0, most: 0 };
  const layer = (t: number, share: number) => (t > 0 ? t * (radius + (sign * t) / 2) * share : 0);
  for (let k = 0; k < change.length; k++) {
    const row = Math.floor(k / columns);
    const deep = (grid.z[Math.min(row + 1, last)]! - grid.z[Math.max(row - 1, 0)]!) / 2;
    const share = STEEL * deep * ((2 * Math.PI) / columns);
    const t = sign * change[k]!;
    sums.likely += layer(t, share);
    sums.least += layer(t - give[k]!, share);
    sums.most += layer(t + give[k]!, share);
  }
  return sums;
}

function metalSentences(found: StageChange, kind: Stage): Sentence[] {
  if (kind === 'after-squeezing') {
    return [
      said(
        'Squeezing takes no metal away: what closed one way and opened the other is metal that moved.',
      ),
    ];
  }
  if (kind === 'as-found') {
    return [
      said(
        'Nothing was done between these two: where they differ, one of them shows what the other does not.',
      ),
    ];
  }
  const off = metalBetween(found, 1);
  const on = metalBetween(found, -1);
  if (kind === 'after-build-up') return [metalWords(on, 'put on'), ...onlySure(off, 'taken off')];
  return [metalWords(off, 'came off'), ...onlySure(on, 'put on, or closed in')];
}

function onlySure(amount: ReturnType<typeof metalBetween>, done: string): Sentence[] {
  return amount.least > 0 && shownGrams(amount, amount.least) !== '0'
    ? [metalWords(amount, done)]
    : [];
}

function shownGrams({ least, most }: ReturnType<typeof metalBetween>, value: number): string {
  return earned(value, Math.min(2, decimalsOf((most - least) / 2) ?? 2));
}

function metalWords(amount: ReturnType<typeof metalBetween>, done: string): Sentence {
  const grams = (value: number) => shownGrams(amount, value);
  const least = grams(amount.least);
  if (!(Number(least) > 0)) {
    return said(
      `No metal is sure to have been ${done === 'came off' ? 'taken off' : done}: likely `,
      `${grams(amount.likely)} g`,
      `, at most ${grams(amount.most)}.`,
    );
  }
  const rest = ` of steel ${done === 'came off' ? done : `were ${done}`} (${least} to ${grams(amount.most)}).`;
  return said('', `${grams(amount.likely)} g`, rest);
}

/** Where most changed, if anything did beyond the give-or-take. */
function mostSentence({ grid, change, give, sideTold }: StageChange, units: Units): Sentence[] {
  let most = -1;
  for (let k = 0; k < change.length; k++) {
    if (!(Math.abs(change[k]!) > give[k]!)) continue;
    if (most < 0 || Math.abs(change[k]!) > Math.abs(change[most]!)) most = k;
  }
  if (most < 0) return [said('Nowhere on the wall is the change larger than its give-or-take.')];
  const columns = grid.theta.length;
  const theta = grid.theta[most % columns]!;
  const { perSide, bare } = written(units, give[most]!);
  const where = sideTold ? `at ${nearClock(theta)}` : `across ${nearPair(theta)}`;
  const deep = formatDepth(grid.z[Math.floor(most / columns)]!, units);
  const what = change[most]! > 0 ? 'of metal gone' : 'closed in';
  return [
    said(
      `Most changed ${where}, ${deep} deep: `,
      perSide(Math.abs(change[most]!)),
      ` ${what}, give or take ${bare(give[most]!)}.`,
    ),
  ];
}

/** A share of the wall smaller than this is not worth a sentence. */
const WORTH_SAYING = 0.01;

function doubtSentence({ change, give }: StageChange, step: number): Sentence[] {
  let hatched = 0;
  for (let k = 0; k < change.length; k++) {
    if (doubtOf(change[k]!, give[k]!, step) > 1) hatched++;
  }
  const share = hatched / change.length;
  if (!(share > WORTH_SAYING)) return [];
  return [
    said(
      'Where it is hatched, on ',
      `${Math.round(100 * share)} %`,
      ' of the wall, the amount on the map cannot be trusted: the give-or-take of the two stages together is nearly as large as the change, or larger.',
    ),
  ];
}

function frameWords({ tied, sideTold }: StageChange): string {
  const laid = tied
    ? 'Both are drawn about the centre that you keep.'
    : 'No reading ties the centre of one stage to that of the other: they are laid over each other so that least of the wall changes.';
  const side = sideTold
    ? ''
    : ' Diameters do not tell on which of two opposite sides it changed: the map shows it on the sides that the two stages are taken to be worn on.';
  return laid + side;
}
