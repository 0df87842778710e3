/** The fit of the survey on the bench: asked of the worker while it is looked at. No React; `useFit` is for views. */
import { create } from 'zustand';
import type { FitAnswer } from '../evaluate/fit.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { askAside, asker } from './bridge.ts';
import { shopStore } from './shop.ts';

interface Of {
  readonly job: Job;
  readonly bore: string;
  readonly survey: string;
}

interface Matter extends Of {
  readonly shop: Shop | null;
}

interface FitState {
  readonly of: Matter | null;
  readonly shown: FitAnswer | null;
}

export const useFit = create<FitState>()(() => ({ of: null, shown: null }));

/** The newest that was asked about; null: nothing is out. */
let asked: Matter | null = null;

/** Sees to it that it is there for this survey, or on its way. */
export function wantFit(of: Of): void {
  const matter = { ...of, shop: shopStore.getState().shop };
  const { of: shown } = useFit.getState();
  if (same(asked, matter) || (asked === null && same(shown, matter))) return;
  asked = matter;
  const { job, bore, survey } = matter;
  askAside('fit', job, { bore, survey }, (found) => {
    asked = null;
    useFit.setState({ of: matter, shown: found });
  });
}

function same(a: Matter | null, b: Matter): boolean {
  return (
    a !== null && a.job === b.job && a.bore === b.bore && a.survey === b.survey && a.shop === b.shop
  );
}

asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
