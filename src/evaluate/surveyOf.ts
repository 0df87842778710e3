/** One survey of a job as it was worked out, for what is asked about it alone. */
import {
  type BoreEvaluation,
  type Evaluation,
  evaluate,
  type Memory,
  type SurveyEvaluation,
} from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';

/** Of which survey, by the ids of feature and survey. */
export interface SurveyOf {
  readonly bore: string;
  readonly survey: string;
}

/**
 * @param memory what was worked out of the job; it is read and left as it is
 * @returns null where the job holds no such survey
 */
export function surveyOf(
  job: Job,
  { bore, survey }: SurveyOf,
  memory: Memory,
  shop: Shop | null,
): {
  readonly of: BoreEvaluation;
  readonly one: SurveyEvaluation;
  /** What the whole job comes to beside it. */
  readonly all: Evaluation;
} | null {
  const all = evaluate(job, new Map(memory), 'quick', shop);
  const { bores } = all;
  const of = bores.find(({ id }) => id === bore);
  const one = of?.surveys.find(({ id }) => id === survey);
  return of === undefined || one === undefined ? null : { of, one, all };
}
