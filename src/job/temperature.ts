/**
 * Part and gauge temperatures of a survey, and what they do to its readings.
 *
 * Sizes are sizes at 20 °C (ISO 1:2022). A gauge at Tg whose scale, or the ring or micrometer that it was set to, is true
 * at 20 °C is longer than it says by 1 + ag (Tg - 20); the part at Tp is larger than at 20 °C by 1 + ap (Tp - 20). So
 *
 *     size at 20 °C = reading (1 + ag (Tg - 20)) / (1 + ap (Tp - 20))
 *
 * for whatever reads a length by its own scale: a caliper, a telescoping gauge and its micrometer, a three-leg
 * micrometer, a radius, the thickness of a wall. A comparator shows only how far it is from its master, and the master
 * is as warm as the gauge: master and difference together are a length like the others. A swept needle shows
 * differences alone, of which the factor changes nothing that could be read.
 */
import { measuredAt } from './measuredAt.ts';
import type { Feature, Survey } from './schema.ts';
import { nominalMm } from './sizes.ts';

/** Usual steel: between 11.3 (1040) and 11.7 (1020, A36) of the same source as below. */
const STEEL: Metal = { name: 'plain steel', expansion: 11.5e-6, sd: 0.5e-6 };

/** Gauges and their masters are of steel. */
const GAUGE = STEEL;

/** A degree at each thermometer, one standard deviation: judgement for what a shop has. */
const THERMOMETER_SD = 1;
/** Part and gauge farther apart than this: measure again when both have come to one temperature. Common practice. */
const WARM_APART = 5;
/** Beyond these the correction is no more to grind by: judgement; parts are then hardly as warm all through. */
const MOST_APART = 15;
const MOST_OFF = 30;
/** Nobody reads a gauge outside these, °C. */
const COLDEST = -40;
const HOTTEST = 150;

export interface Metal {
  readonly name: string;
  /** Per °C near 20 °C, and one standard deviation of that within what goes by the name. */
  readonly expansion: number;
  readonly sd: number;
}

/**
 * Linear expansion near room temperature: Callister and Rethwisch, Materials Science and Engineering, appendix B (304
 * 17.2, 316 15.9; 4140 12.3; grey iron 11.4 and in other tables 10.8; ductile iron 10.6 to 11.2; C93200 18.0; brass 19.9
 * to 20.5; 6061 23.6, 356 21.5; all 1e-6 per °C), each the middle of what is given.
 */
const METALS: readonly (Metal & { readonly words: RegExp })[] = [
  {
    name: 'stainless steel',
    expansion: 16.6e-6,
    sd: 0.7e-6,
    words: /stainless|\b30[34]\b|\b316\b/,
  },
  {
    name: 'alloy steel',
    expansion: 12.3e-6,
    sd: 0.5e-6,
    words: /alloy steel|chrome|\b4140\b|\b4340\b/,
  },
  {
    // Between 11.5 and 12.5: 52100.
    name: 'hardened bearing steel',
    expansion: 12e-6,
    sd: 0.5e-6,
    words: /hardened|bearing steel|\b52100\b|\b100cr6\b/,
  },
  { ...STEEL, words: /steel|\b1018\b|\b1020\b|\b1040\b|\b1045\b/ },
  {
    name: 'ductile iron',
    expansion: 10.9e-6,
    sd: 0.3e-6,
    words: /ductile|nodular|spheroidal|malleable/,
  },
  { name: 'cast iron', expansion: 11.1e-6, sd: 0.3e-6, words: /iron/ },
  { name: 'bronze', expansion: 18e-6, sd: 0.5e-6, words: /bronze/ },
  { name: 'brass', expansion: 20.2e-6, sd: 0.4e-6, words: /brass/ },
  { name: 'aluminium', expansion: 22.6e-6, sd: 1e-6, words: /alumin/ },
];

/** Names that the page offers; any other text is looked through for such a word. */
export const METAL_NAMES: readonly string[] = METALS.map(({ name }) => name);

/** The metal that a free text names; plain steel where it names none that is known. */
export function metalOf(text: string | undefined): Metal & { readonly named: boolean } {
  const found = METALS.find(({ words }) => words.test((text ?? '').toLowerCase()));
  const { name, expansion, sd } = found ?? STEEL;
  return { name, expansion, sd, named: found !== undefined };
}

export type Degrees = 'C' | 'F';

export type TemperatureRead =
  | { readonly ok: true; readonly celsius: number }
  | { readonly ok: false; readonly why: string };

/** What a typed temperature means: `27`, `80F`, `27 °C`; a unit in the text counts before `unit`. Empty: why ''. */
export function readDegrees(text: string, unit: Degrees): TemperatureRead {
  const plain = text.trim();
  if (plain === '') return { ok: false, why: '' };
  const found = /^([+\-−]?)\s*(\d+(?:[.,]\d+)?)\s*°?\s*([CF])?$/i.exec(plain);
  if (found === null) return { ok: false, why: `“${plain}” is no number such as 27 or 80F` };
  const size = Number(found[2]!.replace(',', '.'));
  const value = found[1] === '-' || found[1] === '−' ? -size : size;
  const celsius = (found[3]?.toUpperCase() ?? unit) === 'F' ? ((value - 32) * 5) / 9 : value;
  return { ok: true, celsius };
}

/** As `readDegrees`, where somebody measures. */
export function readTemperature(text: string, unit: Degrees): TemperatureRead {
  const read = readDegrees(text, unit);
  if (!read.ok || (read.celsius >= COLDEST && read.celsius <= HOTTEST)) return read;
  return {
    ok: false,
    why: `at “${text.trim()}” nobody measures: ${COLDEST} to ${HOTTEST} °C are taken`,
  };
}

export interface TemperatureFacts {
  /** °C; NaN: not given, or not understood. */
  readonly part: number;
  readonly gauge: number;
  readonly metal: Metal & { readonly named: boolean };
  /** What every reading is multiplied by to be a size at 20 °C; 1 until both temperatures stand. */
  readonly factor: number;
  /** What that adds to a reading of the nominal size, mm across; below zero it takes off. NaN: nominal not known. */
  readonly correction: number;
  /** Two standard deviations of that, mm across, common to all readings of the survey. */
  readonly giveOrTake: number;
  /** Whether part and gauge are near enough to each other and to 20 °C: `warm` measure again, `no` do not grind by it. */
  readonly trust: 'yes' | 'warm' | 'no';
  /** Both temperatures, for the reader, in the unit that they were typed in. */
  readonly unit: Degrees;
}

/** Null where no temperature is given. */
export function temperatureFacts(feature: Feature, survey: Survey): TemperatureFacts | null {
  const { temperature } = survey;
  if (temperature === undefined) return null;
  const { unit } = temperature;
  if (isBlank(temperature.part) && isBlank(temperature.gauge)) return null;
  const part = celsiusOf(temperature.part, unit);
  const gauge = celsiusOf(temperature.gauge, unit);
  const measured = measuredAt(feature, survey);
  const metal = metalOf(measured.boss?.material);
  const both = !Number.isNaN(part) && !Number.isNaN(gauge);
  const factor = both
    ? (1 + GAUGE.expansion * (gauge - 20)) / (1 + metal.expansion * (part - 20))
    : 1;
  const nominal = nominalMm(measured);
  return {
    part,
    gauge,
    metal,
    factor,
    correction: both ? nominal * (factor - 1) : 0,
    giveOrTake: both ? 2 * nominal * relativeSd(part, gauge, metal) : 0,
    trust: trustOf(part, gauge),
    unit,
  };
}

/** Of the correction, as a share of the size: two thermometers and two expansions, each by itself (JCGM 100:2008, 5.1.2). */
function relativeSd(part: number, gauge: number, metal: Metal): number {
  return Math.hypot(
    metal.expansion * THERMOMETER_SD,
    GAUGE.expansion * THERMOMETER_SD,
    metal.sd * (part - 20),
    GAUGE.sd * (gauge - 20),
  );
}

/** One that is not known speaks neither for nor against. */
function trustOf(part: number, gauge: number): TemperatureFacts['trust'] {
  const apart = Math.abs(part - gauge);
  if (apart > MOST_APART || Math.abs(part - 20) > MOST_OFF) return 'no';
  return apart > WARM_APART ? 'warm' : 'yes';
}

function celsiusOf(text: string | undefined, unit: Degrees): number {
  const read = readTemperature(text ?? '', unit);
  return read.ok ? read.celsius : Number.NaN;
}

function isBlank(text: string | undefined): boolean {
  return (text ?? '').trim() === '';
}

/** What readings of this survey are multiplied by to be sizes at 20 °C. */
export function temperatureFactor(feature: Feature, survey: Survey): number {
  return temperatureFacts(feature, survey)?.factor ?? 1;
}

/** °C in the unit that a person reads. */
export function inDegrees(celsius: number, unit: Degrees): number {
  return unit === 'C' ? celsius : (celsius * 9) / 5 + 32;
}
