/** Figures in sentences and tables, looked for among the numbers of a report. */
import type { Units } from '../../src/job/schema.ts';

/** All numbers of what is not a field over the wall; a sentence is no number. */
export function numbersOf(value: unknown, left: ReadonlySet<string> = FIELDS): number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value))
    return isField(value) ? [] : value.flatMap((one) => numbersOf(one, left));
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, one]) => (left.has(key) ? [] : numbersOf(one, left)));
}

/** Rows of numbers are a field over the wall. */
function isField(rows: readonly unknown[]): boolean {
  const numbers = (row: unknown) =>
    Array.isArray(row) &&
    row.length > 0 &&
    row.every((one) => one === null || typeof one === 'number');
  return rows.length > 0 && rows.every(numbers);
}
export const FIELDS: ReadonlySet<string> = new Set(['removal', 'deviation', 'theta', 'z']);

/** Degrees clockwise from 12, of whatever is named a clock. */
function clocksOf(value: unknown): number[] {
  if (Array.isArray(value)) return value.flatMap(clocksOf);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, one]) =>
    /clock$/i.test(key) && typeof one === 'number' ? [one] : clocksOf(one),
  );
}

/** A rule of the trade stands in two units at once, and is no figure of this bore. */
export const RULES = /[\d.]+(?: to [\d.]+)? in \([\d.]+(?: to [\d.]+)? mm\)/g;
export const FIGURE = /\d+\.\d+/g;

/** What the report's number is in the unit that is written. Exact by definition, but for the pound of force (to 8 digits). */
const POUND = 4.4482216;
const WRITTEN: Readonly<Record<string, (n: number) => number>> = {
  in: (n) => n / 25.4,
  thou: (n) => n / 0.0254,
  mm: (n) => n,
  '0.01 mm': (n) => 100 * n,
  lb: (n) => n / POUND,
  'tons of 2000 lb': (n) => n / POUND / 2000,
  'lb ft': (n) => n / POUND / 304.8,
  kN: (n) => n / 1000,
  t: (n) => n / 9806.65,
  'N m': (n) => n / 1000,
  psi: (n) => (n * 25.4 * 25.4) / POUND,
  MPa: (n) => n,
  GPa: (n) => n / 1000,
  '%': (n) => 100 * n,
  '°F': (n) => 1.8 * n + 32,
  '°C': (n) => n,
  seconds: (n) => n,
  minutes: (n) => n / 60,
  'W/m²K': (n) => n,
  kW: (n) => n,
};
/** Written to two digits that count. */
const TWO_DIGITS = new Set(['lb', 'tons of 2000 lb', 'lb ft', 'kN', 't', 'N m', 'psi', 'MPa']);

const UNIT = Object.keys(WRITTEN)
  .sort((a, b) => b.length - a.length)
  .join('|');
const WITH_UNIT = new RegExp(`([−-]?\\d+(?:\\.\\d+)?) (${UNIT})(?![\\wµ²])`, 'g');
const CLOCK = /\b(\d{1,2}):([0-5]\d)\b|\b(\d{1,2}) o’clock/g;
/** A pair is one direction and its opposite. */
const PAIR = /\b(\d{1,2})(?::(\d\d))?–\d{1,2}(?::\d\d)?/g;
/** Clocks are written to a quarter of an hour. */
const NEAR = 3.75 + 1e-6;

/** Every figure of the lines that the report does not hold, and the line. */
export function untold(lines: readonly string[], report: unknown, units: Units, left = FIELDS) {
  const numbers = numbersOf(report, left);
  const clocks = clocksOf(report);
  return lines.flatMap((whole) => {
    const line = whole.replace(RULES, '');
    const missing: string[] = [];
    const rest = line.replace(WITH_UNIT, (_, text: string, unit: string) => {
      if (!found(text, unit, numbers)) missing.push(`${text} ${unit} of: ${line}`);
      return '';
    });
    for (const [text] of rest.matchAll(FIGURE)) {
      if (!found(text, units, numbers) && !found(text, 'mm', numbers))
        missing.push(`${text} of: ${line}`);
    }
    for (const [text, hour, minute, bare] of rest.replace(PAIR, '').matchAll(CLOCK)) {
      if (!atClock(clocks, Number(hour ?? bare), Number(minute ?? 0), 360))
        missing.push(`${text} of: ${line}`);
    }
    for (const [text, hour, minute] of rest.matchAll(PAIR)) {
      if (!atClock(clocks, Number(hour), Number(minute ?? 0), 180))
        missing.push(`${text} of: ${line}`);
    }
    return missing;
  });
}

/** Half a last digit may be rounded either way; a sign is often told in words. */
function found(text: string, unit: string, numbers: readonly number[]): boolean {
  const value = Math.abs(Number(text.replace('−', '-')));
  const decimals = text.split('.')[1]?.length ?? 0;
  const last = TWO_DIGITS.has(unit) && value > 0 ? Math.floor(Math.log10(value)) - 1 : -decimals;
  const half = 0.5 * 10 ** Math.max(last, -decimals) * (1 + 1e-9);
  const to = WRITTEN[unit]!;
  return numbers.some((n) => Math.abs(Math.abs(to(n)) - value) <= half);
}

function atClock(clocks: readonly number[], hour: number, minute: number, turn: number): boolean {
  const degrees = 30 * (hour + minute / 60);
  return clocks.some((one) => {
    const apart = Math.abs(one - degrees) % turn;
    return Math.min(apart, turn - apart) <= NEAR;
  });
}
