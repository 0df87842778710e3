/** Points read from CSV text: the names in the header and one array of numbers for each. */
export interface Points {
  names: string[];
  columns: Float64Array[];
}

const HEADERS = ['x,y', 'x,y,z'];
const WANTED = 'the first line must be x,y or x,y,z, then one point a line';
const SHOWN = 40;

/**
 * Reads CSV with the header `x,y` or `x,y,z`. Spaces around numbers, either kind of line end and
 * empty lines at the end are allowed; nothing is guessed or left out.
 *
 * @returns the points, or one sentence that names line, row (from 0) and column of what is wrong
 */
export function readPoints(text: string): Points | { error: string } {
  const start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const end = lastMark(text) + 1;
  if (end <= start) return { error: `the file is empty; ${WANTED}` };
  const newline = text.indexOf('\n', start);
  const headerEnd = newline < 0 || newline > end ? end : newline;
  const names = headerNames(text.slice(start, Math.min(headerEnd, start + 1000)));
  if (!HEADERS.includes(names.join(','))) {
    return { error: `line 1: the header is ${quoted(text.slice(start, headerEnd))}; ${WANTED}` };
  }
  if (headerEnd === end) return { error: 'there are no points below the header' };
  const columns = names.map(() => new Float64Array(linesBetween(text, headerEnd + 1, end)));
  const error = fill(text, headerEnd + 1, end, names, columns);
  return error === null ? { names, columns } : { error };
}

function headerNames(line: string): string[] {
  return line.split(',').map((name) => name.trim().toLowerCase());
}

/** Where the last character that is not blank stands; -1 when there is none. */
function lastMark(text: string): number {
  let at = text.length - 1;
  while (at >= 0 && text.charCodeAt(at) <= 32) at--;
  return at;
}

function linesBetween(text: string, from: number, end: number): number {
  let lines = 1;
  for (let at = text.indexOf('\n', from); at >= 0 && at < end; at = text.indexOf('\n', at + 1)) {
    lines++;
  }
  return lines;
}

/** Fills the columns; the sentence about the first fault, or null. */
function fill(
  text: string,
  from: number,
  end: number,
  names: string[],
  columns: Float64Array[],
): string | null {
  const last = names.length - 1;
  const count = columns[0]!.length;
  let at = from;
  for (let row = 0; row < count; row++) {
    for (let c = 0; c <= last; c++) {
      const stop = cellEnd(text, at, end);
      const value = numberIn(text, at, stop);
      const closed = stop < end && text.charCodeAt(stop) === COMMA;
      if (!Number.isFinite(value) || closed !== c < last) {
        return fault(text, rowStart(text, at), end, row, names);
      }
      columns[c]![row] = value;
      at = stop + 1;
    }
  }
  return null;
}

const COMMA = 44;
const NEWLINE = 10;

function cellEnd(text: string, from: number, end: number): number {
  let at = from;
  while (at < end) {
    const code = text.charCodeAt(at);
    if (code === COMMA || code === NEWLINE) return at;
    at++;
  }
  return end;
}

/** Ten to the power of the index; all are exact doubles. */
const TENS = Array.from({ length: 23 }, (_, i) => 10 ** i);

/**
 * The number in a cell, NaN when it is none. A whole number below 2^53 over a power of ten up to
 * 10^22 is rounded once, so this short way gives the same double as the language's own reading
 * (W. D. Clinger, PLDI 1990); anything else is left to that.
 */
function numberIn(text: string, from: number, stop: number): number {
  let at = from;
  const negative = text.charCodeAt(at) === 45;
  if (negative) at++;
  let whole = 0;
  let digits = 0;
  let point = -1;
  for (; at < stop; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      digits++;
    } else if (digit === -2 && point < 0) point = digits;
    else break;
  }
  if (at < stop || digits === 0 || digits > 15) return slowNumber(text.slice(from, stop));
  const value = point < 0 ? whole : whole / TENS[digits - point]!;
  return negative ? -value : value;
}

function slowNumber(cell: string): number {
  const trimmed = cell.trim();
  // The language reads an empty cell as 0 and 0x10 as 16: no gauge writes those.
  return /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(trimmed) ? Number(trimmed) : Number.NaN;
}

function rowStart(text: string, at: number): number {
  return text.lastIndexOf('\n', at - 1) + 1;
}

/** One sentence about the row that starts at `from`. */
function fault(text: string, from: number, end: number, row: number, names: string[]): string {
  const newline = text.indexOf('\n', from);
  const line = text.slice(from, newline < 0 || newline > end ? end : newline);
  const place = `line ${row + 2} (row ${row}, counted from 0)`;
  if (line.trim() === '') return `${place} is empty; ${names.join(',')} is wanted`;
  const cells = line.split(',');
  if (cells.length !== names.length) {
    return `${place} has ${cells.length} ${cells.length === 1 ? 'column' : 'columns'}; ${names.length} are wanted: ${names.join(',')}`;
  }
  const c = cells.findIndex((cell) => !Number.isFinite(slowNumber(cell)));
  const cell = cells[c]!.trim();
  const what = cell === '' ? 'nothing is there' : `${quoted(cell)} is not a finite number`;
  return `${place}, column ${names[c]}: ${what}; a number such as 25.013 is wanted`;
}

function quoted(piece: string): string {
  const trimmed = piece.trim();
  return JSON.stringify(trimmed.length > SHOWN ? `${trimmed.slice(0, SHOWN)}…` : trimmed);
}
