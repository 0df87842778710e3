/** What the drawing shows: the survey, or the other reading of its numbers, and the way from one to the other. */
import type { SurveyEvaluation } from '../../evaluate.ts';
import { otherSides } from '../../figures/otherWords.ts';
import { leaveOther, showOther, useOther } from '../../store/other.ts';
import type { Worked } from '../plan/worked.ts';

/** The other reading of the same numbers, shown or not. */
export interface OtherSwitch {
  readonly shown: boolean;
  toggle(): void;
}

/** The switch is null where the numbers have no other reading. */
export function useOtherReading({ bore, survey, boreSeen, surveySeen }: Worked): {
  readonly drawn: SurveyEvaluation;
  readonly other: OtherSwitch | null;
} {
  const shown = useOther((state) => state.shown);
  const [side] = otherSides(surveySeen, survey.wornSide, boreSeen.facts.load);
  if (side === undefined) return { drawn: surveySeen, other: null };
  const asked = { bore: bore.id, survey: survey.id, wornSide: side.wornSide };
  const toggle = () => (shown === null ? showOther(asked) : leaveOther());
  return { drawn: shown ?? surveySeen, other: { shown: shown !== null, toggle } };
}
