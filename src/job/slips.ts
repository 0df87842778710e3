/**
 * What a typed reading would have been, had a usual slip not been made: one micrometer or dial turn, two digits
 * swapped, another unit, half of the diameter. Whether any of them is likely is for the other readings to say.
 */
import { needleText, readGauge } from './comparator.ts';
import { gaugeFigures, kindOfGauge } from './gauges.ts';
import type { Feature, Job, Reading, Typed, Unit } from './schema.ts';
import { gaugeOf, nominalMm } from './sizes.ts';
import { figureUnit, formatDepth, lengthMm, saysUnit, showTyped } from './units.ts';

/** One way in which a reading may have been meant. */
export interface Retyping {
  /** What went wrong, in words without a full stop. */
  readonly slip: string;
  /** How often it happens beside the others: judgement. */
  readonly odds: number;
  /** mm, as `Sighting.value`. */
  readonly mm: number;
  /** As it would be typed in a job of these units. */
  readonly text: string;
}

const TURNS: readonly { name: string; size: Readonly<Record<Unit, number>>; said: SaidStep }[] = [
  {
    name: 'micrometer',
    size: { in: 0.025, thou: 25, mm: 0.5 },
    said: { in: '0.025 in', mm: '0.50 mm' },
  },
  { name: 'dial', size: { in: 0.1, thou: 100, mm: 1 }, said: { in: '0.100 in', mm: '1.00 mm' } },
];
type SaidStep = { readonly in: string; readonly mm: string };

/** How often each slip is made beside the others: judgement. A gauge with a dial is seldom a turn of a screw off. */
const ODDS = { turn: 1, otherTurn: 0.3, swap: 0.15, unit: 1, half: 0.5 } as const;
const WITH_SCREW = new Set(['telescoping', 'stick', 'three-leg']);

/**
 * The ways in which a reading may have been meant; none where it cannot be read, or is a fraction.
 *
 * @param factor brings what is read to 20 °C, see `temperature.ts`
 */
export function retypings(job: Job, feature: Feature, reading: Reading, factor = 1): Retyping[] {
  const gauge = gaugeOf(job.gauges, reading.gauge);
  if (gauge === undefined) return [];
  // A needle's figure has its sign, whether it was typed or not.
  const value = needleText(reading.value, gauge);
  const unit = figureUnit(value);
  const spelt = spellingOf(value);
  if (unit === null || spelt === null) return [];
  const nominal = nominalMm(feature);
  const current = readGauge(value, gauge, nominal);
  if (!current.ok) return [];
  const screw = WITH_SCREW.has(kindOfGauge(gauge).type);
  const across = gauge.kind === 'two-point' || gauge.kind === 'three-leg';
  const meant = [
    ...turns(spelt, unit, screw),
    ...swaps(spelt),
    ...otherUnits(value, spelt),
    ...halves(spelt, across, gauge.kind === 'radius'),
  ];
  return meant.flatMap(({ slip, odds, typed }) => {
    const read = readGauge(typed, gauge, nominal);
    if (!read.ok || read.mm === current.mm) return [];
    return [{ slip, odds, mm: read.mm * factor, text: showTyped(typed, job.units) }];
  });
}

/** Why a reading's depth cannot be right, in words without a full stop; null where its gauge gets as deep as that. */
export function pastReach(job: Job, reading: Reading): string | null {
  const gauge = gaugeOf(job.gauges, reading.gauge);
  if (gauge === undefined || reading.leftOut) return null;
  const { mm, stated } = gaugeFigures(gauge).reach;
  const most = stated ? mm + REACH_SLACK : kindOfGauge(gauge).longest;
  if (!(lengthMm(reading.depth) > most)) return null;
  const kind = stated ? '' : ', as is typical of its kind';
  return `deeper than its gauge reaches: ${formatDepth(mm, job.units)} from the face${kind}`;
}

/** Depths are typed to the nearest 1/64 in or half millimetre. */
const REACH_SLACK = 0.5;

/** A plain decimal number, its parts as they were typed. */
interface Spelling {
  readonly sign: '' | '+' | '-';
  readonly digits: string;
  readonly tail: string;
  readonly unit: Unit;
}

interface Meant {
  readonly slip: string;
  readonly odds: number;
  readonly typed: Typed;
}

function spellingOf({ text, unit }: Typed): Spelling | null {
  const found = /^([+\-−–]?)\s*(\d+(?:[.,]\d*)?|[.,]\d+)(\D*)$/.exec(text.trim());
  if (found === null) return null;
  const sign = found[1] === '' ? '' : found[1] === '+' ? '+' : '-';
  return { sign, digits: found[2]!, tail: found[3]!, unit };
}

function decimalsOf(digits: string): number {
  const point = digits.search(/[.,]/);
  return point < 0 ? 0 : digits.length - point - 1;
}

function numberOf({ sign, digits }: Spelling): number {
  const size = Number(digits.replace(',', '.'));
  return sign === '-' ? -size : size;
}

/** Another number written as the reading was; null where it would be below zero without ever having had a sign. */
function respelt(spelt: Spelling, value: number, read: Unit, decimals: number): Typed | null {
  const signed = spelt.sign !== '';
  if (!signed && !(value > 0)) return null;
  const point = spelt.digits.includes(',') ? ',' : '.';
  const size = Math.abs(value).toFixed(decimals).replace('.', point);
  const sign = signed ? (value < 0 ? '-' : '+') : '';
  // Small signed inches are inches and larger ones thou: the unit is written out, so that it stays what it was.
  const tail = spelt.tail === '' && signed && spelt.unit === 'in' ? ` ${read}` : spelt.tail;
  const plain = read === 'thou' && tail === ' thou' && Math.abs(value) >= 1 ? '' : tail;
  return { text: `${sign}${size}${plain}`, unit: spelt.unit };
}

function turns(spelt: Spelling, unit: Unit, screw: boolean): Meant[] {
  return TURNS.flatMap(({ name, size, said }) =>
    [-1, 1].flatMap((way) => {
      const value = numberOf(spelt) + way * size[unit];
      const needed = decimalsOf(String(size[unit]));
      const typed = respelt(spelt, value, unit, Math.max(decimalsOf(spelt.digits), needed));
      if (typed === null) return [];
      const usual = (name === 'micrometer') === screw;
      const odds = (usual ? ODDS.turn : ODDS.otherTurn) / 2;
      const step = unit === 'mm' ? said.mm : said.in;
      return [{ slip: `one ${name} turn, ${step}`, odds, typed }];
    }),
  );
}

/** Neighbouring digits swapped, the point staying where it is. */
function swaps(spelt: Spelling): Meant[] {
  const { sign, digits, tail, unit } = spelt;
  const places = [...digits].flatMap((c, at) => (/\d/.test(c) ? [at] : []));
  return places.slice(1).map((b, k) => {
    const a = places[k]!;
    const letters = [...digits];
    [letters[a], letters[b]] = [letters[b]!, letters[a]!];
    const text = `${sign}${letters.join('')}${tail}`;
    return { slip: 'two digits swapped', odds: ODDS.swap, typed: { text, unit } };
  });
}

const UNIT_WORDS: Readonly<Record<Unit, string>> = {
  in: 'inches',
  thou: 'thou',
  mm: 'millimetres',
};

/** The same figure in another unit. Thou are over or under the new size: only signed figures may be meant so. */
function otherUnits(typed: Typed, spelt: Spelling): Meant[] {
  if (saysUnit(typed.text)) return [];
  const units: readonly Unit[] = spelt.sign === '' ? ['in', 'mm'] : ['in', 'mm', 'thou'];
  return units
    .filter((unit) => unit !== typed.unit)
    .map((unit) => ({
      slip: `${UNIT_WORDS[unit]} typed as ${UNIT_WORDS[typed.unit]}`,
      odds: ODDS.unit / (units.length - 1),
      typed: { text: typed.text.trim(), unit },
    }));
}

function halves(spelt: Spelling, across: boolean, radius: boolean): Meant[] {
  const decimals = decimalsOf(spelt.digits);
  const put = (slip: string, value: number, places: number): Meant[] => {
    const unit = figureUnit({
      text: `${spelt.sign}${spelt.digits}${spelt.tail}`,
      unit: spelt.unit,
    });
    const typed = unit === null ? null : respelt(spelt, value, unit, places);
    return typed === null ? [] : [{ slip, odds: ODDS.half, typed }];
  };
  const value = numberOf(spelt);
  if (across) {
    const slip =
      spelt.sign === ''
        ? 'the radius typed for the diameter'
        : 'a figure per side typed for one across';
    return put(slip, 2 * value, decimals);
  }
  if (!radius) return [];
  const slip =
    spelt.sign === ''
      ? 'the diameter typed for the radius'
      : 'a figure across typed for one per side';
  return put(slip, value / 2, decimals + 1);
}
