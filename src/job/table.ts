/**
 * The reading table: a survey's readings laid out by depth (rows) and clock position (columns), as seen from
 * the face that the survey's plan is taken from. Nothing here is stored; cells point back at readings by row.
 */

import { angleApart, hourText, pairText, readClock, SAME_CLOCK, wrapAngle } from './clock.ts';
import { measuredAt } from './measuredAt.ts';
import type { Face, Feature, Instrument, Job, Reading, Survey, Typed } from './schema.ts';
import { setupInHand, sharesSetup } from './setups.ts';
import { gaugeOf, nominalMm, readValue } from './sizes.ts';
import { temperatureFactor } from './temperature.ts';
import { inUnits, lengthMm, showTyped } from './units.ts';

/** Depths closer than this are the same row, mm. */
const SAME_DEPTH = 0.005;
/** Places beyond the plan are added up to here; a scanner's points are no table. */
const MOST_ROWS = 100;
const MOST_COLUMNS = 72;

export interface TableReading {
  /** Row in `survey.readings`, from 0. */
  readonly row: number;
  readonly id: string;
  /** As typed, with its unit where that is not the job's. */
  readonly text: string;
  readonly ok: boolean;
  /** As a size at 20 °C where temperatures are given; NaN where not ok. */
  readonly mm: number;
  /** In plain decimals; '' where not ok. */
  readonly echo: string;
  /** Why it is not ok; '' where it is. */
  readonly why: string;
  readonly leftOut: boolean;
}

export interface TableCell {
  readonly readings: readonly TableReading[];
  /** All texts, repeats separated by `; `: what `setCell` takes. */
  readonly text: string;
}

export interface TableRow {
  /** As typed, from `face`. */
  readonly depth: Typed;
  readonly face: Face;
  readonly depthText: string;
  /** Depth from face A; NaN where the plan's face is B and the length is not known. */
  readonly z: number;
  /** Depth from the plan's face, by which the rows are sorted. */
  readonly seenZ: number;
  readonly cells: readonly TableCell[];
}

export interface TableColumn {
  /** As typed, from `face`. */
  readonly clock: string;
  readonly face: Face;
  /** `12–6` for a gauge that reads across, else `12`, `4:30`; as seen from the plan's face. */
  readonly text: string;
  /** Radians as seen from face A. */
  readonly theta: number;
  /** As seen from the plan's face, within the gauge's period; the columns are sorted by it. */
  readonly seen: number;
}

export interface ReadingTable {
  readonly clocks: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  /** Readings of other instruments or set-ups, and those whose place cannot be understood. */
  readonly others: readonly TableReading[];
  readonly kind: Instrument;
}

/** Which readings belong: those of this gauge's kind and, for sweeps and walls, of this set-up. */
export interface TableOf {
  /** Left out: the plan's gauge. */
  readonly gauge?: string;
  /** Left out: the set-up that is in hand for that gauge. */
  readonly setup?: string;
}

/** After what part of a turn a gauge reads the same again. */
export function clockPeriod(kind: Instrument): number {
  if (kind === 'two-point') return Math.PI;
  return kind === 'three-leg' ? (2 * Math.PI) / 3 : 2 * Math.PI;
}

/** What the table is seen through. */
interface Frame {
  readonly feature: Feature;
  readonly survey: Survey;
  readonly job: Job;
  readonly kind: Instrument;
  readonly setup: string | undefined;
  readonly period: number;
  readonly face: Face;
  readonly length: number;
  readonly nominal: number;
  readonly factor: number;
}

interface RowSpot {
  readonly depth: Typed;
  readonly face: Face;
  readonly seenZ: number;
}
interface ColumnSpot {
  readonly clock: string;
  readonly face: Face;
  readonly seen: number;
}

/**
 * @param feature the bore or pin
 * @param survey one of its surveys
 * @param job what both stand in: gauges and units
 */
export function readingTable(
  feature: Feature,
  survey: Survey,
  job: Job,
  of: TableOf = {},
): ReadingTable {
  const frame = frameOf(feature, survey, job, of);
  const rows = planRows(frame);
  const columns = planColumns(frame);
  const others: TableReading[] = [];
  const placed: { reading: TableReading; row: RowSpot; column: ColumnSpot }[] = [];
  survey.readings.forEach((reading, index) => {
    const shown = tableReading(frame, reading, index);
    const row = belongs(frame, reading) ? rowFor(frame, rows, reading) : null;
    const column = row === null ? null : columnFor(frame, columns, reading);
    if (row === null || column === null) others.push(shown);
    else placed.push({ reading: shown, row, column });
  });
  rows.sort((a, b) => a.seenZ - b.seenZ);
  columns.sort((a, b) => a.seen - b.seen);
  const cells = new Map<RowSpot, Map<ColumnSpot, TableReading[]>>();
  for (const { reading, row, column } of placed) {
    const line = cells.get(row) ?? new Map<ColumnSpot, TableReading[]>();
    cells.set(row, line.set(column, [...(line.get(column) ?? []), reading]));
  }
  return {
    clocks: columns.map((column) => tableColumn(frame, column)),
    rows: rows.map((row) => tableRow(frame, row, columns, cells.get(row))),
    others,
    kind: frame.kind,
  };
}

function frameOf(feature: Feature, survey: Survey, job: Job, of: TableOf): Frame {
  const gauge = of.gauge ?? survey.plan.gauge;
  const kind = gaugeOf(job.gauges, gauge)?.kind ?? 'two-point';
  const setup = of.setup ?? setupInHand(survey, gauge)?.id;
  return {
    feature,
    survey,
    job,
    kind,
    setup: sharesSetup(kind) ? setup : undefined,
    period: clockPeriod(kind),
    face: survey.plan.face,
    length: lengthMm(feature.length),
    nominal: nominalMm(measuredAt(feature, survey)),
    factor: temperatureFactor(feature, survey),
  };
}

function planRows(frame: Frame): RowSpot[] {
  const rows: RowSpot[] = [];
  for (const depth of frame.survey.plan.depths) {
    const seenZ = lengthMm(depth);
    if (!Number.isNaN(seenZ) && findRow(rows, seenZ) === undefined) {
      rows.push({ depth, face: frame.face, seenZ });
    }
  }
  return rows;
}

function planColumns(frame: Frame): ColumnSpot[] {
  const columns: ColumnSpot[] = [];
  for (const clock of frame.survey.plan.clocks) {
    const seen = seenClock(frame, clock, frame.face);
    if (!Number.isNaN(seen) && findColumn(columns, seen, frame.period) === undefined) {
      columns.push({ clock, face: frame.face, seen });
    }
  }
  return columns;
}

function belongs(frame: Frame, reading: Reading): boolean {
  if (gaugeOf(frame.job.gauges, reading.gauge)?.kind !== frame.kind) return false;
  return !sharesSetup(frame.kind) || reading.setup === frame.setup;
}

function rowFor(frame: Frame, rows: RowSpot[], reading: Reading): RowSpot | null {
  const typed = lengthMm(reading.depth);
  const seenZ = reading.face === frame.face ? typed : frame.length - typed;
  if (Number.isNaN(seenZ)) return null;
  const found = findRow(rows, seenZ);
  if (found !== undefined || rows.length >= MOST_ROWS) return found ?? null;
  const added = { depth: reading.depth, face: reading.face, seenZ };
  rows.push(added);
  return added;
}

function columnFor(frame: Frame, columns: ColumnSpot[], reading: Reading): ColumnSpot | null {
  const seen = seenClock(frame, reading.clock, reading.face);
  if (Number.isNaN(seen)) return null;
  const found = findColumn(columns, seen, frame.period);
  if (found !== undefined || columns.length >= MOST_COLUMNS) return found ?? null;
  const added = { clock: reading.clock, face: reading.face, seen };
  columns.push(added);
  return added;
}

/** Row of a depth from the plan's face. */
export function findRow<T extends { readonly seenZ: number }>(
  rows: readonly T[],
  seenZ: number,
): T | undefined {
  return rows.find((row) => Math.abs(row.seenZ - seenZ) < SAME_DEPTH);
}

/** Column of a clock position as seen from the plan's face. */
export function findColumn<T extends { readonly seen: number }>(
  columns: readonly T[],
  seen: number,
  period: number,
): T | undefined {
  return columns.find((column) => angleApart(column.seen, seen, period) < SAME_CLOCK);
}

/** Within the gauge's period; a last hair before a full period is its beginning. */
function seenClock(frame: Frame, clock: string, face: Face): number {
  const read = readClock(clock, face === frame.face ? 'A' : 'B');
  if (!read.ok) return Number.NaN;
  const seen = wrapAngle(read.theta, frame.period);
  return frame.period - seen < SAME_CLOCK ? 0 : seen;
}

function tableReading(frame: Frame, reading: Reading, row: number): TableReading {
  const read = readValue(reading, gaugeOf(frame.job.gauges, reading.gauge), frame.nominal);
  return {
    row,
    id: reading.id,
    text: showTyped(reading.value, frame.job.units),
    ok: read.ok,
    mm: read.ok ? read.mm * frame.factor : Number.NaN,
    echo: read.ok ? read.echo : '',
    why: read.ok ? '' : read.why,
    leftOut: reading.leftOut === true,
  };
}

function tableColumn(frame: Frame, column: ColumnSpot): TableColumn {
  const { clock, face, seen } = column;
  return {
    clock,
    face,
    seen,
    theta: frame.face === 'B' ? wrapAngle(-seen) : seen,
    text: frame.kind === 'two-point' ? pairText(seen) : hourText(seen),
  };
}

function tableRow(
  frame: Frame,
  row: RowSpot,
  columns: readonly ColumnSpot[],
  cells: ReadonlyMap<ColumnSpot, TableReading[]> | undefined,
): TableRow {
  const own = row.face === frame.face;
  const decimals = frame.job.units === 'in' ? 2 : 1;
  return {
    ...row,
    depthText: own
      ? showTyped(row.depth, frame.job.units)
      : inUnits(row.seenZ, frame.job.units).toFixed(decimals),
    z: frame.face === 'A' ? row.seenZ : frame.length - row.seenZ,
    cells: columns.map((column) => {
      const readings = cells?.get(column) ?? [];
      return { readings, text: readings.map((one) => one.text).join('; ') };
    }),
  };
}
