/**
 * Clock positions: as typed, as radians, as words.
 *
 * Radians run clockwise from 12 o'clock seen looking in at face A, in [0, 2 pi). From face B the clock is the
 * mirror image: 3 o'clock there is 9 o'clock from face A.
 */
import type { Face } from './schema.ts';

const TURN = 2 * Math.PI;
const HOUR = TURN / 12;
/** Clock positions closer than this (about 0.006 degrees) are the same place. */
export const SAME_CLOCK = 1e-4;

export type ClockRead =
  | { readonly ok: true; readonly theta: number }
  | { readonly ok: false; readonly why: string };

/** An angle brought into [0, turn). */
export function wrapAngle(angle: number, turn: number = TURN): number {
  const rest = angle - turn * Math.floor(angle / turn);
  return rest >= turn ? 0 : rest;
}

/** Smallest distance between two angles on a circle of the given period, radians, never negative. */
export function angleApart(a: number, b: number, turn: number = TURN): number {
  const apart = wrapAngle(a - b, turn);
  return Math.min(apart, turn - apart);
}

/**
 * A typed clock position: hours (`4:30`, `4`, `12`, `4.5`), a pair of opposite hours (`12-6`: its first), or
 * degrees (`135d`, `135°`).
 *
 * @param face the face it was seen from; B is mirrored
 * @returns theta in radians as seen from face A, or one sentence why not; '' for an empty text
 */
export function readClock(text: string, face: Face = 'A'): ClockRead {
  const plain = text.replace(/\s+/g, ' ').trim();
  if (plain === '') return { ok: false, why: '' };
  const turned = readDegrees(plain) ?? readPair(plain) ?? readHours(plain);
  if (typeof turned === 'string') return { ok: false, why: `“${plain}” ${turned}` };
  return { ok: true, theta: face === 'B' ? wrapAngle(-turned) : turned };
}

/** As `readClock`, NaN for what is absent or cannot be understood. */
export function clockTheta(text: string | undefined, face: Face = 'A'): number {
  const read = readClock(text ?? '', face);
  return read.ok ? read.theta : Number.NaN;
}

function readDegrees(plain: string): number | string | null {
  const found = /^([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+) ?(?:d|deg|degrees?|°)$/i.exec(
    plain.replace('−', '-'),
  );
  if (found === null) return null;
  const degrees = Number(found[2]!.replace(',', '.'));
  if (!(degrees <= 360)) return 'is more than a full turn: type 0d to 360d';
  return wrapAngle(((found[1] === '-' ? -degrees : degrees) * Math.PI) / 180);
}

function readPair(plain: string): number | string | null {
  const found = /^(\d{1,2}(?::\d\d)?) ?[-–−] ?(\d{1,2}(?::\d\d)?)$/.exec(plain);
  if (found === null) return null;
  const first = readHours(found[1]!);
  const second = readHours(found[2]!);
  if (typeof first === 'string') return first;
  if (typeof second === 'string') return second;
  if (angleApart(first, second + Math.PI) > SAME_CLOCK) {
    return 'is no pair of opposite clock positions: type 12-6, 1-7, 1:30-7:30 and so on';
  }
  return first;
}

function readHours(plain: string): number | string {
  const bare = plain.replace(/ ?(o['’]?clock|h)$/i, '');
  const minutes = /^(\d{1,2}):(\d\d)$/.exec(bare);
  if (minutes !== null) {
    if (!(Number(minutes[2]) < 60)) return 'has more than 59 minutes';
    return hoursToTheta(Number(minutes[1]) + Number(minutes[2]) / 60);
  }
  if (!/^(\d{1,2}([.,]\d*)?|[.,]\d+)$/.test(bare)) {
    return 'is no clock position: type hours such as 4:30 or degrees such as 135d';
  }
  if (/[.,](15|30|45)$/.test(bare)) {
    return `could be minutes or a decimal of an hour: type ${bare.replace(/[.,]/, ':')} for minutes`;
  }
  return hoursToTheta(Number(bare.replace(',', '.')));
}

function hoursToTheta(hours: number): number | string {
  if (!(hours < 13)) return 'is not on the clock: hours go from 1 to 12';
  return wrapAngle(hours * HOUR);
}

/**
 * Clock position in words: `2:30`, minutes rounded to 5. With `exact` the text reads back as the same angle:
 * whole minutes as hours, anything finer as degrees (`137.25d` is `137.25d`). NaN: an en dash.
 */
export function clockText(theta: number, exact = false): string {
  if (Number.isNaN(theta)) return '–';
  const minutes = (wrapAngle(theta) / HOUR) * 60;
  if (exact && Math.abs(minutes - Math.round(minutes)) > 1e-7) {
    const degrees = ((wrapAngle(theta) * 180) / Math.PI).toFixed(9);
    return `${degrees.replace(/\.?0+$/, '')}d`;
  }
  return hoursAndMinutes(exact ? Math.round(minutes) : 5 * Math.round(minutes / 5));
}

/** As short as it goes, for the head of a column: `3`, `4:30`. */
export function hourText(theta: number, exact = false): string {
  return clockText(theta, exact).replace(/:00$/, '');
}

/** The pair of opposite clock positions that a two-point gauge reads across: `12–6`, `1:30–7:30`. */
export function pairText(theta: number): string {
  const first = wrapAngle(Math.round((theta / HOUR) * 12) * (HOUR / 12), Math.PI);
  return `${hourText(first)}–${hourText(first + Math.PI)}`;
}

function hoursAndMinutes(minutes: number): string {
  const within = minutes % 720;
  const hour = Math.floor(within / 60);
  return `${hour === 0 ? 12 : hour}:${String(within % 60).padStart(2, '0')}`;
}
