/** A bore, pin or bushing with an empty survey, ready to be measured with a gauge that gets at it. */
import { done, type Tried } from './change.ts';
import { addGauge } from './edits.ts';
import { addFeature, setDimension } from './featureEdits.ts';
import { kindOfGauge } from './gauges.ts';
import type { Feature, Gauge, Job } from './schema.ts';
import { addSurvey, setPlanGauge } from './surveyEdits.ts';

/**
 * At the end of the job's list. A gauge zeroed for the bore is no good for a smaller hole, so an old bushing's is read with a
 * telescoping gauge until another is chosen. A bushing is as long as the first bore's bushing, where that is given.
 */
export function addMeasured(job: Job, kind: Feature['kind'], name?: string): Tried {
  const added = addFeature(job, kind, name);
  const fresh = added.ok ? added.job.features.at(-1) : undefined;
  if (!added.ok || fresh === undefined) return added;
  const measured = addSurvey(withLength(added.job, fresh), fresh.id, 'as-found');
  if (kind === 'bore') return done(measured);
  const type = kind === 'bushing-inside' ? 'telescoping' : 'outside-micrometer';
  const fits = (one: Gauge) => kindOfGauge(one).type === type;
  const equipped = measured.gauges.some(fits) ? measured : addGauge(measured, type);
  const survey = equipped.features.at(-1)!.surveys[0]!;
  return done(setPlanGauge(equipped, fresh.id, survey.id, equipped.gauges.find(fits)!.id));
}

function withLength(job: Job, { id, kind }: Feature): Job {
  if (kind === 'bore' || kind === 'pin') return job;
  const like = job.features.find((one) => one.kind === 'bore');
  return setDimension(job, id, 'length', like?.bushings[0]?.length ?? like?.length);
}
