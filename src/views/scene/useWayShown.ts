/** The way of mending that is pointed at, and what the drawing shows of it. */
import type { SurveyEvaluation } from '../../evaluate.ts';
import { drawnWay } from '../../figures/wayDrawn.ts';
import { answerFor } from '../../store/aside.ts';
import { useWays } from '../../store/ways.ts';
import type { Worked } from '../plan/worked.ts';

/** Null while the bore is shown as it is. */
export function useWayShown(bench: Worked): SurveyEvaluation | null {
  const state = useWays();
  const found = answerFor(state, bench.bore, bench.survey);
  const outcome = found?.outcomes.find(({ name }) => name === state.pointed);
  return outcome === undefined ? null : drawnWay(bench.surveySeen, outcome);
}
