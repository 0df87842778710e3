/** The other reading of the same numbers in the report: one surface more, where the readings do not show the side. */
import * as v from 'valibot';
import { evaluateOther } from '../evaluate/otherReading.ts';
import type { BoreEvaluation, Memory, SurveyEvaluation } from '../evaluate.ts';
import { otherSides } from '../figures/otherWords.ts';
import { clockTheta } from '../job/clock.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';

const Num = v.nullable(v.number());
const Matrix = v.array(v.array(Num));

/** On the grid of the surface. */
export const OtherReading = v.strictObject({
  /** The side taken as worn, degrees; null: both sides alike. */
  wornSide: Num,
  words: v.string(),
  surface: v.strictObject({ mean: Matrix, sd: Matrix }),
  deviation: Matrix,
  removal: v.strictObject({
    likely: Matrix,
    sure: Matrix,
    possible: Matrix,
    volume: v.number(),
    mass: v.number(),
  }),
});
export type OtherReading = v.InferOutput<typeof OtherReading>;

/** Works it out for one survey; null where there is none. */
export type FindOther = (bore: BoreEvaluation, survey: SurveyEvaluation) => OtherReading | null;

type ToMatrix = (
  field: Float64Array,
  grid: NonNullable<SurveyEvaluation['surface']>['grid'],
) => (number | null)[][];

export function otherFinder(
  job: Job,
  memory: Memory,
  matrix: ToMatrix,
  shop: Shop | null = null,
): FindOther {
  return (bore, survey) => {
    const stated = job.features
      .find(({ id }) => id === bore.id)
      ?.surveys.find(({ id }) => id === survey.id)?.wornSide;
    const [side, mirrored] = otherSides(survey, stated, bore.facts.load);
    if (side === undefined) return null;
    const { wornSide, words } = side;
    const other = evaluateOther(job, { bore: bore.id, survey: survey.id, wornSide }, memory, shop);
    if (other === null || other.surface === null || other.removal === null) return null;
    const { grid, mean, sd } = other.surface;
    const { deviation, likely, sure, possible, volume, mass } = other.removal;
    const theta = (clockTheta(wornSide) * 180) / Math.PI;
    const or = mirrored === undefined ? '' : `, or ${mirrored.words}`;
    return {
      wornSide: Number.isNaN(theta) ? null : theta,
      words: `The same numbers may be those of a bore ${words}${or}.`,
      surface: { mean: matrix(mean, grid), sd: matrix(sd, grid) },
      deviation: matrix(deviation, grid),
      removal: {
        likely: matrix(likely, grid),
        sure: matrix(sure, grid),
        possible: matrix(possible, grid),
        volume,
        mass,
      },
    };
  };
}
