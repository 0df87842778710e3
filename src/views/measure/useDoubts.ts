/** Readings in doubt that still stand as they were judged, and the newest of them. */
import { type Doubt, sayDoubts } from '../../figures/checkWords.ts';
import type { Job, Survey } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';

/** While a newer answer is on its way, what was typed over or taken out since is not offered any more. */
export function useDoubts(bench: Bench): Doubt[] {
  const judged = useEvaluation(({ of }) => (of === null ? undefined : surveyIn(of, bench)));
  if (bench.surveySeen === null) return [];
  return sayDoubts(bench.surveySeen, bench.job.units).filter(({ rows }) =>
    rows.every((row) => sameReading(judged, bench.survey, row)),
  );
}

function surveyIn(job: Job, { bore, survey }: Bench): Survey | undefined {
  const feature = job.features.find(({ id }) => id === bore.id);
  return feature?.surveys.find(({ id }) => id === survey.id);
}

function sameReading(judged: Survey | undefined, now: Survey, row: number): boolean {
  const [before, after] = [judged?.readings[row], now.readings[row]];
  return (
    before !== undefined &&
    before.id === after?.id &&
    before.value.text === after.value.text &&
    before.leftOut === after.leftOut
  );
}

/** The one whose reading was entered last; null where there is none. */
export function newestDoubt(doubts: readonly Doubt[]): Doubt | null {
  return doubts.reduce<Doubt | null>(
    (last, one) => (last === null || Math.max(...one.rows) > Math.max(...last.rows) ? one : last),
    null,
  );
}
