/** Whether a press fit is more than boss or bushing can bear, were the whole seat as tight as its tightest place. */
import type { PressPart } from '../evaluate/fit/press.ts';

/** `the boss`, `the bushing` or both; null where neither is loaded past its strength, or the loads are not known. */
export function beyond({ cases }: Pick<PressPart, 'cases'>): string | null {
  if (cases === null) return null;
  const { bossLoad, bushingLoad } = cases.greatest;
  const over = [
    ...(bossLoad.share >= 1 ? ['the boss'] : []),
    ...(bushingLoad.share >= 1 ? ['the bushing'] : []),
  ];
  return over.length === 0 ? null : over.join(' and ');
}

/** Said where figures follow from such a press fit. */
export const BOUND_ONLY =
  'counted as if nothing gave for good, so that it is the most that there can be';
