/** The plan of the pin on the bench: asked of the worker while it is looked at. No React; `usePinPlan` is for views. */
import { create } from 'zustand';
import type { PinPlan } from '../evaluate/pinTypes.ts';
import type { Job } from '../job/schema.ts';
import { askAside, asker } from './bridge.ts';

interface Of {
  readonly job: Job;
  readonly bore: string;
  readonly survey: string;
}

interface PinPlanState {
  readonly of: Of | null;
  readonly shown: PinPlan | null;
}

export const usePinPlan = create<PinPlanState>()(() => ({ of: null, shown: null }));

/** The newest that was asked about; null: nothing is out. */
let asked: Of | null = null;

/** Sees to it that it is there for this survey, or on its way. */
export function wantPinPlan(of: Of): void {
  if (same(asked ?? usePinPlan.getState().of, of)) return;
  asked = of;
  askAside('pin', of.job, { bore: of.bore, survey: of.survey }, (shown) => {
    asked = null;
    usePinPlan.setState({ of, shown });
  });
}

function same(a: Of | null, b: Of): boolean {
  return a !== null && a.job === b.job && a.bore === b.bore && a.survey === b.survey;
}

asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
