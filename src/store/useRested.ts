/** What is heavy to draw and to work out follows a handle once the hand that moves it rests. */
import { startTransition, useEffect, useState } from 'react';
import { useJob } from './useJob.ts';

/** A hand that has not moved for so long rests, ms. */
const REST_MS = 250;

/** `now`; while the job is being changed by a handle (edits with a mark), what it was when that last rested. */
export function useRested<T>(now: T): T {
  const handled = useJob((state) => state.mark !== null);
  const [rested, setRested] = useState(now);
  if (!handled && rested !== now) setRested(now);
  useEffect(() => {
    if (!handled) return;
    const timer = setTimeout(() => startTransition(() => setRested(now)), REST_MS);
    return () => clearTimeout(timer);
  }, [handled, now]);
  return handled ? rested : now;
}
