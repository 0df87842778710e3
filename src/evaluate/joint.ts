/** Every part of the joint side by side: sizes now, wear, play, the wall of an old bushing, and the pin's mirror. */
import { listSize, partSize, wornOf } from '../bore/partSize.ts';
import type { Pattern } from '../bore/patternTypes.ts';
import { playNow, wallLeft } from '../bore/play.ts';
import { gaugeKind } from '../job/gauges.ts';
import { isOfBushing } from '../job/measuredAt.ts';
import type { Job } from '../job/schema.ts';
import { bushingOutsideMm } from '../job/sizes.ts';
import { lengthMm } from '../job/units.ts';
import type { Joint, JointPart, Known, NewBushing, Seen, SeenPart } from './jointTypes.ts';
import { mirrorOf } from './mirror.ts';
import { isOutside } from './part.ts';

export function jointOf(job: Job, bores: readonly SeenPart[], parts: readonly SeenPart[]): Joint {
  const known = [...bores, ...parts].map(knownOf).filter((one) => one !== null);
  const listed = pinLists(job, known);
  const pins = [...known.filter(({ kind }) => kind === 'pin'), ...listed];
  const fresh = newBushings(job);
  const fitted = bores.map(fittedOf).filter((one) => one !== null);
  const { holes, unread } = runners(job, known, fitted);
  const pairs = holes.flatMap((hole, i) => {
    const pin = pins.length === holes.length ? pins[i] : pins[0];
    return pin === undefined ? [] : [{ hole, pin }];
  });
  return {
    parts: [...known, ...listed].map(plain),
    fresh,
    plays: pairs.map(({ hole, pin }) => ({
      hole: hole.name,
      pin: pin.name,
      fitted: fitted.includes(hole),
      ...playNow(hole, pin),
    })),
    walls: wallsOf(known, fresh),
    // A bushing that was just pressed in has no wear for the pin to mirror.
    mirrors: holes.flatMap((hole, i) =>
      fitted.includes(hole) ? [] : [mirrorOf(hole, pairs[i]?.pin ?? null)],
    ),
    unread,
  };
}

function plain({ id, name, kind, survey, newSize, newFrom, size, worn }: Known): JointPart {
  return { id, name, kind, survey, newSize, newFrom, size, worn };
}

function knownOf({ id, name, kind, facts, surveys }: SeenPart): Known | null {
  // What was read of a bushing once it was in is no size of the bore behind it.
  const seen = surveys.findLast((one) => one.surface !== null && !isOfBushing({ kind }, one));
  if (seen === undefined) return null;
  const size = partSize(seen.sections, seen.profile, facts.length.mm);
  if (size === null || Number.isNaN(size.mean.mm)) return null;
  const outside = isOutside(kind);
  // A bushing's size that only stands in for a new size would call a press fit wear.
  const stated = facts.nominal.from === 'typed' ? facts.nominal.mm : Number.NaN;
  const standsIn = outside && Number.isNaN(stated);
  const newSize = standsIn ? size.greatest.mm : stated;
  const newFrom = standsIn ? 'unworn-end' : Number.isNaN(stated) ? 'missing' : 'typed';
  const worn = wornOf(size, newSize, outside, eggOf(seen));
  const { surface, sections } = seen;
  return {
    id,
    name,
    kind,
    survey: seen.name,
    newSize,
    newFrom,
    size,
    worn,
    surface,
    sections,
    seen,
  };
}

/** The bore of a bushing as it was read last, once it was pressed in; null: it was not, or the wall was read since. */
function fittedOf({ id, name, kind, facts, surveys }: SeenPart): Known | null {
  const seen = surveys.findLast((one) => one.surface !== null);
  if (seen === undefined || !isOfBushing({ kind }, seen)) return null;
  const size = partSize(seen.sections, seen.profile, facts.length.mm);
  if (size === null || Number.isNaN(size.mean.mm)) return null;
  const { surface, sections } = seen;
  return {
    id,
    name: `the bushing in ${name}`,
    kind: 'bushing-inside',
    survey: seen.name,
    newSize: Number.NaN,
    newFrom: 'missing',
    size,
    worn: null,
    surface,
    sections,
    seen,
  };
}

function eggOf({ patterns }: Seen): Pattern | undefined {
  return patterns.named.find(({ name }) => name === 'egg');
}

/** Two standard deviations of a typed size: nobody says with what it was read, so a micrometer is taken. */
const LISTED = 2 * gaugeKind('outside-micrometer').repeatability;

/** Pins given as a list of sizes count where no pin was surveyed. */
function pinLists(job: Job, known: readonly Known[]): Known[] {
  if (known.some(({ kind }) => kind === 'pin')) return [];
  const bores = job.features.filter(({ pin }) => pin !== undefined);
  return bores.flatMap((bore) => {
    const typed = bore.pin!.diameters.map((d) => lengthMm(d)).filter((mm) => mm > 0);
    const size = listSize(typed, LISTED);
    if (size === null) return [];
    const name = bores.length === 1 ? 'Pin' : `Pin of ${bore.name}`;
    return [
      {
        id: `${bore.id} pin`,
        name,
        kind: 'pin' as const,
        survey: '',
        newSize: Number.NaN,
        newFrom: 'missing' as const,
        size,
        worn: null,
        surface: null,
        sections: [],
        seen: null,
      },
    ];
  });
}

function newBushings(job: Job): NewBushing[] {
  return job.features.flatMap((feature) =>
    feature.bushings.map((one) => {
      const outside = bushingOutsideMm(one);
      const inside = lengthMm(one.inside);
      return { bore: feature.name, name: one.name, outside, inside, wall: (outside - inside) / 2 };
    }),
  );
}

/** What runs on the pin now: bushings that were read once in, else old ones whose inside was read, else bores that hold none. */
function runners(
  job: Job,
  known: readonly Known[],
  fitted: readonly Known[],
): { holes: Known[]; unread: string[] } {
  const insides = known.filter(({ kind }) => kind === 'bushing-inside');
  if (fitted.length === 0 && insides.length > 0) return { holes: insides, unread: [] };
  const bare = new Set(
    job.features.filter((f) => f.kind === 'bore' && f.bushings.length === 0).map(({ id }) => id),
  );
  const read = new Set(fitted.map(({ id }) => id));
  const bores = known.filter(({ id, kind }) => kind === 'bore' && !read.has(id));
  return {
    holes: [...fitted, ...bores.filter(({ id }) => bare.has(id))],
    unread: bores.filter(({ id }) => !bare.has(id)).map(({ name }) => name),
  };
}

/** Old bushings by the order in which inside and outside stand in the job. */
function wallsOf(known: readonly Known[], fresh: readonly NewBushing[]): Joint['walls'] {
  const outsides = known.filter(({ kind }) => kind === 'bushing-outside');
  return known
    .filter(({ kind }) => kind === 'bushing-inside')
    .flatMap((inside, i) => {
      const own = outsides[i];
      const stand = fresh[i] ?? fresh[0];
      const outside =
        own?.size ?? listSize(stand && stand.outside > 0 ? [stand.outside] : [], LISTED);
      if (outside === null) return [];
      const egg = inside.seen === null ? undefined : eggOf(inside.seen);
      const wall = wallLeft(inside, outside, stand?.wall ?? Number.NaN, egg?.theta ?? Number.NaN);
      return [
        {
          name: inside.name,
          from: own ? ('measured' as const) : ('new-bushing' as const),
          ...wall,
        },
      ];
    });
}
