/** The map of a weld: what is missing to finished size and allowance, plus as everywhere where metal is short. */
import type { BuildUp } from '../evaluate/buildUp.ts';
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { type MapFigure, mapFigure } from './map.ts';
import type { Units } from './steps.ts';
import { drawAs } from './wall.ts';

/** @returns null where the survey has no surface or target */
export function weldMap(
  survey: SurveyEvaluation,
  facts: BoreFacts,
  { short, low }: BuildUp['weld'],
  units: Units,
): MapFigure | null {
  const { surface, target, removal } = survey;
  if (surface === null || target === null || removal === null) return null;
  const drawn: SurveyEvaluation = {
    ...survey,
    zones: low,
    checks: [],
    target: { ...target, assumed: null },
  };
  const { grid } = surface;
  const length = grid.z.at(-1)!;
  const give = removal.sd.map((sd) => 2 * sd);
  drawAs(drawn, {
    grid,
    length,
    radius: target.diameter / 2,
    deviation: short,
    give,
    about: 'target',
  });
  const map = mapFigure(drawn, facts, units);
  // What may come off, and where to read next, are the big map's.
  return map && { ...map, sure: [], possible: [], next: [], assumed: target.assumed };
}
