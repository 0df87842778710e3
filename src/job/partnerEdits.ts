/** Edits of where bores sit on the pin that they share. */
import { type ByHand, typedOf } from './centreEdits.ts';
import { done, findFeature, type Tried } from './change.ts';
import { setPlace } from './featureEdits.ts';
import { addMeasured } from './partEdits.ts';
import type { Job, Typed } from './schema.ts';

const START = '0';

/**
 * Where face A of a bore sits along the pin; undefined or empty takes its whole place away. Stations of other bores are
 * counted from the bore on the bench, which gets station 0 where it has none.
 */
export function placeStation(
  job: Job,
  ownId: string,
  featureId: string,
  typed: Typed | undefined,
): Job {
  const counted = featureId === ownId || typed === undefined ? job : started(job, ownId);
  return setPlace(counted, featureId, 'station', typed);
}

function started(job: Job, ownId: string): Job {
  if (findFeature(job, ownId)?.place !== undefined) return job;
  return setPlace(job, ownId, 'station', { text: START, unit: job.units });
}

/** How far a bore stands beside the pin's line at face A, and its run-off over its length, mm; what is left out stays. */
export function placeBeside(job: Job, featureId: string, by: ByHand): Job {
  return (Object.entries(by) as [keyof ByHand, number][]).reduce(
    (now, [key, mm]) => setPlace(now, featureId, key, typedOf(mm, job.units)),
    job,
  );
}

/** Another bore on the pin of this one, as long as this one until it is said otherwise; its station is still asked. */
export function shareThePin(job: Job, ownId: string): Tried {
  const own = findFeature(job, ownId);
  const added = addMeasured(started(job, ownId), 'bore', 'Partner bore');
  if (!added.ok || own?.length === undefined) return added;
  const last = added.job.features.at(-1)!;
  const features = added.job.features.with(-1, { ...last, length: own.length });
  return done({ ...added.job, features });
}
