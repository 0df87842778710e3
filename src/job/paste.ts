/** A block of readings pasted from a spreadsheet or a note. */
import { done, findFeature, findSurvey, refused, type Tried } from './change.ts';
import { hourText, readClock } from './clock.ts';
import { setCell } from './readingEdits.ts';
import type { Job, Unit } from './schema.ts';
import { type ReadingTable, readingTable, type TableOf } from './table.ts';
import { lengthMm, readLength } from './units.ts';

/** More than any table shows; anything larger is not a table that was meant for here. */
const MOST_PASTED = 5000;

/** A block as read: texts row by row, with the places that it brings itself. */
export interface Block {
  /** From its first row; null: the block has none. */
  readonly clocks: readonly string[] | null;
  /** From its first column; null: the block has none. */
  readonly depths: readonly string[] | null;
  readonly cells: readonly (readonly string[])[];
}

/**
 * Reads a block: columns by tabs, else semicolons, else commas (where they are not decimal commas), else
 * spaces (`2 1/2` stays one). A first row of clock positions and a first column of depths are told by an empty
 * or worded corner; a first row alone by positions that climb and are written otherwise than the readings.
 */
export function readBlock(text: string): Block {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .filter((line) => line.trim() !== '');
  const split = splitterOf(lines);
  const rows = lines.map((line) =>
    split(line).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1')),
  );
  const [head = [], ...rest] = rows;
  const corner = head[0] ?? '';
  const labelled = rows.length > 1 && head.length > 1 && !/\d/.test(corner);
  if (labelled && head.slice(1).every((cell) => readClock(cell).ok)) {
    return {
      clocks: head.slice(1),
      depths: rest.map((row) => row[0] ?? ''),
      cells: rest.map((row) => row.slice(1)),
    };
  }
  if (rows.length > 1 && climbs(head) && !rest.every((row) => row.every(looksLikeHour))) {
    return { clocks: head, depths: null, cells: rest };
  }
  return { clocks: null, depths: null, cells: rows };
}

function splitterOf(lines: readonly string[]): (line: string) => string[] {
  if (lines.some((line) => line.includes('\t'))) return (line) => line.split('\t');
  if (lines.some((line) => line.includes(';'))) return (line) => line.split(';');
  // a comma inside a number that stands alone is a decimal comma; any other separates
  const words = lines.flatMap((line) => line.trim().split(/\s+/));
  const commas = words.some((word) => word.includes(',') && !/^[+\-−]?\d*,\d+$/.test(word));
  if (commas) return (line) => line.split(',');
  return (line) =>
    line
      .trim()
      .replace(/(\d)\s+(\d+\/\d)/g, '$1-$2')
      .split(/\s+/);
}

function looksLikeHour(cell: string): boolean {
  return (
    /^(\d{1,2}(:\d\d)?([-–]\d{1,2}(:\d\d)?)?|\d+(\.\d+)? ?[d°])$/.test(cell) && readClock(cell).ok
  );
}

/** Clock positions in order, once round at most: 12 1 2 ... or 3 6 9 12. */
function climbs(head: readonly string[]): boolean {
  if (head.length < 2 || !head.every(looksLikeHour)) return false;
  const turns = head.map((cell) => {
    const read = readClock(cell);
    return read.ok ? read.theta : Number.NaN;
  });
  const falls = turns.filter((turn, index) => index > 0 && !(turn > turns[index - 1]!)).length;
  return falls === 0 || (falls === 1 && turns.at(-1)! < turns[0]!);
}

/**
 * Puts a block into the reading table. Where the block brings clock positions or depths they say where it goes;
 * otherwise it starts at the given cell and must fit. Empty cells of the block leave what is there.
 *
 * @param startRow row of the table from 0, and
 * @param startColumn its column, where the block does not say itself
 */
export function pasteBlock(
  job: Job,
  featureId: string,
  surveyId: string,
  startRow: number,
  startColumn: number,
  text: string,
  of: TableOf & { readonly unit?: Unit } = {},
): Tried {
  const feature = findFeature(job, featureId);
  const survey = findSurvey(job, featureId, surveyId);
  if (feature === undefined || survey === undefined) return done(job);
  const table = readingTable(feature, survey, job, of);
  const block = withLeadingDepths(readBlock(text), table, startRow, startColumn, job);
  const why = whyNotPaste(block, table, startRow, startColumn, job);
  if (why !== null) return refused(why);
  // places are named, not numbered, as the table grows while a block is put into it
  let next = job;
  block.cells.forEach((row, r) => {
    row.forEach((values, c) => {
      if (values === '') return;
      const depth = block.depths?.[r] ?? depthText(table, startRow + r);
      const clock = block.clocks?.[c] ?? clockOf(table, startColumn + c);
      next = setCell(next, featureId, surveyId, { ...of, depth, clock, values });
    });
  });
  return done(next);
}

/** A first column that repeats the depths of the table is no reading. */
function withLeadingDepths(
  block: Block,
  table: ReadingTable,
  startRow: number,
  startColumn: number,
  job: Job,
): Block {
  if (block.depths !== null || startColumn !== 0) return block;
  const repeats = block.cells.every((row, index) => {
    const shown = table.rows[startRow + index];
    const mm = lengthMm({ text: row[0] ?? '', unit: job.units });
    return row.length > 1 && shown !== undefined && Math.abs(mm - shown.seenZ) < 0.005;
  });
  if (!repeats || block.cells.length === 0) return block;
  const cells = block.cells.map((row) => row.slice(1));
  // a head row as wide as the rest has a place of no meaning above the depths
  const wide = block.clocks?.length === block.cells[0]!.length;
  const clocks = wide ? block.clocks!.slice(1) : block.clocks;
  return { clocks, depths: block.cells.map((row) => row[0]!), cells };
}

function whyNotPaste(
  block: Block,
  table: ReadingTable,
  startRow: number,
  startColumn: number,
  job: Job,
): string | null {
  const width = Math.max(0, ...block.cells.map((row) => row.length));
  const height = block.cells.length;
  if (width === 0) return 'there is nothing to paste';
  if (width * height > MOST_PASTED) {
    return `the block has ${width} columns and ${height} rows: paste ${MOST_PASTED} cells at most`;
  }
  if (block.clocks !== null && width > block.clocks.length) {
    return `the block has ${width} columns of readings under ${block.clocks.length} clock positions`;
  }
  for (const depth of block.depths ?? []) {
    const read = readLength({ text: depth, unit: job.units });
    if (!read.ok) return `the block's depth column: ${read.why || 'a depth is missing'}`;
  }
  if (block.clocks === null && startColumn + width > table.clocks.length) {
    return `the block is ${width} columns wide, and from here there is room for ${Math.max(0, table.clocks.length - startColumn)}: add clock positions first`;
  }
  if (block.depths === null && startRow + height > table.rows.length) {
    return `the block is ${height} rows high, and from here there is room for ${Math.max(0, table.rows.length - startRow)}: add depths first`;
  }
  return null;
}

/** The table's own places, exactly enough to be found again. */
function depthText(table: ReadingTable, row: number): string {
  return `${table.rows[row]!.seenZ.toFixed(6)} mm`;
}

function clockOf(table: ReadingTable, column: number): string {
  return hourText(table.clocks[column]!.seen, true);
}
