/** Whether the bushings of one bore go in, hold, and let the pin turn: worked out on demand, from one survey. */
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type Clock, clockOf } from './fit/clock.ts';
import { type Heat, heatOf } from './fit/heat.ts';
import { intoOf, roundOf } from './fit/into.ts';
import { type MetalUsed, metalsOf } from './fit/material.ts';
import { type PressPart, pressPart } from './fit/press.ts';
import type { RoundPart } from './fit/round.ts';
import { type RunningPart, runningPart } from './fit/running.ts';
import type { FitMatter, Seated } from './fit/seated.ts';
import { type SideStack, sideStackOf } from './fit/sideStack.ts';
import { type OnePin, onePinOf } from './onePin.ts';
import { type SurveyOf, surveyOf } from './surveyOf.ts';

/** One bushing in its bore. */
export interface BushingFit {
  readonly seated: Seated;
  readonly press: PressPart;
  /** Temperatures that let it slip in. */
  readonly heat: Heat;
  /** Null where sizes are missing, or nothing opens enough. */
  readonly clock: Clock | null;
  readonly round: RoundPart;
  readonly running: RunningPart;
}

export interface FitFound {
  readonly bushings: readonly BushingFit[];
  /** All that the job may name: the usual metals, then its own. */
  readonly metals: readonly MetalUsed[];
  /** The room beside the boss, along the pin. */
  readonly side: SideStack;
}

export interface FitAnswer extends FitFound {
  /** All bores of the job together; null where there is but one. */
  readonly onePin: OnePin | null;
}

/** @returns null where the job holds no such survey, or it has no target or no seat */
export function fitAsked(
  job: Job,
  asked: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): FitAnswer | null {
  const found = surveyOf(job, asked, memory, shop);
  const fit = found && fitOfSurvey(job, found.of, found.one, shop, found.all.parts);
  return fit && { ...fit, onePin: onePinOf(job, found.all, shop) };
}

/** @param parts what else was measured in the job: the pin among it */
export function fitOfSurvey(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
  parts: readonly BoreEvaluation[] = [],
): FitFound | null {
  const into = intoOf(job, bore, survey, shop);
  if (into === null) return null;
  const { matter, seated } = into;
  return {
    bushings: seated.map((one) => bushingFit(matter, one, parts)),
    metals: metalsOf(job),
    side: sideStackOf(job, matter.feature, shop),
  };
}

function bushingFit(
  matter: FitMatter,
  seated: Seated,
  parts: readonly BoreEvaluation[],
): BushingFit {
  const round = roundOf(matter, seated);
  const press = pressPart(matter, seated, round.fit);
  const { job, feature } = matter;
  const running = runningPart({ job, feature, parts, seated, round });
  const heat = heatOf(matter, seated);
  return { seated, press, round, running, heat, clock: clockOf(heat, seated) };
}
