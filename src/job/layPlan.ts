/** The places worth reading with the survey's gauge, and laying the table out so. */

import { changeSurvey } from './change.ts';
import { gaugeFigures } from './gauges.ts';
import { measuredAt } from './measuredAt.ts';
import { type ReadingPlan, readingPlan } from './plan.ts';
import type { Feature, Job, Survey } from './schema.ts';
import { gaugeOf, nominalMm } from './sizes.ts';
import { lengthMm } from './units.ts';

export function planOf(job: Job, feature: Feature, survey: Survey): ReadingPlan {
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  const sizes = {
    length: lengthMm(feature.length),
    diameter: nominalMm(measuredAt(feature, survey)),
    reach: gauge === undefined ? Number.POSITIVE_INFINITY : gaugeFigures(gauge).reach.mm,
  };
  return readingPlan(gauge?.kind ?? 'two-point', sizes, job.units);
}

/** The table offers these places and no others; readings that are there keep theirs. */
export function layPlan(job: Job, featureId: string, surveyId: string, plan: ReadingPlan): Job {
  return changeSurvey(job, featureId, surveyId, (survey) => ({
    ...survey,
    plan: { ...survey.plan, clocks: [...plan.clocks], depths: [...plan.depths] },
  }));
}
