/** Where to measure: the places that a new survey offers. */
import type { Instrument, Survey, Typed, Units } from './schema.ts';
import { MM_PER_INCH } from './units.ts';

/**
 * Clock positions worth reading with an instrument: all six pairs for a gauge that reads across (an oval
 * between fewer hides), each hour for one that reads one side, four of the 120 degrees for three legs.
 */
export function defaultClocks(kind: Instrument): string[] {
  const hours = ['12', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11'];
  if (kind === 'two-point') return hours.slice(0, 6);
  return kind === 'three-leg' ? hours.slice(0, 4) : hours;
}

/**
 * Depths worth reading: rim and bottom a little in from the edge (past the chamfer: 0.15 in or 4 mm, common
 * practice 1/8 to 1/4 in) and even steps between; three, or five in a bore longer than 1.5 times its diameter.
 * A bore too short for that gets its middle. None where the length is not known.
 *
 * @param lengthMm length of the bore
 * @param diameterMm its size; NaN counts as short
 */
export function defaultDepths(lengthMm: number, diameterMm: number, units: Units): Typed[] {
  if (!(lengthMm > 0)) return [];
  const unitMm = units === 'in' ? MM_PER_INCH : 1;
  const length = lengthMm / unitMm;
  const edge = units === 'in' ? 0.15 : 4;
  const decimals = units === 'in' ? 2 : 0;
  const typed = (depth: number): Typed => ({
    text: String(Number(depth.toFixed(decimals))),
    unit: units,
  });
  if (length < 4 * edge) return [{ text: String(Number((length / 2).toFixed(3))), unit: units }];
  const count = lengthMm > 1.5 * diameterMm ? 5 : 3;
  const step = (length - 2 * edge) / (count - 1);
  return Array.from({ length: count }, (_, index) => typed(edge + index * step));
}

const STAGE_NAMES: Readonly<Record<Survey['stage'], string>> = {
  'as-found': 'As found',
  'after-squeezing': 'After squeezing',
  pass: 'Pass',
  'after-build-up': 'After build-up',
  fitted: 'Fitted',
};

/** Name of a new survey: passes are counted, any other stage is counted from its second survey on. */
export function surveyName(stage: Survey['stage'], before: readonly Survey[]): string {
  const count = before.filter((one) => one.stage === stage).length + 1;
  const name = STAGE_NAMES[stage];
  return stage === 'pass' || count > 1 ? `${name} ${count}` : name;
}

/** The stage that a name speaks of; a first survey of no such name is as found, a later one a pass. */
export function stageOfName(name: string, isFirst: boolean): Survey['stage'] {
  if (/found|before|worn/i.test(name)) return 'as-found';
  if (/squeez/i.test(name)) return 'after-squeezing';
  if (/weld|build|built/i.test(name)) return 'after-build-up';
  if (/fit/i.test(name)) return 'fitted';
  return /pass/i.test(name) || !isFirst ? 'pass' : 'as-found';
}

/** Where to read an empty survey: what the table offers, and what a set-up more would add. */
export interface ReadingPlan {
  readonly clocks: readonly string[];
  /** From the survey's face. */
  readonly depths: readonly Typed[];
  /** True where the gauge does not get to the bottom: deeper rows need another one. */
  readonly short: boolean;
}

/** How far in the second depth from each face stands, as a share of the length: bell-mouths lie before it. */
const MOUTH = 0.2;
/** Up to here, mm, five depths would stand too near each other to tell more than three. */
const SHORT = 40;

/**
 * Six pairs by five depths is what a careful shop reads (common practice), three in a short bore; of the five, two lie
 * close to each face, where bores wear fastest.
 *
 * @param length of the bore, mm; not known: no depths
 * @param diameter its size, mm; NaN counts as short
 * @param reach of the gauge from its face, mm
 */
export function readingPlan(
  kind: Instrument,
  { length, diameter, reach }: { length: number; diameter: number; reach: number },
  units: Units,
): ReadingPlan {
  const usual = defaultDepths(length, diameter, units);
  const [rim, bottom] = [usual[0], usual[usual.length - 1]];
  const unitMm = units === 'in' ? MM_PER_INCH : 1;
  const at = (share: number): Typed => {
    const text = ((share * length) / unitMm).toFixed(units === 'in' ? 2 : 0);
    return { text: String(Number(text)), unit: units };
  };
  const five = length > SHORT && rim !== undefined && bottom !== undefined;
  const depths = five ? [rim, at(MOUTH), at(0.5), at(1 - MOUTH), bottom] : usual;
  const within = depths.filter(({ text }) => Number(text) * unitMm <= reach + 1e-9);
  return { clocks: defaultClocks(kind), depths: within, short: within.length < depths.length };
}
