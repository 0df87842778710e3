/** What the shop's logged squeezes teach: how much of a movement stays, and how far the mean draws in. */
import type { Range } from './springback.ts';

/** One squeeze as logged, across, mm; NaN: not noted. */
export interface LoggedSqueeze {
  /** Movement at the jaws while hot, and what of it stayed when cold. */
  readonly asked: number;
  readonly came: number;
  readonly meanBefore: number;
  readonly meanAfter: number;
}

export interface Learned extends Range {
  /** Squeezes that it rests on; 0: judgement or formula alone. */
  readonly count: number;
}

/** From so many on, the shop's own squeezes stand alone. */
const ENOUGH = 3;

/**
 * From few values the usual range widened to hold them; from three on their own mean, two standard deviations of a
 * next value to either side.
 *
 * @param usual null where nothing is usual: then the values alone
 * @param floor no less than this, as none can be
 * @returns null where there is neither a value nor a usual range
 */
export function learnRange(
  values: readonly number[],
  usual: Range | null,
  floor = 0,
): Learned | null {
  const known = values.filter((value) => Number.isFinite(value));
  const count = known.length;
  if (count < ENOUGH) {
    const ends = [...known, ...(usual === null ? [] : [usual.least, usual.most])];
    if (ends.length === 0) return null;
    return { least: Math.max(floor, Math.min(...ends)), most: Math.max(...ends), count };
  }
  const mean = known.reduce((sum, value) => sum + value, 0) / count;
  const square = known.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1);
  const give = 2 * Math.sqrt(square * (1 + 1 / count));
  return { least: Math.max(floor, mean - give), most: Math.max(floor, mean + give), count };
}

/** Share of a movement that springs back, 0 to 1, of each squeeze that tells. */
export function springShares(log: readonly LoggedSqueeze[]): number[] {
  return log
    .filter(({ asked, came }) => asked > 0 && came >= 0 && came <= asked)
    .map(({ asked, came }) => 1 - came / asked);
}

/** How far the mean drew in, as a share of the size, of each squeeze that tells. */
export function upsetShares(log: readonly LoggedSqueeze[]): number[] {
  return log
    .filter(({ meanBefore, meanAfter }) => meanBefore > 0 && meanAfter > 0)
    .map(({ meanBefore, meanAfter }) => (meanBefore - meanAfter) / meanBefore);
}
