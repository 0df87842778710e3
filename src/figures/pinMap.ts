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

/** The same map with depth to the right and the clock running down: what lies on it, its places changed over. */
export function lying(map: MapFigure): MapFigure {
  const over = <T extends { readonly x: number; readonly y: number }>(one: T): T => ({
    ...one,
    x: one.y,
    y: one.x,
  });
  return {
    ...map,
    width: map.height,
    height: map.width,
    marks: map.marks.map(over),
    zones: map.zones.map(over),
    next: map.next.map(over),
    keepouts: map.keepouts.map((keepout) => ({
      ...keepout,
      boxes: keepout.boxes.map(({ x, y, width, height }) => ({
        x: y,
        y: x,
        width: height,
        height: width,
      })),
    })),
  };
}

/** Beside the map, wherever it stands. */
export const PIN_MAP_WORDS =
  'The outside of the pin rolled out as seen from outside, lying with face A at the left; the clock runs down from 12 ' +
  'to 12. Per side against the finished size: plus (teal) is short, minus (copper) is to come off. Hatched is unsure; ' +
  'broken lines are the ends of what runs.';
/** The same, where there is little room. */
export const PIN_MAP_BRIEF =
  'Face A at the left, clock down. Per side: plus (teal) is short, minus (copper) is to come off; hatched is unsure, ' +
  'broken lines end what runs.';
