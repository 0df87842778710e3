/** How a job of an older version of the format becomes one of the next version. */
import { JOB_VERSION } from './schema.ts';

type Saved = Readonly<Record<string, unknown>>;

/** Keyed by the version that a step starts from. Version 1 is the first, so there is none to come from. */
const STEPS: Readonly<Record<number, (saved: Saved) => Saved>> = {};

/** The saved job in today's version; null where no way leads from its version. */
export function migrated(saved: Saved, version: number): Saved | null {
  let now = saved;
  for (let at = version; at < JOB_VERSION; at++) {
    const step = STEPS[at];
    if (step === undefined) return null;
    now = { ...step(now), version: at + 1 };
  }
  return now;
}
