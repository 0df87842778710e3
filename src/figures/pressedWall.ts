/** The contact pressure of every bushing of a bore, as it is laid over map and drawing. */

import type { PlaceOf, RoundFit } from '../evaluate/fit/round.ts';
import type { Seated } from '../evaluate/fit/seated.ts';
import type { FitAnswer } from '../evaluate/fit.ts';
import type { Units } from '../job/schema.ts';
import { type PressLevel, pressLevels } from './pressLevels.ts';
import { type PressLines, pressLines } from './pressLines.ts';
import { usualRange } from './steps.ts';

/** One bushing on its own part of the wall. */
export interface PressedPart extends PressLines {
  readonly name: string;
  /** MPa, where it presses hardest; null: it presses as hard everywhere, or touches nowhere. */
  readonly hardest: PlaceOf | null;
  /** Per side, mm; null: it touches everywhere. */
  readonly widest: PlaceOf | null;
}

export interface PressedWall {
  readonly units: Units;
  /** Clock position that the lines begin at. */
  readonly cut: number;
  /** The same for all bushings. */
  readonly levels: readonly PressLevel[];
  /** MPa; 0: it touches nowhere. */
  readonly greatest: number;
  readonly parts: readonly PressedPart[];
}

type Known = readonly [one: Seated, fit: RoundFit];

/** Bushings whose contact is known. */
export function knownPress({ bushings }: Pick<FitAnswer, 'bushings'>): readonly Known[] {
  return bushings.flatMap(({ seated, round }): Known[] =>
    round.fit === null ? [] : [[seated, round.fit]],
  );
}

/** Share of the seat that has no say in which lines are drawn: corners where touching ends. */
const RARE = 0.05;

/** @returns null where no bushing's contact is known */
export function pressedWall(
  answer: Pick<FitAnswer, 'bushings'>,
  units: Units,
  cut: number,
): PressedWall | null {
  const known = knownPress(answer);
  if (known.length === 0) return null;
  const range = {
    least: Math.min(...known.map(([, { least }]) => least.value)),
    greatest: Math.max(...known.map(([, { greatest }]) => greatest.value)),
    usual: Math.max(...known.map(([, { pressure }]) => usualRange(pressure, RARE).greatest)),
  };
  const levels = pressLevels(range, units);
  const parts = known.map(([{ name, wall }, fit]) => ({
    ...pressLines(wall, fit, levels, cut),
    name,
    hardest: levels.length > 0 && fit.greatest.value > 0 ? fit.greatest : null,
    widest: fit.widest.value > 0 ? fit.widest : null,
  }));
  return { units, cut, levels, greatest: range.greatest, parts };
}
