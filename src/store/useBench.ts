/** The bore and survey on the bench, for views. */
import { useDeferredValue, useMemo } from 'react';
import type { Evaluation } from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import { type Bench, benchOf } from './bench.ts';
import { useSession } from './session.ts';
import { useEvaluation } from './useEvaluation.ts';
import { useJob } from './useJob.ts';

interface Seen {
  readonly job: Job | null;
  readonly evaluation: Evaluation | null;
  readonly place: { readonly bore: number; readonly survey: number };
}

/** What is typed is there at once; what it comes to is worked in between key presses. */
export function useBench(): Bench | null {
  const now = useNow();
  const { evaluation } = useDeferredValue(now);
  return useMemo(() => seenOf({ ...now, evaluation }), [now, evaluation]);
}

/**
 * The same, for what takes long to draw: a typed reading as well as what it comes to waits for its turn between key presses,
 * so that the hand that types is never held up. Whatever else is edited is there at once.
 */
export function useUnhurriedBench(): Bench | null {
  const now = useNow();
  const later = useDeferredValue(now);
  const typed = readingTyped(seenOf(later), seenOf(now));
  const shown = useMemo(
    () => (now === later || typed ? later : { ...now, evaluation: later.evaluation }),
    [now, later, typed],
  );
  return useMemo(() => seenOf(shown), [shown]);
}

function useNow(): Seen {
  const job = useJob((state) => state.job);
  const evaluation = useEvaluation((state) => state.evaluation);
  const bore = useSession((session) => session.bore);
  const survey = useSession((session) => session.survey);
  return useMemo(
    () => ({ job, evaluation, place: { bore, survey } }),
    [job, evaluation, bore, survey],
  );
}

function seenOf({ job, evaluation, place }: Seen): Bench | null {
  return job === null ? null : benchOf(job, evaluation, place);
}

/** Edits leave what they do not change as it is, so that the list itself tells. */
function readingTyped(before: Bench | null, after: Bench | null): boolean {
  return (
    before?.survey.id === after?.survey.id && before?.survey.readings !== after?.survey.readings
  );
}
