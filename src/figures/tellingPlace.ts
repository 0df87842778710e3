/** The place of a wall that says most: where a repairer would look first. */
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Place } from './place.ts';
import { wallOf } from './wall.ts';

/**
 * The middle of the zone with most metal to come off; where none does, of the one that is most short; without zones
 * the place that is farthest from right. Null where nothing of the wall is known.
 */
export function tellingPlace(survey: SurveyEvaluation): Place | null {
  const zones = [...survey.zones].sort((a, b) => a.peak - b.peak);
  const [first] = zones;
  const zone = first?.kind === 'high' ? first : zones.at(-1);
  if (zone !== undefined) return { theta: zone.theta, z: zone.z };
  const wall = wallOf(survey);
  if (wall === null) return null;
  const { grid, deviation } = wall;
  let at = -1;
  deviation.forEach((e, i) => {
    if (!Number.isFinite(e)) return;
    if (at < 0 || Math.abs(e) > Math.abs(deviation[at]!)) at = i;
  });
  if (at < 0) return null;
  const columns = grid.theta.length;
  return { theta: grid.theta[at % columns]!, z: grid.z[Math.floor(at / columns)]! };
}
