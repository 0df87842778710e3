/** Edits of the room beside a boss between two ears. */
import {
  changeFeature,
  done,
  findFeature,
  refused,
  type Tried,
  typedKept,
  typedOrNone,
  withKey,
} from './change.ts';
import { type Job, MOST, type Typed } from './schema.ts';
import type { SideGap, SidePart } from './sideGapSchema.ts';

/** One entry of the side gap; undefined takes it away. A side gap without any is left out. */
export function setSideGap<K extends keyof SideGap>(
  job: Job,
  featureId: string,
  key: K,
  value: SideGap[K] | undefined,
): Job {
  return changeFeature(job, featureId, (one) => {
    const next = withKey<SideGap, K>(one.sideGap ?? {}, key, value);
    return withKey(one, 'sideGap', Object.keys(next).length === 0 ? undefined : next);
  });
}

/** One measured place; an empty text closes the gap in the list, a place past the end is added at the end. */
export function setSidePlace(
  job: Job,
  featureId: string,
  key: 'between' | 'width',
  place: number,
  typed: Typed | undefined,
): Job {
  const before = findFeature(job, featureId)?.sideGap?.[key] ?? [];
  const kept = typedOrNone(typed);
  const next =
    kept === undefined
      ? before.filter((_, index) => index !== place)
      : place < before.length
        ? before.with(place, kept)
        : before.length < MOST.pinPlaces
          ? [...before, kept]
          : before;
  return setSideGap(job, featureId, key, next.length === 0 ? undefined : next);
}

export function addSidePart(job: Job, featureId: string, part: SidePart): Tried {
  const parts = findFeature(job, featureId)?.sideGap?.parts ?? [];
  if (parts.length >= MOST.sideParts) {
    return refused(`a stack holds ${MOST.sideParts} loose parts at most`);
  }
  return done(setSideGap(job, featureId, 'parts', [...parts, keptPart(part)]));
}

/** Null takes the part out of the stack. */
export function setSidePart(
  job: Job,
  featureId: string,
  place: number,
  part: SidePart | null,
): Job {
  const parts = findFeature(job, featureId)?.sideGap?.parts ?? [];
  if (place >= parts.length) return job;
  const next =
    part === null ? parts.filter((_, at) => at !== place) : parts.with(place, keptPart(part));
  return setSideGap(job, featureId, 'parts', next.length === 0 ? undefined : next);
}

function keptPart(part: SidePart): SidePart {
  return {
    ...part,
    name: part.name.slice(0, MOST.name),
    thickness: typedKept(part.thickness),
  };
}
