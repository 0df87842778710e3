/** A bore on its way from one stage to another, to be drawn: at either end the stage itself. */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { drawAs, wallOf } from './wall.ts';

/**
 * Colours and exaggeration are the same all the way, chosen for both ends. Between the ends nothing was measured: no
 * figures stand at zones, and no reading is drawn.
 *
 * @param a, b two stages that are comparable
 * @param share 0: a, 1: b
 */
export function blended(
  a: SurveyEvaluation,
  b: SurveyEvaluation,
  share: number,
  facts: BoreFacts,
): SurveyEvaluation {
  const [from, to] = [wallOf(a)!, wallOf(b)!];
  const scaledBy = [from, to];
  if (from.about !== to.about) return share < 0.5 ? a : b;
  if (share <= 0 || share >= 1) {
    const end = { ...(share <= 0 ? a : b) };
    drawAs(end, { ...(share <= 0 ? from : to), scaledBy });
    return end;
  }
  const mix = (one: number, other: number) => one + share * (other - one);
  const field = (one: Float64Array, other: Float64Array) =>
    one.map((value, k) => mix(value, other[k]!));
  const deviation = field(from.deviation, to.deviation);
  const radius = mix(from.radius, to.radius);
  const drawn: SurveyEvaluation = {
    ...(share < 0.5 ? a : b),
    sightings: [],
    checks: [],
    sections: a.sections.map((section) => ({ ...section, count: 0 })),
    surface: {
      ...a.surface!,
      mean: deviation.map((e) => e + radius),
      sd: field(a.surface!.sd, b.surface!.sd),
      sdSeen: field(a.surface!.sdSeen, b.surface!.sdSeen),
      predicted: new Float64Array(0),
    },
    target: a.target && b.target && { ...a.target, axis: NO_AXIS },
    removal: blendedRemoval(a, b, deviation, field, facts),
    seating: null,
    zones: [],
    plugs: null,
    next: { readings: [], setups: [] },
  };
  drawAs(drawn, { ...from, radius, deviation, give: field(from.give, to.give), scaledBy });
  return drawn;
}

const NO_AXIS = { x: 0, y: 0, leanX: 0, leanY: 0 } as const;

function blendedRemoval(
  a: SurveyEvaluation,
  b: SurveyEvaluation,
  deviation: Float64Array,
  field: (one: Float64Array, other: Float64Array) => Float64Array,
  facts: BoreFacts,
): SurveyEvaluation['removal'] {
  if (a.removal === null || b.removal === null) return null;
  const { grid } = a.surface!;
  const columns = grid.theta.length;
  const sd = field(a.removal.sd, b.removal.sd);
  const seated = Array.from(grid.z, (z) =>
    facts.seats.some((seat) => z >= seat.from - 1e-9 && z <= seat.to + 1e-9),
  );
  /** As where metal is asked off at the stages: nothing in a place to keep off, none where no bushing sits. */
  const metal = (larger: number) =>
    deviation.map((e, k) => {
      if (Number.isNaN(a.removal!.likely[k]!)) return Number.NaN;
      return seated[Math.floor(k / columns)] ? Math.max(0, -e - larger * sd[k]!) : 0;
    });
  return {
    ...a.removal,
    deviation,
    sd,
    likely: metal(0),
    sure: metal(2),
    possible: metal(-2),
  };
}
