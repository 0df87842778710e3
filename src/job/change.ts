/** How a job is changed: never in place, with everything untouched shared, the same reference for no change. */
import type { Feature, Job, Survey, Typed } from './schema.ts';
import { MOST } from './schema.ts';

/** An edit that may have to be refused, and then says why in one sentence. */
export type Tried =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly why: string };

export function done(job: Job): Tried {
  return { ok: true, job };
}

export function refused(why: string): Tried {
  return { ok: false, why };
}

/** Equal in all that would be saved. */
function alike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length || Array.isArray(a) !== Array.isArray(b)) return false;
  return keys.every(
    (key) => Object.hasOwn(b, key) && alike(a[key as keyof typeof a], b[key as keyof typeof b]),
  );
}

/** `of` with one key set, or gone where the value is undefined; `of` itself where nothing changes. */
export function withKey<T extends object, K extends keyof T>(
  of: T,
  key: K,
  value: T[K] | undefined,
): T {
  if (value === undefined) {
    if (!Object.hasOwn(of, key)) return of;
    const { [key]: _, ...rest } = of;
    return rest as T;
  }
  return alike(of[key], value) ? of : { ...of, [key]: value };
}

/** Several keys at once; undefined takes a key away. */
export function withKeys<T extends object>(
  of: T,
  change: { [K in keyof T]?: T[K] | undefined },
): T {
  let next = of;
  for (const key of Object.keys(change) as (keyof T)[])
    next = withKey<T, keyof T>(next, key, change[key]);
  return next;
}

interface Named {
  readonly id: string;
}

/** The list with one entry changed; the list itself where nothing changes or nothing has that id. */
export function mapById<T extends Named>(list: T[], id: string, change: (one: T) => T): T[] {
  const index = list.findIndex((one) => one.id === id);
  const one = list[index];
  if (one === undefined) return list;
  const next = change(one);
  return next === one ? list : list.with(index, next);
}

/** The list without one entry; the list itself where nothing has that id. */
export function withoutId<T extends Named>(list: T[], id: string): T[] {
  const rest = list.filter((one) => one.id !== id);
  return rest.length === list.length ? list : rest;
}

/** The job with one feature changed. */
export function changeFeature(job: Job, featureId: string, change: (one: Feature) => Feature): Job {
  return replaced(job, 'features', mapById(job.features, featureId, change));
}

/** The job with one survey of one feature changed. */
export function changeSurvey(
  job: Job,
  featureId: string,
  surveyId: string,
  change: (one: Survey) => Survey,
): Job {
  return changeFeature(job, featureId, (feature) =>
    replaced(feature, 'surveys', mapById(feature.surveys, surveyId, change)),
  );
}

/** As `withKey`, by reference alone: for lists, whose entries already tell whether anything changed. */
export function replaced<T extends object, K extends keyof T>(of: T, key: K, value: T[K]): T {
  return of[key] === value ? of : { ...of, [key]: value };
}

/** A name, note or clock cut to what a job holds; an empty one is none. */
export function textOrNone(text: string | undefined, most: number): string | undefined {
  const kept = (text ?? '').slice(0, most);
  return kept.trim() === '' ? undefined : kept;
}

/** A typed length cut to what a job holds; an empty one is none. */
export function typedOrNone(typed: Typed | undefined): Typed | undefined {
  const text = textOrNone(typed?.text, MOST.typed);
  return text === undefined || typed === undefined ? undefined : { text, unit: typed.unit };
}

/** A typed length cut to what a job holds; an empty one stays, where one must stand. */
export function typedKept(typed: Typed): Typed {
  return { text: typed.text.slice(0, MOST.typed), unit: typed.unit };
}

export function findFeature(job: Job, featureId: string): Feature | undefined {
  return job.features.find((one) => one.id === featureId);
}

export function findSurvey(job: Job, featureId: string, surveyId: string): Survey | undefined {
  return findFeature(job, featureId)?.surveys.find((one) => one.id === surveyId);
}

/**
 * New ids, counted on from the highest in the job: `r12` after `r11`. No clock and no chance, so that the same
 * edits give the same job.
 */
export function idSource(job: Job): (prefix: string) => string {
  const highest = new Map<string, number>();
  for (const id of allIds(job)) {
    const found = /^([a-z]+)(\d{1,9})$/.exec(id);
    if (found === null) continue;
    const prefix = found[1]!;
    highest.set(prefix, Math.max(highest.get(prefix) ?? 0, Number(found[2])));
  }
  return (prefix) => {
    const next = (highest.get(prefix) ?? 0) + 1;
    highest.set(prefix, next);
    return `${prefix}${next}`;
  };
}

function* allIds(job: Job): Generator<string> {
  for (const gauge of job.gauges) yield gauge.id;
  for (const feature of job.features) {
    yield feature.id;
    const { bushings, keepouts, issued, surveys, lands = [] } = feature;
    for (const list of [bushings, keepouts, issued, surveys, lands]) {
      for (const one of list) yield one.id;
    }
    for (const survey of feature.surveys) {
      for (const one of survey.setups) yield one.id;
      for (const one of survey.readings) yield one.id;
    }
  }
}
