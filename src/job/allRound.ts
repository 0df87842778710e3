/** A table laid out for a gauge that reads across goes half round the clock; one that reads one side goes all round. */
import { done, findFeature, findSurvey, type Tried } from './change.ts';
import { hourText, wrapAngle } from './clock.ts';
import type { Feature, Job, Survey } from './schema.ts';
import { addClock } from './surveyEdits.ts';
import { clockPeriod, findColumn, readingTable } from './table.ts';

/** Clock positions opposite to those of the table, where it has none of them and its gauge tells the two apart. */
export function opposites(job: Job, feature: Feature, survey: Survey): string[] {
  const { clocks, kind } = readingTable(feature, survey, job);
  const period = clockPeriod(kind);
  if (period < 2 * Math.PI) return [];
  const across = clocks.map(({ seen }) => wrapAngle(seen + Math.PI));
  if (across.some((seen) => findColumn(clocks, seen, period) !== undefined)) return [];
  return across.map((seen) => hourText(seen, true));
}

/** The table with a column for each of them. */
export function goAllRound(job: Job, featureId: string, surveyId: string): Tried {
  const feature = findFeature(job, featureId);
  const survey = findSurvey(job, featureId, surveyId);
  if (feature === undefined || survey === undefined) return done(job);
  return opposites(job, feature, survey).reduce<Tried>(
    (tried, clock) => (tried.ok ? addClock(tried.job, featureId, surveyId, clock) : tried),
    done(job),
  );
}
