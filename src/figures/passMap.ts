/** The map of one pass: what comes off, minus as everywhere, and the places of its gate. */
import type { Pass } from '../bore/passTypes.ts';
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { angleApart } from '../job/clock.ts';
import { type MapFigure, mapFigure } from './map.ts';
import type { Units } from './steps.ts';
import { drawAs } from './wall.ts';

/** A figure that is planned is as well known as it is written: per side, mm. */
const PLANNED = 0.0005;

/** @returns null where the survey has no surface or target */
export function passMap(
  survey: SurveyEvaluation,
  facts: BoreFacts,
  pass: Pass,
  units: Units,
): MapFigure | null {
  const { surface, target, removal } = survey;
  if (surface === null || target === null || removal === null) return null;
  const deviation = pass.removal.map((g) => -g);
  const gated = (theta: number, z: number) =>
    pass.gate.some(
      (place) => Math.abs(place.z - z) < 1e-6 && angleApart(place.theta, theta, Math.PI) < 1e-4,
    );
  const drawn: SurveyEvaluation = {
    ...survey,
    zones: pass.zones.map((zone) => ({ ...zone, give: PLANNED })),
    sightings: survey.sightings.filter(({ theta, z }) => gated(theta, z)),
    checks: [],
    target: { ...target, assumed: null },
  };
  const length = surface.grid.z.at(-1)!;
  const give = new Float64Array(deviation.length);
  const radius = target.diameter / 2;
  drawAs(drawn, { grid: surface.grid, length, radius, deviation, give, about: 'target' });
  const map = mapFigure(drawn, facts, units);
  // How well the wall is known, and where to read next, are the big map's.
  return map && { ...map, sure: [], possible: [], next: [], assumed: target.assumed };
}
