/** What a schema cannot say: ids that are their own, and that name something that is there. */
import type { Feature, Job, Survey } from './schema.ts';
import { entryWords, quoted } from './words.ts';

interface Named {
  readonly id: string;
}

/** The first fault as one sentence without a full stop; null where there is none. */
export function whyNotReferred(job: Job): string | null {
  const gauges = new Set(job.gauges.map((one) => one.id));
  const twice = duplicate('gauges', job.gauges) ?? duplicate('features', job.features);
  if (twice !== null) return `the job ${twice}`;
  for (const [index, feature] of job.features.entries()) {
    const fault = featureFault(feature, gauges);
    if (fault !== null) return `${entryWords('features', feature, index)} ${fault}`;
  }
  return null;
}

function featureFault(feature: Feature, gauges: ReadonlySet<string>): string | null {
  const lists = ['bushings', 'keepouts', 'surveys', 'issued'] as const;
  for (const list of lists) {
    const twice = duplicate(list, feature[list]);
    if (twice !== null) return twice;
  }
  const twiceLand = duplicate('lands', feature.lands ?? []);
  if (twiceLand !== null) return twiceLand;
  for (const [index, survey] of feature.surveys.entries()) {
    const fault = surveyFault(survey, gauges);
    if (fault !== null) return `has ${entryWords('surveys', survey, index)}, which ${fault}`;
  }
  for (const [index, issued] of feature.issued.entries()) {
    const { z, theta, removal } = issued;
    const even = removal.length === z.length && removal.every((row) => row.length === theta.length);
    if (!even) {
      return `has ${entryWords('issued', issued, index)}, whose “removal” should have ${z.length} rows of ${theta.length} numbers, one for each depth and clock position`;
    }
  }
  return null;
}

function surveyFault(survey: Survey, gauges: ReadonlySet<string>): string | null {
  const twice = duplicate('setups', survey.setups) ?? duplicate('readings', survey.readings);
  if (twice !== null) return twice;
  if (!gauges.has(survey.plan.gauge)) return `plans for a gauge ${missing(survey.plan.gauge)}`;
  const setups = new Set(survey.setups.map((one) => one.id));
  const { setup: planned } = survey.plan;
  if (planned !== undefined && !setups.has(planned)) {
    return `plans for a set-up ${missing(planned)}`;
  }
  const zero = survey.zeroAfter?.find(({ gauge }) => !gauges.has(gauge));
  if (zero !== undefined) return `has the zero of a gauge ${missing(zero.gauge)}`;
  for (const [index, setup] of survey.setups.entries()) {
    if (!gauges.has(setup.gauge)) {
      return `has ${entryWords('setups', setup, index)} of a gauge ${missing(setup.gauge)}`;
    }
  }
  for (const [index, reading] of survey.readings.entries()) {
    if (!gauges.has(reading.gauge))
      return `has reading ${index + 1} of a gauge ${missing(reading.gauge)}`;
    if (reading.setup !== undefined && !setups.has(reading.setup)) {
      return `has reading ${index + 1} of a set-up ${missing(reading.setup)}`;
    }
  }
  return null;
}

function missing(id: string): string {
  return `${quoted(id)}, and there is none of that id`;
}

function duplicate(list: string, entries: readonly Named[]): string | null {
  const seen = new Map<string, number>();
  for (const [index, { id }] of entries.entries()) {
    const before = seen.get(id);
    if (before !== undefined) {
      return `has one id, ${quoted(id)}, twice among its ${list} (numbers ${before + 1} and ${index + 1}): each needs its own`;
    }
    seen.set(id, index);
  }
  return null;
}
