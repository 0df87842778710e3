/** What is wanted of a bore: the decided or usual target about the decided centre, and the metal in its way. */

import { followsBore, freeAxis } from '../bore/centre.ts';
import { freeSpread } from '../bore/frame.ts';
import type { Posterior } from '../bore/posterior.ts';
import { removalMap, type Span, wallPlaces } from '../bore/removal.ts';
import { type Seating, seating, seatPlaces } from '../bore/seating.ts';
import { sideRemarks } from '../bore/sideWords.ts';
import type { GridSpread } from '../bore/surface.ts';
import { assumption, deviationFrom, keptAxis, NO_AXIS, usualUnworn } from '../bore/target.ts';
import type {
  Axis,
  CentreRule,
  Field,
  Remark,
  Removal,
  Section,
  Target,
  WearSurface,
} from '../bore/types.ts';
import { clockText, clockTheta } from '../job/clock.ts';
import { decimalsFor } from '../job/digits.ts';
import type { BoreFacts } from '../job/facts.ts';
import { isOfBushing } from '../job/measuredAt.ts';
import type { Decisions, Feature, Survey, Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatLength, formatPerSide, lengthMm } from '../job/units.ts';
import { isOwnSize, roundOf } from './ownSize.ts';
import type { Partner } from './partner.ts';

/** Target diameter: as decided, else bushing outside diameter less press fit. Null while neither is known, and of a pin or bushing. */
export function chooseTarget(
  facts: BoreFacts,
  { kind, decisions }: Feature,
  survey: Survey,
  posterior: Posterior,
  surface: WearSurface,
  partner: Partner,
): Target | null {
  if (kind !== 'bore') return null;
  const decided = lengthMm(decisions.target);
  const diameter = decided > 0 ? decided : facts.bushingOutside.mm - facts.pressFit.mm;
  if (!(diameter > 0)) return null;
  const ruled = chooseAxis(decisions.centre, posterior, surface, facts, diameter / 2, partner);
  const { centreRule } = ruled;
  // A bore that is made round at a size of its own goes to the axis on which that size was found.
  const round =
    isOwnSize(decisions) && followsBore(centreRule)
      ? roundOf(surface, wallPlaces(surface, facts.seats, facts.keepouts), ruled)
      : null;
  const axis = round?.axis ?? ruled.axis;
  const sides = assumption(posterior);
  const worn = clockTheta(survey.wornSide);
  const assumed =
    sides === null || Number.isNaN(worn) ? sides : `worn at ${clockText(worn)}, as you said`;
  return { diameter, axis, centreRule, assumed };
}

function chooseAxis(
  centre: Decisions['centre'],
  posterior: Posterior,
  surface: WearSurface,
  { seats, keepouts }: BoreFacts,
  radius: number,
  partner: Partner,
): { axis: Axis; centreRule: CentreRule } {
  const rule = centre?.rule ?? 'free';
  if (rule === 'by-hand') return { axis: handAxis(centre, surface) ?? NO_AXIS, centreRule: rule };
  if (rule === 'keep') {
    return { axis: keptAxis(posterior, unwornSpan(centre, surface)), centreRule: rule };
  }
  if (rule === 'partner' && partner.status === 'known') {
    return { axis: partner.axis, centreRule: rule };
  }
  // Where the partner's line is not known the centre is free, and a note says so.
  const free = rule === 'least-cut' ? rule : 'free';
  const places = wallPlaces(surface, seats, keepouts);
  return { axis: freeAxis(surface, radius, places, free), centreRule: free };
}

/** The axis as set by hand, what is left out being 0; null where nothing of it is. */
export function handAxis(centre: Decisions['centre'], { grid }: WearSurface): Axis | null {
  const length = grid.z[grid.z.length - 1]!;
  const typed = [centre?.x, centre?.y, centre?.leanX, centre?.leanY].map((one) => lengthMm(one));
  if (typed.every(Number.isNaN)) return null;
  const [x, y, runX, runY] = typed.map((mm) => (Number.isNaN(mm) ? 0 : mm)) as [
    number,
    number,
    number,
    number,
  ];
  return { x, y, leanX: runX / length, leanY: runY / length };
}

/** The depths of metal that is taken as unworn: as stated, else the usual ones. */
export function unwornSpan(centre: Decisions['centre'], { grid }: WearSurface): Span {
  const length = grid.z[grid.z.length - 1]!;
  const [from, to] = [lengthMm(centre?.unwornFrom), lengthMm(centre?.unwornTo)];
  return to > from && from >= 0 ? { from, to: Math.min(to, length) } : usualUnworn(grid);
}

/** @param through standard deviation that `surface` has beside that of `posterior`, mm; null: none */
export function planRemoval(
  posterior: Posterior,
  surface: WearSurface,
  spread: GridSpread,
  target: Target,
  facts: BoreFacts,
  through: Field | null = null,
): Removal {
  const deviation = deviationFrom(surface, target.diameter / 2, target.axis);
  const sd = followsBore(target.centreRule)
    ? freeSpread(posterior, surface.grid, spread).map((s, k) => Math.hypot(s, through?.[k] ?? 0))
    : surface.sd;
  return removalMap(surface, deviation, sd, facts.seats, facts.keepouts);
}

export function seatingOf(
  surface: WearSurface,
  target: Target,
  { deviation, sd }: Removal,
  { seats, keepouts, bushingOutside, pressFit }: BoreFacts,
): Seating {
  return seating(seatPlaces(surface, seats, keepouts), deviation, sd, {
    target: target.diameter,
    bushing: bushingOutside.mm,
    pressFit: pressFit.mm,
  });
}

const OF_BUSHING =
  'These readings are of the bushing’s own bore, once it was pressed in: nothing of the boss is planned by them. What they leave the pin stands under Fit.';

export function targetNotes(
  feature: Feature,
  target: Target | null,
  survey: Survey,
  sections: readonly Section[],
  units: Units,
): Remark[] {
  if (feature.kind !== 'bore') return [];
  if (isOfBushing(feature, survey)) return [{ kind: 'finding', text: OF_BUSHING }];
  if (target === null) {
    return [
      missing(
        'The outside diameter of the new bushing is missing: give it, and the target and the removal map follow.',
      ),
    ];
  }
  if (target.assumed === null) return [];
  return sideRemarks(sections, clockTheta(survey.wornSide), {
    deep: (z) => formatDepth(z, units),
    across: (mm, give) => formatAcross(mm, units, decimalsFor(give, units)),
    perSide: (mm, give) => formatPerSide(mm, units, decimalsFor(give, units)),
    plain: (mm, give) => formatLength(mm, units, decimalsFor(give, units)),
    clock: (theta) => clockText(theta),
  });
}

export function missing(text: string): Remark {
  return { kind: 'missing', text };
}
