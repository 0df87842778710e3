/** The circles and cylinders of a bore, as the report names them. */
import * as v from 'valibot';
import type { PlugGives } from '../bore/plugGive.ts';
import type { Plug, Plugs, Section } from '../bore/types.ts';
import { cylinderGives } from '../evaluate/cylinderGives.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { cylinderHead, cylinderRows, cylinderWords } from '../figures/plugWords.ts';
import type { Job, Units } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import { columns, wrapped } from './textLayout.ts';

const Num = v.nullable(v.number());

const Found = v.strictObject({
  /** Null where the readings show no centre. */
  center: v.nullable(v.tuple([v.number(), v.number()])),
  diameter: v.number(),
  /** Greatest less least distance of the wall from it, per side. */
  range: v.number(),
});

/** Of one measured depth. */
export const Circles = v.strictObject({
  leastSquares: v.strictObject({
    center: v.nullable(v.tuple([v.number(), v.number()])),
    diameter: v.number(),
  }),
  minimumZone: v.nullable(Found),
  maximumInscribed: v.nullable(Found),
  minimumCircumscribed: v.nullable(Found),
});

const Straight = v.strictObject({
  /** Where the axis passes depth 0, and how far it goes sideways per mm of depth. */
  center: v.tuple([v.number(), v.number()]),
  lean: v.tuple([v.number(), v.number()]),
  diameter: v.number(),
  /** Two standard deviations of the diameter, across: of all that is unknown, and of what the gauges see of it. */
  giveOrTake: Num,
  giveOrTakeSeen: Num,
  range: v.number(),
});

/** Of the mean surface between the first and the last measured depth. */
export const Cylinders = v.strictObject({
  from: v.number(),
  to: v.number(),
  leastSquares: v.nullable(Straight),
  /** Its range's two standard deviations beside it, per side. */
  minimumZone: v.nullable(
    v.strictObject({ ...Straight.entries, rangeGiveOrTake: Num, rangeGiveOrTakeSeen: Num }),
  ),
  maximumInscribed: v.nullable(Straight),
  minimumCircumscribed: v.nullable(Straight),
  /** Least squares; across at both ends. */
  cone: v.nullable(
    v.strictObject({
      center: v.tuple([v.number(), v.number()]),
      lean: v.tuple([v.number(), v.number()]),
      diameterFrom: v.number(),
      diameterTo: v.number(),
      range: v.number(),
    }),
  ),
});

export function circlesReport(
  { circle, meanDiameter }: Section,
  found: Plugs['sections'][number] | undefined,
): v.InferOutput<typeof Circles> {
  const one = (plug: Plug | null | undefined) =>
    plug
      ? {
          center: circle && ([plug.axis.x, plug.axis.y] as [number, number]),
          diameter: plug.diameter,
          range: plug.range,
        }
      : null;
  return {
    leastSquares: {
      center: circle && [circle.x, circle.y],
      diameter: circle?.diameter ?? meanDiameter,
    },
    minimumZone: one(found?.zone),
    maximumInscribed: one(found?.entering),
    minimumCircumscribed: one(found?.around),
  };
}

/** Works out how well they are known; null where there are none. */
export type FindCylinders = (bore: BoreEvaluation, survey: SurveyEvaluation) => PlugGives | null;

export function cylindersFinder(job: Job, memory: Memory, shop: Shop | null): FindCylinders {
  return (bore, survey) => cylinderGives(job, { bore: bore.id, survey: survey.id }, memory, shop);
}

/** @param gives null: how well they are known is not told */
export function cylindersReport(
  { from, to, bore, taper }: Plugs,
  gives: PlugGives | null,
): v.InferOutput<typeof Cylinders> | null {
  if (bore === null) return null;
  const seen = gives?.seen ?? gives?.all;
  const straight = (kind: 'average' | 'zone' | 'entering' | 'around') => {
    const plug = bore[kind];
    return (
      plug && {
        ...placed(plug.axis),
        diameter: plug.diameter,
        giveOrTake: orNull(gives?.all[kind]),
        giveOrTakeSeen: orNull(seen?.[kind]),
        range: plug.range,
      }
    );
  };
  const zone = straight('zone');
  return {
    from,
    to,
    leastSquares: straight('average'),
    minimumZone: zone && {
      ...zone,
      rangeGiveOrTake: orNull(gives?.all.range),
      rangeGiveOrTakeSeen: orNull(seen?.range),
    },
    maximumInscribed: straight('entering'),
    minimumCircumscribed: straight('around'),
    cone: taper && {
      ...placed(taper.axis),
      diameterFrom: taper.from,
      diameterTo: taper.to,
      range: taper.range,
    },
  };
}

/** For people: one line each. */
export function cylindersText(
  { plugs, surface }: SurveyEvaluation,
  gives: PlugGives | null,
  units: Units,
): string {
  if (plugs === null || surface === null) return '';
  const rows = cylinderRows(plugs, gives, units).map(({ name, means, across, give }) => [
    name,
    across,
    give,
    means,
  ]);
  if (rows.length === 0) return '';
  const table = columns([['', 'across', 'give or take', ''], ...rows], (at) => at % 3 === 0);
  return [
    `${cylinderHead(plugs, units)}:\n${table}`,
    ...cylinderWords(plugs, gives, surface.seenLobes, units).map((text) => wrapped(text)),
  ].join('\n');
}

function orNull(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}

function placed({ x, y, leanX, leanY }: Plug['axis']): {
  center: [number, number];
  lean: [number, number];
} {
  return { center: [x, y], lean: [leanX, leanY] };
}
