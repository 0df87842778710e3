/** The bore cut across at one depth, as a polar picture about the axis that deviations are counted from. */
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Point } from './contours.ts';
import { marksOf } from './marks.ts';
import { linearAt } from './sample.ts';
import { type Wall, wallOf } from './wall.ts';

export interface SectionFigure {
  readonly z: number;
  /** Drawn radius of right, mm; every deviation is drawn `exaggeration` times itself from it. */
  readonly radius: number;
  readonly about: Wall['about'];
  readonly exaggeration: number;
  /** Closed outline, x to 3 o'clock and y to 12, mm as drawn. Empty where the depth is not known. */
  readonly outline: readonly Point[];
  /** The same, a give-or-take smaller and larger. */
  readonly inner: readonly Point[];
  readonly outer: readonly Point[];
  /** Average round of this depth: its centre and radius as drawn. */
  readonly average: { readonly x: number; readonly y: number; readonly radius: number } | null;
  /** Where readings at this depth touched. */
  readonly touched: readonly { readonly theta: number; readonly row: number; readonly at: Point }[];
  /** Greatest radius drawn, mm. */
  readonly reach: number;
}

const ANGLES = 180;

/** @returns null where the survey has no surface */
export function sectionFigure(
  survey: SurveyEvaluation,
  z: number,
  exaggeration: number,
): SectionFigure | null {
  const wall = wallOf(survey);
  if (wall === null) return null;
  const theta = Array.from({ length: ANGLES }, (_, i) => (2 * Math.PI * i) / ANGLES);
  const e = theta.map((angle) => linearAt(wall.grid, wall.deviation, angle, z));
  const give = theta.map((angle) => linearAt(wall.grid, wall.give, angle, z));
  const drawn = (deviation: number) => Math.max(0, wall.radius + exaggeration * deviation);
  const outline = (offset: -1 | 0 | 1) => {
    if (!e.every(Number.isFinite)) return [];
    return theta.map((angle, i) => polar(angle, drawn(e[i]! + offset * (give[i] || 0))));
  };
  const rings = { inner: outline(-1), outline: outline(0), outer: outline(1) };
  const near = wall.length / 40;
  const touched = marksOf(survey)
    .filter((mark) => Math.abs(mark.z - z) <= near)
    .map(({ theta: angle, row }) => {
      const deviation = linearAt(wall.grid, wall.deviation, angle, z);
      return { theta: angle, row, at: polar(angle, drawn(deviation)) };
    })
    .filter(({ at }) => at.every(Number.isFinite));
  const sizes = [...rings.outline, ...rings.outer].map(([x, y]) => Math.hypot(x, y));
  return {
    z,
    radius: wall.radius,
    about: wall.about,
    exaggeration,
    ...rings,
    average: averageRound(theta, e, wall.radius, exaggeration),
    touched,
    reach: Math.max(wall.radius, ...sizes),
  };
}

function polar(theta: number, radius: number): Point {
  return [radius * Math.sin(theta), radius * Math.cos(theta)];
}

/** First terms of the Fourier series: to first order the least-squares circle of the section. */
function averageRound(
  theta: readonly number[],
  e: readonly number[],
  radius: number,
  exaggeration: number,
) {
  const mean = (weight: (angle: number) => number) =>
    e.reduce((sum, value, i) => sum + value * weight(theta[i]!), 0) / e.length;
  const size = mean(() => 1);
  if (!Number.isFinite(size)) return null;
  return {
    x: exaggeration * 2 * mean(Math.sin),
    y: exaggeration * 2 * mean(Math.cos),
    radius: radius + exaggeration * size,
  };
}
