/** Repeats at one place: how far apart they lie, and how far they should. */

/**
 * 95 % points of the studentized range of 2, 3, ... readings with a known standard deviation: Tukey's table for
 * infinitely many degrees of freedom (as in Pearson and Hartley, Biometrika Tables for Statisticians, 1966; from memory,
 * checked against simulation in the tests).
 */
const RANGE = [2.772, 3.314, 3.633, 3.858, 4.03, 4.17, 4.286, 4.387, 4.474] as const;

export interface RepeatSpread {
  readonly count: number;
  /** Greatest less least, mm as read. */
  readonly range: number;
  /** So far apart the readings lie in 19 sets of 20 where the gauge repeats as it should, mm. */
  readonly limit: number;
}

/**
 * @param values two readings at least, mm; past the table's ten its last figure stands
 * @param sd one standard deviation of one reading, mm
 */
export function repeatSpread(values: readonly number[], sd: number): RepeatSpread {
  const factor = RANGE[Math.min(values.length, RANGE.length + 1) - 2] ?? Number.NaN;
  return {
    count: values.length,
    range: Math.max(...values) - Math.min(...values),
    limit: factor * sd,
  };
}
