/** Making room in the table for a reading that is worth taking. */
import { done, findFeature, findSurvey, type Tried } from './change.ts';
import { angleApart, hourText, wrapAngle } from './clock.ts';
import type { Job } from './schema.ts';
import { addClock, addDepth, setPlanGauge } from './surveyEdits.ts';
import { clockPeriod, type ReadingTable, readingTable } from './table.ts';
import { inUnits, lengthMm } from './units.ts';

/** A place on the wall as seen from face A, and the gauge that is to touch it; '' the one in hand. */
export interface Offered {
  readonly gauge: string;
  readonly theta: number;
  /** mm from face A. */
  readonly z: number;
}

/** As near as depths are typed, half of 0.01 in, mm: a row of the table so near is the row that is meant. */
const SAME_ROW = 0.13;
/** Half a degree. */
const SAME_COLUMN = Math.PI / 360;

/** Row and column of a place, from 0; null where the table lacks one of them. */
export function placeInTable(
  table: ReadingTable,
  { theta, z }: Pick<Offered, 'theta' | 'z'>,
): { row: number; column: number } | null {
  const row = rowOf(table, z);
  const column = columnOf(table, theta);
  return row < 0 || column < 0 ? null : { row, column };
}

function rowOf(table: ReadingTable, z: number): number {
  return table.rows.findIndex((row) => Math.abs(row.z - z) <= SAME_ROW);
}

function columnOf(table: ReadingTable, theta: number): number {
  const period = clockPeriod(table.kind);
  return table.clocks.findIndex((one) => angleApart(one.theta, theta, period) < SAME_COLUMN);
}

/**
 * The survey's table with that gauge, and with a row and a column for the place where it lacks them; refused where the
 * place is seen from face B and the length is not known.
 */
export function offerPlace(job: Job, featureId: string, surveyId: string, place: Offered): Tried {
  const ready = place.gauge === '' ? job : setPlanGauge(job, featureId, surveyId, place.gauge);
  const feature = findFeature(ready, featureId);
  const survey = findSurvey(ready, featureId, surveyId);
  if (feature === undefined || survey === undefined) return done(job);
  const table = readingTable(feature, survey, ready);
  const fromA = survey.plan.face === 'A';
  let tried = done(ready);
  if (rowOf(table, place.z) < 0) {
    const depth = fromA ? place.z : lengthMm(feature.length) - place.z;
    const text = inUnits(depth, job.units).toFixed(job.units === 'in' ? 2 : 1);
    tried = addDepth(ready, featureId, surveyId, { text, unit: job.units });
  }
  if (!tried.ok || columnOf(table, place.theta) >= 0) return tried;
  const seen = wrapAngle(fromA ? place.theta : -place.theta);
  return addClock(tried.job, featureId, surveyId, hourText(seen, true));
}
