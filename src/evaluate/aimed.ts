/**
 * What the ways of mending aim at on one survey: the size and centre of those that keep the bushing's size, and the smallest
 * round of those that bring a size of their own. One place, so that a way and its plan go by the same.
 */
import { followsBore, freeAxis } from '../bore/centre.ts';
import type { CleanUp } from '../bore/cleanUp.ts';
import { removalMap, wallPlaces } from '../bore/removal.ts';
import { deviationFrom } from '../bore/target.ts';
import type { Target, WearSurface } from '../bore/types.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import type { BoreFacts } from '../job/facts.ts';
import { mendingFacts } from '../job/mendingFacts.ts';
import type { Feature, Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { isOwnSize, roundOf } from './ownSize.ts';
import type { WithTarget } from './withTarget.ts';

/** A survey with its target, and the round that cleans up all of its seat; null where there is no target or no seat. */
export interface Aimed extends WithTarget {
  readonly feature: Feature;
  readonly cleanUp: CleanUp;
}

export function aimedAt(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): Aimed | null {
  const feature = job.features.find(({ id }) => id === bore.id);
  const { surface, target, removal } = survey;
  if (feature === undefined || surface === null || target === null || removal === null) return null;
  const { seats, keepouts } = bore.facts;
  const places = wallPlaces(surface, seats, keepouts);
  const aim = standardTarget(feature, bore.facts, target, surface, places);
  const clean = roundOf(surface, places, aim);
  if (clean === null) return null;
  return {
    bore,
    survey,
    feature,
    surface,
    places,
    target: aim,
    // The give-or-take goes by the rule for the centre, not by the size.
    removal:
      aim === target
        ? removal
        : removalMap(
            surface,
            deviationFrom(surface, aim.diameter / 2, aim.axis),
            removal.sd,
            seats,
            keepouts,
          ),
    facts: mendingFacts(job, feature, shop),
    cleanUp: clean,
  };
}

/** What the ways aim at that keep the bushing's size: the target, unless that is another way's. */
function standardTarget(
  { decisions }: Feature,
  { bushingOutside, pressFit }: BoreFacts,
  target: Target,
  surface: WearSurface,
  places: Uint8Array,
): Target {
  const diameter = bushingOutside.mm - pressFit.mm;
  if (!isOwnSize(decisions) || !(diameter > 0)) return target;
  const { centreRule } = target;
  const axis = followsBore(centreRule)
    ? freeAxis(surface, diameter / 2, places, centreRule)
    : target.axis;
  return { ...target, diameter, axis };
}
