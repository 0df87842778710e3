/** How the bore's size goes along the depth: least, mean and greatest diameter, across, mm. */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { linearAt } from './sample.ts';

export interface ProfilePoint {
  readonly z: number;
  readonly least: number;
  readonly mean: number;
  readonly greatest: number;
}

export interface ProfileFigure {
  readonly length: number;
  /** From the rim to the bottom; NaN where a depth is not known. */
  readonly points: readonly ProfilePoint[];
  /** What was measured at each depth with readings. */
  readonly measured: readonly ProfilePoint[];
  /** Diameter wanted, mm; NaN not known. */
  readonly target: number;
  readonly seats: BoreFacts['seats'];
  readonly range: { readonly least: number; readonly greatest: number };
}

/** @returns null where the survey has no surface */
export function profileFigure(survey: SurveyEvaluation, facts: BoreFacts): ProfileFigure | null {
  const { surface } = survey;
  if (surface === null) return null;
  const { grid, mean } = surface;
  const points = Array.from(grid.z, (z) => {
    const across = Array.from(
      grid.theta,
      (theta) => linearAt(grid, mean, theta, z) + linearAt(grid, mean, theta + Math.PI, z),
    );
    return {
      z,
      least: Math.min(...across),
      mean: across.reduce((sum, d) => sum + d, 0) / across.length,
      greatest: Math.max(...across),
    };
  });
  const measured = survey.sections
    .filter((section) => section.count > 0)
    .map(({ z, least, meanDiameter, greatest }) => ({
      z,
      least: least.diameter,
      mean: meanDiameter,
      greatest: greatest.diameter,
    }));
  const target = survey.target?.diameter ?? Number.NaN;
  const all = [...points, ...measured].flatMap((p) => [p.least, p.greatest]);
  const known = [...all, target].filter(Number.isFinite);
  if (!(known.length > 0)) return null;
  return {
    length: grid.z[grid.z.length - 1]!,
    points,
    measured,
    target,
    seats: facts.seats,
    range: { least: Math.min(...known), greatest: Math.max(...known) },
  };
}
