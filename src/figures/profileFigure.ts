/** How the bore's size goes along the depth: least, mean and greatest diameter, across, in the job's units. */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { inUnits } from '../job/units.ts';
import { linearAt } from './sample.ts';
import type { Units } from './steps.ts';

export interface ProfilePoint {
  readonly z: number;
  readonly least: number;
  readonly mean: number;
  readonly greatest: number;
}

export interface ProfileFigure {
  readonly units: Units;
  readonly length: number;
  /** From the rim to the bottom; NaN where a depth is not known. */
  readonly points: readonly ProfilePoint[];
  /** The surface at each depth that has readings. */
  readonly measured: readonly ProfilePoint[];
  /** The shape that the measured depths' mean sizes tell, straight, tapered or belled; none where they tell none. */
  readonly fitted: readonly { readonly z: number; readonly diameter: number }[];
  /** Diameter wanted; NaN not known. */
  readonly target: number;
  readonly seats: BoreFacts['seats'];
  readonly range: { readonly least: number; readonly greatest: number };
}

/** @returns null where the survey has no surface */
export function profileFigure(
  survey: SurveyEvaluation,
  facts: BoreFacts,
  units: Units,
): ProfileFigure | null {
  const { surface } = survey;
  if (surface === null) return null;
  const { grid, mean } = surface;
  const shown = (mm: number) => inUnits(mm, units);
  const points = Array.from(grid.z, (_, row) => pointOfRow(grid, mean, row, shown));
  const measured = survey.sections
    .filter((section) => section.count > 0)
    .map(({ z, least, meanDiameter, greatest }) => ({
      z: shown(z),
      least: shown(least.diameter),
      mean: shown(meanDiameter),
      greatest: shown(greatest.diameter),
    }));
  const target = shown(survey.target?.diameter ?? Number.NaN);
  const fitted = (survey.profile?.fitted ?? []).map(({ z, diameter }) => ({
    z: shown(z),
    diameter: shown(diameter),
  }));
  const all = [...points, ...measured].flatMap((p) => [p.least, p.greatest]);
  const known = [...all, target].filter(Number.isFinite);
  if (!(known.length > 0)) return null;
  return {
    units,
    length: shown(grid.z[grid.z.length - 1]!),
    points,
    measured,
    fitted,
    target,
    // A seat of no stated end goes to the bottom.
    seats: facts.seats.map(({ from, to }) => ({
      from: shown(from),
      to: shown(Math.min(to, grid.z[grid.z.length - 1]!)),
    })),
    range: { least: Math.min(...known), greatest: Math.max(...known) },
  };
}

/** Sizes at one depth, mm: as the profile shows them there. All NaN where the depth is not known. */
export function sizesAt(survey: SurveyEvaluation, z: number): ProfilePoint {
  const none = { z, least: Number.NaN, mean: Number.NaN, greatest: Number.NaN };
  if (survey.surface === null) return none;
  return pointAt(survey.surface.grid, survey.surface.mean, z, (mm) => mm);
}

type Grid = NonNullable<SurveyEvaluation['surface']>['grid'];

/** At a depth of the grid itself, whose diameters run from one grid angle to the one straight across. */
function pointOfRow(
  grid: Grid,
  mean: Float64Array,
  row: number,
  shown: (mm: number) => number,
): ProfilePoint {
  const columns = grid.theta.length;
  const z = grid.z[row]!;
  if (columns % 2 === 1) return pointAt(grid, mean, z, shown);
  const radii = mean.subarray(row * columns, (row + 1) * columns);
  const across = Array.from({ length: columns / 2 }, (_, i) =>
    shown(radii[i]! + radii[i + columns / 2]!),
  );
  return summed(shown(z), across);
}

function pointAt(
  grid: Grid,
  mean: Float64Array,
  z: number,
  shown: (mm: number) => number,
): ProfilePoint {
  const across = Array.from(grid.theta, (theta) =>
    shown(linearAt(grid, mean, theta, z) + linearAt(grid, mean, theta + Math.PI, z)),
  );
  return summed(shown(z), across);
}

function summed(z: number, across: readonly number[]): ProfilePoint {
  return {
    z,
    least: Math.min(...across),
    mean: across.reduce((sum, d) => sum + d, 0) / across.length,
    greatest: Math.max(...across),
  };
}
