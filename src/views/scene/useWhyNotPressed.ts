/** Why where the bushing presses cannot be shown, in one sentence; null: it can. */
import { pressedWhy } from '../../figures/pressedWhy.ts';
import { useFitOf } from '../../store/useFitOf.ts';
import { useJob } from '../../store/useJob.ts';
import type { LaidOf } from './LaidOver.tsx';

export function useWhyNotPressed({ bore, survey, units }: LaidOf): string | null {
  const job = useJob((state) => state.job?.id);
  const answer = useFitOf({ job, bore: bore.id, survey: survey.id });
  return pressedWhy({ survey, itself: bore.surveys.includes(survey) }, answer, units);
}
