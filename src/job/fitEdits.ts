/** Edits of what belongs to the fit alone. */
import { changeFeature, withKey } from './change.ts';
import type { Decisions, Job } from './schema.ts';

type Figures = NonNullable<Decisions['fit']>;

/** One figure of the fit; undefined makes it the usual one again. A fit without figures of its own is left out. */
export function setFit<K extends keyof Figures>(
  job: Job,
  featureId: string,
  key: K,
  value: Figures[K] | undefined,
): Job {
  return changeFeature(job, featureId, (one) => {
    const figures = withKey<Figures, K>(one.decisions.fit ?? {}, key, value);
    const kept = Object.keys(figures).length === 0 ? undefined : figures;
    return withKey(one, 'decisions', withKey(one.decisions, 'fit', kept));
  });
}
