/** CSV as text: records of fields with the line that each begins on. RFC 4180, and what spreadsheets make of it. */

export interface CsvRecord {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly fields: readonly string[];
}

export type CsvText =
  | { readonly ok: true; readonly records: readonly CsvRecord[] }
  | { readonly ok: false; readonly line: number; readonly why: string };

/**
 * Fields separated by whichever of tab, `;` and `,` the first line has, in that order; quoted fields may hold
 * separators, line ends and doubled quotes. A byte order mark, either kind of line end and empty lines are
 * passed over; fields are trimmed.
 */
export function readCsvText(text: string): CsvText {
  const plain = text.replace(/^\uFEFF/, '');
  const separator = separatorOf(plain);
  const records: CsvRecord[] = [];
  let at = 0;
  let line = 1;
  while (at < plain.length) {
    const record = readRecord(plain, at, separator);
    if (record === null)
      return { ok: false, line, why: 'a quotation mark is opened and not closed' };
    if (record.fields.some((field) => field !== '')) records.push({ line, fields: record.fields });
    line += record.lines;
    at = record.end;
  }
  return { ok: true, records };
}

function separatorOf(text: string): string {
  const first = text.trimStart().split(/\r|\n/, 1)[0] ?? '';
  return ['\t', ';'].find((one) => first.includes(one)) ?? ',';
}

/** The record that starts at `from`, where the next one starts, and how many line ends it spans. */
function readRecord(text: string, from: number, separator: string) {
  const fields: string[] = [];
  let lines = 0;
  let at = from;
  for (;;) {
    const field = readField(text, at, separator);
    if (field === null) return null;
    fields.push(field.value);
    lines += field.lines;
    at = field.end;
    if (text[at] !== separator) break;
    at++;
  }
  if (text[at] === '\r' && text[at + 1] === '\n') at++;
  return { fields, lines: lines + 1, end: at + 1 };
}

function readField(text: string, from: number, separator: string) {
  const opening = skipSpaces(text, from, separator);
  if (text[opening] !== '"') {
    const end = plainEnd(text, from, separator);
    return { value: text.slice(from, end).trim(), lines: 0, end };
  }
  let value = '';
  let at = opening + 1;
  for (;;) {
    const quote = text.indexOf('"', at);
    if (quote < 0) return null;
    value += text.slice(at, quote);
    at = quote + 1;
    if (text[at] !== '"') break;
    value += '"';
    at++;
  }
  // an inch mark straight after the closing quote is kept as part of the text, as some programs write it
  const end = plainEnd(text, at, separator);
  const lines = value.split('\n').length - 1;
  return { value: (value + text.slice(at, end)).trim(), lines, end };
}

function skipSpaces(text: string, from: number, separator: string): number {
  let at = from;
  while (text[at] === ' ' && separator !== ' ') at++;
  return at;
}

function plainEnd(text: string, from: number, separator: string): number {
  let at = from;
  while (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
}

/** A field as it is written back: quoted where it must be. */
export function csvField(value: string): string {
  return /["\r\n,;\t]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;
}
