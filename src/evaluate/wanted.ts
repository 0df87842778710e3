/** What is wanted of a bore: the decided or usual target about the decided centre, and the metal in its way. */

import { freeAxis } from '../bore/centre.ts';
import { freeSpread } from '../bore/frame.ts';
import type { Posterior } from '../bore/posterior.ts';
import { removalMap, wallPlaces } from '../bore/removal.ts';
import { type Seating, seating, seatPlaces } from '../bore/seating.ts';
import { sideRemarks } from '../bore/sideWords.ts';
import type { GridSpread } from '../bore/surface.ts';
import { assumption, deviationFrom, keptAxis, usualUnworn } from '../bore/target.ts';
import type { Axis, Remark, Removal, Section, Target, WearSurface } from '../bore/types.ts';
import { clockText, clockTheta } from '../job/clock.ts';
import { decimalsFor } from '../job/digits.ts';
import type { BoreFacts } from '../job/facts.ts';
import type { Decisions, Feature, Survey, Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatLength, formatPerSide, lengthMm } from '../job/units.ts';

/** Target diameter: as decided, else bushing outside diameter less press fit. Null while neither is known, and of a pin or bushing. */
export function chooseTarget(
  facts: BoreFacts,
  { kind, decisions }: Feature,
  survey: Survey,
  posterior: Posterior,
  surface: WearSurface,
): Target | null {
  if (kind !== 'bore') return null;
  const decided = lengthMm(decisions.target);
  const diameter = decided > 0 ? decided : facts.bushingOutside.mm - facts.pressFit.mm;
  if (!(diameter > 0)) return null;
  const { axis, centreRule } = chooseAxis(
    decisions.centre,
    posterior,
    surface,
    facts,
    diameter / 2,
  );
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
): { axis: Axis; centreRule: Target['centreRule'] } {
  const length = surface.grid.z[surface.grid.z.length - 1]!;
  if (centre?.rule === 'by-hand') {
    const or0 = (mm: number) => (Number.isNaN(mm) ? 0 : mm);
    const axis = {
      x: or0(lengthMm(centre.x)),
      y: or0(lengthMm(centre.y)),
      leanX: or0(lengthMm(centre.leanX)) / length,
      leanY: or0(lengthMm(centre.leanY)) / length,
    };
    return { axis, centreRule: 'by-hand' };
  }
  if (centre?.rule === 'keep') {
    const from = lengthMm(centre.unwornFrom);
    const to = lengthMm(centre.unwornTo);
    const unworn =
      to > from && from >= 0 ? { from, to: Math.min(to, length) } : usualUnworn(surface.grid);
    return { axis: keptAxis(posterior, unworn), centreRule: 'keep' };
  }
  const places = wallPlaces(surface, seats, keepouts);
  return { axis: freeAxis(surface, radius, places), centreRule: 'free' };
}

export function planRemoval(
  posterior: Posterior,
  surface: WearSurface,
  spread: GridSpread,
  target: Target,
  facts: BoreFacts,
): Removal {
  const deviation = deviationFrom(surface, target.diameter / 2, target.axis);
  const sd =
    target.centreRule === 'free' ? freeSpread(posterior, surface.grid, spread) : surface.sd;
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

export function targetNotes(
  feature: Feature,
  target: Target | null,
  survey: Survey,
  sections: readonly Section[],
  units: Units,
): Remark[] {
  if (feature.kind !== 'bore') return [];
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
