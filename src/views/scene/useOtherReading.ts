/** What the drawing shows: the survey, or the other reading of its numbers, and the way from one to the other. */
import { useMemo } from 'react';
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
  const { load } = boreSeen.facts;
  const wornSide = useMemo(
    () => otherSides(surveySeen, survey.wornSide, load)[0]?.wornSide,
    [surveySeen, survey.wornSide, load],
  );
  const other = useMemo(() => {
    if (wornSide === undefined) return null;
    const asked = { bore: bore.id, survey: survey.id, wornSide };
    const toggle = () => (shown === null ? showOther(asked) : leaveOther());
    return { shown: shown !== null, toggle };
  }, [bore.id, survey.id, wornSide, shown]);
  return { drawn: other === null ? surveySeen : (shown ?? surveySeen), other };
}
