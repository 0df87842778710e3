/** A bore as two small outlines: seen from its end, and cut along its depth. Wear drawn larger. */
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Point } from './contours.ts';
import { exaggerations } from './exaggeration.ts';
import { linearAt } from './sample.ts';
import { rangeOf, wallOf } from './wall.ts';

export interface MiniWear {
  /** Closed; x to 3 o'clock, y to 12, 1 is the new radius. */
  readonly end: readonly Point[];
  /** The wall on the shown side and straight across from it: x outward from the axis, y the depth, 0 to 1. */
  readonly near: readonly Point[];
  readonly far: readonly Point[];
}

const ANGLES = 96;
const DEPTHS = 40;

/**
 * @param z depth of the end view, mm
 * @param theta side of the cut along, radians
 */
export function miniWear(survey: SurveyEvaluation, z: number, theta: number): MiniWear | null {
  const wall = wallOf(survey);
  if (wall === null) return null;
  const { least, greatest } = rangeOf(wall);
  const { radius, length } = wall;
  const { chosen } = exaggerations(least, greatest, radius, radius);
  const drawn = (angle: number, deep: number) =>
    1 + (chosen * linearAt(wall.grid, wall.deviation, angle, deep)) / radius;
  const along = (angle: number) =>
    Array.from({ length: DEPTHS + 1 }, (_, i): Point => {
      const share = i / DEPTHS;
      return [drawn(angle, share * length), share];
    });
  return {
    end: Array.from({ length: ANGLES }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / ANGLES;
      const r = drawn(angle, z);
      return [r * Math.sin(angle), r * Math.cos(angle)];
    }),
    near: along(theta),
    far: along(theta + Math.PI),
  };
}
