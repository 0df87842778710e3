/** Edits of a survey: its stage, where it measures and with what. Readings are in `readingEdits.ts`. */
import {
  changeFeature,
  changeSurvey,
  done,
  findFeature,
  findSurvey,
  idSource,
  refused,
  replaced,
  type Tried,
  textOrNone,
  typedKept,
  withKey,
  withoutId,
} from './change.ts';
import { readClock } from './clock.ts';
import { isOfBushing } from './measuredAt.ts';
import { defaultClocks, defaultDepths, surveyName } from './plan.ts';
import { type Face, type Job, MOST, type Survey, type Typed } from './schema.ts';
import { gaugeOf, nominalMm } from './sizes.ts';
import { findColumn, findRow, readingTable } from './table.ts';
import { lengthMm, readLength } from './units.ts';

/**
 * A new survey at the end, with the plan and the worn side of the feature's last one (or of `like`); a feature's
 * first survey gets the places worth measuring with the job's first gauge. Set-ups are made anew.
 */
export function addSurvey(
  job: Job,
  featureId: string,
  stage: Survey['stage'],
  options: { readonly name?: string; readonly like?: string } = {},
): Job {
  const feature = findFeature(job, featureId);
  if (feature === undefined) return job;
  const model = feature.surveys.find((one) => one.id === options.like) ?? feature.surveys.at(-1);
  const survey: Survey = {
    id: idSource(job)('s'),
    name: (options.name ?? surveyName(stage, feature.surveys)).slice(0, MOST.name),
    stage,
    plan: model?.plan ?? firstPlan(job, featureId),
    setups: [],
    readings: [],
  };
  // A bushing that was just pressed in is worn on no side.
  const worn = isOfBushing(feature, survey) ? undefined : model?.wornSide;
  const added = withKey(survey, 'wornSide', worn);
  return changeFeature(job, featureId, (one) => ({ ...one, surveys: [...one.surveys, added] }));
}

function firstPlan(job: Job, featureId: string): Survey['plan'] {
  const feature = findFeature(job, featureId)!;
  const gauge = job.gauges[0]!;
  return {
    clocks: defaultClocks(gauge.kind),
    depths: defaultDepths(lengthMm(feature.length), nominalMm(feature), job.units),
    face: 'A',
    gauge: gauge.id,
  };
}

/** The survey goes with all its readings; passes that were issued from it stay as they were. */
export function removeSurvey(job: Job, featureId: string, surveyId: string): Job {
  return changeFeature(job, featureId, (one) =>
    replaced(one, 'surveys', withoutId(one.surveys, surveyId)),
  );
}

export function renameSurvey(job: Job, featureId: string, surveyId: string, name: string): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    withKey(one, 'name', name.slice(0, MOST.name)),
  );
}

export function setStage(
  job: Job,
  featureId: string,
  surveyId: string,
  stage: Survey['stage'],
): Job {
  return changeSurvey(job, featureId, surveyId, (one) => withKey(one, 'stage', stage));
}

/** The date or the note of a survey; empty takes it away. */
export function setSurveyText(
  job: Job,
  featureId: string,
  surveyId: string,
  key: 'when' | 'note',
  text: string,
): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    withKey(one, key, textOrNone(text, key === 'note' ? MOST.note : 40)),
  );
}

/** Temperatures of part and gauge as typed; undefined takes them away. */
export function setTemperature(
  job: Job,
  featureId: string,
  surveyId: string,
  temperature: Survey['temperature'] | undefined,
): Job {
  return changeSurvey(job, featureId, surveyId, (one) => withKey(one, 'temperature', temperature));
}

/** "Worn on one side, at ...": clock position as typed, empty for both sides alike. */
export function setWornSide(job: Job, featureId: string, surveyId: string, clock: string): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    withKey(one, 'wornSide', textOrNone(clock, MOST.clock)),
  );
}

/** With what the next readings are taken; readings already there keep their gauge. */
export function setPlanGauge(job: Job, featureId: string, surveyId: string, gaugeId: string): Job {
  if (gaugeOf(job.gauges, gaugeId) === undefined) return job;
  return changeSurvey(job, featureId, surveyId, (one) =>
    withKey(one, 'plan', withKey(one.plan, 'gauge', gaugeId)),
  );
}

/** From which face the next readings are taken; readings already there keep their face. */
export function setPlanFace(job: Job, featureId: string, surveyId: string, face: Face): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    withKey(one, 'plan', withKey(one.plan, 'face', face)),
  );
}

/** A row for the table, from the plan's face. */
export function addDepth(job: Job, featureId: string, surveyId: string, typed: Typed): Tried {
  const survey = findSurvey(job, featureId, surveyId);
  if (survey === undefined) return done(job);
  const read = readLength(typed);
  if (!read.ok) return refused(read.why || 'type a depth first');
  if (!(read.mm >= 0))
    return refused(`depth ${typed.text.trim()} is below zero: depths go inward from the face`);
  const rows = survey.plan.depths.map((depth) => ({ seenZ: lengthMm(depth) }));
  if (findRow(rows, read.mm) !== undefined) {
    return refused(`depth ${typed.text.trim()} is in the table already`);
  }
  if (rows.length >= MOST.depths) return refused(`a table holds ${MOST.depths} depths at most`);
  return done(
    changePlan(job, featureId, surveyId, 'depths', [...survey.plan.depths, typedKept(typed)]),
  );
}

/** A column for the table, as seen from the plan's face. */
export function addClock(job: Job, featureId: string, surveyId: string, clock: string): Tried {
  const feature = findFeature(job, featureId);
  const survey = findSurvey(job, featureId, surveyId);
  if (feature === undefined || survey === undefined) return done(job);
  const read = readClock(clock);
  if (!read.ok) return refused(read.why || 'type a clock position first');
  const kind = gaugeOf(job.gauges, survey.plan.gauge)?.kind;
  const period = kind === 'two-point' ? Math.PI : 2 * Math.PI;
  const columns = survey.plan.clocks.map((text) => ({ seen: seenOf(text) }));
  if (findColumn(columns, read.theta, period) !== undefined) {
    return refused(`${clock.trim()} o'clock is in the table already`);
  }
  if (columns.length >= MOST.clocks) {
    return refused(`a table holds ${MOST.clocks} clock positions at most`);
  }
  const kept = clock.slice(0, MOST.clock);
  return done(changePlan(job, featureId, surveyId, 'clocks', [...survey.plan.clocks, kept]));
}

function seenOf(clock: string): number {
  const read = readClock(clock);
  return read.ok ? read.theta : Number.NaN;
}

function changePlan<K extends 'clocks' | 'depths'>(
  job: Job,
  featureId: string,
  surveyId: string,
  key: K,
  value: Survey['plan'][K],
): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    withKey(one, 'plan', withKey(one.plan, key, value)),
  );
}

/** Takes a row of the table away, counted from the top as shown; refused while it holds readings. */
export function removeDepth(job: Job, featureId: string, surveyId: string, row: number): Tried {
  const feature = findFeature(job, featureId);
  const survey = findSurvey(job, featureId, surveyId);
  if (feature === undefined || survey === undefined) return done(job);
  const shown = readingTable(feature, survey, job).rows[row];
  if (shown === undefined) return done(job);
  if (shown.cells.some((cell) => cell.readings.length > 0)) {
    return refused(`depth ${shown.depthText} holds readings: empty its cells first`);
  }
  const depths = survey.plan.depths.filter(
    (depth) => findRow([shown], lengthMm(depth)) === undefined,
  );
  return done(changePlan(job, featureId, surveyId, 'depths', depths));
}

/** Takes a column of the table away, counted from the left as shown; refused while it holds readings. */
export function removeClock(job: Job, featureId: string, surveyId: string, column: number): Tried {
  const feature = findFeature(job, featureId);
  const survey = findSurvey(job, featureId, surveyId);
  if (feature === undefined || survey === undefined) return done(job);
  const table = readingTable(feature, survey, job);
  const shown = table.clocks[column];
  if (shown === undefined) return done(job);
  if (table.rows.some((row) => row.cells[column]!.readings.length > 0)) {
    return refused(`${shown.text} holds readings: empty its cells first`);
  }
  const clocks = survey.plan.clocks.filter((clock) => clock !== shown.clock);
  return done(changePlan(job, featureId, surveyId, 'clocks', clocks));
}
