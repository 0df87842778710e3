/**
 * Readings as CSV, one a row: `survey,face,depth,clock,instrument,setup,reading,unit,sd,note`. The columns may
 * come in any order; only depth, clock and reading must be there. Depth and sd are in the row's unit.
 */
import { readClock } from './clock.ts';
import { type CsvRecord, csvField, readCsvText } from './csvText.ts';
import { MOST_TEXT } from './parse.ts';
import { type Feature, type Job, MOST, type Reading, type Typed, type Unit } from './schema.ts';
import { gaugeOf } from './sizes.ts';
import { readLength, saysUnit } from './units.ts';
import { quoted } from './words.ts';

export const CSV_COLUMNS = [
  'survey',
  'face',
  'depth',
  'clock',
  'instrument',
  'setup',
  'reading',
  'unit',
  'sd',
  'note',
] as const;
type Column = (typeof CSV_COLUMNS)[number];
const REQUIRED: readonly Column[] = ['depth', 'clock', 'reading'];

const INSTRUMENTS = ['two-point', 'three-leg', 'sweep', 'wall', 'radius'] as const;
const UNITS = ['in', 'thou', 'mm'] as const;

/** One row, with what was left out filled in: survey '', face A, instrument two-point, unit ''. */
export interface CsvReading {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly survey: string;
  readonly face: 'A' | 'B';
  readonly depth: string;
  readonly clock: string;
  readonly instrument: (typeof INSTRUMENTS)[number];
  readonly setup: string;
  readonly reading: string;
  /** '': the job's unit. */
  readonly unit: Unit | '';
  /** '': the instrument's typical figure. */
  readonly sd: string;
  readonly note: string;
}

export type ReadingsCsv =
  | { readonly ok: true; readonly readings: readonly CsvReading[] }
  | { readonly ok: false; readonly why: string };

type Row<T> = { readonly ok: true; readonly row: T } | { readonly ok: false; readonly why: string };

/** The rows of a file, or one sentence with line and column of the first fault. */
export function readReadingsCsv(text: string, fileName: string): ReadingsCsv {
  const fault = (why: string) => ({ ok: false, why: `${fileName}: ${why}.` }) as const;
  if (text.length > MOST_TEXT)
    return fault(`${Math.round(text.length / 1e6)} MB of text is no list of readings`);
  const csv = readCsvText(text);
  if (!csv.ok) return fault(`line ${csv.line}: ${csv.why}`);
  const [head, ...records] = csv.records;
  if (head === undefined) return fault(`the file is empty; ${headerWanted()}`);
  const names = head.fields.map((field) => field.toLowerCase());
  const wrong = headerFault(head, names);
  if (wrong !== null) return fault(wrong);
  if (records.length === 0) return fault('there are no readings below the header');
  if (records.length > MOST.readings) {
    return fault(`there are ${records.length} readings; a survey holds ${MOST.readings} at most`);
  }
  const read = readRows(records, (record) => readReading(record, names as Column[]));
  return 'why' in read ? fault(read.why) : { ok: true, readings: read.rows };
}

function headerWanted(): string {
  return `the first line should name the columns, such as ${CSV_COLUMNS.join(',')}`;
}

function headerFault(head: CsvRecord, names: readonly string[]): string | null {
  const at = `line ${head.line}`;
  const unknown = names.find((name) => !CSV_COLUMNS.includes(name as Column));
  if (unknown !== undefined && !REQUIRED.some((name) => names.includes(name))) {
    return `${at}: ${headerWanted()}, or x,y,z for points`;
  }
  if (unknown !== undefined) {
    return `${at}: there is no column ${quoted(unknown)}; columns are ${CSV_COLUMNS.join(', ')}`;
  }
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) return `${at}: column ${quoted(twice)} stands twice`;
  const missing = REQUIRED.find((name) => !names.includes(name));
  return missing === undefined
    ? null
    : `${at}: column ${quoted(missing)} is missing; ${headerWanted()}`;
}

function readRows<T>(
  records: readonly CsvRecord[],
  read: (record: CsvRecord) => Row<T>,
): { rows: T[] } | { why: string } {
  const rows: T[] = [];
  for (const record of records) {
    const one = read(record);
    if (!one.ok) return { why: `line ${record.line}${one.why}` };
    rows.push(one.row);
  }
  return { rows };
}

function readReading(record: CsvRecord, names: readonly Column[]): Row<CsvReading> {
  const { line, fields } = record;
  if (fields.length > names.length) {
    return {
      ok: false,
      why: ` has ${fields.length} fields under ${names.length} columns: a text with a comma needs quotation marks, and commas as decimal points need ; between the columns`,
    };
  }
  const of = (column: Column): string => fields[names.indexOf(column)] ?? '';
  const unit = of('unit').toLowerCase();
  const face = of('face').toUpperCase() || 'A';
  const instrument = of('instrument').toLowerCase() || 'two-point';
  const row = {
    line,
    survey: of('survey'),
    face: face as 'A' | 'B',
    depth: of('depth'),
    clock: of('clock'),
    instrument: instrument as CsvReading['instrument'],
    setup: of('setup'),
    reading: of('reading'),
    unit: unit as Unit | '',
    sd: of('sd'),
    note: of('note'),
  };
  const fault = rowFault(row);
  return fault === null ? { ok: true, row } : { ok: false, why: fault };
}

function rowFault(row: CsvReading): string | null {
  const choice = (column: Column, value: string, choices: readonly string[]) =>
    choices.includes(value)
      ? null
      : `, column ${column}: ${quoted(value)} should be one of ${choices.join(', ')}`;
  return (
    choice('face', row.face, ['A', 'B']) ??
    choice('instrument', row.instrument, INSTRUMENTS) ??
    (row.unit === '' ? null : choice('unit', row.unit, UNITS)) ??
    lengthFault('depth', row.depth, row.unit, true) ??
    thinDepth(row) ??
    lengthFault('reading', row.reading, row.unit, true) ??
    lengthFault('sd', row.sd, row.unit, false) ??
    clockFault(row) ??
    tooLong(row)
  );
}

function lengthFault(
  column: Column,
  text: string,
  unit: Unit | '',
  required: boolean,
): string | null {
  // nominal 0, so that a reading over or under a size that is not known yet passes here
  const read = readLength({ text, unit: unit || 'in' }, 0);
  if (read.ok) return null;
  if (read.why === '') return required ? `, column ${column}: nothing is there` : null;
  return `, column ${column}: ${read.why}`;
}

/** Depth is in the row's unit; a row in thou with a depth of a few thou was meant in inches. */
function thinDepth(row: CsvReading): string | null {
  if (row.unit !== 'thou' || saysUnit(row.depth)) return null;
  const read = readLength({ text: row.depth, unit: 'thou' });
  if (!read.ok || read.mm === 0 || Math.abs(read.mm) > 0.5) return null;
  return `, column depth: the row is in thou, so ${quoted(row.depth)} would be ${read.echo}; write ${row.depth} in, or the depth in thou`;
}

function clockFault(row: CsvReading): string | null {
  const read = readClock(row.clock);
  return read.ok ? null : `, column clock: ${read.why || 'nothing is there'}`;
}

function tooLong(row: CsvReading): string | null {
  const most: readonly [Column, number][] = [
    ['depth', MOST.typed],
    ['reading', MOST.typed],
    ['sd', MOST.typed],
    ['clock', MOST.clock],
    ['survey', MOST.name],
    ['setup', MOST.name],
    ['note', MOST.note],
  ];
  const long = most.find(([column, letters]) => row[column].length > letters);
  return long === undefined ? null : `, column ${long[0]}: it is longer than ${long[1]} letters`;
}

/** All readings of a feature, as typed. A length in another unit than its row's reading says its own. */
export function readingsToCsv(job: Job, feature: Feature): string {
  const lines = [CSV_COLUMNS.join(',')];
  for (const survey of feature.surveys) {
    for (const reading of survey.readings) {
      const setup = survey.setups.find((one) => one.id === reading.setup)?.name ?? '';
      lines.push(csvLine(job, survey.name, setup, reading));
    }
  }
  return `${lines.join('\n')}\n`;
}

function csvLine(job: Job, survey: string, setup: string, reading: Reading): string {
  const { face, depth, clock, value, sd, note } = reading;
  const instrument = gaugeOf(job.gauges, reading.gauge)?.kind ?? 'two-point';
  const fields = [
    survey,
    face,
    inRowUnit(depth, value.unit),
    clock,
    instrument,
    setup,
    value.text,
    value.unit,
    sd === undefined ? '' : inRowUnit(sd, value.unit),
    note ?? '',
  ];
  return fields.map(csvField).join(',');
}

function inRowUnit(typed: Typed, unit: Unit): string {
  return typed.unit === unit || saysUnit(typed.text) ? typed.text : `${typed.text} ${typed.unit}`;
}
