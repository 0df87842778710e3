/** The bore cut across at one depth, as a polar picture about the axis that deviations are counted from. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { acrossGive, measuredAt } from './acrossGive.ts';
import type { Point } from './contours.ts';
import { marksOf } from './marks.ts';
import { sizesAt } from './profileFigure.ts';
import { linearAt } from './sample.ts';
import { type Wall, wallOf } from './wall.ts';

/** A circle of the picture, mm as drawn, and its true size. */
export interface DrawnCircle {
  readonly kind: 'average' | 'entering' | 'around';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Across, mm, not exaggerated. */
  readonly diameter: number;
}

/** A diameter of the section: across, mm, from `theta` to straight across. */
export interface Across {
  readonly theta: number;
  readonly diameter: number;
}

export interface SectionFigure {
  readonly z: number;
  /** Drawn radius of right, mm; every deviation is drawn `exaggeration` times itself from it. */
  readonly radius: number;
  readonly about: Wall['about'];
  readonly exaggeration: number;
  /** Centre of what is wanted, mm as drawn: off the picture's middle where the picture stands about the wall itself. */
  readonly wanted: { readonly x: number; readonly y: number };
  /** Closed outline, x to 3 o'clock and y to 12, mm as drawn. Empty where the depth is not known. */
  readonly outline: readonly Point[];
  /** The same, a give-or-take smaller and larger. */
  readonly inner: readonly Point[];
  readonly outer: readonly Point[];
  /**
   * The average round; at a measured depth also the biggest plug that enters there and the smallest round that cleans
   * it up.
   */
  readonly circles: readonly DrawnCircle[];
  /** Least and greatest diameter; null where the depth is not known. */
  readonly least: Across | null;
  readonly greatest: Across | null;
  /** Give-or-take of diameters here, mm: what their digits are cut to. */
  readonly give: number;
  /** Where readings at this depth touched. */
  readonly touched: readonly { readonly theta: number; readonly row: number; readonly at: Point }[];
  /** Greatest radius drawn, mm. */
  readonly reach: number;
}

const ANGLES = 180;
/** Depths this near, as a share of the bore's, are one: what was read there touched here. */
const NEAR = 1 / 40;

/**
 * @param still the picture stands about the average round of this depth, so that the wall keeps its place while the
 *   target's centre is moved; left out: about the target
 * @returns null where the survey has no surface
 */
export function sectionFigure(
  survey: SurveyEvaluation,
  z: number,
  exaggeration: number,
  still = false,
): SectionFigure | null {
  const wall = wallOf(survey);
  if (wall === null) return null;
  const theta = Array.from({ length: ANGLES }, (_, i) => (2 * Math.PI * i) / ANGLES);
  const from = theta.map((angle) => linearAt(wall.grid, wall.deviation, angle, z));
  const off = still ? firstLobe(theta, from) : { x: 0, y: 0 };
  const stood = (e: number, angle: number) => e - off.x * Math.sin(angle) - off.y * Math.cos(angle);
  const e = from.map((deviation, i) => stood(deviation, theta[i]!));
  const give = theta.map((angle) => linearAt(wall.grid, wall.give, angle, z));
  const drawn = (deviation: number) => Math.max(0, wall.radius + exaggeration * deviation);
  const outline = (offset: -1 | 0 | 1) => {
    if (!e.every(Number.isFinite)) return [];
    return theta.map((angle, i) => polar(angle, drawn(e[i]! + offset * (give[i] || 0))));
  };
  const rings = { inner: outline(-1), outline: outline(0), outer: outline(1) };
  const touched = marksOf(survey)
    .filter((mark) => Math.abs(mark.z - z) <= NEAR * wall.length)
    .map(({ theta: angle, row }) => {
      const deviation = stood(linearAt(wall.grid, wall.deviation, angle, z), angle);
      return { theta: angle, row, at: polar(angle, drawn(deviation)) };
    })
    .filter(({ at }) => at.every(Number.isFinite));
  const meanSize = measuredAt(survey, z)?.meanDiameter ?? sizesAt(survey, z).mean;
  // A change has no sizes of its own.
  const sized = wall.about !== 'change';
  const circles = !sized
    ? []
    : [
        ...averageRound(theta, e, wall.radius, exaggeration, meanSize),
        ...plugCircles(survey, z, wall, exaggeration, off),
      ];
  const sizes = [
    ...[...rings.outline, ...rings.outer].map(([x, y]) => Math.hypot(x, y)),
    ...circles.map(({ x, y, radius }) => Math.hypot(x, y) + radius),
  ];
  return {
    z,
    radius: wall.radius,
    about: wall.about,
    exaggeration,
    wanted: { x: 0 - exaggeration * off.x, y: 0 - exaggeration * off.y },
    ...rings,
    circles,
    ...(sized ? diameters(survey, z, wall.radius, e) : { least: null, greatest: null }),
    give: acrossGive(survey, z),
    touched,
    reach: Math.max(wall.radius, ...sizes),
  };
}

function polar(theta: number, radius: number): Point {
  return [radius * Math.sin(theta), radius * Math.cos(theta)];
}

/** Where the average round of a section stands, mm, to first order; at the middle where the section is not known. */
function firstLobe(theta: readonly number[], e: readonly number[]): { x: number; y: number } {
  const share = (weight: (angle: number) => number) =>
    (2 * e.reduce((sum, value, i) => sum + value * weight(theta[i]!), 0)) / e.length;
  const [x, y] = [share(Math.sin), share(Math.cos)];
  return Number.isFinite(x + y) ? { x, y } : { x: 0, y: 0 };
}

/** First terms of the Fourier series: to first order the least-squares circle of the section. None where unknown. */
function averageRound(
  theta: readonly number[],
  e: readonly number[],
  radius: number,
  exaggeration: number,
  diameter: number,
): DrawnCircle[] {
  const size = e.reduce((sum, value) => sum + value, 0) / e.length;
  if (!Number.isFinite(size)) return [];
  const { x, y } = firstLobe(theta, e);
  return [
    {
      kind: 'average',
      x: exaggeration * x,
      y: exaggeration * y,
      radius: radius + exaggeration * size,
      diameter,
    },
  ];
}

/** What enters and what cleans up, where this depth was measured, about the axis that deviations are counted from. */
function plugCircles(
  survey: SurveyEvaluation,
  z: number,
  wall: Wall,
  exaggeration: number,
  off: { readonly x: number; readonly y: number },
): DrawnCircle[] {
  const near = survey.plugs?.sections.filter((one) => Math.abs(one.z - z) <= NEAR * wall.length);
  const at = near?.sort((a, b) => Math.abs(a.z - z) - Math.abs(b.z - z))[0];
  if (at === undefined) return [];
  const axis = wall.about === 'target' ? survey.target?.axis : undefined;
  const { x, y, leanX, leanY } = axis ?? { x: 0, y: 0, leanX: 0, leanY: 0 };
  return (['entering', 'around'] as const).flatMap((kind) => {
    const plug = at[kind];
    if (plug === null) return [];
    return [
      {
        kind,
        x: exaggeration * (plug.axis.x - x - leanX * z - off.x),
        y: exaggeration * (plug.axis.y - y - leanY * z - off.y),
        radius: Math.max(0, wall.radius + exaggeration * (plug.diameter / 2 - wall.radius)),
        diameter: plug.diameter,
      },
    ];
  });
}

/** At a measured depth what its own figures say, as the tables do; between them what the wall shows. */
function diameters(
  survey: SurveyEvaluation,
  z: number,
  radius: number,
  e: readonly number[],
): Pick<SectionFigure, 'least' | 'greatest'> {
  const told = measuredAt(survey, z);
  if (told !== undefined) {
    const known = (one: Across) => (Number.isFinite(one.diameter + one.theta) ? one : null);
    return { least: known(told.least), greatest: known(told.greatest) };
  }
  const half = ANGLES / 2;
  const across = e.slice(0, half).map((value, i) => ({
    theta: (2 * Math.PI * i) / ANGLES,
    diameter: 2 * radius + value + e[i + half]!,
  }));
  if (!across.every(({ diameter }) => Number.isFinite(diameter))) {
    return { least: null, greatest: null };
  }
  const pick = (sign: 1 | -1) =>
    across.reduce((best, one) => (sign * (one.diameter - best.diameter) > 0 ? one : best));
  return { least: pick(-1), greatest: pick(1) };
}
