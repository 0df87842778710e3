/** What may be ground only after better measuring: likely high, and not surely enough. One truth for map, passes, ways and fit. */
import type { Waits } from '../bore/passTypes.ts';
import type { Removal, WearSurface, Zone } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearClock } from './nearClock.ts';
import { linearAt } from './sample.ts';
import { written } from './written.ts';

/** In place of a list of passes. */
export const NO_PASS_YET =
  'No pass until it is measured better: what stands proud is likely there, but not sure enough to grind.';

/** Stands before the high spots in place of `take off`. */
export const NOT_YET = 'High spots, likely: none to be ground before it is measured better';

/** `up to 0.0011 in per side, give or take 0.0006, likely stands proud at 8:45, 0.97 in deep`. */
export function likelyHigh({ theta, z, most, give }: Waits, units: Units): string {
  const { perSide, bare } = written(units, give);
  return `up to ${perSide(most)}, give or take ${bare(give)}, likely stands proud at ${nearClock(theta)}, ${formatDepth(z, units)} deep`;
}

/** Of one place that no pass may be given for yet. */
export function waitsWords({ most, give }: Waits, units: Units): string {
  const { perSide, bare } = written(units, give);
  const known = `likely stands proud by ${perSide(most)}, give or take ${bare(give)}`;
  const how = 'Measure there again, with a finer gauge if there is one, before any grinding';
  return most <= give
    ? `${known}: it may be nothing at all. ${how}`
    : `${known}: not sure enough for a pass. ${how}`;
}

/**
 * How far a high spot may be gone by.
 *
 * @param waits as the plan of the passes tells it: no pass until it is measured better
 * @returns '' of a low spot
 */
export function sureWords(
  zone: Zone,
  of: { readonly surface: WearSurface | null; readonly removal: Removal | null },
  units: Units,
  waits: boolean,
): string {
  const { surface, removal } = of;
  if (zone.kind !== 'high' || surface === null || removal === null) return '';
  const sure = linearAt(surface.grid, removal.sure, zone.theta, zone.z);
  if (!(sure > 0)) return 'Within the give-or-take: measure again before grinding.';
  if (waits) return 'Not sure enough for a pass: measure here better before grinding.';
  return `Of that, ${written(units, zone.give).perSide(sure)} is sure.`;
}
