/** Surveys of a bushing's own bore, taken once it was pressed in, and the readings of the wall that they go with. */
import type { Hole } from '../../assembly/running.ts';
import type { Span } from '../../bore/removal.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { stretchOf } from './stretch.ts';

type Surveys = Pick<BoreEvaluation, 'surveys'>;

/**
 * The last survey of the bushing that went into this wall: of those that follow it, before a wall is read again.
 *
 * @param survey of a wall, or of a fitted bushing, which is the answer itself
 * @returns null where none was read
 */
export function fittedAfter(
  { surveys }: Surveys,
  survey: SurveyEvaluation,
): SurveyEvaluation | null {
  if (survey.stage === 'fitted') return survey.surface === null ? null : survey;
  const after = surveys.slice(surveys.findIndex(({ id }) => id === survey.id) + 1);
  let found: SurveyEvaluation | null = null;
  for (const one of after.filter(({ surface }) => surface !== null)) {
    if (one.stage === 'fitted') found = one;
    else if (found !== null) break;
  }
  return found;
}

/** The wall that a fitted bushing went into: the last one read before; any other survey is of a wall itself. */
export function wallBefore(
  { surveys }: Surveys,
  survey: SurveyEvaluation,
): SurveyEvaluation | null {
  if (survey.stage !== 'fitted') return survey;
  const before = surveys.slice(
    0,
    surveys.findIndex(({ id }) => id === survey.id),
  );
  return before.findLast(({ stage, surface }) => stage !== 'fitted' && surface !== null) ?? null;
}

/** Depths count as within a seat up to this far beyond it, mm: nobody reads a depth more closely. */
const NEAR = 0.5;

/**
 * The bore of one bushing as it was read once in.
 *
 * @returns null where none of the readings is of this bushing
 */
export function measuredHole(
  { surface, sightings }: SurveyEvaluation,
  seat: Span,
): { readonly hole: Hole; readonly give: number } | null {
  const own = sightings.some(({ z }) => z >= seat.from - NEAR && z <= seat.to + NEAR);
  return surface !== null && own ? stretchOf(surface, seat) : null;
}
