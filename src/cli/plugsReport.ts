/** The circles and cylinders of a bore, as the report names them. */
import * as v from 'valibot';
import type { Plug, Plugs, Section } from '../bore/types.ts';

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
  range: v.number(),
});

/** Of the mean surface between the first and the last measured depth. */
export const Cylinders = v.strictObject({
  from: v.number(),
  to: v.number(),
  leastSquares: v.nullable(Straight),
  minimumZone: v.nullable(Straight),
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

export function cylindersReport({
  from,
  to,
  bore,
  taper,
}: Plugs): v.InferOutput<typeof Cylinders> | null {
  if (bore === null) return null;
  const straight = (plug: Plug | null) =>
    plug && { ...placed(plug.axis), diameter: plug.diameter, range: plug.range };
  return {
    from,
    to,
    leastSquares: straight(bore.average),
    minimumZone: straight(bore.zone),
    maximumInscribed: straight(bore.entering),
    minimumCircumscribed: straight(bore.around),
    cone: taper && {
      ...placed(taper.axis),
      diameterFrom: taper.from,
      diameterTo: taper.to,
      range: taper.range,
    },
  };
}

function placed({ x, y, leanX, leanY }: Plug['axis']): {
  center: [number, number];
  lean: [number, number];
} {
  return { center: [x, y], lean: [leanX, leanY] };
}
