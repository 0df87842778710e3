/** Why where the bushing presses cannot be shown, in one sentence; null: it can. */
import { pressedWhy } from '../../figures/pressedWhy.ts';
import type { Units } from '../../figures/steps.ts';
import { useFitOf } from '../../store/useFitOf.ts';
import { useJob } from '../../store/useJob.ts';
import type { Shows } from './useShown.ts';

interface Of extends Pick<Shows, 'bore' | 'survey'> {
  readonly units: Units;
}

export function useWhyNotPressed({ bore, survey, units }: Of): string | null {
  const job = useJob((state) => state.job?.id);
  const answer = useFitOf({ job, bore: bore.id, survey: survey.id });
  return pressedWhy({ survey, itself: bore.surveys.includes(survey) }, answer, units);
}
