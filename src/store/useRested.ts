/** What is heavy to draw and to work out follows a handle once the hand that moves it rests. */
import { startTransition, useEffect, useState } from 'react';
import { jobStore } from './job.ts';
import { useJob } from './useJob.ts';

/** A hand that has not moved for so long rests, ms. */
const REST_MS = 250;
/** On a slow machine its moves come late: it rests once it has been still for twice as long as between the last two, but after so long at the latest, ms. */
const LATEST_MS = 1000;

let moved = Number.NEGATIVE_INFINITY;
let between = 0;

jobStore.subscribe((now, before) => {
  if (now.job === before.job) return;
  const at = performance.now();
  between = now.mark !== null && now.mark === before.mark ? at - moved : 0;
  moved = at;
});

const restMs = () => Math.max(REST_MS, Math.min(LATEST_MS, 2 * between));

/** `now`; while the job is being changed by a handle (edits with a mark), what it was when that last rested. */
export function useRested<T>(now: T): T {
  const handled = useJob((state) => state.mark !== null);
  const [rested, setRested] = useState(now);
  if (!handled && rested !== now) setRested(now);
  useEffect(() => {
    if (!handled) return;
    const timer = setTimeout(() => startTransition(() => setRested(now)), restMs());
    return () => clearTimeout(timer);
  }, [handled, now]);
  return handled ? rested : now;
}
