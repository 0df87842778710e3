/** Edits of the figures of heat, cold and the clock. */
import { findFeature, withKey } from './change.ts';
import { setFit } from './fitEdits.ts';
import type { BossProbe, HeatFigures } from './heatSchema.ts';
import { type Job, MOST } from './schema.ts';

/** One figure; undefined makes it the usual one again. */
export function setHeat<K extends keyof HeatFigures>(
  job: Job,
  featureId: string,
  key: K,
  value: HeatFigures[K] | undefined,
): Job {
  const before = findFeature(job, featureId)?.decisions.fit?.heat ?? {};
  const figures = withKey<HeatFigures, K>(before, key, value);
  return setFit(job, featureId, 'heat', Object.keys(figures).length === 0 ? undefined : figures);
}

/** Changes how warm the boss is at a place of the list, or puts one at its end; null takes it out. */
export function setBossProbe(
  job: Job,
  featureId: string,
  place: number,
  probe: BossProbe | null,
): Job {
  const probes = findFeature(job, featureId)?.decisions.fit?.heat?.probes ?? [];
  if (place >= MOST.probes || (probe === null && place >= probes.length)) return job;
  const next = probe === null ? probes.filter((_, i) => i !== place) : [...probes];
  if (probe !== null) next[Math.min(place, next.length)] = probe;
  return setHeat(job, featureId, 'probes', next.length === 0 ? undefined : next);
}
