/** Round pressures at which lines are drawn. */
import { ticks } from 'd3';
import type { Units } from '../job/schema.ts';
import { mpaPerUnit } from './loads.ts';

export interface PressLevel {
  readonly mpa: number;
  /** In the unit of `pressureUnit`, without it. */
  readonly text: string;
}

/** MPa. */
export interface PressRange {
  readonly least: number;
  readonly greatest: number;
  readonly usual: number;
}

/** As many weights of line as can be told apart. */
const MOST_PRESS_LEVELS = 5;
/** Fewer lines than this from 1, 2, 5, 10, ... say too little of a pressure that hardly varies. */
const FEW = 3;
/** A line so near to the greatest would be a speck, as a share of it. */
const END = 0.03;
/** Lines of less than this share of the usual greatest lie in one another, where touching ends. */
const LIGHT = 0.25;
/** Pressure that varies by less, as a share of the greatest, is even. */
const EVEN = 0.05;

/**
 * 1, 2, 5, 10, ..., since contact is hard in few places and light in many; even steps where that gives too few.
 *
 * @param least, greatest MPa, of all that is drawn together
 * @param usual the greatest without the rarest places
 * @returns ascending, all strictly between; none where the pressure is even, or nothing presses
 */
export function pressLevels({ least, greatest, usual }: PressRange, units: Units): PressLevel[] {
  const per = mpaPerUnit(units);
  const [from, to] = [least / per, greatest / per];
  if (!(to > 0 && to - from > EVEN * to)) return [];
  const inside = (value: number) => value > from && value < (1 - END) * to;
  const series = seriesBelow(to).filter((one) => inside(one) && one > (LIGHT * usual) / per);
  const values = series.length < FEW ? evenly(from, to).filter(inside) : series;
  return values
    .slice(-MOST_PRESS_LEVELS)
    .map((value) => ({ mpa: value * per, text: String(Number(value.toPrecision(6))) }));
}

/** Two powers of ten of the series, up to and with the one that holds `to`. */
function seriesBelow(to: number): number[] {
  const power = Math.floor(Math.log10(to));
  return [power - 1, power].flatMap((n) => [1, 2, 5].map((s) => s * 10 ** n));
}

/** As many even steps as there may be, but no more. */
function evenly(from: number, to: number): number[] {
  for (let count = MOST_PRESS_LEVELS; count > 1; count--) {
    const found = ticks(from, to, count);
    if (found.length <= MOST_PRESS_LEVELS) return found;
  }
  return ticks(from, to, 1);
}
