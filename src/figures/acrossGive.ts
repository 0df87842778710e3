/** How well the diameters of one depth are known. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { linearAt } from './sample.ts';
import { wallOf } from './wall.ts';

/** Depths closer than this, mm, are the same. */
const SAME = 1e-6;

/** The measured depth that a place lies at; undefined between them. */
export function measuredAt(survey: SurveyEvaluation, z: number) {
  return survey.sections.find((one) => one.count > 0 && Math.abs(one.z - z) < SAME);
}

/**
 * Give-or-take of the diameters at a depth, across, mm: of a measured depth's own mean, as the tables have it; between
 * them the most that the two ends of any diameter can be out together. NaN where nothing is known.
 */
export function acrossGive(survey: SurveyEvaluation, z: number): number {
  const told = measuredAt(survey, z);
  if (told !== undefined) return told.give;
  const wall = wallOf(survey);
  if (wall === null) return Number.NaN;
  const at = (theta: number) => linearAt(wall.grid, wall.give, theta, z);
  return Math.max(...Array.from(wall.grid.theta, (theta) => at(theta) + at(theta + Math.PI)));
}
