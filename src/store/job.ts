/**
 * The job on the bench, with undo: a list of earlier job references is enough, as a job is never changed in
 * place. No React here; views use `useJob`.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Job } from '../job/schema.ts';

/** More steps back than anyone takes; keeps a long evening's typing from growing without end. */
export const STEPS_KEPT = 300;

export interface JobState {
  /** Null only until the device has been asked what was last on the bench. */
  readonly job: Job | null;
  /** Oldest first. */
  readonly earlier: readonly Job[];
  /** Nearest first. */
  readonly later: readonly Job[];
  /** Edits that carry the same mark, one after the other, are one step back (a slider being dragged). */
  readonly mark: string | null;
}

export interface JobActions {
  /** Puts a job on the bench; undo does not reach back into another job. */
  put(job: Job): void;
  /** Changes the job. An edit that returns the same reference is no edit and leaves no step. */
  edit(change: (job: Job) => Job, mark?: string): void;
  undo(): void;
  redo(): void;
}

export type JobStore = StoreApi<JobState & JobActions>;

export function createJobStore(): JobStore {
  return createStore<JobState & JobActions>()((set) => ({
    job: null,
    earlier: [],
    later: [],
    mark: null,
    put: (job) => set({ job, earlier: [], later: [], mark: null }),
    edit: (change, mark) => set((state) => edited(state, change, mark ?? null)),
    undo: () => set(undone),
    redo: () => set(redone),
  }));
}

function edited(
  state: JobState,
  change: (job: Job) => Job,
  mark: string | null,
): JobState | Partial<JobState> {
  if (state.job === null) return state;
  const job = change(state.job);
  if (job === state.job) return state;
  const sameStep = mark !== null && mark === state.mark;
  const earlier = sameStep ? state.earlier : [...state.earlier, state.job].slice(-STEPS_KEPT);
  return { job, earlier, later: [], mark };
}

function undone(state: JobState): JobState | Partial<JobState> {
  const back = state.earlier.at(-1);
  if (back === undefined || state.job === null) return state;
  return {
    job: back,
    earlier: state.earlier.slice(0, -1),
    later: [state.job, ...state.later],
    mark: null,
  };
}

function redone(state: JobState): JobState | Partial<JobState> {
  const [on, ...rest] = state.later;
  if (on === undefined || state.job === null) return state;
  return { job: on, earlier: [...state.earlier, state.job], later: rest, mark: null };
}

/** The one bench of this page. */
export const jobStore = createJobStore();
