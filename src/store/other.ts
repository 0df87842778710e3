/**
 * The other reading of the same numbers, looked at and left alone: asked of the worker, shown in the drawing in place
 * of the survey until one goes back, turns to another survey or changes the job. No React; `useOther` is for views.
 */
import { create } from 'zustand';
import type { OtherAsked } from '../evaluate/otherReading.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import { askAside, asker } from './bridge.ts';
import { jobStore } from './job.ts';
import { useSession } from './session.ts';

export interface OtherState {
  readonly asked: OtherAsked | null;
  /** Null until it has been worked out. */
  readonly shown: SurveyEvaluation | null;
}

export const useOther = create<OtherState>()(() => ({ asked: null, shown: null }));

/** Back to what the plan uses. */
export function leaveOther(): void {
  if (useOther.getState().asked !== null) useOther.setState({ asked: null, shown: null });
}

export function showOther(asked: OtherAsked): void {
  const { job } = jobStore.getState();
  if (job === null) return;
  // What is shown stays until the new one is there.
  useOther.setState({ asked });
  askAside('other', job, asked, (shown) => {
    if (useOther.getState().asked !== asked) return;
    if (shown === null) leaveOther();
    else useOther.setState({ shown: unsaid(shown) });
  });
}

/** Nobody said that side: the band over the drawing says what is taken. */
function unsaid(survey: SurveyEvaluation): SurveyEvaluation {
  return { ...survey, target: survey.target && { ...survey.target, assumed: null } };
}

jobStore.subscribe((state, before) => {
  if (state.job !== before.job) leaveOther();
});
useSession.subscribe((state, before) => {
  if (state.bore !== before.bore || state.survey !== before.survey) leaveOther();
});
asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) leaveOther();
});
