/** What a squeeze brought, and the shop's log of them, as the report names them. Across, mm; clocks in degrees. */
import * as v from 'valibot';
import type { BuildUp } from '../evaluate/buildUp.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import { type HeatDone, heatWords, logWords } from '../figures/heatWords.ts';
import { giveOf } from '../figures/squeezeWords.ts';
import type { Units } from '../job/schema.ts';

const Num = v.nullable(v.number());

export const HeatSchema = v.strictObject({
  words: v.array(v.string()),
  before: v.string(),
  /** Null: two readings tell it. */
  after: v.nullable(v.string()),
  jawsClock: v.number(),
  depth: v.number(),
  /** Before: along the jaws, and straight across from them. */
  along: v.number(),
  between: v.number(),
  /** Null while nothing was measured after it. */
  brought: v.nullable(
    v.strictObject({
      moved: Num,
      came: Num,
      meanBefore: Num,
      meanAfter: Num,
      /** How far the mean drew in; negative: it grew. */
      drewIn: Num,
      /** Of the movement that sprang back, and of the size that the mean drew in: 0 to 1. */
      springShare: Num,
      upsetShare: Num,
      across: v.array(v.strictObject({ clock: v.number(), before: Num, after: Num })),
    }),
  ),
});

export const LogSchema = v.strictObject({
  words: v.string(),
  squeezes: v.array(
    v.strictObject({
      when: v.string(),
      note: v.string(),
      moved: Num,
      came: Num,
      springShare: Num,
      upsetShare: Num,
    }),
  ),
});

export function heatReport(
  heat: HeatDone,
  survey: SurveyEvaluation,
  units: Units,
): v.InferOutput<typeof HeatSchema> {
  const { where, brought: lines } = heatWords(heat, giveOf(survey), units);
  const { before, after, jaws, z, along, between, brought } = heat;
  return {
    words: [where, ...lines],
    before,
    after,
    jawsClock: degrees(jaws),
    depth: z,
    along,
    between,
    brought: brought && {
      moved: orNull(brought.moved),
      came: orNull(brought.came),
      meanBefore: orNull(brought.meanBefore),
      meanAfter: orNull(brought.meanAfter),
      drewIn: orNull(brought.meanBefore - brought.meanAfter),
      springShare: orNull(brought.springShare),
      upsetShare: orNull(brought.upsetShare),
      across: brought.across.map((one) => ({
        clock: degrees(one.theta),
        before: orNull(one.before),
        after: orNull(one.after),
      })),
    },
  };
}

export function logReport(found: BuildUp): v.InferOutput<typeof LogSchema> {
  return {
    words: logWords(found),
    squeezes: found.facts.squeeze.log.map(({ when, note, asked, came, meanBefore, meanAfter }) => ({
      when,
      note,
      moved: orNull(asked),
      came: orNull(came),
      springShare: orNull(asked > 0 ? 1 - came / asked : Number.NaN),
      upsetShare: orNull((meanBefore - meanAfter) / meanBefore),
    })),
  };
}

export function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

export function degrees(theta: number): number {
  return (theta * 180) / Math.PI;
}
