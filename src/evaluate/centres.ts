/** What each rule for the centre costs and leaves, at the target's size: worked out on demand, of one survey. */
import { freeAxis } from '../bore/centre.ts';
import { wallPlaces } from '../bore/removal.ts';
import { keptAxis } from '../bore/target.ts';
import type { Axis, CentreRule, Target } from '../bore/types.ts';
import { evaluate, type Memory } from '../evaluate.ts';
import type { BoreFacts } from '../job/facts.ts';
import type { Decisions, Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { type Against, type CentreCost, centreCost } from './centreCost.ts';
import { type Partner, type PartnerLimit, partnerLimit, partnerOf } from './partner.ts';
import type { Shape } from './shape.ts';
import type { SurveyOf } from './surveyOf.ts';
import { handAxis, planRemoval, seatingOf, unwornSpan } from './wanted.ts';

export interface Centres {
  /** Target, across, mm, at which they are compared. */
  readonly diameter: number;
  readonly chosen: CentreRule;
  /** In the order in which they are offered; `partner` and `by-hand` only where they are known. */
  readonly costs: readonly CentreCost[];
  /** The old centre, from which moves are told. */
  readonly old: Axis;
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
  const against: Against = { old, partner };
  return {
    diameter: target.diameter,
    chosen: target.centreRule,
    costs: axes.map((one) => costOf(wall, one, against)),
    ...against,
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

/** What ground about this axis comes to. */
function costOf(
  { shape, facts, diameter }: Compared,
  { rule, axis }: Ruled,
  against: Against,
): CentreCost {
  const { surface, posterior, spread } = shape;
  const target: Target = { diameter, axis, centreRule: rule, assumed: null };
  const removal = planRemoval(posterior, surface, spread, target, facts);
  const seating = seatingOf(surface, target, removal, facts);
  return centreCost({ surface, target, removal, seating }, facts, against);
}
