/**
 * The ways of mending of the survey on the bench, asked of the worker once what is evaluated has settled; and the one that
 * is pointed at, whose outcome the drawing shows. No React; `useWays` is for views.
 */
import type { WaysEvaluation } from '../evaluate/ways.ts';
import { chooseWay, OWN_SIZE } from '../job/edits.ts';
import type { Decisions } from '../job/schema.ts';
import { inUnits } from '../job/units.ts';
import { answerFor, asideStore, type Matter } from './aside.ts';
import { jobStore } from './job.ts';
import { useSession } from './session.ts';

type WayName = WaysEvaluation['outcomes'][number]['name'];

export const { use: useWays, want: wantWays } = asideStore('ways', {
  /** Whose outcome the drawing shows; null: the bore as it is. */
  more: { pointed: null as WayName | null },
  byShop: true,
});

/** Chooses a way for the bore on the bench, and its own size as the target where it has one: one step to take back. */
export function takeWay(matter: Matter, way: NonNullable<Decisions['way']>): void {
  const { job, bore } = matter;
  const found = answerFor(useWays.getState(), bore, matter.survey)?.outcomes.find(
    ({ name }) => name === way,
  );
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
