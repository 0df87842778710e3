/** Whether the bushings of one bore go in, hold, and let the pin turn: worked out on demand, from one survey. */
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { seatOf } from '../job/facts.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { lengthMm } from '../job/units.ts';
import { type Clock, clockOf } from './fit/clock.ts';
import { fittedAfter, wallBefore } from './fit/fitted.ts';
import { type Heat, heatOf } from './fit/heat.ts';
import { intoOf, roundOf } from './fit/into.ts';
import { type MetalUsed, metalsOf } from './fit/material.ts';
import { type PressPart, pressPart } from './fit/press.ts';
import type { RoundPart } from './fit/round.ts';
import { type RunningMatter, type RunningPart, runningPart } from './fit/running.ts';
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
  /** What alone can be told of bushings that were read once in, where the bore behind them was not; else none. */
  readonly alone: readonly {
    readonly id: string;
    readonly name: string;
    readonly running: RunningPart;
  }[];
  /** All that the job may name: the usual metals, then its own. */
  readonly metals: readonly MetalUsed[];
  /** The room beside the boss, along the pin. */
  readonly side: SideStack;
}

export interface FitAnswer extends FitFound {
  /** All bores of the job together; null where there is but one. */
  readonly onePin: OnePin | null;
}

/** @returns null where the job holds no such survey, or it has no target or no seat, and no fitted bushing was read */
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
  const feature = job.features.find(({ id }) => id === bore.id);
  const wall = wallBefore(bore, survey);
  const into = wall && intoOf(job, bore, wall, shop);
  const fitted = fittedAfter(bore, survey);
  if (feature === undefined || (into === null && fitted === null)) return null;
  const runs = { job, feature, parts, fitted };
  return {
    bushings: into?.seated.map((one) => bushingFit(into.matter, one, runs)) ?? [],
    alone: into === null ? aloneOf(runs, bore) : [],
    metals: metalsOf(job),
    side: sideStackOf(job, feature, shop),
  };
}

type Runs = Pick<RunningMatter, 'job' | 'feature' | 'parts' | 'fitted'>;

function bushingFit(matter: FitMatter, seated: Seated, runs: Runs): BushingFit {
  const round = roundOf(matter, seated);
  const press = pressPart(matter, seated, round.fit);
  const running = runningPart({ ...runs, bushing: seated, worked: { seated, round } });
  const heat = heatOf(matter, seated);
  return { seated, press, round, running, heat, clock: clockOf(heat, seated) };
}

/** Bushings that were read once in, of a bore whose own wall nobody read before. */
function aloneOf(runs: Runs, { facts }: BoreEvaluation): FitFound['alone'] {
  const told = runs.feature.bushings.map((one) => ({
    id: one.id,
    name: one.name,
    inside: lengthMm(one.inside),
    seat: seatOf(one, facts.length.mm),
  }));
  const whole = { id: '', name: 'The bushing', inside: Number.NaN, seat: WHOLE };
  return (told.length > 0 ? told : [whole]).map(({ id, name, ...bushing }) => ({
    id,
    name,
    running: runningPart({ ...runs, bushing, worked: null }),
  }));
}

const WHOLE = { from: 0, to: Number.POSITIVE_INFINITY };
