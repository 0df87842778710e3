/** The fit of each bushing, as the report names it. Lengths in mm, clocks in degrees; not known is null. */
import * as v from 'valibot';
import { type BushingFit, type FitFound, fitOfSurvey } from '../evaluate/fit.ts';
import type { OnePin } from '../evaluate/onePin.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { fitAnswers } from '../figures/fitAnswers.ts';
import { type FitWant, fitWants, WANT_NAMES } from '../figures/fitMissing.ts';
import { insideAfter } from '../figures/orderEntry.ts';
import { orderSteps } from '../figures/orderWords.ts';
import { clockTheta } from '../job/clock.ts';
import { hotWork } from '../job/safety.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { RoundSchema, roundReport } from './fitRoundReport.ts';
import { RunningSchema, runningReport } from './fitRunningReport.ts';
import { degrees, orNull } from './heatReport.ts';
import { MetalSchema, metalReport, PressSchema, pressReport } from './pressReport.ts';
import { SideGapSchema, sideGapReport } from './sideGapReport.ts';
import { SlipSchema, slipReport } from './slipReport.ts';

const Num = v.nullable(v.number());

/** In short, as at the head of the fit on the page. */
const ShortSchema = v.strictObject({
  answers: v.array(
    v.strictObject({
      asks: v.picklist(['goes-in', 'holds', 'turns', 'seconds']),
      question: v.string(),
      says: v.string(),
    }),
  ),
  /** What must be said before all can be told. */
  wants: v.array(v.picklist(Object.keys(WANT_NAMES) as FitWant[])),
});

const BushingSchema = v.strictObject({
  name: v.string(),
  /** As measured, or made to suit the target. */
  from: v.picklist(['measured', 'made']),
  outside: Num,
  inside: Num,
  length: Num,
  seat: v.strictObject({ from: v.number(), to: Num }),
  /** Size of the wall that it goes into, where that is on target. */
  into: Num,
  short: ShortSchema,
  press: PressSchema,
  /** Its inside once it sits: by the real shape, mean and least; as the formula has it; were all of the press fit to go into it. */
  insideAfter: v.strictObject({ mean: Num, least: Num, formula: Num, safe: Num }),
  /** With heat and cold, and the seconds that are left. */
  slip: SlipSchema,
  round: RoundSchema,
  running: RunningSchema,
});

export const FitSchema = v.strictObject({
  /** The bore that it goes into: as the way of mending is to leave it, or as measured. */
  wall: v.nullable(v.picklist(['planned', 'measured'])),
  way: v.nullable(v.string()),
  bushings: v.array(BushingSchema),
  /** Bushings that were read once in, of a bore that nobody read before: `wall` and `way` are null then. */
  alone: v.array(v.strictObject({ name: v.string(), running: RunningSchema })),
  /** All that the job may name: the usual ones, then its own. */
  metals: v.array(MetalSchema),
  sideGap: SideGapSchema,
  /** Clock positions of the holes through which grease is to come. */
  greaseHoles: v.array(v.strictObject({ clock: Num })),
  /** The work in its order; `done` as it was ticked off. */
  order: v.array(
    v.strictObject({
      step: v.string(),
      words: v.string(),
      cautions: v.array(v.string()),
      done: v.boolean(),
    }),
  ),
});
export type FitReport = v.InferOutput<typeof FitSchema>;

/** Works out the fit of one survey; null where it has no target. */
export type FindFit = (bore: BoreEvaluation, survey: SurveyEvaluation) => FitReport | null;

/**
 * @param onePin all bores of the job together; null where there is but one
 * @param parts what else was measured: the pin among it
 */
export function fitFinder(
  job: Job,
  shop: Shop | null,
  onePin: OnePin | null = null,
  parts: readonly BoreEvaluation[] = [],
): FindFit {
  return (bore, survey) => {
    const found = fitOfSurvey(job, bore, survey, shop, parts);
    const wall = found?.bushings[0]?.seated.wall;
    if (found === null) return null;
    return {
      wall: wall?.kind ?? null,
      way: wall?.way ?? null,
      bushings: found.bushings.map((one) => bushingReport(one, job)),
      alone: found.alone.map(({ name, running }) => ({
        name,
        running: runningReport(running, job.units),
      })),
      metals: found.metals.map(metalReport),
      sideGap: sideGapReport(found.side, job.units),
      greaseHoles: greaseHoles(job, bore).map((theta) => ({ clock: orNull(degrees(theta)) })),
      order: orderReport(found, onePin, job, bore),
    };
  };
}

/** Radians clockwise from 12 seen from face A; NaN: not said. */
function greaseHoles(job: Job, { id }: BoreEvaluation): number[] {
  const feature = job.features.find((one) => one.id === id)!;
  return feature.keepouts
    .filter(({ kind }) => kind === 'grease-hole')
    .map(({ clock, face }) => clockTheta(clock, face));
}

function orderReport(
  found: FitFound,
  onePin: OnePin | null,
  job: Job,
  bore: BoreEvaluation,
): FitReport['order'] {
  const feature = job.features.find(({ id }) => id === bore.id)!;
  const done = feature.decisions.fit?.done ?? [];
  return orderSteps(found, onePin, job, feature).map(({ key, says, cautions }) => ({
    step: key,
    words: says,
    cautions: [...cautions],
    done: done.includes(key),
  }));
}

function bushingReport(one: BushingFit, job: Job): FitReport['bushings'][number] {
  const { name, from, outside, inside, length, seat } = one.seated;
  const { open } = hotWork(job.safety);
  const after = insideAfter(one);
  return {
    name,
    from,
    outside: orNull(outside),
    inside: orNull(inside),
    length: orNull(length),
    seat: { from: seat.from, to: orNull(seat.to) },
    into: orNull(one.seated.wall.target),
    short: {
      answers: fitAnswers(one, job.units, open).map(({ asks, question, says }) => ({
        asks,
        question,
        says,
      })),
      wants: fitWants(one, open),
    },
    press: pressReport(one, job.units),
    insideAfter: {
      mean: orNull(after.mean),
      least: orNull(after.least),
      formula: orNull(after.formula),
      safe: orNull(after.safe),
    },
    slip: slipReport(one, job.units, open),
    round: roundReport(one.round, one.seated, job.units),
    running: runningReport(one.running, job.units),
  };
}
