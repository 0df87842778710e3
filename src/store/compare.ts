/** Two stages of a bore compared in the drawing: begun from the bar of stages, and left by many ways. No React. */
import { jobStore } from './job.ts';
import { leaveOther, useOther } from './other.ts';
import { useSession } from './session.ts';

/** @param index of the other survey, among those of the bore on the bench */
export function compareWith(index: number): void {
  leaveOther();
  useSession.getState().look({ ghost: index, sweep: 0, compared: 'sweep' });
}

export function leaveCompare(): void {
  if (useSession.getState().ghost !== null) {
    useSession.getState().look({ ghost: null, sweep: 0, compared: 'sweep' });
  }
}

/** Another stage to the front; the two that are compared change places where it is the other one. */
export function showStage(index: number): void {
  const { survey, ghost, look } = useSession.getState();
  if (ghost === index) look({ survey: index, ghost: survey, sweep: 0, draft: null });
  else look({ survey: index, sweep: 0, draft: null });
}

useSession.subscribe((state, before) => {
  if (state.bore !== before.bore) leaveCompare();
});
useOther.subscribe(({ asked }) => {
  if (asked !== null) leaveCompare();
});
jobStore.subscribe((state, before) => {
  // Stages are counted: one more or one less, and the count may mean another.
  if (before.job === null || state.job === before.job) return;
  const stages = (job: typeof state.job) =>
    job?.features.map(({ id, surveys }) => [id, surveys.map((one) => one.id)]);
  if (JSON.stringify(stages(state.job)) !== JSON.stringify(stages(before.job))) leaveCompare();
});
