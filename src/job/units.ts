/**
 * Lengths as people type them, turned into millimetres once; and millimetres written for people.
 *
 * Inside the program every length is millimetres. NaN is "not known"; it is written as an en dash.
 */
import type { Instrument, Typed, Unit, Units } from './schema.ts';

export const MM_PER_INCH = 25.4;
const MM_PER_THOU = 0.0254;

/** Below this a signed figure on an inch reading is inches over or under, not thou: nobody types 0.05 thou. */
const SIGNED_INCHES_BELOW = 0.05;

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
};

const SUFFIX = /\s*(mm|millimet(?:er|re)s?|in\.?|inch(?:es)?|thous?|thousandths?|"|″|”|'')$/i;

export type Understood =
  | { readonly ok: true; readonly mm: number; readonly echo: string }
  | { readonly ok: false; readonly why: string };

/** A number as typed, without unit: sign apart, so that `+3` and `3` can be told apart. */
interface Figure {
  readonly sign: '' | '+' | '-';
  readonly size: number;
}

/**
 * What a typed length means.
 *
 * Without `nominalMm` the text is a plain length, sign and all. With it the text is a reading: a signed text
 * is over or under the nominal size (`in`: thou, or inches where smaller than 0.05; `mm`: millimetres), and a
 * text in `thou` always is. An explicit suffix (`65.1mm`, `2.5"`, `3 thou`) overrides `typed.unit`.
 *
 * @param nominalMm nominal size of what is read; NaN: there should be one, but it is not known
 * @param way -1 where a figure over it means a smaller size: a needle turned about
 * @returns mm and an echo in plain decimals (`2.5030 in`), or one sentence why not; '' for an empty text
 */
export function readLength(typed: Typed, nominalMm?: number, way: 1 | -1 = 1): Understood {
  const plain = tidy(typed.text);
  if (plain === '') return { ok: false, why: '' };
  const { body, suffix } = splitSuffix(plain);
  const figure = readFigure(body);
  if (figure === null) return { ok: false, why: whyNot(typed.text, plain) };
  const unit = suffix ?? typed.unit;
  const signed = figure.sign === '-' ? -figure.size : figure.size;
  const over = nominalMm !== undefined && (figure.sign !== '' || unit === 'thou');
  if (!over) return understood(signed * mmPer(unit), unit);
  if (Number.isNaN(nominalMm)) return { ok: false, why: needsNominal(typed.text) };
  const thou = unit === 'thou' || (suffix === null && unit === 'in' && !isSmall(figure.size));
  return understood(nominalMm + way * signed * mmPer(thou ? 'thou' : unit), unit);
}

/** As `readLength`, but NaN for what is absent, empty or cannot be understood. */
export function lengthMm(typed: Typed | undefined, nominalMm?: number): number {
  if (typed === undefined) return Number.NaN;
  const read = readLength(typed, nominalMm);
  return read.ok ? read.mm : Number.NaN;
}

/**
 * What a signed reading of an instrument is over or under of: the nominal diameter for gauges that read across,
 * its half for radii, 0 for a needle; undefined for a wall, whose readings are plain lengths.
 */
export function readingNominal(instrument: Instrument, nominalMm: number): number | undefined {
  if (instrument === 'two-point' || instrument === 'three-leg') return nominalMm;
  if (instrument === 'radius') return nominalMm / 2;
  return instrument === 'sweep' ? 0 : undefined;
}

/** True where the text itself says its unit. */
export function saysUnit(text: string): boolean {
  return splitSuffix(tidy(text)).suffix !== null;
}

/** The unit that the figure of a typed reading counts in: a signed inch reading is thou. Null: it is no number. */
export function figureUnit(typed: Typed): Unit | null {
  const { body, suffix } = splitSuffix(tidy(typed.text));
  const figure = readFigure(body);
  if (figure === null) return null;
  const thou = suffix === null && typed.unit === 'in' && figure.sign !== '';
  return thou && !isSmall(figure.size) ? 'thou' : (suffix ?? typed.unit);
}

/**
 * A typed length as it should be shown, and typed again, in a job of the given units: its unit is added where it
 * is another. A signed figure typed in inches is thou (see `readLength`), and is shown as such beside millimetres.
 */
export function showTyped(typed: Typed, units: Units): string {
  const text = typed.text.trim();
  if (text === '' || typed.unit === units || saysUnit(text)) return text;
  const figure = readFigure(tidy(text));
  const isThou = figure !== null && figure.sign !== '' && !isSmall(figure.size);
  if (typed.unit === 'thou' && units === 'in' && isThou) return text;
  return `${text} ${typed.unit === 'in' && isThou ? 'thou' : typed.unit}`;
}

function tidy(text: string): string {
  let plain = text.normalize('NFC').replace(/\s+/g, ' ').trim();
  plain = plain.replace(/[−–—‒]/g, '-').replace(/[⁄∕]/g, '/');
  return plain.replace(/ ?([½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚])/g, (_, one) => ` ${FRACTIONS[one]}`).trim();
}

function splitSuffix(plain: string): { body: string; suffix: Unit | null } {
  const found = SUFFIX.exec(plain);
  if (found === null) return { body: plain, suffix: null };
  const word = found[1]!.toLowerCase();
  const suffix = word.startsWith('m') ? 'mm' : word.startsWith('t') ? 'thou' : 'in';
  return { body: plain.slice(0, found.index), suffix };
}

function readFigure(body: string): Figure | null {
  const signed = /^([+-]?) ?(.*)$/.exec(body);
  if (signed === null) return null;
  const size = readSize(signed[2]!);
  return size === null ? null : { sign: signed[1] as Figure['sign'], size };
}

function readSize(text: string): number | null {
  if (/^(\d+([.,]\d*)?|[.,]\d+)$/.test(text)) return Number(text.replace(',', '.'));
  const mixed = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (mixed === null) return null;
  const over = Number(mixed[2]);
  const under = Number(mixed[3]);
  if (!(under > 0) || (mixed[1] !== undefined && over >= under)) return null;
  return Number(mixed[1] ?? 0) + over / under;
}

function mmPer(unit: Unit): number {
  return unit === 'mm' ? 1 : unit === 'in' ? MM_PER_INCH : MM_PER_THOU;
}

function isSmall(size: number): boolean {
  return size !== 0 && size < SIGNED_INCHES_BELOW;
}

function understood(mm: number, unit: Unit): Understood {
  if (!Number.isFinite(mm)) return { ok: false, why: 'the number is too large for a length' };
  return { ok: true, mm, echo: plainDecimal(mm, unit === 'mm' ? 'mm' : 'in') };
}

/** At least the usual decimals, and two more where the text went finer, so that an echo never rounds a fraction. */
function plainDecimal(mm: number, units: Units): string {
  const usual = units === 'in' ? 4 : 3;
  const fine = inUnits(mm, units).toFixed(usual + 2);
  const cut = fine.endsWith('00') ? 2 : fine.endsWith('0') ? 1 : 0;
  return `${realMinus(fine.slice(0, fine.length - cut))} ${units}`;
}

function whyNot(text: string, plain: string): string {
  const quoted = `“${text.trim()}”`;
  if (/mils?$/i.test(plain)) {
    return `${quoted}: a mil is a thou to some and a millimetre to others; type thou or mm`;
  }
  if (/(ft|feet|foot|cm|[^']'|µm|um|[^m]m)$/i.test(plain)) {
    return `${quoted}: type inches, thou or millimetres`;
  }
  return `${quoted} is no length: type a number such as 2.5005, 2 1/2 or 63.5 mm`;
}

function needsNominal(text: string): string {
  return `“${text.trim()}” is over or under the nominal size, and that is not known yet: give the nominal size, or type the full size`;
}

/** Millimetres in the units that the job shows. */
export function inUnits(mm: number, units: Units): number {
  return units === 'in' ? mm / MM_PER_INCH : mm;
}

/** A size with its unit, no sign unless below zero: `2.5030 in`, `63.576 mm`. NaN: an en dash. */
export function formatLength(mm: number, units: Units, digits = units === 'in' ? 4 : 3): string {
  return withUnit(mm, units, digits);
}

/** A figure across (a diameter, a difference of diameters), and says so: `2.5030 in across`. */
export function formatAcross(mm: number, units: Units, digits?: number): string {
  return `${formatLength(mm, units, digits)} across`;
}

/** A figure per side (a radius, a deviation, metal to take off), and says so: `0.0031 in per side`. */
export function formatPerSide(mm: number, units: Units, digits?: number): string {
  return `${formatLength(mm, units, digits)} per side`;
}

/** A depth or a length along the bore: `0.70 in`, `17.8 mm`. */
export function formatDepth(mm: number, units: Units): string {
  return withUnit(mm, units, units === 'in' ? 2 : 1);
}

/** Signed thou without unit, as the map shows them: `+4.1`, `−3.5`, `0.0`. */
export function formatThou(mm: number): string {
  return signedFixed(mm / MM_PER_THOU, 1);
}

/** A signed deviation without unit: thou in an inch job, millimetres to 0.001 otherwise. */
export function formatDeviation(mm: number, units: Units): string {
  return units === 'in' ? formatThou(mm) : signedFixed(mm, 3);
}

function withUnit(mm: number, units: Units, digits: number): string {
  if (Number.isNaN(mm)) return '–';
  return `${realMinus(inUnits(mm, units).toFixed(digits))} ${units}`;
}

function signedFixed(value: number, digits: number): string {
  if (Number.isNaN(value)) return '–';
  const text = realMinus(value.toFixed(digits));
  return text.startsWith('−') || Number(text) === 0 ? text : `+${text}`;
}

/** A real minus sign, and none before a zero. */
function realMinus(fixed: string): string {
  if (!fixed.startsWith('-')) return fixed;
  return Number(fixed) === 0 ? fixed.slice(1) : `−${fixed.slice(1)}`;
}
