/** Edits of what was read from a straight bar through the bores of one pin. */
import type { BarBy, BarReading } from './alignSchema.ts';
import { changeFeature, typedOrNone, withKey } from './change.ts';
import { angleApart, clockTheta, SAME_CLOCK } from './clock.ts';
import { type Face, type Job, MOST, type Typed } from './schema.ts';

/** Feelers where nobody has said, so that they are left out. */
export function setBarBy(job: Job, by: BarBy): Job {
  return withKey(job, 'barBy', by === 'feelers' ? undefined : by);
}

/** One reading, by its face and clock position; undefined or empty takes it away. */
export function setBarReading(
  job: Job,
  featureId: string,
  { face, clock }: { readonly face: Face; readonly clock: string },
  typed: Typed | undefined,
): Job {
  const value = typedOrNone(typed);
  return changeFeature(job, featureId, (one) => {
    const before = one.bar ?? [];
    const at = before.findIndex((reading) => reading.face === face && sameClock(reading, clock));
    const kept = before.filter((_, index) => index !== at);
    const next = value && { face, clock: clock.slice(0, MOST.clock), value };
    const bar = next === undefined ? kept : at < 0 ? [...kept, next] : before.with(at, next);
    const full = bar.length > MOST.bar ? before : bar;
    return withKey(one, 'bar', full.length === 0 ? undefined : full);
  });
}

export function sameClock(reading: Pick<BarReading, 'clock'>, clock: string): boolean {
  return angleApart(clockTheta(reading.clock), clockTheta(clock)) < SAME_CLOCK;
}
