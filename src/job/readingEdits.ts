/** Edits of readings: by the cell of the table, or one by one. */
import {
  changeSurvey,
  findFeature,
  findSurvey,
  idSource,
  mapById,
  replaced,
  textOrNone,
  typedKept,
  typedOrNone,
  withKey,
  withoutId,
} from './change.ts';
import { hourText, readClock, wrapAngle } from './clock.ts';
import {
  type Face,
  type Job,
  MOST,
  type Reading,
  type Survey,
  type Typed,
  type Unit,
} from './schema.ts';
import { setupInHand, sharesSetup } from './setups.ts';
import { gaugeOf } from './sizes.ts';
import {
  clockPeriod,
  findColumn,
  findRow,
  type ReadingTable,
  readingTable,
  type TableColumn,
  type TableOf,
  type TableReading,
  type TableRow,
} from './table.ts';
import { lengthMm } from './units.ts';

/** What was typed into one cell of the table. */
export interface CellEntry extends TableOf {
  /** Row of the table, or a depth from the plan's face as typed in the job's units. */
  readonly depth: number | string;
  /** Column of the table, or a clock position as typed, seen from the plan's face. */
  readonly clock: number | string;
  /** One reading, or repeats separated by `;`. Empty removes what the cell holds. */
  readonly values: string;
  /** Unit that a newly typed value is in; left out: the job's. */
  readonly unit?: Unit;
}

/** Where a cell is: what new readings there are given. */
interface Spot {
  readonly face: Face;
  readonly depth: Typed;
  readonly clock: string;
  readonly held: readonly TableReading[];
}

/**
 * Types into a cell. A value that stands there already keeps its reading, with unit, note and left-out mark;
 * other values take over the remaining readings in order (no longer left out) or are added at the end of the
 * survey; readings too many go. What cannot be understood is kept as typed. Past the most readings that a
 * survey holds, values are not added.
 */
export function setCell(job: Job, featureId: string, surveyId: string, entry: CellEntry): Job {
  const feature = findFeature(job, featureId);
  const survey = findSurvey(job, featureId, surveyId);
  if (feature === undefined || survey === undefined) return job;
  const spot = spotOf(job, readingTable(feature, survey, job, entry), survey, entry);
  if (spot === null) return job;
  return putValues(job, featureId, surveyId, spot, entry, idSource(job));
}

function spotOf(job: Job, table: ReadingTable, survey: Survey, entry: CellEntry): Spot | null {
  const face = survey.plan.face;
  const row =
    typeof entry.depth === 'number' ? table.rows[entry.depth] : rowAt(job, table, entry.depth);
  const column =
    typeof entry.clock === 'number' ? table.clocks[entry.clock] : columnAt(table, entry.clock);
  if (typeof entry.depth === 'number' && row === undefined) return null;
  if (typeof entry.clock === 'number' && column === undefined) return null;
  // a row that was measured from the other face is joined from the plan's, as the hand now measures
  const depth = row?.face === face ? row.depth : newDepth(job, row, entry.depth);
  const clock = column === undefined ? String(entry.clock) : clockFrom(column, face);
  const held = row === undefined || column === undefined ? [] : heldIn(table, row, column);
  return { face, depth, clock: clock.slice(0, MOST.clock), held };
}

function rowAt(job: Job, table: ReadingTable, text: string): TableRow | undefined {
  return findRow(table.rows, lengthMm({ text, unit: job.units }));
}

function columnAt(table: ReadingTable, text: string): TableColumn | undefined {
  const read = readClock(text);
  return read.ok ? findColumn(table.clocks, read.theta, clockPeriod(table.kind)) : undefined;
}

function newDepth(job: Job, row: TableRow | undefined, typed: number | string): Typed {
  if (row === undefined) return typedKept({ text: String(typed), unit: job.units });
  return { text: String(Number(row.seenZ.toFixed(6))), unit: 'mm' };
}

function clockFrom(column: TableColumn, face: Face): string {
  if (column.face === face) return column.clock;
  return hourText(wrapAngle(column.seen), true);
}

function heldIn(table: ReadingTable, row: TableRow, column: TableColumn): readonly TableReading[] {
  return row.cells[table.clocks.indexOf(column)]?.readings ?? [];
}

function putValues(
  job: Job,
  featureId: string,
  surveyId: string,
  spot: Spot,
  entry: CellEntry,
  newId: (prefix: string) => string,
): Job {
  const texts = entry.values
    .split(';')
    .flatMap((text) => textOrNone(text.trim(), MOST.typed) ?? []);
  const { changed, added, gone } = matchValues(texts, spot.held);
  return changeSurvey(job, featureId, surveyId, (survey) => {
    const unit = entry.unit ?? job.units;
    const room = MOST.readings - survey.readings.length + gone.size;
    const fresh = added
      .slice(0, room)
      .map((text) => newReading(job, survey, spot, entry, newId('r'), { text, unit }));
    if (changed.size === 0 && gone.size === 0 && fresh.length === 0) return survey;
    const kept = survey.readings
      .filter((one) => !gone.has(one.id))
      .map((one) => {
        const text = changed.get(one.id);
        return text === undefined ? one : retyped(one, { text, unit });
      });
    return { ...survey, readings: [...kept, ...fresh] };
  });
}

/** Which of the held readings stay, change their text or go, and which texts are new. */
function matchValues(texts: readonly string[], held: readonly TableReading[]) {
  const open = [...held];
  const rest = texts.filter((text) => {
    const at = open.findIndex((one) => one.text === text);
    if (at >= 0) open.splice(at, 1);
    return at < 0;
  });
  const changed = new Map<string, string>();
  rest.splice(0, open.length).forEach((text) => {
    changed.set(open.shift()!.id, text);
  });
  return { changed, added: rest, gone: new Set(open.map((one) => one.id)) };
}

/** A value typed anew is a new reading of the same place: it counts again. */
function retyped(reading: Reading, value: Typed): Reading {
  const { leftOut: _, ...rest } = reading;
  return { ...rest, value };
}

function newReading(
  job: Job,
  survey: Survey,
  spot: Spot,
  of: TableOf,
  id: string,
  value: Typed,
): Reading {
  const gauge = of.gauge ?? survey.plan.gauge;
  const kind = gaugeOf(job.gauges, gauge)?.kind;
  const setup = of.setup ?? setupInHand(survey, gauge)?.id;
  const { face, depth, clock } = spot;
  const reading: Reading = { id, face, depth, clock, gauge, value };
  return sharesSetup(kind) ? withKey(reading, 'setup', setup) : reading;
}

/** One reading at any place, at the end of the survey; nothing where the survey is full. */
export function addReading(
  job: Job,
  featureId: string,
  surveyId: string,
  reading: Omit<Reading, 'id'>,
): Job {
  const id = idSource(job)('r');
  return changeSurvey(job, featureId, surveyId, (one) =>
    one.readings.length >= MOST.readings
      ? one
      : { ...one, readings: [...one.readings, { ...reading, id }] },
  );
}

/** Changes one reading; an undefined or empty optional entry goes. */
export function setReading(
  job: Job,
  featureId: string,
  surveyId: string,
  readingId: string,
  change: { readonly [K in keyof Omit<Reading, 'id'>]?: Reading[K] | undefined },
): Job {
  return changeReading(job, featureId, surveyId, readingId, (reading) => {
    let next = reading;
    if (change.face !== undefined) next = withKey(next, 'face', change.face);
    if (change.depth !== undefined) next = withKey(next, 'depth', typedKept(change.depth));
    if (change.value !== undefined) next = withKey(next, 'value', typedKept(change.value));
    if (change.clock !== undefined)
      next = withKey(next, 'clock', change.clock.slice(0, MOST.clock));
    if (change.gauge !== undefined) next = withKey(next, 'gauge', change.gauge);
    if (Object.hasOwn(change, 'setup')) next = withKey(next, 'setup', change.setup);
    if (Object.hasOwn(change, 'sd')) next = withKey(next, 'sd', typedOrNone(change.sd));
    if (Object.hasOwn(change, 'note'))
      next = withKey(next, 'note', textOrNone(change.note, MOST.note));
    if (!Object.hasOwn(change, 'leftOut')) return next;
    return withKey(next, 'leftOut', change.leftOut || undefined);
  });
}

/** Leaves a reading out of the fit, or takes it in again; it stays in the table. */
export function setLeftOut(
  job: Job,
  featureId: string,
  surveyId: string,
  readingId: string,
  leftOut: boolean,
): Job {
  return setReading(job, featureId, surveyId, readingId, { leftOut });
}

export function removeReading(
  job: Job,
  featureId: string,
  surveyId: string,
  readingId: string,
): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    replaced(one, 'readings', withoutId(one.readings, readingId)),
  );
}

function changeReading(
  job: Job,
  featureId: string,
  surveyId: string,
  readingId: string,
  change: (one: Reading) => Reading,
): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    replaced(one, 'readings', mapById(one.readings, readingId, change)),
  );
}
