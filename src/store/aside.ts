/**
 * What is worked out of one survey beside the evaluation: asked of the worker while it is looked at, and again only once
 * something that it is worked out of has changed. One store a kind, all by one rule. No React; what is returned as `use`
 * is for views.
 */
import { create, type StoreApi, type UseBoundStore } from 'zustand';
import type { Feature, Job, Survey } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { askAside, asker } from './bridge.ts';
import type { Asides } from './evaluation.ts';
import { jobStore } from './job.ts';
import { shopStore } from './shop.ts';

/** Answered of one survey that is told by its ids; the other reading of it is asked for by name. */
type Kind = Exclude<keyof Asides, 'other'>;

export interface Matter {
  readonly job: Job;
  readonly bore: Feature;
  readonly survey: Survey;
}

type Answer<K extends Kind> = NonNullable<Asides[K]['answer']>;

interface Asked extends Matter {
  readonly shop: Shop | null;
}

export interface AsideState<T> {
  /** What `shown` was worked out of; null: nothing is there yet. */
  readonly of: Asked | null;
  /** Null: it could not be worked out, or is not there yet. */
  readonly shown: T | null;
}

interface Given<T, More> {
  /** What the store holds besides, at first. */
  readonly more: More;
  /** True where what is in the shop has a part in it. */
  readonly byShop: boolean;
  /** True where an answer to `was` stands for `now` as well; else only the very same does. */
  stands?(was: Matter, now: Matter, shown: T | null): boolean;
}

export interface AsideStore<T, More> {
  readonly use: UseBoundStore<StoreApi<AsideState<T> & More>>;
  /** Sees to it that the answer for this survey is there, or on its way. */
  want(of: Matter): void;
}

export function asideStore<K extends Kind, More extends object>(
  kind: K,
  { more, byShop, stands = isVerySame }: Given<Answer<K>, More>,
): AsideStore<Answer<K>, More> {
  type State = AsideState<Answer<K>> & More;
  const use = create<State>()(() => ({ of: null, shown: null, ...more }) as State);
  const put = (state: AsideState<Answer<K>>) => use.setState(state as Partial<State>);
  /** The newest that was asked about; null: nothing is out. */
  let asked: Asked | null = null;
  const answers = (was: Asked | null, now: Asked, shown: Answer<K> | null) =>
    was !== null && (!byShop || was.shop === now.shop) && stands(was, now, shown);

  asker.store.subscribe((state, before) => {
    // A worker that broke answers nothing more.
    if (state.failed !== null && before.failed === null) asked = null;
  });
  jobStore.subscribe((state, before) => {
    if (state.job?.id === before.job?.id) return;
    // Features of two jobs may have the same ids.
    asked = null;
    put({ of: null, shown: null });
  });
  return {
    use,
    want(matter) {
      const { job, bore, survey } = matter;
      const now = { job, bore, survey, shop: shopStore.getState().shop };
      const { of, shown }: AsideState<Answer<K>> = use.getState();
      if (asked !== null ? answers(asked, now, null) : answers(of, now, shown)) return;
      asked = now;
      askAside(kind, job, { bore: bore.id, survey: survey.id }, (answer) => {
        if (asked !== now) return;
        asked = null;
        put({ of: now, shown: answer });
      });
    },
  };
}

function isVerySame(was: Matter, now: Matter): boolean {
  return was.job === now.job && was.bore.id === now.bore.id && was.survey.id === now.survey.id;
}

/** The answer for that survey, though perhaps not for its newest readings; null: none is there. */
export function answerFor<T>(
  { of, shown }: AsideState<T>,
  bore: { readonly id: string },
  survey: { readonly id: string },
): T | null {
  return of?.bore.id === bore.id && of.survey.id === survey.id ? shown : null;
}
