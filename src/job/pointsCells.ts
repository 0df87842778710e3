/** The columns that points may be given in: how a cell of each is read, and what is said of one that cannot be. */
import { readClock } from './clock.ts';
import { isBlank, numberIn } from './pointsNumber.ts';

export interface Column {
  name: string;
  /** the cell as a finite number, or as one that is not finite where it cannot be read */
  read: (bytes: Uint8Array, from: number, stop: number) => number;
  /** what a cell should look like */
  wanted: string;
  /** why a cell, trimmed, not empty and cut short with … where it is long, cannot be read */
  why: (cell: string) => string;
  /** true where whatever stands there is passed over */
  skipped?: boolean;
}

const TEXT = new TextDecoder();
const SHOWN = 40;
const NUMBER = 'a number such as 25.013 is wanted';

function coordinate(name: string): Column {
  return {
    name,
    read: numberIn,
    wanted: NUMBER,
    why: (cell) => `${quoted(cell)} is not a finite number; ${NUMBER}`,
  };
}

/** Seen from face A: hours or degrees as in readings. A radius stands at one place, so no pair of them. */
const CLOCK: Column = {
  name: 'clock',
  read: (bytes, from, stop) => {
    const read = clockIn(clipped(bytes, from, stop));
    return read.ok ? read.theta : Number.NaN;
  },
  wanted: 'a clock position such as 4:30 or 135d is wanted',
  why: (cell) => {
    const read = clockIn(cell);
    return read.ok ? '' : read.why;
  },
};

function clockIn(cell: string): ReturnType<typeof readClock> {
  const read = readClock(cell);
  if (!read.ok || !/\d ?[-–−]/.test(cell)) return read;
  const why = `“${cell.trim()}” is a pair of clock positions; a radius is at one, such as 4:30 or 135d`;
  return { ok: false, why };
}

function plainNumber(cell: string): number {
  const bytes = new TextEncoder().encode(cell);
  return numberIn(bytes, 0, bytes.length);
}

const RADIUS: Column = {
  name: 'radius',
  read: (bytes, from, stop) => {
    const radius = numberIn(bytes, from, stop);
    return radius > 0 ? radius : Number.NaN;
  },
  wanted: NUMBER,
  why: (cell) =>
    Number.isFinite(plainNumber(cell))
      ? `${quoted(cell)} is no radius; a number above 0 such as 25.013 is wanted`
      : `${quoted(cell)} is not a finite number; ${NUMBER}`,
};

/** The header that names these columns, or undefined: every name in its place, in small letters. */
export type LayoutOf = (names: readonly string[]) => readonly Column[] | undefined;

/** Every header of points to be fitted. Radii are about a datum axis, depths along it. */
export const LAYOUTS: readonly (readonly Column[])[] = [
  [coordinate('x'), coordinate('y')],
  [coordinate('x'), coordinate('y'), coordinate('z')],
  [CLOCK, RADIUS],
  [CLOCK, coordinate('depth'), RADIUS],
];

export const layoutToFit: LayoutOf = (names) =>
  LAYOUTS.find((layout) => headerOf(layout) === names.join(','));

/** x, y and z once each, in any order, among whatever else a scanner writes. */
export const layoutOfScan: LayoutOf = (names) => {
  const once = ['x', 'y', 'z'].every((name) => names.filter((one) => one === name).length === 1);
  return once
    ? names.map((name) => (['x', 'y', 'z'].includes(name) ? coordinate(name) : passedOver(name)))
    : undefined;
};

function passedOver(name: string): Column {
  return { name, read: () => 0, wanted: '', why: () => '', skipped: true };
}

export function headerOf(columns: readonly Column[]): string {
  return columns.map(({ name }) => name).join(',');
}

/** The text of some bytes, trimmed, cut short with … where it is long. */
export function clipped(bytes: Uint8Array, from: number, stop: number): string {
  let first = from;
  while (first < stop && isBlank(bytes[first]!)) first++;
  // A character takes four bytes at most: one cut through at the end is past what is shown.
  const piece = TEXT.decode(bytes.subarray(first, Math.min(stop, first + 4 * SHOWN + 4)));
  const trimmed = piece.trim();
  return trimmed.length > SHOWN ? `${trimmed.slice(0, SHOWN)}…` : trimmed;
}

export function quoted(piece: string): string {
  return JSON.stringify(piece);
}
