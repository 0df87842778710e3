/** Edits of what a pin or shaft alone has: the stretches that run, and what is decided of it. */
import {
  changeFeature,
  done,
  findFeature,
  idSource,
  mapById,
  refused,
  replaced,
  type Tried,
  typedKept,
  withKey,
  withKeys,
  withoutId,
} from './change.ts';
import { layPlan } from './layPlan.ts';
import { pinFacts } from './pinFacts.ts';
import { defaultClocks } from './plan.ts';
import { type Decisions, type Job, type Land, MOST } from './schema.ts';
import { gaugeOf } from './sizes.ts';
import { addSurvey } from './surveyEdits.ts';
import { inUnits, lengthMm } from './units.ts';

/** A stretch that runs, at the end of the list. */
export function addLand(job: Job, featureId: string, land: Omit<Land, 'id'>): Tried {
  const before = findFeature(job, featureId)?.lands ?? [];
  if (before.length >= MOST.lands) {
    return refused(`a pin has ${MOST.lands} running stretches at most: measure the rest as a part`);
  }
  const added = {
    ...land,
    id: idSource(job)('l'),
    from: typedKept(land.from),
    to: typedKept(land.to),
  };
  return done(setLands(job, featureId, [...before, added]));
}

/** Changes a stretch; an undefined `runsIn` takes it away. */
export function setLand(
  job: Job,
  featureId: string,
  landId: string,
  change: { readonly [K in keyof Omit<Land, 'id'>]?: Land[K] | undefined },
): Job {
  const before = findFeature(job, featureId)?.lands ?? [];
  const next = mapById(before, landId, (land) => {
    const { name = land.name, face = land.face, from = land.from, to = land.to } = change;
    const kept = withKeys(land, {
      name: name.slice(0, MOST.name),
      face,
      from: typedKept(from),
      to: typedKept(to),
    });
    return Object.hasOwn(change, 'runsIn') ? withKey(kept, 'runsIn', change.runsIn) : kept;
  });
  return setLands(job, featureId, next);
}

export function removeLand(job: Job, featureId: string, landId: string): Job {
  const before = findFeature(job, featureId)?.lands ?? [];
  return setLands(job, featureId, withoutId(before, landId));
}

function setLands(job: Job, featureId: string, lands: Land[]): Job {
  return changeFeature(job, featureId, (one) =>
    lands.length === 0 ? withKey(one, 'lands', undefined) : replaced(one, 'lands', lands),
  );
}

type OfPin = NonNullable<Decisions['pin']>;

/** One decision of a pin; undefined takes it back. */
export function setPin<K extends keyof OfPin>(
  job: Job,
  featureId: string,
  key: K,
  value: OfPin[K] | undefined,
): Job {
  return changeFeature(job, featureId, (one) => {
    const next = withKey<OfPin, K>(one.decisions.pin ?? {}, key, value);
    const kept = Object.keys(next).length === 0 ? undefined : next;
    return withKey(one, 'decisions', withKey(one.decisions, 'pin', kept));
  });
}

/** How far from an edge a gauge still rests on what is to be turned, mm: judgement. */
const INSET: Readonly<Record<Job['units'], number>> = { in: 1.27, mm: 1 };

/**
 * A survey of the welded-up pin, at the end: all round the clock, at both edges and in the middle of every running stretch,
 * since edges and corners are where weld is short first.
 */
export function addWeldedSurvey(job: Job, featureId: string): Job {
  const added = addSurvey(job, featureId, 'after-build-up');
  const feature = findFeature(added, featureId);
  const survey = feature?.surveys.at(-1);
  if (feature === undefined || survey === undefined) return added;
  const { units } = added;
  const { lands } = pinFacts(added, feature, lengthMm(feature.length));
  const inset = INSET[units];
  const depths = lands
    .filter(({ from, to }) => to - from > 2 * inset)
    .flatMap(({ from, to }) => [from + inset, (from + to) / 2, to - inset])
    .map((z) => ({ text: inUnits(z, units).toFixed(units === 'in' ? 2 : 1), unit: units }));
  if (depths.length === 0) return added;
  const gauge = gaugeOf(added.gauges, survey.plan.gauge);
  const clocks = defaultClocks(gauge?.kind ?? 'two-point');
  return layPlan(added, featureId, survey.id, { clocks, depths, short: false });
}
