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

/** What is typed alone, without what it comes to. */
export function useTypedBench(): Bench | null {
  return useSeen({ ...useMatter(), evaluation: null });
}

/** What is typed is there at once; what it comes to is worked in between key presses. */
export function useBench(): Bench | null {
  const now = useNow();
  const { evaluation } = useDeferredValue(now);
  return useSeen({ ...now, evaluation });
}

/**
 * The same, for what takes long to draw: a typed reading as well as what it comes to waits for its turn between key presses,
 * so that the hand that types is never held up. Whatever else is edited is there at once.
 */
export function useUnhurriedBench(): Bench | null {
  const now = useNow();
  const later = useDeferredValue(now);
  const typed = readingTyped(seenOf(later), seenOf(now));
  return useSeen(typed ? later : { ...now, evaluation: later.evaluation });
}

/** The same bench as long as what it shows is the same: an answer that waits for its turn changes nothing yet. */
function useSeen({ job, evaluation, place }: Seen): Bench | null {
  return useMemo(() => seenOf({ job, evaluation, place }), [job, evaluation, place]);
}

function useNow(): Seen {
  const { job, place } = useMatter();
  const evaluation = useEvaluation((state) => state.evaluation);
  return useMemo(() => ({ job, evaluation, place }), [job, evaluation, place]);
}

function useMatter(): Pick<Seen, 'job' | 'place'> {
  const job = useJob((state) => state.job);
  const bore = useSession((session) => session.bore);
  const survey = useSession((session) => session.survey);
  const place = useMemo(() => ({ bore, survey }), [bore, survey]);
  return { job, place };
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
