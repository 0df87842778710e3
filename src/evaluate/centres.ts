/** What each rule for the centre costs and leaves, at the target's size: worked out on demand, of one survey. */
import { followsBore, freeAxis } from '../bore/centre.ts';
import { freeSpread } from '../bore/frame.ts';
import { removalMap, SEATED, wallPlaces } from '../bore/removal.ts';
import { type Seating, seating, seatPlaces } from '../bore/seating.ts';
import { deviationFrom, keptAxis } from '../bore/target.ts';
import type { Axis, CentreRule, Field, Removal, WearSurface } from '../bore/types.ts';
import { evaluate, type Memory } from '../evaluate.ts';
import type { BoreFacts } from '../job/facts.ts';
import type { Decisions, Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type Partner, type PartnerLimit, partnerLimit, partnerOf } from './partner.ts';
import type { Shape } from './shape.ts';
import type { SurveyOf } from './surveyOf.ts';
import { handAxis, unwornSpan } from './wanted.ts';

export interface CentreCost {
  readonly rule: CentreRule;
  readonly axis: Axis;
  /** Metal off, as in `Removal`. */
  readonly amounts: Pick<Removal, 'volume' | 'mass' | 'sureMass' | 'possibleMass'>;
  /** The deepest cut per side, mm, 0 where none; where; two standard deviations. */
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

export interface Centres {
  /** Target, across, mm, at which they are compared. */
  readonly diameter: number;
  readonly chosen: CentreRule;
  /** In the order in which they are offered; `partner` and `by-hand` only where they are known. */
  readonly costs: readonly CentreCost[];
  readonly partner: Partner;
  readonly limit: PartnerLimit | null;
}

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @returns null where the job holds no such survey, or it has no target
 */
export function centresOf(
  job: Job,
  { bore, survey }: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): Centres | null {
  const known = new Map(memory);
  const of = evaluate(job, known, 'quick', shop).bores.find(({ id }) => id === bore);
  const target = of?.surveys.find(({ id }) => id === survey)?.target;
  const shape = known.get(`${bore} ${survey}`)?.shape;
  const feature = job.features.find(({ id }) => id === bore);
  if (!of || !target || !shape || !feature) return null;
  const partner = partnerOf(job, feature);
  const wall: Compared = { shape, facts: of.facts, diameter: target.diameter };
  const old = keptAxis(shape.posterior, unwornSpan(feature.decisions.centre, shape.surface));
  const axes = axesOf(wall, old, partner, feature.decisions.centre);
  return {
    diameter: target.diameter,
    chosen: target.centreRule,
    costs: axes.map(({ rule, axis }) => costOf(wall, rule, axis, old, partner)),
    partner,
    limit: partnerLimit(partner, of.facts.clearance),
  };
}

interface Compared {
  readonly shape: Shape;
  readonly facts: BoreFacts;
  readonly diameter: number;
}

interface Ruled {
  readonly rule: CentreRule;
  readonly axis: Axis;
}

function axesOf(
  { shape: { surface }, facts, diameter }: Compared,
  old: Axis,
  partner: Partner,
  centre: Decisions['centre'],
): Ruled[] {
  const places = wallPlaces(surface, facts.seats, facts.keepouts);
  const free = (rule: 'free' | 'least-cut') => freeAxis(surface, diameter / 2, places, rule);
  const hand = handAxis(centre, surface);
  return [
    { rule: 'keep', axis: old },
    { rule: 'free', axis: free('free') },
    { rule: 'least-cut', axis: free('least-cut') },
    ...(partner.status === 'known' ? [{ rule: 'partner' as const, axis: partner.axis }] : []),
    ...(hand === null ? [] : [{ rule: 'by-hand' as const, axis: hand }]),
  ];
}

function costOf(
  { shape, facts, diameter }: Compared,
  rule: CentreRule,
  axis: Axis,
  old: Axis,
  partner: Partner,
): CentreCost {
  const { surface, posterior, spread } = shape;
  const { seats, keepouts } = facts;
  const deviation = deviationFrom(surface, diameter / 2, axis);
  const sd = followsBore(rule) ? freeSpread(posterior, surface.grid, spread) : surface.sd;
  const removal = removalMap(surface, deviation, sd, seats, keepouts);
  const { volume, mass, sureMass, possibleMass } = removal;
  const wall = seatPlaces(surface, seats, keepouts);
  const half = surface.grid.z[surface.grid.z.length - 1]! / 2;
  const [x, y] = asideAt(axis, old, half);
  const line = partner.status === 'known' ? partner.axis : null;
  const datum = line ?? { leanX: 0, leanY: 0 };
  return {
    rule,
    axis,
    amounts: { volume, mass, sureMass, possibleMass },
    cut: deepestCut(surface, wall.places, removal.likely, sd),
    seating: seating(wall, deviation, sd, {
      target: diameter,
      bushing: facts.bushingOutside.mm,
      pressFit: facts.pressFit.mm,
    }),
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
  likely: Field,
  sd: Field,
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
