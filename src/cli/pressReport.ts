/** The press fit of one bushing, as the report names it. mm across, MPa, N, N mm, degrees; not known or without end is null. */
import * as v from 'valibot';
import type { Held, PressCase, PressPart } from '../evaluate/fit/press.ts';
import type { BushingFit, FitFound } from '../evaluate/fit.ts';
import { rangeWords } from '../figures/fitRanges.ts';
import { METAL_FIGURES } from '../figures/metalWords.ts';
import { pressWords } from '../figures/pressWords.ts';
import type { MaterialFigure } from '../job/materialSchema.ts';
import type { Units } from '../job/schema.ts';
import { orNull } from './heatReport.ts';

const Num = v.nullable(v.number());
const MISSING = ['outside', 'inside', 'boss-size', 'bushing', 'boss', 'size', 'material'] as const;

const RingSchema = v.strictObject({
  /** Positive pulls. */
  hoopInside: Num,
  hoopOutside: Num,
  /** The stress that counts against the strength, and its share of it. */
  stress: Num,
  shareOfStrength: Num,
});

const CaseSchema = v.strictObject({
  pressFit: Num,
  pressure: Num,
  boss: RingSchema,
  bushing: RingSchema,
  closesIn: Num,
  grows: Num,
});

const HoldSchema = v.strictObject({ friction: v.number(), force: Num, torque: Num });

const HeldSchema = v.strictObject({ low: HoldSchema, high: HoldSchema });

export const MetalSchema = v.strictObject({
  name: v.string(),
  /** The usual metal whose figures stand where the job states none. */
  figuresOf: v.string(),
  from: v.picklist(['said', 'safety', 'usual']),
  /** Strength is what it breaks at. */
  brittle: v.boolean(),
  figures: v.array(
    v.strictObject({
      figure: v.picklist(Object.keys(METAL_FIGURES) as MaterialFigure[]),
      /** MPa, per °C, kg/m3, W/(m K), J/(kg K), °C. */
      value: v.number(),
      /** null: the job states it. */
      source: v.nullable(v.string()),
    }),
  ),
});

export const PressSchema = v.strictObject({
  wanted: v.strictObject({ pressFit: Num, from: v.picklist(['typed', 'default', 'missing']) }),
  local: v.strictObject({
    least: Num,
    mean: Num,
    greatest: Num,
    /** Where it is least, and two standard deviations of it there. */
    clock: Num,
    depth: Num,
    give: Num,
    /** Per side: how far the wall stands off the bushing there; null: it does not. */
    off: Num,
  }),
  seated: v.strictObject({ likely: Num, least: Num, most: Num }),
  twoPoint: Num,
  onlyTwoPoint: v.boolean(),
  roughnessLoss: v.number(),
  seatLength: Num,
  missing: v.nullable(v.picklist(MISSING)),
  least: v.nullable(CaseSchema),
  mean: v.nullable(CaseSchema),
  greatest: v.nullable(CaseSchema),
  /** `low` the lesser of both sums, to hold by; `high` the larger, to choose a press by. */
  held: v.nullable(HeldSchema),
  /** The two sums: pressing evenly all round with the mean press fit, and by the bore's real shape. */
  heldEvenly: v.nullable(HeldSchema),
  heldByShape: v.nullable(HeldSchema),
  /** MPa, where it presses hardest by the real shape, and its shares of the strengths; null: not known. */
  hardest: v.nullable(
    v.strictObject({
      pressure: v.number(),
      clock: v.number(),
      depth: v.number(),
      shareOfBoss: Num,
      shareOfBushing: Num,
    }),
  ),
  /** Press fit at which each first yields. */
  yields: v.strictObject({ boss: Num, bushing: Num }),
  ranges: v.array(
    v.strictObject({
      source: v.picklist(['practice', 'B4.1', 'ISO 286']),
      name: v.string(),
      least: v.number(),
      most: v.number(),
    }),
  ),
  boss: v.string(),
  bushing: v.string(),
  words: v.array(v.string()),
});

export function metalReport(used: FitFound['metals'][number]): v.InferOutput<typeof MetalSchema> {
  const { material, metal, from, brittle, stated, sources } = used;
  return {
    name: material.name,
    figuresOf: metal,
    from,
    brittle,
    figures: (Object.keys(METAL_FIGURES) as MaterialFigure[]).map((figure) => ({
      figure,
      value: material[figure],
      source: stated.includes(figure) ? null : sources[figure],
    })),
  };
}

export function pressReport(
  { press }: BushingFit,
  units: Units,
): v.InferOutput<typeof PressSchema> {
  const { wanted, local, held, cases, holds, facts, yields, ranges, boss, bushing } = press;
  return {
    wanted: { pressFit: orNull(wanted.mm), from: wanted.from },
    local: {
      least: orNull(local.least),
      mean: orNull(local.mean),
      greatest: orNull(local.greatest),
      clock: orNull((local.theta * 180) / Math.PI),
      depth: orNull(local.z),
      give: orNull(local.give),
      off: local.least < 0 ? -local.least / 2 : null,
    },
    seated: { likely: orNull(held.likely), least: orNull(held.least), most: orNull(held.most) },
    twoPoint: orNull(press.twoPoint),
    onlyTwoPoint: press.onlyTwoPoint,
    roughnessLoss: facts.loss.mm,
    seatLength: orNull(press.length),
    missing: press.missing,
    least: cases && caseReport(cases.least),
    mean: cases && caseReport(cases.mean),
    greatest: cases && caseReport(cases.greatest),
    held: holds && heldReport(holds, facts),
    heldEvenly: press.sums && heldReport(press.sums.even, facts),
    heldByShape: press.sums?.shape ? heldReport(press.sums.shape, facts) : null,
    hardest: hardestReport(press),
    yields: { boss: finite(yields.boss), bushing: finite(yields.bushing) },
    ranges: [...ranges],
    boss: boss.material.name,
    bushing: bushing.material.name,
    words: pressLines(press, units),
  };
}

function heldReport(
  { low, high }: Held,
  { frictionLow, frictionHigh }: PressPart['facts'],
): v.InferOutput<typeof HeldSchema> {
  return {
    low: { friction: frictionLow.value, ...low },
    high: { friction: frictionHigh.value, ...high },
  };
}

function hardestReport({
  round,
  boss,
  bushing,
}: PressPart): v.InferOutput<typeof PressSchema>['hardest'] {
  if (round === null || !(round.greatest.value > 0)) return null;
  const { value, theta, z } = round.greatest;
  return {
    pressure: value,
    clock: (theta * 180) / Math.PI,
    depth: z,
    shareOfBoss: orNull(value / boss.material.yield),
    shareOfBushing: orNull(value / bushing.material.yield),
  };
}

function caseReport(one: PressCase): v.InferOutput<typeof CaseSchema> {
  const ring = (which: 'boss' | 'bushing') => ({
    hoopInside: orNull(one[which].hoopInside),
    hoopOutside: orNull(one[which].hoopOutside),
    stress: orNull(one[`${which}Load`].stress),
    shareOfStrength: orNull(one[`${which}Load`].share),
  });
  return {
    pressFit: orNull(one.fit),
    pressure: orNull(one.pressure),
    boss: ring('boss'),
    bushing: ring('bushing'),
    closesIn: orNull(one.closesIn),
    grows: orNull(one.grows),
  };
}

const finite = (mm: number) => (Number.isFinite(mm) ? mm : null);

/** The same sentences and rows as on the page, in its order. */
export function pressLines(press: PressPart, units: Units): string[] {
  const { alarms, local, missing, rows, holds, metals } = pressWords(press, units);
  return [
    ...alarms,
    ...local,
    ...metals,
    ...(missing === null ? [] : [missing]),
    ...(rows.length > 0
      ? ['At the least, mean and greatest local press fit, as if it were so all round:']
      : []),
    ...rows.map(({ what, least, mean, greatest }) => `${what}: ${least}, ${mean}, ${greatest}.`),
    ...holds,
    ...rangeWords(press, units),
  ];
}
