/** Tables of numbers from the bytes of a CSV file: as quick as a million rows want it, and one sentence for a fault. */
import {
  type Column,
  clipped,
  headerOf,
  type LayoutOf,
  layoutOfScan,
  quoted,
} from './pointsCells.ts';
import { isBlank } from './pointsNumber.ts';

/** Columns read from CSV. */
export interface PointsTable {
  readonly layout: readonly Column[];
  /** One for each column that is not passed over, of one length, every number finite. */
  readonly columns: readonly Float64Array[];
}

/** The rows of a file: the bytes from the end of the header line to the last mark. */
interface Body {
  bytes: Uint8Array;
  from: number;
  end: number;
  /** the byte that ends a line */
  newline: number;
}

const TAB = 9;
const NEWLINE = 10;
const RETURN = 13;
const COMMA = 44;
const SEMICOLON = 59;
const TEXT = new TextDecoder();
/** Bytes looked at in a first line: more is no header. */
const HEAD = 1000;
const SEPARATORS: readonly (readonly [name: string, pattern: RegExp])[] = [
  ['semicolons', /;/],
  ['tabs', /\t/],
  ['spaces', / +/],
];

/**
 * Reads CSV, one row of cells a line below a header. Blanks around cells, any kind of line end and empty lines at the end
 * are allowed; nothing is guessed or left out.
 *
 * @param bytes the file in UTF-8
 * @param layoutOf which headers there are
 * @param headers the same in words, for whoever wrote another: `x,y or x,y,z`
 * @returns the columns, or one sentence without a full stop that names line, row (from 0) and column of what is wrong
 */
export function readTable(
  bytes: Uint8Array,
  layoutOf: LayoutOf,
  headers: string,
): PointsTable | { error: string } {
  const wanted = `the first line must be ${headers}, then one point a line`;
  if (isWide(bytes)) {
    return { error: 'the file is in UTF-16; save it as CSV in UTF-8' };
  }
  const start = startOf(bytes);
  const end = lastMark(bytes, start) + 1;
  if (end === start) return { error: `the file is empty; ${wanted}` };
  const newline = lineEnd(bytes, start);
  const headerEnd = stopOfLine(bytes, start, end, newline);
  const layout = layoutIn(bytes, start, headerEnd, layoutOf, wanted);
  if ('error' in layout) return layout;
  if (headerEnd === end) return { error: 'there are no points below the header' };
  return readRows({ bytes, from: headerEnd + 1, end, newline }, layout);
}

/** Points of a scanner or measuring arm: x, y and z. */
export function readScan(
  bytes: Uint8Array,
): [x: Float64Array, y: Float64Array, z: Float64Array] | { error: string } {
  const table = readTable(bytes, layoutOfScan, 'x,y,z');
  if ('error' in table) return table;
  const named = table.layout.filter(({ skipped }) => skipped !== true);
  const of = (name: string) => table.columns[named.findIndex((column) => column.name === name)]!;
  return [of('x'), of('y'), of('z')];
}

/** Whether the first line names x, y and z, however its columns are parted. */
export function isScan(bytes: Uint8Array): boolean {
  const start = startOf(bytes);
  const stop = stopOfLine(
    bytes,
    start,
    Math.min(bytes.length, start + HEAD),
    lineEnd(bytes.subarray(0, start + HEAD), start),
  );
  const names = TEXT.decode(bytes.subarray(start, stop)).toLowerCase();
  return [/,/, ...SEPARATORS.map(([, pattern]) => pattern)].some(
    (pattern) => layoutOfScan(names.split(pattern).map((name) => name.trim())) !== undefined,
  );
}

function startOf(bytes: Uint8Array): number {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
}

/** Whether the file begins with the byte-order mark of UTF-16, either way round. */
function isWide(bytes: Uint8Array): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}

/** Where the last byte that is not blank stands; start - 1 when there is none. */
function lastMark(bytes: Uint8Array, start: number): number {
  let at = bytes.length - 1;
  while (at >= start && isBlank(bytes[at]!)) at--;
  return at;
}

/** The byte that ends lines: a carriage return where the first line ends in one alone. */
function lineEnd(bytes: Uint8Array, start: number): number {
  const at = bytes.indexOf(RETURN, start);
  if (at < 0 || at + 1 === bytes.length || bytes[at + 1] === NEWLINE) return NEWLINE;
  const newline = bytes.indexOf(NEWLINE, start);
  return newline < 0 || newline > at ? RETURN : NEWLINE;
}

function stopOfLine(bytes: Uint8Array, from: number, end: number, newline: number): number {
  const at = bytes.indexOf(newline, from);
  return at < 0 || at > end ? end : at;
}

function layoutIn(
  bytes: Uint8Array,
  start: number,
  headerEnd: number,
  layoutOf: LayoutOf,
  wanted: string,
): readonly Column[] | { error: string } {
  const stop = Math.min(headerEnd, start + HEAD);
  const strange = bytes.subarray(start, stop).find((byte) => byte < 32 && !isBlank(byte));
  if (strange !== undefined) {
    return { error: `line 1 holds a byte of value ${strange}, so this is no text; ${wanted}` };
  }
  const line = TEXT.decode(bytes.subarray(start, stop)).trim().toLowerCase();
  const named = (names: readonly string[]) => layoutOf(names.map((name) => name.trim()));
  const found = named(line.split(','));
  if (found !== undefined) return found;
  for (const [name, pattern] of SEPARATORS) {
    const meant = named(line.split(pattern));
    if (meant === undefined) continue;
    return {
      error: `line 1: the columns are parted by ${name}; commas are wanted, and points in decimals: ${headerOf(meant)}`,
    };
  }
  return { error: `line 1: the header is ${quoted(clipped(bytes, start, headerEnd))}; ${wanted}` };
}

function readRows(body: Body, layout: readonly Column[]): PointsTable | { error: string } {
  const count = linesIn(body);
  const columns = layout.map(({ skipped }) => (skipped === true ? null : new Float64Array(count)));
  const error = fill(body, layout, columns, count);
  if (error !== null) return { error };
  return { layout, columns: columns.filter((column) => column !== null) };
}

function linesIn({ bytes, from, end, newline }: Body): number {
  let lines = 1;
  for (let at = bytes.indexOf(newline, from); at >= 0 && at < end; ) {
    lines++;
    at = bytes.indexOf(newline, at + 1);
  }
  return lines;
}

/** Fills the columns; the sentence about the first fault, or null. */
function fill(
  body: Body,
  layout: readonly Column[],
  columns: readonly (Float64Array | null)[],
  count: number,
): string | null {
  const { bytes, end } = body;
  const last = layout.length - 1;
  let at = body.from;
  for (let row = 0; row < count; row++) {
    const rowStart = at;
    for (let c = 0; c <= last; c++) {
      const stop = cellEnd(body, at, end);
      const value = layout[c]!.read(bytes, at, stop);
      const closed = stop < end && bytes[stop] === COMMA;
      if (!Number.isFinite(value) || closed !== c < last) return fault(body, rowStart, row, layout);
      const column = columns[c];
      if (column != null) column[row] = value;
      at = stop + 1;
    }
  }
  return null;
}

function cellEnd({ bytes, newline }: Body, from: number, end: number): number {
  let at = from;
  while (at < end) {
    const byte = bytes[at];
    if (byte === COMMA || byte === newline) return at;
    at++;
  }
  return end;
}

/** One sentence about the row that starts at `from`. */
function fault(body: Body, from: number, row: number, layout: readonly Column[]): string {
  const { bytes, end, newline } = body;
  const stop = stopOfLine(bytes, from, end, newline);
  const line = bytes.subarray(from, stop);
  const place = `line ${row + 2} (row ${row}, counted from 0)`;
  if (line.includes(0)) {
    return `${place} holds a byte of value 0, so this is no text; CSV such as a spreadsheet saves is wanted`;
  }
  if (line.every(isBlank)) return `${place} is empty; ${headerOf(layout)} is wanted`;
  const cells = countOf(line, COMMA) + 1;
  if (cells !== layout.length) {
    const found = `${place} has ${cells} ${cells === 1 ? 'column' : 'columns'}`;
    return `${found}; ${layout.length} are wanted: ${headerOf(layout)}${hint(line, cells, layout.length)}`;
  }
  let at = from;
  for (const { name, read, wanted, why } of layout) {
    const cellStop = cellEnd(body, at, stop);
    if (!Number.isFinite(read(bytes, at, cellStop))) {
      const cell = clipped(bytes, at, cellStop);
      const what = cell === '' ? `nothing is there; ${wanted}` : why(cell);
      return `${place}, column ${name}: ${what}`;
    }
    at = cellStop + 1;
  }
  throw new Error(`${place} reads well, yet it was refused`);
}

/** What may have been meant by a row with another number of columns, as a clause; '' when nothing is plain. */
function hint(line: Uint8Array, cells: number, wanted: number): string {
  if (cells === 2 * wanted) return ', with points, not commas, in decimals';
  const parted = cells < wanted && (countOf(line, SEMICOLON) > 0 || countOf(line, TAB) > 0);
  return parted ? ', parted by commas' : '';
}

function countOf(line: Uint8Array, byte: number): number {
  let count = 0;
  for (let at = 0; at < line.length; at++) if (line[at] === byte) count++;
  return count;
}
