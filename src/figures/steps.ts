/** Round contour steps: 1, 2 or 5 times a power of ten, in thou or in hundredths of a millimetre. */

import { quickselect } from 'd3';
import type { Evaluation } from '../evaluate.ts';

export type Units = Evaluation['units'];

/** What one unit of the map's figures is, mm: a thou in an inch job, 0.01 mm otherwise. */
export const MAP_UNIT: Readonly<Record<Units, number>> = { in: 0.0254, mm: 0.01 };
export const MAP_UNIT_NAME: Readonly<Record<Units, string>> = { in: 'thou', mm: '0.01 mm' };

/** No side of zero is split into more steps than this by choice. */
const MOST_STEPS = 7;
/** A wall is split into about so many steps at least, however little is known of it. */
const LEAST_STEPS = 5;
/** Lines beyond this many steps from zero (a deep gouge in a fine map) would only blacken it. */
const FARTHEST_STEP = 14;
/** Steps finer than this share of the give-or-take would draw what is not known. */
const FINE_SHARE = 0.25;
/** Finest step, in units of the map. */
const FINEST = 0.1;
const SERIES = [1, 2, 5] as const;

export interface Steps {
  readonly units: Units;
  /** mm between contours, and the same in units of the map. */
  readonly step: number;
  readonly stepInUnits: number;
  /**
   * Ascending multiples of the step inside the range, never zero, mm. A range that does not hold zero has one
   * more, at or just outside its end nearest to zero.
   */
  readonly levels: readonly number[];
}

/**
 * Contours for deviations from `least` to `greatest`, mm. A range that does not span zero is split on its own.
 *
 * @param usual the range without its rarest places, which sets the step
 * @param give usual give-or-take of the deviations, mm: it sets the finest step, unless nothing would be left to see
 */
export function chooseSteps(
  least: number,
  greatest: number,
  units: Units,
  usual: { readonly least: number; readonly greatest: number } = { least, greatest },
  give = 0,
): Steps {
  const unit = MAP_UNIT[units];
  const reach = reachOf(usual.least, usual.greatest);
  const wanted = Math.max(
    reach / MOST_STEPS,
    Math.min(FINE_SHARE * (give || 0), reach / LEAST_STEPS),
  );
  const stepInUnits = roundStep(wanted / unit);
  const step = stepInUnits * unit;
  return { units, step, stepInUnits, levels: levelsIn(least, greatest, step) };
}

function reachOf(least: number, greatest: number): number {
  if (!(least <= greatest)) return 0;
  if (least > 0 || greatest < 0) return greatest - least;
  return Math.max(-least, greatest);
}

/** The smallest of the series that is not below `wanted`. */
function roundStep(wanted: number): number {
  if (!(wanted > FINEST)) return FINEST;
  const power = Math.floor(Math.log10(wanted) + 1e-9);
  const base = 10 ** power;
  const found = SERIES.find((s) => s * base >= wanted * (1 - 1e-9));
  return Number(((found ?? 10) * base).toPrecision(3));
}

function levelsIn(least: number, greatest: number, step: number): number[] {
  if (!(least <= greatest)) return [];
  const crosses = least <= 0 && greatest >= 0;
  // Nowhere right: the level that the range stops short of tells its colour from that of right.
  const from = Math.floor(least / step) + (least > 0 ? 0 : 1);
  const to = Math.ceil(greatest / step) - (greatest < 0 ? 0 : 1);
  const first = crosses ? Math.max(from, -FARTHEST_STEP) : Math.max(from, to - 2 * FARTHEST_STEP);
  const last = crosses ? Math.min(to, FARTHEST_STEP) : to;
  const levels: number[] = [];
  for (let k = first; k <= last; k++) if (k !== 0) levels.push(k * step);
  return levels;
}

/**
 * Range of a field without the share `rare` of its places at either end; NaN left out.
 * Both NaN where nothing is known.
 */
export function usualRange(field: Float64Array, rare = 0.01): { least: number; greatest: number } {
  const values = knownOf(field);
  const skip = Math.floor(values.length * rare);
  const last = values.length - 1 - skip;
  return { least: ranked(values, skip), greatest: ranked(values, last) };
}

/** A copy of a field's known values. */
function knownOf(field: Float64Array): Float64Array {
  const values = new Float64Array(field.length);
  let known = 0;
  for (const value of field) if (Number.isFinite(value)) values[known++] = value;
  return values.subarray(0, known);
}

/** The value of this rank, 0 the least, of values whose order may change; NaN where there are none. */
function ranked(values: Float64Array, rank: number): number {
  return quickselect(values, rank)[rank] ?? Number.NaN;
}

const middles = new WeakMap<Float64Array, number>();

/** The middle one of a field's known values; NaN where there are none. A field is taken to stay as it is. */
export function middleOfField(field: Float64Array): number {
  const found = middles.get(field);
  if (found !== undefined) return found;
  const values = knownOf(field);
  const middle = ranked(values, values.length >> 1);
  middles.set(field, middle);
  return middle;
}

/** Index of the band that holds a value: 0 below the first level, levels.length above the last. */
export function bandOf(value: number, levels: readonly number[]): number {
  let band = 0;
  while (band < levels.length && value >= levels[band]!) band++;
  return band;
}
