/** A bushing in the bore as it is, as the report names it: mm, MPa, clocks in degrees, arrays `[z][theta]`; not known is null. */
import * as v from 'valibot';
import type { PlaceOf, RoundFit, RoundPart } from '../evaluate/fit/round.ts';
import type { Seated } from '../evaluate/fit/seated.ts';
import { roundWords } from '../figures/roundWords.ts';
import type { Units } from '../job/schema.ts';
import { matrix } from './matrix.ts';

const Num = v.nullable(v.number());
const Matrix = v.array(v.array(Num));
const Place = v.strictObject({ value: v.number(), clock: v.number(), depth: v.number() });

const Span = v.strictObject({ perSide: v.number(), depth: v.number(), lobes: v.number() });

export const RoundSchema = v.strictObject({
  words: v.array(v.string()),
  /** What stands in the way; null: nothing does, and the rest is there. */
  missing: v.nullable(v.string()),
  found: v.nullable(
    v.strictObject({
      /** Share of the seat that touches, 0 to 1. */
      touching: v.number(),
      /** MPa. */
      pressure: v.strictObject({ least: Place, mean: v.number(), greatest: Place }),
      /** Per side; 0 where it touches everywhere. */
      widestGap: Place,
      /** Across: how much smaller the mean of the bushing's bore gets. */
      closesIn: v.number(),
      /** Across: greatest less least diameter of the bushing's bore at one depth, and of the wall before. */
      outOfRound: Place,
      boreOutOfRound: Num,
      /** Greatest less least radius about the middle at one depth, the worst, per side; lobes 0: as good as round. */
      radialSpan: v.nullable(Span),
      boreRadialSpan: v.nullable(Span),
      /** Of the bushing's axis against the one it is to sit on; lean in mm per mm of depth. */
      center: v.tuple([v.number(), v.number()]),
      lean: v.tuple([v.number(), v.number()]),
      /** MPa; 0 where it does not touch, null off the seat. */
      pressures: Matrix,
      /** Per side; null off the seat. */
      gaps: Matrix,
      /** Radius of the bushing's bore about its own axis; null at depths off the seat. */
      bore: Matrix,
    }),
  ),
});
type RoundReport = v.InferOutput<typeof RoundSchema>;

export function roundReport(part: RoundPart, { wall }: Seated, units: Units): RoundReport {
  const words = roundWords(part, units);
  if (part.missing !== null) return { words, missing: part.missing, found: null };
  const { fit } = part;
  const { settled, hole } = fit;
  const field = (of: Float64Array) => matrix(of, wall.grid);
  return {
    words,
    missing: null,
    found: {
      touching: fit.touching,
      pressure: { least: placeOf(fit.least), mean: fit.mean, greatest: placeOf(fit.greatest) },
      widestGap: placeOf(fit.widest),
      closesIn: fit.closedIn,
      outOfRound: placeOf({ ...hole.outOfRound, value: hole.outOfRound.mm }),
      boreOutOfRound: Number.isNaN(fit.boreOutOfRound) ? null : fit.boreOutOfRound,
      radialSpan: spanOf(fit.holeSpan),
      boreRadialSpan: spanOf(fit.boreSpan),
      center: [settled.x, settled.y],
      lean: [settled.leanX, settled.leanY],
      pressures: field(fit.pressure),
      gaps: field(fit.gap),
      bore: field(fit.inside),
    },
  };
}

function spanOf(span: RoundFit['holeSpan']): v.InferOutput<typeof Span> | null {
  return span && { perSide: span.perSide, depth: span.z, lobes: span.lobes };
}

function placeOf({ value, theta, z }: PlaceOf): v.InferOutput<typeof Place> {
  return { value, clock: degrees(theta), depth: z };
}

export function degrees(theta: number): number {
  return (theta * 180) / Math.PI;
}
