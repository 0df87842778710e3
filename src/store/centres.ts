/**
 * What each rule for the centre costs, of the survey on the bench: asked of the worker once the hand rests. The one that is
 * set by hand is read off what is evaluated anyway, so that it follows the hand. No React; `useCentres` is for views.
 */
import { create } from 'zustand';
import { centreCost } from '../evaluate/centreCost.ts';
import type { Centres } from '../evaluate/centres.ts';
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { chooseCentre } from '../job/edits.ts';
import type { Decisions, Feature, Job, Survey } from '../job/schema.ts';
import { askAside, asker } from './bridge.ts';
import { jobStore } from './job.ts';

/** What the costs are worked out of. */
interface Matter {
  readonly job: Job;
  readonly bore: Feature;
  readonly survey: Survey;
}

interface CentresState {
  readonly of: Matter | null;
  readonly found: Centres | null;
}

export const useCentres = create<CentresState>()(() => ({ of: null, found: null }));

/** The newest that was asked about; null: nothing is out. */
let asked: Matter | null = null;

/** Sees to it that the costs of this survey are there, or on their way. */
export function wantCentres({ job, bore, survey }: Matter): void {
  const now = asked ?? useCentres.getState().of;
  if (now?.job === job && now.survey === survey) return;
  const of = { job, bore, survey };
  asked = of;
  askAside('centres', job, { bore: bore.id, survey: survey.id }, (found) => {
    asked = null;
    useCentres.setState({ of, found });
  });
}

interface Seen extends Matter {
  readonly boreSeen: { readonly facts: BoreFacts };
  readonly surveySeen: SurveyEvaluation;
}

/**
 * The costs of that survey, though perhaps not of its newest readings; the one set by hand is of the newest where it is the
 * target. Null: not there yet, or there are none.
 */
export function centresNow({ of, found }: CentresState, seen: Seen): Centres | null {
  const { job, bore, survey } = seen;
  const its = of?.job.id === job.id && of.bore.id === bore.id && of.survey.id === survey.id;
  if (!its || found === null) return null;
  const { surface, target, removal, seating } = seen.surveySeen;
  if (target?.centreRule !== 'by-hand' || surface === null || removal === null || seating === null)
    return found;
  const hand = centreCost({ surface, target, removal, seating }, seen.boreSeen.facts, found);
  const others = found.costs.filter(({ rule }) => rule !== 'by-hand');
  return { ...found, chosen: 'by-hand', costs: [...others, hand] };
}

/** Chooses a rule for the bore on the bench; by hand begins where the centre stands now. One step to take back. */
export function takeCentre(seen: Seen, rule: NonNullable<Decisions['centre']>['rule']): void {
  const { axis } = seen.surveySeen.target ?? { axis: null };
  const length = seen.boreSeen.facts.length.mm;
  jobStore.getState().edit((job) => chooseCentre(job, seen.bore.id, rule, axis, length));
}

asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
