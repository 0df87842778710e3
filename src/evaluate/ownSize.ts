/** Sizes that a way of mending brings of its own, and where a bore that is made round lies. */
import { followsBore } from '../bore/centre.ts';
import { type CleanUp, cleanUp } from '../bore/cleanUp.ts';
import type { Axis, CentreRule, WearSurface } from '../bore/types.ts';
import { OWN_SIZE } from '../job/featureEdits.ts';
import type { Decisions } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';

/** True where the target is the size of a way that brings its own. */
export function isOwnSize({ way, target }: Decisions): boolean {
  return way !== undefined && OWN_SIZE.includes(way) && lengthMm(target) > 0;
}

/** The smallest round of the seat about the axis that the rule wants of a bore made round; null: nothing is a seat. */
export function roundOf(
  surface: WearSurface,
  places: Uint8Array,
  { centreRule, axis }: { readonly centreRule: CentreRule; readonly axis: Axis },
): CleanUp | null {
  return cleanUp(surface, places, followsBore(centreRule) ? centreRule : axis);
}
