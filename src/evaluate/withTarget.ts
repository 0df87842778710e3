/** A survey that has a target, with what the ways of mending it go by. */
import type { Removal, Target, WearSurface } from '../bore/types.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import type { MendingFacts } from '../job/mendingFacts.ts';

export interface WithTarget {
  readonly bore: BoreEvaluation;
  readonly survey: SurveyEvaluation;
  readonly surface: WearSurface;
  readonly target: Target;
  readonly removal: Removal;
  readonly facts: MendingFacts;
  /** As `wallPlaces` gives them. */
  readonly places: Uint8Array;
}
