/**
 * What each rule for the centre costs, of the survey on the bench: asked of the worker once the hand rests. The one that is
 * set by hand is read off what is evaluated anyway, so that it follows the hand. No React; `useCentres` is for views.
 */
import { centreCost } from '../evaluate/centreCost.ts';
import type { Centres } from '../evaluate/centres.ts';
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { chooseCentre, setHand } from '../job/edits.ts';
import type { Decisions, Typed } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';
import { type AsideState, answerFor, asideStore, type Matter } from './aside.ts';
import { jobStore } from './job.ts';

export const { use: useCentres, want: wantCentres } = asideStore('centres', {
  more: {},
  byShop: false,
});

interface Seen extends Matter {
  readonly boreSeen: { readonly facts: BoreFacts };
  readonly surveySeen: SurveyEvaluation;
}

/**
 * The costs of that survey, though perhaps not of its newest readings; the one set by hand is of the newest where it is the
 * target. Null: not there yet, or there are none.
 */
export function centresNow(state: AsideState<Centres>, seen: Seen): Centres | null {
  const found = answerFor(state, seen.bore, seen.survey);
  if (found === null) return null;
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

/** The target's centre as the job has it, where it is set by hand; mm, x to 3 o'clock and y to 12. */
export interface ByHandAt {
  readonly bore: string;
  /** At face A, as they are set. */
  readonly x: number;
  readonly y: number;
  /** How far it is ahead of the target that was worked out last. */
  readonly aheadX: number;
  readonly aheadY: number;
}

/** @returns null where the centre is not set by hand, or the target that was worked out is not yet of that rule */
export function handAt(
  bore: string,
  centre: Decisions['centre'],
  { target }: SurveyEvaluation,
): ByHandAt | null {
  if (centre?.rule !== 'by-hand' || target?.centreRule !== 'by-hand') return null;
  const mm = (typed: Typed | undefined) => lengthMm(typed) || 0;
  const [x, y] = [mm(centre.x), mm(centre.y)];
  return { bore, x, y, aheadX: x - target.axis.x, aheadY: y - target.axis.y };
}

/** Moves the centre by hand to a place at face A, its lean staying: one step to take back, however many moves. */
export function moveHand(bore: string, x: number, y: number): void {
  jobStore.getState().edit((job) => setHand(job, bore, { x, y }), 'centre cross');
}
