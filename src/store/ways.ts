/**
 * The ways of mending of the survey on the bench, asked of the worker once what is evaluated has settled; and the one that
 * is pointed at, whose outcome the drawing shows. No React; `useWays` is for views.
 */
import { create } from 'zustand';
import type { WaysEvaluation } from '../evaluate/ways.ts';
import { chooseWay, OWN_SIZE } from '../job/edits.ts';
import type { Decisions, Feature, Job, Survey } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { inUnits } from '../job/units.ts';
import { askAside, asker } from './bridge.ts';
import { jobStore } from './job.ts';
import { useSession } from './session.ts';
import { shopStore } from './shop.ts';

type WayName = WaysEvaluation['outcomes'][number]['name'];

/** What the ways are worked out of. */
interface Matter {
  readonly job: Job;
  readonly bore: Feature;
  readonly survey: Survey;
}

interface WaysState {
  readonly of: (Matter & { readonly shop: Shop | null }) | null;
  readonly found: WaysEvaluation | null;
  /** Whose outcome the drawing shows; null: the bore as it is. */
  readonly pointed: WayName | null;
}

export const useWays = create<WaysState>()(() => ({ of: null, found: null, pointed: null }));

/** Sees to it that the ways of this survey are there, or on their way. */
export function wantWays({ job, bore, survey }: Matter): void {
  const { shop } = shopStore.getState();
  const of = { job, bore, survey, shop };
  if (same(asked ?? useWays.getState().of, of)) return;
  asked = of;
  askAside('ways', job, { bore: bore.id, survey: survey.id }, (found) => {
    asked = null;
    useWays.setState({ of, found });
  });
}

/** The newest that was asked about; null: nothing is out. */
let asked: WaysState['of'] = null;

function same(a: WaysState['of'], b: WaysState['of']): boolean {
  return a?.job === b?.job && a?.survey === b?.survey && a?.shop === b?.shop;
}

/** The ways of that survey, though perhaps not of its newest readings; null: not there yet, or there are none. */
export function waysOf(
  { of, found }: WaysState,
  { job, bore, survey }: Matter,
): WaysEvaluation | null {
  const its = of?.job.id === job.id && of.bore.id === bore.id && of.survey.id === survey.id;
  return its ? found : null;
}

/** Chooses a way for the bore on the bench, and its own size as the target where it has one: one step to take back. */
export function takeWay(matter: Matter, way: NonNullable<Decisions['way']>): void {
  const { job, bore } = matter;
  const found = waysOf(useWays.getState(), matter)?.outcomes.find(({ name }) => name === way);
  const size =
    found !== undefined && OWN_SIZE.includes(way)
      ? { text: inUnits(found.target, job.units).toFixed(DECIMALS[job.units]), unit: job.units }
      : null;
  jobStore.getState().edit((now) => chooseWay(now, bore.id, way, size));
}

/** As a target is typed. */
const DECIMALS = { in: 4, mm: 3 } as const;

/** Shows the outcome of a way in the drawing; null: the bore as it is. */
export function pointAtWay(name: WayName | null): void {
  if (useWays.getState().pointed !== name) useWays.setState({ pointed: name });
}

useSession.subscribe((state, before) => {
  const other = state.bore !== before.bore || state.survey !== before.survey;
  if (other || state.ghost !== before.ghost) pointAtWay(null);
});
jobStore.subscribe((state, before) => {
  if (state.job?.id !== before.job?.id) pointAtWay(null);
});
asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
