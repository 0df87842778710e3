/**
 * How well the cylinders of the survey on the bench are known: asked of the worker while they are looked at. No React;
 * `useCylinders` is for views.
 */
import { create } from 'zustand';
import type { PlugGives } from '../evaluate/cylinderGives.ts';
import type { Job } from '../job/schema.ts';
import { askAside, asker } from './bridge.ts';

interface Of {
  readonly job: Job;
  readonly bore: string;
  readonly survey: string;
}

interface CylindersState {
  readonly of: Of | null;
  readonly shown: PlugGives | null;
}

export const useCylinders = create<CylindersState>()(() => ({ of: null, shown: null }));

/** The newest that was asked about; null: nothing is out. */
let asked: Of | null = null;

/** Sees to it that they are there for this survey, or on their way. */
export function wantCylinders(of: Of): void {
  if (same(asked ?? useCylinders.getState().of, of)) return;
  asked = of;
  askAside('cylinders', of.job, { bore: of.bore, survey: of.survey }, (shown) => {
    asked = null;
    useCylinders.setState({ of, shown });
  });
}

/** Those of that survey, though perhaps not of its newest readings; null: none are there. */
export function cylindersFor(
  { of, shown }: CylindersState,
  bore: { readonly id: string },
  survey: { readonly id: string },
): PlugGives | null {
  return of?.bore === bore.id && of.survey === survey.id ? shown : null;
}

function same(a: Of | null, b: Of): boolean {
  return a !== null && a.job === b.job && a.bore === b.bore && a.survey === b.survey;
}

asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
