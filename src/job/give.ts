/**
 * A give-or-take as people say it, "within so much, nearly always", and as a job stores it: two standard deviations
 * (19 times of 20) beside one.
 */
import type { Typed, Units } from './schema.ts';
import { inUnits, readLength } from './units.ts';

/** What is stored, one standard deviation, as the give-or-take that it came from; what is no length stays as it is. */
export function doubled(typed: Typed, units: Units): Typed {
  return scaled(typed, units, 2);
}

/** What a person said as the one standard deviation that is stored. */
export function halved(typed: Typed, units: Units): Typed {
  return scaled(typed, units, 0.5);
}

/** A usual figure, one standard deviation in mm, as a give-or-take: to two digits, which is all that judgement earns. */
export function giveOf(mm: number, units: Units): Typed {
  return plain(Number((2 * inUnits(mm, units)).toPrecision(2)), units);
}

function scaled(typed: Typed, units: Units, by: number): Typed {
  const read = readLength(typed);
  return read.ok ? plain(by * inUnits(read.mm, units), units) : typed;
}

/** To a millionth, far finer than anyone types, without zeros at the end. */
function plain(value: number, units: Units): Typed {
  return { text: String(Number(value.toFixed(6))), unit: units };
}
