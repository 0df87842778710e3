/** Edits of what belongs to one way of mending: figures of a squeeze, of shims, of a weld; readings of a worn rim face. */
import {
  changeFeature,
  done,
  findFeature,
  refused,
  type Tried,
  textOrNone,
  typedKept,
  withKey,
} from './change.ts';
import { type Decisions, type FaceReading, type Job, MOST } from './schema.ts';

export type MendingWay = 'squeeze' | 'shim' | 'weld';
type Figures<W extends MendingWay> = NonNullable<Decisions[W]>;

/** One figure of a way; undefined makes it the usual one again. A way without figures of its own is left out. */
export function setMending<W extends MendingWay, K extends keyof Figures<W>>(
  job: Job,
  featureId: string,
  way: W,
  key: K,
  value: Figures<W>[K] | undefined,
): Job {
  return changeFeature(job, featureId, (one) => {
    const before = (one.decisions[way] ?? {}) as Figures<W>;
    const figures = withKey<Figures<W>, K>(before, key, value);
    const kept = Object.keys(figures).length === 0 ? undefined : figures;
    return withKey(one, 'decisions', withKey(one.decisions, way, kept as Decisions[W]));
  });
}

/** Puts a face reading at the end of the list. */
export function addFaceReading(job: Job, featureId: string, reading: FaceReading): Tried {
  const rim = findFeature(job, featureId)?.rim ?? [];
  if (rim.length >= MOST.rim) return refused(`${MOST.rim} readings of the faces are the most`);
  return done(setRim(job, featureId, [...rim, kept(reading)]));
}

/** Changes a face reading, by its place in the list; null takes it out. */
export function setFaceReading(
  job: Job,
  featureId: string,
  place: number,
  reading: FaceReading | null,
): Job {
  const rim = findFeature(job, featureId)?.rim ?? [];
  if (place >= rim.length) return job;
  return setRim(
    job,
    featureId,
    reading === null ? rim.filter((_, i) => i !== place) : rim.with(place, kept(reading)),
  );
}

function kept({ face, clock, below }: FaceReading): FaceReading {
  return { face, clock: textOrNone(clock, MOST.clock) ?? '', below: typedKept(below) };
}

function setRim(job: Job, featureId: string, rim: FaceReading[]): Job {
  return changeFeature(job, featureId, (one) =>
    withKey(one, 'rim', rim.length === 0 ? undefined : rim),
  );
}
