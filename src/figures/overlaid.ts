/** The lines that are laid over the bore in three dimensions, gathered. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { angleApart } from '../job/clock.ts';
import type { ShownCircles } from './circles.ts';
import { axisOf, type Ghost } from './ghost.ts';
import type { Mark } from './marks.ts';
import { touchesOf } from './marks.ts';
import type { PieceFigure } from './piece.ts';
import { scaleAt } from './signs.ts';
import {
  circleStroke,
  cutStrokes,
  ghostStrokes,
  type Stroke,
  scaleStrokes,
  spokes,
  sweptPath,
  targetStrokes,
  wallStroke,
} from './strokes.ts';

/** Where a gauge touches. */
export interface Touched {
  readonly touches: readonly { readonly theta: number; readonly z: number }[];
  readonly instrument: Mark['instrument'];
  readonly suspect: boolean;
}

export interface Laid {
  readonly target: boolean;
  readonly circles: ShownCircles | null;
  readonly ghost: Ghost | null;
  /** The reading in hand; null none. */
  readonly touched: Touched | null;
  readonly readings: boolean;
  /** Lines of contact pressure. */
  readonly pressed: readonly Stroke[];
  /** Clock position of the half that is taken off; null whole. */
  readonly away: number | null;
}

/** How near to a reading's touch one has to point, in radii of the bore. */
const NEAR = 0.14;

/** The reading that touched the wall at a place; null where none did. */
export function readingNear(
  survey: SurveyEvaluation,
  { shape: { radius } }: PieceFigure,
  place: { readonly theta: number; readonly z: number } | null,
): Touched | null {
  if (place === null) return null;
  let found: Touched | null = null;
  let least = NEAR * radius;
  for (const { row, instrument, theta, z } of survey.sightings) {
    const touches = touchesOf(instrument, theta, z);
    for (const touch of touches) {
      const far = Math.hypot(radius * angleApart(touch.theta, place.theta), z - place.z);
      if (!(far < least)) continue;
      least = far;
      const suspect = survey.checks.some((check) => check.row === row && check.suspect);
      found = { touches, instrument, suspect };
    }
  }
  return found;
}

export function laidStrokes(piece: PieceFigure, survey: SurveyEvaluation, laid: Laid): Stroke[] {
  const { shape, metal } = piece;
  const { away, touched, ghost, circles } = laid;
  const scale = scaleStrokes(
    shape,
    piece.depthTicks.map(({ z }) => z),
    scaleAt(piece, away),
    away === null ? null : Math.min(0.3 * metal, 0.1 * shape.radius),
  );
  return [
    ...scale,
    ...(away === null ? cutStrokes(shape, metal) : []),
    ...(laid.target ? targetStrokes(shape) : []),
    ...(circles?.circles.map((one) => circleStroke(one.kind, shape, one)) ?? []),
    ...(ghost === null ? [] : ghostStrokes(shape, ghost, axisOf(survey))),
    ...(laid.readings ? paths(piece, survey) : []),
    ...(touched === null ? [] : touchedStrokes(piece, touched)),
    ...laid.pressed,
  ];
}

/** Depths that were swept, each once. */
function paths({ shape }: PieceFigure, survey: SurveyEvaluation): Stroke[] {
  const swept = survey.sightings.filter(({ instrument }) => instrument === 'sweep');
  return [...new Set(swept.map(({ z }) => z))].map((z) => sweptPath(shape, z));
}

function touchedStrokes({ shape, metal }: PieceFigure, { touches, instrument, suspect }: Touched) {
  if (instrument === 'wall') {
    return touches.map(({ theta, z }) => wallStroke(shape, metal, theta, z));
  }
  return spokes(suspect ? 'doubt' : 'reading', shape, touches);
}
