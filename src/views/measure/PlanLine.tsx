/** Where an empty survey is worth reading, and the table laid out so with one tap. */
import { sayPlan } from '../../figures/planWords.ts';
import { layPlan, planOf } from '../../job/layPlan.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';

export function PlanLine({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const plan = planOf(job, bore, survey);
  const laid =
    JSON.stringify([plan.clocks, plan.depths]) ===
    JSON.stringify([survey.plan.clocks, survey.plan.depths]);
  if (survey.readings.length > 0) return null;
  return (
    <p className="facts">
      {sayPlan(plan, job, survey)}{' '}
      {!laid && plan.depths.length > 0 && (
        <button
          type="button"
          className="link-button"
          onClick={() => edit((now) => layPlan(now, bore.id, survey.id, plan))}
        >
          lay the table out so
        </button>
      )}
    </p>
  );
}
