/** Whether the readings of the bore at hand name the pattern that is looked at, in words. */
import type { PatternName } from '../bore/patternTypes.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { whatWore } from './patternWords.ts';
import type { Units } from './steps.ts';

/** Names that readings give where they cannot tell two or more patterns of the catalogue apart. */
const EITHER: Readonly<Partial<Record<PatternName, readonly string[]>>> = {
  'egg-or-oval': ['egg', 'oval'],
  rough: ['scored-along', 'galled', 'pitted'],
};

/** The entry of the catalogue that tells of a named pattern; the first where several may. */
export function entryOf(name: PatternName): string {
  return EITHER[name]?.[0] ?? name;
}

export function matchWords(
  entry: string,
  survey: SurveyEvaluation,
  bore: Pick<BoreEvaluation, 'facts'>,
  units: Units,
): string {
  const said = whatWore(survey, bore, units)?.patterns ?? [];
  const same = said.find(({ name }) => name === entry);
  if (same !== undefined) return `This bore’s readings name the same. ${same.evidence}`;
  const either = said.find(({ name }) => EITHER[name]?.includes(entry) === true);
  if (either !== undefined) {
    return `This bore’s readings name it as one of those that it may be. ${either.evidence} ${either.alike}`.trim();
  }
  if (said.length > 0) {
    const titles = said.map(({ title }) => `“${title}”`).join(' and ');
    return `This bore’s readings name something else: ${titles}. Compare where the dark places lie.`;
  }
  return 'No pattern stands above the give-or-take of this bore’s readings: compare by eye, and with care.';
}
