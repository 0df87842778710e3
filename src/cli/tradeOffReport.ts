/** Target size against metal off, seat held and worst gap, as the report names them. */
import * as v from 'valibot';
import { ofSurvey } from '../evaluate/tradeOff.ts';
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { sayTradeOff, tradeOffWords } from '../figures/tradeOffWords.ts';
import type { Units } from '../job/schema.ts';

const Num = v.nullable(v.number());

/** Of the seat, 0 to 1: at the mean, and with every place larger or smaller by its give-or-take. */
export const Share = v.strictObject({ likely: Num, least: Num, most: Num });

/** Per side. */
export const Place = v.strictObject({
  over: Num,
  giveOrTake: Num,
  clock: Num,
  depth: Num,
  behindBushing: Num,
});

const Size = v.strictObject({
  /** Across. */
  diameter: v.number(),
  /** Grams of plain steel. */
  mass: v.number(),
  sureMass: v.number(),
  possibleMass: v.number(),
  /** Where the bushing is tight against the wall once this size is ground; at hand: null where its size is not known. */
  seated: v.strictObject({ atHand: v.nullable(Share), madeToSuit: Share }),
  /** The largest place over this size, per side; what of it stays behind the bushing at hand. */
  worstGap: Place,
});

export const TradeOffSchema = v.strictObject({
  /** Of the target. */
  words: v.string(),
  chosen: Size,
  /** By diameter. */
  sizes: v.array(Size),
});

export function tradeOffReport(
  survey: SurveyEvaluation,
  { facts }: BoreEvaluation,
  units: Units,
): v.InferOutput<typeof TradeOffSchema> | null {
  const { target, removal, seating } = survey;
  const found = ofSurvey(survey, facts, units);
  if (target === null || removal === null || seating === null || found === null) return null;
  const words = tradeOffWords(target, removal, seating, facts.bushingOutside.mm, units);
  const { mass, sureMass, possibleMass } = removal;
  const { diameter } = target;
  return {
    words: sayTradeOff(words),
    chosen: size({ diameter, mass, sureMass, possibleMass, ...seating }),
    sizes: found.points.map(size),
  };
}

type Point = NonNullable<ReturnType<typeof ofSurvey>>['points'][number];

function size(point: Point): v.InferOutput<typeof Size> {
  const { diameter, mass, sureMass, possibleMass, hand, suit, gap, behind } = point;
  return {
    diameter,
    mass,
    sureMass,
    possibleMass,
    seated: { atHand: hand && share(hand), madeToSuit: share(suit) },
    worstGap: {
      over: orNull(gap.over),
      giveOrTake: orNull(gap.give),
      clock: orNull((gap.theta * 180) / Math.PI),
      depth: orNull(gap.z),
      behindBushing: orNull(behind),
    },
  };
}

export function share({ likely, least, most }: Point['suit']): v.InferOutput<typeof Share> {
  return { likely: orNull(likely), least: orNull(least), most: orNull(most) };
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
