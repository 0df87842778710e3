/** How smooth the wall was taken to be, and which places of it were not. */
import type { Smoothness } from '../bore/types.ts';
import type { SurveyReport } from './reportSchema.ts';

type Told = NonNullable<SurveyReport['surface']>['smoothness'];

export function smoothnessReport({ spots, ...figures }: Smoothness): Told {
  if (spots === undefined) return figures;
  return {
    ...figures,
    spots: spots.places.map(({ theta, z, sd, across }) => ({
      clock: ((((theta * 180) / Math.PI) % 360) + 360) % 360,
      depth: z,
      sd,
      across,
    })),
  };
}
