/** What one axis for the target costs and leaves, from its removal map and what a bushing then sits on. */
import { SEATED, wallPlaces } from '../bore/removal.ts';
import type { Seating } from '../bore/seating.ts';
import type { Axis, CentreRule, Removal, Target, WearSurface } from '../bore/types.ts';
import type { BoreFacts } from '../job/facts.ts';
import type { Partner } from './partner.ts';

export interface CentreCost {
  readonly rule: CentreRule;
  readonly axis: Axis;
  /** Metal off, as in `Removal`. */
  readonly amounts: Pick<Removal, 'volume' | 'mass' | 'sureMass' | 'possibleMass'>;
  /** The deepest cut per side, mm, 0 where none; where; two standard deviations. All NaN where nothing is a seat. */
  readonly cut: {
    readonly depth: number;
    readonly theta: number;
    readonly z: number;
    readonly give: number;
  };
  readonly seating: Seating;
  /** How far it stands from the old centre at mid-depth, mm, and towards which clock position. */
  readonly moved: { readonly by: number; readonly theta: number };
  /** mm sideways per mm of depth, against the partner's line; against the readings' axis where none is known. */
  readonly lean: number;
  /** How far it stands off the partner's line at mid-depth, mm; NaN: none is known. */
  readonly aside: number;
}

/** What it is held against. */
export interface Against {
  readonly old: Axis;
  readonly partner: Partner;
}

export interface Ground {
  readonly surface: WearSurface;
  readonly target: Target;
  readonly removal: Removal;
  readonly seating: Seating;
}

export function centreCost(
  { surface, target, removal, seating }: Ground,
  facts: Pick<BoreFacts, 'seats' | 'keepouts'>,
  { old, partner }: Against,
): CentreCost {
  const { axis, centreRule: rule } = target;
  const { volume, mass, sureMass, possibleMass } = removal;
  const half = surface.grid.z[surface.grid.z.length - 1]! / 2;
  const [x, y] = asideAt(axis, old, half);
  const line = partner.status === 'known' ? partner.axis : null;
  const datum = line ?? { leanX: 0, leanY: 0 };
  return {
    rule,
    axis,
    amounts: { volume, mass, sureMass, possibleMass },
    cut: deepestCut(surface, wallPlaces(surface, facts.seats, facts.keepouts), removal),
    seating,
    moved: { by: Math.hypot(x, y), theta: (Math.atan2(x, y) + 2 * Math.PI) % (2 * Math.PI) },
    lean: Math.hypot(axis.leanX - datum.leanX, axis.leanY - datum.leanY),
    aside: line === null ? Number.NaN : Math.hypot(...asideAt(axis, line, half)),
  };
}

/** How far one axis stands from another at a depth, mm. */
function asideAt(axis: Axis, from: Axis, z: number): [x: number, y: number] {
  return [
    axis.x - from.x + (axis.leanX - from.leanX) * z,
    axis.y - from.y + (axis.leanY - from.leanY) * z,
  ];
}

function deepestCut(
  { grid: { theta, z } }: WearSurface,
  places: Uint8Array,
  { likely, sd }: Removal,
): CentreCost['cut'] {
  let most = -1;
  for (let k = 0; k < likely.length; k++) {
    if (places[k] !== SEATED || !(likely[k]! >= 0)) continue;
    if (most < 0 || likely[k]! > likely[most]!) most = k;
  }
  const none = Number.NaN;
  if (most < 0) return { depth: none, theta: none, z: none, give: none };
  return {
    depth: likely[most]!,
    theta: theta[most % theta.length]!,
    z: z[Math.floor(most / theta.length)]!,
    give: 2 * sd[most]!,
  };
}
