import { pointsFromRadii } from '../geometry/polar.ts';
import { type Column, clipped, headerOf, LAYOUTS, quoted } from './pointsCells.ts';
import { isBlank } from './pointsNumber.ts';

/** Points read from CSV. */
export interface Points {
  /** as in the file, blanks left out: `x,y`, `x,y,z`, `clock,radius` or `clock,depth,radius` */
  header: string;
  /** x and y, or x, y and z, whatever the header */
  names: string[];
  /** one for each name, of one length, every number finite */
  columns: Float64Array[];
}

/** The rows of a file: the bytes from the end of the header line to the last mark. */
interface Body {
  bytes: Buffer;
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
const WANTED = `the first line must be ${LAYOUTS.map(headerOf).join(' or ')}, then one point a line`;
/** Bytes looked at in a first line: more is no header. */
const HEAD = 1000;
const SEPARATORS: readonly (readonly [name: string, pattern: RegExp])[] = [
  ['semicolons', /;/],
  ['tabs', /\t/],
  ['spaces', / +/],
];

/**
 * Reads CSV with the header `x,y` or `x,y,z`, or with radii about a datum axis: `clock,radius` or
 * `clock,depth,radius`, the clock as in readings, seen from face A, and turned to x, y and z here.
 * Blanks around cells, any kind of line end and empty lines at the end are allowed; nothing is
 * guessed or left out.
 *
 * @param csv the bytes of the file in UTF-8; a short text will do
 * @returns the points, or one sentence without a full stop that names line, row (from 0) and column
 *   of what is wrong
 */
export function readPoints(csv: Uint8Array | string): Points | { error: string } {
  const bytes =
    typeof csv === 'string'
      ? Buffer.from(csv)
      : Buffer.from(csv.buffer, csv.byteOffset, csv.byteLength);
  if (isWide(bytes)) {
    return { error: 'the file is in UTF-16; save it as CSV in UTF-8' };
  }
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  const end = lastMark(bytes, start) + 1;
  if (end === start) return { error: `the file is empty; ${WANTED}` };
  const newline = lineEnd(bytes, start);
  const headerEnd = stopOfLine(bytes, start, end, newline);
  const layout = layoutOf(bytes, start, headerEnd);
  if ('error' in layout) return layout;
  if (headerEnd === end) return { error: 'there are no points below the header' };
  return readRows({ bytes, from: headerEnd + 1, end, newline }, layout);
}

/** Whether the file begins with the byte-order mark of UTF-16, either way round. */
function isWide(bytes: Buffer): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}

/** Where the last byte that is not blank stands; start - 1 when there is none. */
function lastMark(bytes: Buffer, start: number): number {
  let at = bytes.length - 1;
  while (at >= start && isBlank(bytes[at]!)) at--;
  return at;
}

/** The byte that ends lines: a carriage return where the first line ends in one alone. */
function lineEnd(bytes: Buffer, start: number): number {
  const at = bytes.indexOf(RETURN, start);
  if (at < 0 || at + 1 === bytes.length || bytes[at + 1] === NEWLINE) return NEWLINE;
  const newline = bytes.indexOf(NEWLINE, start);
  return newline < 0 || newline > at ? RETURN : NEWLINE;
}

function stopOfLine(bytes: Buffer, from: number, end: number, newline: number): number {
  const at = bytes.indexOf(newline, from);
  return at < 0 || at > end ? end : at;
}

function layoutOf(
  bytes: Buffer,
  start: number,
  headerEnd: number,
): readonly Column[] | { error: string } {
  const stop = Math.min(headerEnd, start + HEAD);
  const strange = bytes.subarray(start, stop).find((byte) => byte < 32 && !isBlank(byte));
  if (strange !== undefined) {
    return { error: `line 1 holds a byte of value ${strange}, so this is no text; ${WANTED}` };
  }
  const line = bytes.toString('utf8', start, stop).trim().toLowerCase();
  const found = layoutNamed(line.split(','));
  if (found !== undefined) return found;
  for (const [name, pattern] of SEPARATORS) {
    const meant = layoutNamed(line.split(pattern));
    if (meant === undefined) continue;
    return {
      error: `line 1: the columns are parted by ${name}; commas are wanted, and points in decimals: ${headerOf(meant)}`,
    };
  }
  return { error: `line 1: the header is ${quoted(clipped(bytes, start, headerEnd))}; ${WANTED}` };
}

function layoutNamed(names: string[]): readonly Column[] | undefined {
  const header = names.map((name) => name.trim()).join(',');
  return LAYOUTS.find((layout) => headerOf(layout) === header);
}

function readRows(body: Body, layout: readonly Column[]): Points | { error: string } {
  const count = linesIn(body);
  const columns = layout.map(() => new Float64Array(count));
  const error = fill(body, layout, columns);
  if (error !== null) return { error };
  const header = headerOf(layout);
  const radii = columns[layout.findIndex(({ name }) => name === 'radius')];
  if (radii === undefined) return { header, names: header.split(','), columns };
  const flat = pointsFromRadii(columns[0]!, radii);
  return layout.length === 2
    ? { header, names: ['x', 'y'], columns: flat }
    : { header, names: ['x', 'y', 'z'], columns: [...flat, columns[1]!] };
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
function fill(body: Body, layout: readonly Column[], columns: Float64Array[]): string | null {
  const { bytes, end } = body;
  const last = layout.length - 1;
  const count = columns[0]!.length;
  let at = body.from;
  for (let row = 0; row < count; row++) {
    const rowStart = at;
    for (let c = 0; c <= last; c++) {
      const stop = cellEnd(body, at, end);
      const value = layout[c]!.read(bytes, at, stop);
      const closed = stop < end && bytes[stop] === COMMA;
      if (!Number.isFinite(value) || closed !== c < last) return fault(body, rowStart, row, layout);
      columns[c]![row] = value;
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
function hint(line: Buffer, cells: number, wanted: number): string {
  if (cells === 2 * wanted) return ', with points, not commas, in decimals';
  const parted = cells < wanted && (countOf(line, SEMICOLON) > 0 || countOf(line, TAB) > 0);
  return parted ? ', parted by commas' : '';
}

function countOf(line: Buffer, byte: number): number {
  let count = 0;
  for (let at = 0; at < line.length; at++) if (line[at] === byte) count++;
  return count;
}
