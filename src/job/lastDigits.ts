/**
 * A reading of which only the last digits are typed: `143` for 2.0143. The digits cover a tenth of an inch or a whole
 * millimetre, more than a bore that can be mended by hand is out by anywhere, and the leading ones are those that bring
 * the figure nearest to what was read before. Where two figures lie about as near, none is chosen.
 */
import type { Unit } from './schema.ts';

/** What completes last digits. */
export interface Stem {
  /** How many digits are typed. */
  readonly digits: number;
  /** Decimals of the whole figure. */
  readonly decimals: number;
  /** What the figure lies near, in the unit typed. */
  readonly near: number;
  /** Decimal mark of the readings before. */
  readonly point: '.' | ',';
  /** One turn of the digits, in the unit typed: 0.1 in, 1 mm. */
  readonly span: number;
}

/** A figure further than this share of a turn from what is near could as well be the next one up or down. */
const SURE_SHARE = 0.3;
const FEWEST_DIGITS = 2;

/**
 * What the readings so far allow to be left out.
 *
 * @param texts readings that count, as typed in `unit`, the newest last; those with a sign or a unit are passed over
 * @returns null where the whole figure must be typed: no plain decimal yet, too few decimals, or sizes so small that
 * the digits would say all of it (a needle's)
 */
export function stemOf(texts: readonly string[], unit: Unit): Stem | null {
  const plain = texts
    .map((text) => /^(\d+)([.,])(\d+)$/.exec(text.trim()))
    .filter((m) => m !== null);
  const last = plain.at(-1);
  if (last === undefined || unit === 'thou') return null;
  const decimals = last[3]!.length;
  const span = unit === 'in' ? 0.1 : 1;
  const digits = decimals - (unit === 'in' ? 1 : 0);
  const near = middle(plain.map((found) => Number(`${found[1]}.${found[3]}`)));
  if (!(digits >= FEWEST_DIGITS) || !(near > 2 * span)) return null;
  return { digits, decimals, near, point: last[2] === ',' ? ',' : '.', span };
}

/** The median: one slip among the readings must not move the leading digits. */
function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

export type Completed =
  | { readonly ok: true; readonly text: string }
  /** Both figures that it could be. */
  | { readonly ok: false; readonly either: readonly [string, string] };

/** One reading as typed, whole; anything but exactly the last digits stays as it is. */
export function completeReading(typed: string, stem: Stem): Completed {
  const text = typed.trim();
  if (!/^\d+$/.test(text) || text.length !== stem.digits) return { ok: true, text };
  const tail = Number(text) / 10 ** stem.decimals;
  const turn = Math.round((stem.near - tail) / stem.span);
  const at = (k: number) => (k * stem.span + tail).toFixed(stem.decimals).replace('.', stem.point);
  const off = stem.near - tail - turn * stem.span;
  if (Math.abs(off) <= SURE_SHARE * stem.span) return { ok: true, text: at(turn) };
  const other = turn + Math.sign(off);
  return { ok: false, either: [at(Math.min(turn, other)), at(Math.max(turn, other))] };
}

/** A cell's text, repeats and all (`143; 145`); the first reading that could be two figures ends it. */
export function completeCell(typed: string, stem: Stem): Completed {
  const whole: string[] = [];
  for (const part of typed.split(';')) {
    const done = completeReading(part, stem);
    if (!done.ok) return done;
    whole.push(done.text);
  }
  return { ok: true, text: whole.join('; ') };
}
