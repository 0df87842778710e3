/** The bore and survey on the bench, for views. */
import { useMemo } from 'react';
import type { Evaluation } from '../evaluate.ts';
import { type Bench, benchOf } from './bench.ts';
import { useSession } from './session.ts';
import { useEvaluation, useUnhurriedEvaluation } from './useEvaluation.ts';
import { useJob } from './useJob.ts';

export function useBench(): Bench | null {
  return useBenchWith(useEvaluation((state) => state.evaluation));
}

/**
 * The same, for what takes long to draw: a new answer is worked in between key presses, so that it never holds up the
 * hand that types. What is typed itself is there at once.
 */
export function useUnhurriedBench(): Bench | null {
  return useBenchWith(useUnhurriedEvaluation((state) => state.evaluation));
}

function useBenchWith(evaluation: Evaluation | null): Bench | null {
  const job = useJob((state) => state.job);
  const bore = useSession((session) => session.bore);
  const survey = useSession((session) => session.survey);
  return useMemo(
    () => (job === null ? null : benchOf(job, evaluation, { bore, survey })),
    [job, evaluation, bore, survey],
  );
}
