/** The bore and survey on the bench, for views. */
import { useMemo } from 'react';
import { type Bench, benchOf } from './bench.ts';
import { useSession } from './session.ts';
import { useEvaluation } from './useEvaluation.ts';
import { useJob } from './useJob.ts';

export function useBench(): Bench | null {
  const job = useJob((state) => state.job);
  const evaluation = useEvaluation((state) => state.evaluation);
  const bore = useSession((session) => session.bore);
  const survey = useSession((session) => session.survey);
  return useMemo(
    () => (job === null ? null : benchOf(job, evaluation, { bore, survey })),
    [job, evaluation, bore, survey],
  );
}
