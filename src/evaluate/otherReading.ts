/** The same readings with another side taken as worn: worked out on demand, and kept out of the job. */
import { evaluate, type Memory, type SurveyEvaluation } from '../evaluate.ts';
import { setWornSide } from '../job/edits.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';

/** Which survey, by the ids of feature and survey, and the side: as typed, seen from face A; '' both alike. */
export interface OtherAsked {
  readonly bore: string;
  readonly survey: string;
  readonly wornSide: string;
}

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @param shop what is at hand there
 * @returns null where the job holds no such survey
 */
export function evaluateOther(
  job: Job,
  { bore, survey, wornSide }: OtherAsked,
  memory: Memory,
  shop: Shop | null = null,
): SurveyEvaluation | null {
  const other = evaluate(
    setWornSide(job, bore, survey, wornSide),
    new Map(memory),
    'settled',
    shop,
  );
  const found = other.bores.find(({ id }) => id === bore);
  return found?.surveys.find(({ id }) => id === survey) ?? null;
}
