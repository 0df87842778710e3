/** What wore, as the report writes it: the patterns of each survey, and the joint side by side. */
import * as v from 'valibot';
import type { BoreEvaluation, Evaluation, SurveyEvaluation } from '../evaluate.ts';
import { jointSentences } from '../figures/jointWords.ts';
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

const Figure = v.strictObject({ mm: Num, giveOrTake: Num });
/** Clock of the pair, 0 to 180, or of the side, and depth; null not told. */
const FigureAt = v.strictObject({ mm: Num, giveOrTake: Num, clock: Num, depth: Num });

/** Across but for `perSide` and walls; the give-or-take is two standard deviations. */
export const JointSchema = v.strictObject({
  parts: v.array(
    v.strictObject({
      name: v.string(),
      kind: v.picklist(['bore', 'pin', 'bushing-inside', 'bushing-outside']),
      /** The last survey with readings; '' for sizes typed without places. */
      survey: v.string(),
      newSize: Num,
      /** unworn-end: the part's own largest diameter stands for its new size. */
      newFrom: v.picklist(['typed', 'unworn-end', 'missing']),
      mean: Figure,
      least: FigureAt,
      greatest: FigureAt,
      outOfRound: FigureAt,
      /** Over the length, positive where it widens inward. */
      taper: Figure,
      worn: v.nullable(
        v.strictObject({
          across: Figure,
          perSide: Figure,
          /** False: half of what is gone across, both sides alike. */
          oneSided: v.boolean(),
          clock: Num,
          depth: Num,
        }),
      ),
    }),
  ),
  newBushings: v.array(
    v.strictObject({
      bore: v.string(),
      name: v.string(),
      outside: Num,
      inside: Num,
      wall: Num,
    }),
  ),
  plays: v.array(
    v.strictObject({
      hole: v.string(),
      pin: v.string(),
      by: v.picklist(['clock', 'extremes']),
      loosest: FigureAt,
      tightest: FigureAt,
    }),
  ),
  walls: v.array(
    v.strictObject({
      name: v.string(),
      outsideFrom: v.picklist(['measured', 'new-bushing']),
      new: Num,
      mean: Figure,
      least: FigureAt,
      oneSided: v.boolean(),
      /** What is left at the thinnest place if all of the wear is on one side. */
      leastOneSide: Num,
      /** Share of the new wall that is gone there. */
      lost: Num,
    }),
  ),
  mirrors: v.array(
    v.strictObject({
      hole: v.string(),
      pin: v.nullable(v.string()),
      verdict: v.picklist(['agrees', 'contradicts', 'not-measured', 'cannot-tell']),
      why: v.picklist([
        'one-side',
        'all-round',
        'turned',
        'mirrored',
        'crossed',
        'pin-unworn',
        'hole-unworn',
        'no-new-size',
        'no-pin',
        'pin-list',
      ]),
      holeClock: Num,
      pinClock: Num,
    }),
  ),
  words: v.array(v.string()),
});

type JointReport = v.InferOutput<typeof JointSchema>;

export function jointReport({ joint, units }: Evaluation): JointReport {
  return {
    parts: joint.parts.map(({ name, kind, survey, newSize, newFrom, size, worn }) => ({
      name,
      kind,
      survey,
      newSize: orNull(newSize),
      newFrom,
      mean: figure(size.mean),
      least: figureAt(size.least),
      greatest: figureAt(size.greatest),
      outOfRound: figureAt(size.outOfRound),
      taper: figure(size.taper),
      worn: worn && {
        across: figure(worn.across),
        perSide: figure(worn.perSide),
        oneSided: worn.oneSided,
        clock: degrees(worn.theta),
        depth: orNull(worn.z),
      },
    })),
    newBushings: joint.fresh.map(({ bore, name, outside, inside, wall }) => ({
      bore,
      name,
      outside: orNull(outside),
      inside: orNull(inside),
      wall: orNull(wall),
    })),
    plays: joint.plays.map(({ hole, pin, by, loosest, tightest }) => ({
      hole,
      pin,
      by,
      loosest: figureAt(loosest),
      tightest: figureAt(tightest),
    })),
    walls: joint.walls.map((one) => ({
      name: one.name,
      outsideFrom: one.from,
      new: orNull(one.fresh),
      mean: figure(one.mean),
      least: figureAt(one.least),
      oneSided: one.oneSided,
      leastOneSide: orNull(one.leastOneSide),
      lost: orNull(one.lost),
    })),
    mirrors: joint.mirrors.map(({ hole, pin, verdict, why, holeTheta, pinTheta }) => ({
      hole,
      pin,
      verdict,
      why,
      holeClock: degrees(holeTheta),
      pinClock: degrees(pinTheta),
    })),
    words: jointSentences(joint, units),
  };
}

function figure({ mm, give }: { readonly mm: number; readonly give: number }) {
  return { mm: orNull(mm), giveOrTake: orNull(give) };
}

function figureAt(one: Evaluation['joint']['plays'][number]['loosest']) {
  return { ...figure(one), clock: degrees(one.theta), depth: orNull(one.z) };
}

function degrees(theta: number): number | null {
  return orNull((theta * 180) / Math.PI);
}

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
        clock: degrees(one.theta),
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
