/** Another stage of the same bore, as it stands about this stage's target. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { linearAt } from './sample.ts';

/** Straight axis: at depth z it passes through (x + leanX z, y + leanY z); x to 3 o'clock, y to 12; mm. */
export type Axis = NonNullable<SurveyEvaluation['target']>['axis'];

const STRAIGHT: Axis = { x: 0, y: 0, leanX: 0, leanY: 0 };

/** The axis that a survey's drawing stands about: its target's, else that of its readings. */
export function axisOf(survey: SurveyEvaluation): Axis {
  return survey.removal === null ? STRAIGHT : (survey.target?.axis ?? STRAIGHT);
}

/** A place given from the readings' own axis, seen from another one: clock position and distance, mm. */
export function aboutAxis(
  radius: number,
  theta: number,
  z: number,
  axis: Axis,
): { theta: number; radius: number } {
  const x = radius * Math.sin(theta) - axis.x - axis.leanX * z;
  const y = radius * Math.cos(theta) - axis.y - axis.leanY * z;
  return { theta: Math.atan2(x, y), radius: Math.hypot(x, y) };
}

export interface Ghost {
  readonly name: string;
  /** mm */
  readonly length: number;
  /** About the axis of its own readings, mm; NaN where it is not known. */
  radiusAt(theta: number, z: number): number;
}

/** @returns null where the stage has no surface to be drawn */
export function ghostOf(survey: SurveyEvaluation): Ghost | null {
  const { surface, name } = survey;
  if (surface === null) return null;
  const { grid, mean } = surface;
  const length = grid.z[grid.z.length - 1] ?? Number.NaN;
  if (!(length > 0)) return null;
  return { name, length, radiusAt: (theta, z) => linearAt(grid, mean, theta, z) };
}
