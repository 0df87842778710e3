/** What wore, as the report writes it: the patterns of each survey. */
import * as v from 'valibot';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { whatWore } from '../figures/patternWords.ts';
import type { Units } from '../job/schema.ts';

const Num = v.nullable(v.number());

export const PatternSchema = v.strictObject({
  name: v.picklist([
    'egg',
    'oval',
    'egg-or-oval',
    'off-the-clock',
    'crossed',
    'three-lobed',
    'dent',
    'taper',
    'bell-one',
    'bell-both',
    'barrel',
    'waist',
    'step',
    'round-but-big',
    'rough',
  ]),
  /** How it is told: the chance of reading so without it; a difference of BIC; 2 ln of a ratio of likelihoods; its size in standard deviations; as stated. */
  rule: v.picklist(['chance', 'BIC', 'odds', 'sds', 'stated']),
  sure: Num,
  amount: v.number(),
  giveOrTake: v.number(),
  per: v.picklist(['across', 'side']),
  /** Worn side, long way (0 to 180), first crest or dent; null all round. */
  clock: Num,
  fromDepth: v.number(),
  toDepth: v.number(),
  everywhere: v.boolean(),
  /** Of a bell, a taper and a step: the face at its wide end. */
  face: v.nullable(v.picklist(['A', 'B'])),
  words: v.string(),
  causes: v.array(v.string()),
  check: v.array(v.string()),
  alike: v.string(),
});

interface PatternsReport {
  readonly patterns: v.InferOutput<typeof PatternSchema>[];
  readonly patternsOpen: string[];
}

export function patternsReport(
  s: SurveyEvaluation,
  bore: BoreEvaluation,
  units: Units,
): PatternsReport {
  const wore = whatWore(s, bore, units);
  return {
    patterns: s.patterns.named.map((one, i) => {
      const said = wore!.patterns[i]!;
      return {
        name: one.name,
        rule: one.rule,
        sure: orNull(one.sure),
        amount: one.amount,
        giveOrTake: one.give,
        per: one.per,
        clock: orNull((one.theta * 180) / Math.PI),
        fromDepth: one.from,
        toDepth: one.to,
        everywhere: one.everywhere,
        face: one.face,
        words: `${said.title}. ${said.evidence}`,
        causes: [...said.causes],
        check: [...said.check],
        alike: said.alike,
      };
    }),
    patternsOpen: [...(wore?.open ?? [])],
  };
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
