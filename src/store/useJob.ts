/** The bench, for views. */
import { useStore } from 'zustand';
import { type JobActions, type JobState, jobStore } from './job.ts';

export function useJob<T>(select: (state: JobState & JobActions) => T): T {
  return useStore(jobStore, select);
}
