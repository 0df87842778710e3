/** A bore, pin or bushing with an empty survey, ready to be measured with a gauge that gets at it. */
import { done, type Tried } from './change.ts';
import { addGauge } from './edits.ts';
import { addFeature, setDimension } from './featureEdits.ts';
import { kindOfGauge } from './gauges.ts';
import type { Feature, Job } from './schema.ts';
import { addSurvey, setPlanGauge } from './surveyEdits.ts';

/** At the end of the job's list; a bushing is as long as the first bore's bushing, where that is given. */
export function addMeasured(job: Job, kind: Feature['kind'], name?: string): Tried {
  const added = addFeature(job, kind, name);
  const fresh = added.ok ? added.job.features.at(-1) : undefined;
  if (!added.ok || fresh === undefined) return added;
  const sized = withLength(added.job, fresh);
  const measured = addSurvey(sized, fresh.id, 'as-found');
  if (kind !== 'pin' && kind !== 'bushing-outside') return done(measured);
  const has = measured.gauges.some((one) => kindOfGauge(one).type === 'outside-micrometer');
  const equipped = has ? measured : addGauge(measured, 'outside-micrometer');
  const gauge = equipped.gauges.find((one) => kindOfGauge(one).type === 'outside-micrometer')!;
  const survey = equipped.features.at(-1)!.surveys[0]!;
  return done(setPlanGauge(equipped, fresh.id, survey.id, gauge.id));
}

function withLength(job: Job, { id, kind }: Feature): Job {
  if (kind === 'bore' || kind === 'pin') return job;
  const like = job.features.find((one) => one.kind === 'bore');
  return setDimension(job, id, 'length', like?.bushings[0]?.length ?? like?.length);
}
