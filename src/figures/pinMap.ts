/** The map of a pin: what its plan says of each place, as the data that maps are drawn from. */
import type { PinPlan } from '../evaluate/pinTypes.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { type MapFigure, mapFigure } from './map.ts';
import type { Units } from './steps.ts';
import { drawAs } from './wall.ts';

/** Clock from 12 to 12. @returns null where there is nothing to draw */
export function pinMap(
  survey: SurveyEvaluation,
  pin: BoreEvaluation,
  plan: PinPlan,
  units: Units,
): MapFigure | null {
  const { surface, short, sd, low, pin: facts, length, finished } = plan;
  const drawn: SurveyEvaluation = {
    ...survey,
    zones: low,
    next: { ...survey.next, readings: [], setups: [] },
  };
  drawAs(drawn, {
    grid: surface.grid,
    length,
    radius: finished.mm / 2,
    deviation: short,
    give: sd.map((one) => 2 * one),
    about: 'target',
  });
  const map = mapFigure(drawn, { ...pin.facts, seats: facts.lands }, units, 0);
  return map && { ...map, assumed: plan.sideSeen ? null : 'both sides alike' };
}
