/** The two stages that are compared, in the order of the work, and what the drawing shows of them. */
import { useMemo } from 'react';
import type { SurveyEvaluation } from '../../evaluate.ts';
import { blended } from '../../figures/blend.ts';
import { drawnChange, notComparable, stageChange } from '../../figures/stageChange.ts';
import { useSession } from '../../store/session.ts';
import type { Worked } from '../plan/worked.ts';

export interface Pair {
  /** Indices of the bore's surveys, the earlier one first. */
  readonly at: readonly [number, number];
  readonly before: SurveyEvaluation;
  readonly after: SurveyEvaluation;
  /** True where the survey on the bench is the earlier one. */
  readonly fromHere: boolean;
  /** Why they cannot be laid over each other; null: they can. */
  readonly why: string | null;
}

/** Null where nothing is compared. */
export function usePair({ bore, survey, boreSeen, surveySeen }: Worked): Pair | null {
  const ghost = useSession((session) => session.ghost);
  return useMemo(() => {
    const here = bore.surveys.indexOf(survey);
    const other = ghost === null ? undefined : bore.surveys[ghost];
    const seen = boreSeen.surveys.find(({ id }) => id === other?.id);
    if (ghost === null || seen === undefined || ghost === here) return null;
    const fromHere = here < ghost;
    const [before, after] = fromHere ? [surveySeen, seen] : [seen, surveySeen];
    const at = fromHere ? ([here, ghost] as const) : ([ghost, here] as const);
    return { at, before, after, fromHere, why: notComparable(before, after) };
  }, [bore, survey, boreSeen, surveySeen, ghost]);
}

/** What the drawing shows while two stages are compared; null: the survey on the bench as it is. */
export function useDrawnPair(pair: Pair | null, { boreSeen }: Worked): SurveyEvaluation | null {
  const sweep = useSession((session) => session.sweep);
  const compared = useSession((session) => session.compared);
  const change = useMemo(
    () =>
      pair === null || pair.why !== null || compared !== 'change'
        ? null
        : drawnChange(stageChange(pair.before, pair.after)),
    [pair, compared],
  );
  const share = pair?.fromHere ? sweep : 1 - sweep;
  const blend = useMemo(
    () =>
      pair === null || pair.why !== null || compared !== 'sweep'
        ? null
        : blended(pair.before, pair.after, share, boreSeen.facts),
    [pair, compared, share, boreSeen.facts],
  );
  return change ?? blend;
}
