/** What a survey of a feature measures: once a bushing is pressed in, that bushing's own bore and no longer the boss's. */
import type { Feature, Survey } from './schema.ts';

export function isOfBushing({ kind }: Pick<Feature, 'kind'>, { stage }: Pick<Survey, 'stage'>) {
  return kind === 'bore' && stage === 'fitted';
}

/**
 * The feature as one of its surveys has it. Of a bushing's own bore the new size is the bushing's inside as bought, the metal
 * the bushing's, nothing goes in and nothing is planned, and of what is cut into the boss a grease hole alone goes through.
 */
export function measuredAt(feature: Feature, survey: Pick<Survey, 'stage'>): Feature {
  if (!isOfBushing(feature, survey)) return feature;
  const { nominal: _, boss, bushings, decisions, ...rest } = feature;
  const inside = bushings.find((one) => one.inside !== undefined)?.inside;
  const { material: __, ...around } = boss ?? {};
  const material = bushings.find((one) => one.material !== undefined)?.material;
  const { target: ___, ...others } = decisions;
  return {
    ...rest,
    ...(inside === undefined ? {} : { nominal: inside }),
    boss: { ...around, ...(material === undefined ? {} : { material }) },
    bushings: bushings.map((one) => ({ ...one, outside: [] })),
    keepouts: feature.keepouts.filter(({ kind }) => kind === 'grease-hole'),
    decisions: others,
  };
}
