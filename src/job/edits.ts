/**
 * Edits of a job: `Job -> Job`, never in place, everything untouched shared, the same reference where nothing
 * changes. An id that is not there changes nothing (the thing was removed meanwhile). Edits that may have to be
 * refused return `Tried` with one sentence. This file: the job itself, its gauges, and a new one.
 */
import {
  done,
  idSource,
  mapById,
  refused,
  replaced,
  type Tried,
  textOrNone,
  typedKept,
  typedOrNone,
  withKey,
  withKeys,
  withoutId,
} from './change.ts';
import { gaugeKind } from './gauges.ts';
import { defaultClocks, defaultDepths, surveyName } from './plan.ts';
import {
  type Feature,
  type Gauge,
  type GaugeType,
  JOB_FORMAT,
  JOB_VERSION,
  type Job,
  MOST,
  type Safety,
  type Survey,
  type Typed,
  type Units,
} from './schema.ts';
import { lengthMm } from './units.ts';

export * from './alignEdits.ts';
export * from './centreEdits.ts';
export type { Tried } from './change.ts';
export * from './featureEdits.ts';
export * from './fitEdits.ts';
export * from './heatEdits.ts';
export * from './mendingEdits.ts';
export { pasteBlock } from './paste.ts';
export * from './pinEdits.ts';
export * from './readingEdits.ts';
export * from './setupEdits.ts';
export * from './sideGapEdits.ts';
export * from './surveyEdits.ts';

/** All that a new job asks; lengths are texts in `units`. */
export interface NewJob {
  readonly units: Units;
  readonly gauge: GaugeType;
  readonly length: string;
  readonly bushingOutside: string;
  /** Left out: `job1`. Whoever keeps many jobs gives each its own. */
  readonly id?: string;
  readonly title?: string;
  readonly bore?: string;
  readonly made?: string;
  /** Left out: those worth measuring with this gauge and length. */
  readonly clocks?: readonly string[];
  readonly depths?: readonly string[];
}

/** A job of one bore with one bushing and an empty survey, as found. */
export function newJob(ask: NewJob): Job {
  const kind = gaugeKind(ask.gauge);
  const typed = (text: string): Typed => typedKept({ text, unit: ask.units });
  const length = typed(ask.length);
  const outside = typed(ask.bushingOutside);
  const survey: Survey = {
    id: 's1',
    name: surveyName('as-found', []),
    stage: 'as-found',
    plan: {
      clocks: (ask.clocks ?? defaultClocks(kind.kind)).map((one) => one.slice(0, MOST.clock)),
      depths:
        ask.depths?.map(typed) ?? defaultDepths(lengthMm(length), lengthMm(outside), ask.units),
      face: 'A',
      gauge: 'g1',
    },
    setups: [],
    readings: [],
  };
  const feature: Feature = {
    id: 'f1',
    kind: 'bore',
    name: (ask.bore ?? 'Bore').slice(0, MOST.name),
    bushings: [
      {
        id: 'b1',
        name: 'Bushing',
        seat: { face: 'A' },
        outside: outside.text.trim() === '' ? [] : [outside],
      },
    ],
    wanted: {},
    keepouts: [],
    surveys: [survey],
    decisions: {},
    issued: [],
  };
  const job: Job = {
    format: JOB_FORMAT,
    version: JOB_VERSION,
    id: ask.id ?? 'job1',
    title: (ask.title ?? 'New job').slice(0, MOST.name),
    units: ask.units,
    gauges: [{ id: 'g1', kind: kind.kind, type: kind.type, name: kind.name }],
    features: [withKey(feature, 'length', typedOrNone(length))],
    safety: {},
  };
  return withKey(job, 'made', textOrNone(ask.made, 40));
}

export function rename(job: Job, title: string): Job {
  return withKey(job, 'title', title.slice(0, MOST.name));
}

/** Machine, place, note: an empty text takes it away. */
export function setJobText(job: Job, key: 'machine' | 'place' | 'note', text: string): Job {
  return withKey(job, key, textOrNone(text, key === 'note' ? MOST.note : MOST.name));
}

/** What new numbers are typed in and results shown in; what was typed keeps its own unit. */
export function setUnits(job: Job, units: Units): Job {
  return withKey(job, 'units', units);
}

/** Answers a safety question; undefined takes the answer back. */
export function setSafety<K extends keyof Safety>(
  job: Job,
  question: K,
  answer: Safety[K] | undefined,
): Job {
  const kept = typeof answer === 'string' ? textOrNone(answer, MOST.name) : answer;
  return withKey(job, 'safety', withKey(job.safety, question, kept as Safety[K] | undefined));
}

/** A gauge of a generic type, with its typical figures, at the end of the list. */
export function addGauge(job: Job, type: GaugeType, name?: string): Job {
  const { kind, name: usual } = gaugeKind(type);
  const gauge: Gauge = {
    id: idSource(job)('g'),
    kind,
    type,
    name: (name ?? usual).slice(0, MOST.name),
  };
  return { ...job, gauges: [...job.gauges, gauge] };
}

/**
 * Changes a gauge. A new type brings its kind and, where the name was the old type's, its name; a figure that
 * is undefined or empty is the typical one again.
 */
export function setGauge(
  job: Job,
  gaugeId: string,
  change: { readonly [K in keyof Omit<Gauge, 'id' | 'kind'>]?: Gauge[K] | undefined },
): Job {
  return replaced(
    job,
    'gauges',
    mapById(job.gauges, gaugeId, (gauge) => {
      const { type, name, resolution, repeatability, reach, zeroedAt, needle } = change;
      const figures = { resolution, repeatability, reach, zeroedAt };
      let next = type === undefined ? gauge : ofType(gauge, type);
      if (name !== undefined) next = withKey(next, 'name', name.slice(0, MOST.name));
      for (const key of Object.keys(figures) as (keyof typeof figures)[]) {
        if (Object.hasOwn(change, key)) next = withKey(next, key, typedOrNone(figures[key]));
      }
      return Object.hasOwn(change, 'needle') ? withKey(next, 'needle', needle) : next;
    }),
  );
}

function ofType(gauge: Gauge, type: GaugeType): Gauge {
  const usual = gauge.type === undefined ? undefined : gaugeKind(gauge.type).name;
  const next = gaugeKind(type);
  return withKeys(gauge, {
    type,
    kind: next.kind,
    name: gauge.name === usual ? next.name : gauge.name,
  });
}

/** Only a gauge that nothing refers to can go. */
export function removeGauge(job: Job, gaugeId: string): Tried {
  const gauge = job.gauges.find((one) => one.id === gaugeId);
  if (gauge === undefined) return done(job);
  if (job.gauges.length === 1) return refused('a job needs at least one gauge');
  for (const feature of job.features) {
    for (const survey of feature.surveys) {
      const uses =
        survey.plan.gauge === gaugeId ||
        survey.setups.some((one) => one.gauge === gaugeId) ||
        survey.zeroAfter?.some((one) => one.gauge === gaugeId) ||
        survey.readings.some((one) => one.gauge === gaugeId);
      if (uses) {
        return refused(
          `“${gauge.name}” is used in survey “${survey.name}” of “${feature.name}”: give those another gauge first`,
        );
      }
    }
  }
  return done({ ...job, gauges: withoutId(job.gauges, gaugeId) });
}
