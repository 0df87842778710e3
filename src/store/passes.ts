/**
 * The passes of the survey on the bench: asked of the worker while they are looked at, and again when the job or the shop
 * has changed. No React; `usePasses` is for views.
 */
import { create } from 'zustand';
import type { Passes } from '../evaluate/passes.ts';
import type { Feature, Job, Survey } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { askAside, asker } from './bridge.ts';
import { useSession } from './session.ts';

/** What passes are worked out of. */
interface Matter {
  readonly job: Job;
  readonly bore: Feature;
  readonly survey: Survey;
  readonly shop: Shop | null;
}

interface PassesState {
  readonly of: Matter | null;
  readonly shown: Passes | null;
  /** The pass that is looked at, from 0. */
  readonly pass: number;
}

export const usePasses = create<PassesState>()(() => ({ of: null, shown: null, pass: 0 }));

/** The newest that was asked about; null: nothing is out. */
let asked: Matter | null = null;

/** Sees to it that the passes of this survey are there, or on their way. */
export function wantPasses(matter: Matter): void {
  if (same(asked ?? usePasses.getState().of, matter)) return;
  asked = matter;
  const { job, bore, survey } = matter;
  askAside('passes', job, { bore: bore.id, survey: survey.id }, (shown) => {
    asked = null;
    usePasses.setState({ of: matter, shown });
  });
}

/** The passes of that survey, though perhaps not of its newest readings; null: none are there. */
export function passesFor(
  { of, shown }: PassesState,
  bore: { readonly id: string },
  survey: { readonly id: string },
): Passes | null {
  return of !== null && of.bore.id === bore.id && of.survey.id === survey.id ? shown : null;
}

/** Shows one pass in the drawing too. */
export function lookAtPass(pass: number): void {
  usePasses.setState({ pass });
  const { overlays, look } = useSession.getState();
  look({ overlays: { ...overlays, 'first-pass': true, 'metal-off': false } });
}

function same(a: Matter | null, b: Matter): boolean {
  return a !== null && a.job === b.job && a.survey === b.survey && a.shop === b.shop;
}

useSession.subscribe((state, before) => {
  if (state.bore !== before.bore || state.survey !== before.survey) usePasses.setState({ pass: 0 });
});
asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
