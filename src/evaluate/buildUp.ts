/** Squeezing, shimming and welding one bore, and washers on its rims: worked out on demand, from one survey. */
import { springShares, upsetShares } from '../assembly/learned.ts';
import { type Rim, rimOf } from '../assembly/rim.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import type { MendingFacts } from '../job/mendingFacts.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type Aimed, aimedAt } from './aimed.ts';
import { type HeatDone, heatDone } from './heatDone.ts';
import { type Shims, shimsOf } from './shims.ts';
import { type Squeeze, squeezeOf } from './squeeze.ts';
import { type SurveyOf, surveyOf } from './surveyOf.ts';
import { type Weld, weldOf } from './weld.ts';

export interface BuildUp {
  readonly facts: MendingFacts;
  /** Null where no place is so large that a squeeze is worth a heat. */
  readonly squeeze: Squeeze | null;
  /** What the squeeze before this survey brought, or the one after it; null where none was worth a heat. */
  readonly heat: HeatDone | null;
  /** How many logged squeezes tell of springback, and of how far the mean draws in. */
  readonly learned: { readonly springs: number; readonly upset: number };
  /** Null where nothing is over the target. */
  readonly shims: Shims | null;
  readonly weld: Weld;
  readonly rims: readonly { readonly face: 'A' | 'B'; readonly rim: Rim }[];
}

/** @returns null where the job holds no such survey, or it has no target */
export function buildUpOf(
  job: Job,
  asked: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): BuildUp | null {
  const found = surveyOf(job, asked, memory, shop);
  return found && buildUpOfSurvey(job, found.of, found.one, shop);
}

export function buildUpOfSurvey(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): BuildUp | null {
  const worked = aimedAt(job, bore, survey, shop);
  if (worked === null) return null;
  const { facts } = worked;
  const squeeze = squeezeOf(worked);
  return {
    facts,
    squeeze,
    heat: heatOf(job, worked, squeeze, shop),
    learned: {
      springs: springShares(facts.squeeze.log).length,
      upset: upsetShares(facts.squeeze.log).length,
    },
    shims: shimsOf(worked),
    weld: weldOf(worked),
    rims: facts.rims.flatMap(({ face, readings, standOut }) => {
      const rim = rimOf(readings, facts.washers, standOut);
      return rim === null ? [] : [{ face, rim }];
    }),
  };
}

/** A survey after squeezing tells of the squeeze before it; any other of the one that follows, where it was measured. */
function heatOf(
  job: Job,
  worked: Aimed,
  squeeze: Squeeze | null,
  shop: Shop | null,
): HeatDone | null {
  const { bore, survey, feature } = worked;
  const at = bore.surveys.findIndex(({ id }) => id === survey.id);
  const isAfter = (place: number) =>
    feature.surveys.find(({ id }) => id === bore.surveys[place]?.id)?.stage === 'after-squeezing';
  const measured = (place: number) => {
    const { name, surface } = bore.surveys[place]!;
    return surface && { name, surface };
  };
  if (isAfter(at) && at > 0) {
    const before = aimedAt(job, bore, bore.surveys[at - 1]!, shop);
    const planned = before && squeezeOf(before);
    return before && planned && heatDone(before, planned, measured(at));
  }
  return squeeze && heatDone(worked, squeeze, isAfter(at + 1) ? measured(at + 1) : null);
}
