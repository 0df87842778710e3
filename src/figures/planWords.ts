/** A reading plan in sentences. */
import type { ReadingPlan } from '../job/plan.ts';
import type { Job, Survey } from '../job/schema.ts';
import { gaugeOf } from '../job/sizes.ts';

export function sayPlan(plan: ReadingPlan, job: Job, survey: Survey): string {
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  const pairs = gauge?.kind === 'two-point' ? 'clock pairs' : 'clock positions';
  const where =
    plan.depths.length === 0
      ? 'Give the length of the bore, and the depths worth reading follow'
      : `Worth reading: ${plan.clocks.length} ${pairs} at ${plan.depths.map(({ text }) => text).join(', ')} ${job.units} ` +
        `deep${plan.depths.length > 3 ? ', closer near the faces, where bores wear fastest' : ''}`;
  const short = plan.short
    ? ' This gauge does not get to the bottom: read the rest from the other face or with one that does.'
    : '';
  const more =
    gauge?.kind === 'two-point' || gauge?.kind === 'three-leg'
      ? ' A dial indicator swept round at rim, middle and bottom tells more than further clock positions.'
      : ' One diameter at any depth gives the size.';
  return `${where}; the first place again at the end.${short}${gauge?.kind === 'radius' ? '' : more}`;
}
