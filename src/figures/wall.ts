/**
 * What is drawn on the wall of one survey's bore: the deviation at each place and how well it is known.
 *
 * With a target the deviation is counted from it (e < 0 stands proud, e > 0 is short). Without one it is
 * counted from the average round of the whole wall, so that the shape can be seen before a bushing is named.
 */
import type { SurveyEvaluation } from '../evaluate.ts';
import { linearAt } from './sample.ts';
import { chooseSteps, middleOfField, type Steps, type Units, usualRange } from './steps.ts';

type Surface = NonNullable<SurveyEvaluation['surface']>;

export interface Wall {
  /** As in the evaluation: theta even from 0 without the closing turn, z from 0 to the bore's length. */
  readonly grid: Surface['grid'];
  /** Depth of the wall, mm. */
  readonly length: number;
  /** Radius of the round that deviations are counted from, mm; arc lengths are taken on it. */
  readonly radius: number;
  /** Per side, mm, row by row as the grid; NaN is not known. */
  readonly deviation: Float64Array;
  /** Two standard deviations of `deviation`, mm. */
  readonly give: Float64Array;
  /** `change`: of one stage against another; positive where metal is gone. */
  readonly about: 'target' | 'average' | 'change';
  /** Walls for whose range colours and exaggeration are chosen; left out: this one. */
  readonly scaledBy?: readonly Wall[];
}

const known = new WeakMap<SurveyEvaluation, Wall | null>();

/** The wall as far as the survey shows it; null where there is no surface to draw. */
export function wallOf(survey: SurveyEvaluation): Wall | null {
  const wall = known.get(survey);
  if (wall !== undefined) return wall;
  const found = findWall(survey);
  known.set(survey, found);
  return found;
}

/** From now on this is what is drawn of a survey that was put together to be drawn. */
export function drawAs(survey: SurveyEvaluation, wall: Wall): void {
  known.set(survey, wall);
}

function findWall(survey: SurveyEvaluation): Wall | null {
  const { surface, removal, target } = survey;
  if (surface === null) return null;
  const { grid, mean } = surface;
  const length = grid.z[grid.z.length - 1] ?? Number.NaN;
  if (!(length > 0)) return null;
  if (removal !== null && target !== null) {
    const { deviation, sd } = removal;
    const radius = target.diameter / 2;
    return { grid, length, radius, deviation, give: sd.map((s) => 2 * s), about: 'target' };
  }
  const radius = average(mean);
  if (!(radius > 0)) return null;
  // Where the bore stands, and lobes that no gauge saw, are no part of a shape drawn about its own average.
  const give = surface.sdSeen.map((s) => 2 * s);
  return { grid, length, radius, deviation: mean.map((r) => r - radius), give, about: 'average' };
}

function average(field: Float64Array): number {
  const finite = field.filter((value) => Number.isFinite(value));
  return finite.reduce((sum, value) => sum + value, 0) / finite.length;
}

/** Deviation and give-or-take at a place, per side, mm; NaN where it is not known or outside the bore. */
export function wallAt(wall: Wall, theta: number, z: number): { deviation: number; give: number } {
  return {
    deviation: linearAt(wall.grid, wall.deviation, theta, z),
    give: linearAt(wall.grid, wall.give, theta, z),
  };
}

interface Range {
  readonly least: number;
  readonly greatest: number;
}

/** For what colours, contours and exaggeration are chosen, mm. */
export interface Scale extends Range {
  /** Without the rarest places. */
  readonly usual: Range;
  readonly give: number;
}

const scales = new WeakMap<Wall, Scale>();

export function scaleOf(wall: Wall): Scale {
  const found = scales.get(wall) ?? findScale(wall);
  scales.set(wall, found);
  return found;
}

function findScale(wall: Wall): Scale {
  if (wall.scaledBy === undefined) {
    const usual = usualRange(wall.deviation);
    return { ...rangeOf(wall), usual, give: middleOfField(wall.give) };
  }
  const all = wall.scaledBy.map(scaleOf);
  const whole = (ranges: readonly Range[]) => ({
    least: Math.min(...ranges.map(({ least }) => least)),
    greatest: Math.max(...ranges.map(({ greatest }) => greatest)),
  });
  return {
    ...whole(all),
    usual: whole(all.map(({ usual }) => usual)),
    give: Math.min(...all.map(({ give }) => give)),
  };
}

/** Contour steps for a wall; scene, map and words use the same. */
export function stepsOf(wall: Wall, units: Units): Steps {
  const { least, greatest, usual, give } = scaleOf(wall);
  return chooseSteps(least, greatest, units, usual, give);
}

/** Least and greatest known deviation, mm; both NaN where nothing is known. */
export function rangeOf(wall: Wall): Range {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const e of wall.deviation) {
    if (e < least) least = e;
    if (e > greatest) greatest = e;
  }
  if (!(least <= greatest)) return { least: Number.NaN, greatest: Number.NaN };
  return { least, greatest };
}

/** Share of a figure that its give-or-take may reach before the place counts as uncertain. */
const DOUBT_SHARE = 0.7;
/** Contour steps that it may reach as well: a place that is out by hardly more than its band is drawn as it is. */
const DOUBT_STEPS = 1.25;

/**
 * How doubtful a place is; above 1 it is hatched. A place is uncertain where its give-or-take is clearly larger than
 * a contour step and than most of the figure itself: then neither the amount nor its band can be trusted.
 * Not known at all: Infinity.
 */
export function doubtOf(deviation: number, give: number, step: number): number {
  const doubt = give / Math.max(DOUBT_STEPS * step, DOUBT_SHARE * Math.abs(deviation));
  return Number.isNaN(doubt) ? Number.POSITIVE_INFINITY : doubt;
}
