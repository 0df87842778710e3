/** What each rule for the centre costs and leaves, as the report names it. */
import * as v from 'valibot';
import type { CentreCost } from '../evaluate/centreCost.ts';
import { type Centres, centresOf } from '../evaluate/centres.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { CENTRE_RULES, centreOffers, sayCentre } from '../figures/centreWords.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { Place, Share, share } from './tradeOffReport.ts';

const Num = v.nullable(v.number());
const Pair = v.tuple([v.number(), v.number()]);

export const RuleSchema = v.picklist(['keep', 'free', 'least-cut', 'partner', 'by-hand']);

const Centre = v.strictObject({
  rule: RuleSchema,
  words: v.string(),
  center: Pair,
  /** mm per mm of depth. */
  lean: Pair,
  volume: v.number(),
  mass: v.number(),
  sureMass: v.number(),
  possibleMass: v.number(),
  /** The deepest, per side. */
  greatestCut: v.strictObject({ depth: Num, giveOrTake: Num, clock: Num, at: Num }),
  seated: v.strictObject({ atHand: v.nullable(Share), madeToSuit: Share }),
  worstGap: Place,
  /** At mid-depth, from the old centre, towards the clock position. */
  moves: v.strictObject({ distance: v.number(), clock: v.number() }),
  /** At mid-depth, from the partner's line; null: none is known. */
  offPartner: Num,
  /** Against the partner's line, or the readings' axis where none is known; mm per mm of depth. */
  leans: v.number(),
  /** Share of the lean that the partner allows; null: no limit is known. */
  leanShare: Num,
});

/** At the target's size, in the order in which they are offered. */
export const CentresSchema = v.strictObject({
  centres: v.array(Centre),
  /** Rules that cannot be used, and what would make them so. */
  centresMissing: v.array(v.strictObject({ rule: RuleSchema, words: v.string() })),
  partner: v.strictObject({
    /** Why no line is known; null where one is. */
    unknown: v.nullable(v.string()),
    /** From middle to middle, along the pin. */
    distance: Num,
    /** Half of the running clearance, per side, and the same over the distance. */
    asideLimit: Num,
    leanLimit: Num,
  }),
});
export type CentresReport = v.InferOutput<typeof CentresSchema>;

/** Works them out for one survey; null where it has no target. */
export type FindCentres = (bore: BoreEvaluation, survey: SurveyEvaluation) => Centres | null;

export function centresFinder(job: Job, memory: Memory, shop: Shop | null = null): FindCentres {
  return (bore, survey) => centresOf(job, { bore: bore.id, survey: survey.id }, memory, shop);
}

export function centresReport(found: Centres | null, units: Units): CentresReport {
  const known = found?.partner.status === 'known' ? found.partner : null;
  const why = found?.partner.status === 'unknown' ? found.partner.why : null;
  return {
    centres: found === null ? [] : found.costs.map((cost) => centreReport(cost, found, units)),
    centresMissing: centreOffers(found, units).flatMap(({ rule, missing }) =>
      missing === '' ? [] : [{ rule, words: missing }],
    ),
    partner: {
      unknown: why,
      distance: known?.distance ?? null,
      asideLimit: found?.limit?.aside ?? null,
      leanLimit: found?.limit?.lean ?? null,
    },
  };
}

function centreReport(
  cost: CentreCost,
  centres: Centres,
  units: Units,
): v.InferOutput<typeof Centre> {
  const { rule, axis, amounts, cut, seating, moved } = cost;
  const { hand, suit, gap, behind } = seating;
  return {
    rule,
    words: `${CENTRE_RULES[rule].name}. ${sayCentre(cost, centres, units).join(' ')}`,
    center: [axis.x, axis.y],
    lean: [axis.leanX, axis.leanY],
    ...amounts,
    greatestCut: {
      depth: orNull(cut.depth),
      giveOrTake: orNull(cut.give),
      clock: orNull(degrees(cut.theta)),
      at: orNull(cut.z),
    },
    seated: { atHand: hand && share(hand), madeToSuit: share(suit) },
    worstGap: {
      over: orNull(gap.over),
      giveOrTake: orNull(gap.give),
      clock: orNull(degrees(gap.theta)),
      depth: orNull(gap.z),
      behindBushing: orNull(behind),
    },
    moves: { distance: moved.by, clock: degrees(moved.theta) },
    offPartner: orNull(cost.aside),
    leans: cost.lean,
    leanShare: orNull(cost.lean / (centres.limit?.lean ?? Number.NaN)),
  };
}

const degrees = (theta: number) => (theta * 180) / Math.PI;

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
