/**
 * The story's small pictures as data: the bore seen from its end, cut across at one depth, wear drawn larger by one
 * factor in all four of them. x to 3 o'clock, y to 12, mm as drawn.
 */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import type { Feature } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';
import { metalAround } from './boss.ts';
import type { Point } from './contours.ts';
import { exaggerations } from './exaggeration.ts';
import { linearAt } from './sample.ts';
import { type Chapter, type Chapters, shapeToCome } from './storyChapters.ts';
import type { Step } from './storyTypes.ts';

export interface StoryPicture {
  readonly step: Step;
  /** Depth of the cut, mm; NaN where any depth looks alike. */
  readonly z: number;
  readonly exaggeration: number;
  /** Radius of the metal's outside. */
  readonly boss: number;
  /** Closed outline of the hole. */
  readonly hole: readonly Point[];
  /** Radius of the round that the hole is held against: new size, or the size wanted. */
  readonly round: number;
  /** What of the hole inside that round is: metal to take off, or nothing to mark. */
  readonly proud: 'take-off' | 'plain';
  /** Outside and inside radius of the bushing that is in it; null: none. */
  readonly bushing: { readonly outer: number; readonly inner: number } | null;
  /** Radius of the pin that is in it; 0: none. */
  readonly pin: number;
  /** Clock position that the load pulls to, radians; NaN not stated. */
  readonly load: number;
}

const ANGLES = 180;
/** Metal around the hole as shares of its radius: a thicker boss would leave the hole small, a thinner ring looks weak. */
const MOST_METAL = 0.45;
const LEAST_METAL = 0.16;
/** Wall of a bushing, and room of a pin, whose sizes nobody wrote down, as shares of the radius. */
const USUAL_WALL = 0.16;
const USUAL_ROOM = 0.03;

/** One depth of the wall: how far out it lies of the round at each angle, per side, mm. */
interface Ring {
  readonly z: number;
  readonly out: readonly number[];
}

type Pictures = Readonly<Record<Step, StoryPicture | null>>;

export function storyPictures(chapters: Chapters, facts: BoreFacts, feature: Feature): Pictures {
  const { worn, work, after } = chapters;
  const radius = radiusOf(worn ?? work, facts);
  if (!(radius > 0)) return { new: null, worn: null, work: null, done: null };
  const now = worn === null ? null : wornRing(worn.seen, radius);
  const left = after === null && feature.decisions.way === 'leave';
  const cut = work === null || left ? null : wantedRing(work.seen, (e) => Math.max(0, -e));
  const end = left ? now : endRing(chapters, feature);
  const metal = Math.min(metalAround(radius, facts.bossOutside.mm), MOST_METAL * radius);
  const all = [now, cut, end].flatMap((ring) => ring?.out ?? []).filter(Number.isFinite);
  const range = [Math.min(0, ...all), Math.max(0, ...all)] as const;
  // The boss may be drawn as thick as the wear needs, so that its metal does not hold the factor down.
  const { chosen } = exaggerations(range[0], range[1], radius, radius);
  const parts = partsIn(facts, feature, radius);
  const common = {
    exaggeration: chosen,
    boss: Math.max(radius + metal, radius * (1 + LEAST_METAL) + chosen * range[1]),
    round: radius,
    load: facts.load,
  };
  const drawn = (ring: Ring) =>
    ring.out.map((e, i): Point => polar((2 * Math.PI * i) / ANGLES, radius + chosen * e));
  const picture = (step: Step, ring: Ring | null, rest: Partial<StoryPicture>) =>
    ring === null || !ring.out.every(Number.isFinite)
      ? null
      : { ...common, ...NOTHING_IN, step, z: ring.z, hole: drawn(ring), ...rest };
  return {
    new: picture('new', TRUE_ROUND, parts),
    worn: picture('worn', now, {}),
    work: picture('work', cut, { proud: 'take-off' }),
    done: picture('done', end, left ? {} : parts),
  };
}

const NOTHING_IN = { proud: 'plain', bushing: null, pin: 0 } as const;

function polar(theta: number, radius: number): Point {
  return [radius * Math.sin(theta), radius * Math.cos(theta)];
}

/** Of the new hole: as stated, as its bushing was, else as narrow as the wall is found. */
function radiusOf(chapter: Chapter | null, { nominal }: BoreFacts): number {
  if (nominal.mm > 0) return nominal.mm / 2;
  const mean = chapter?.seen.surface?.mean.filter(Number.isFinite);
  return mean === undefined || mean.length === 0 ? Number.NaN : Math.min(...mean);
}

/** The measured depth that is most out of round, held against the new hole. */
function wornRing({ surface, sections }: SurveyEvaluation, radius: number): Ring | null {
  if (surface === null) return null;
  const most = (out: readonly number[]) =>
    Math.max(...out) - Math.min(...out) + Math.max(0, ...out) / 4;
  return tellingRing(surface.grid, surface.mean, sections, most, -radius);
}

/** The measured depth where most is to be seen, held against the size wanted. */
function wantedRing(
  { surface, removal, sections }: SurveyEvaluation,
  weight: (e: number) => number,
): Ring | null {
  if (surface === null || removal === null) return null;
  const sum = (out: readonly number[]) => out.reduce((all, e) => all + weight(e), 0);
  return tellingRing(surface.grid, removal.deviation, sections, sum, 0);
}

type Grid = NonNullable<SurveyEvaluation['surface']>['grid'];

/** Of the depths that were read, the one worth most; the field there with `add` to each. */
function tellingRing(
  grid: Grid,
  field: Float64Array,
  read: readonly { readonly z: number }[],
  worth: (out: readonly number[]) => number,
  add: number,
): Ring | null {
  const angles = Array.from({ length: ANGLES }, (_, i) => (2 * Math.PI * i) / ANGLES);
  const rings = read
    .map(({ z }): Ring => ({ z, out: angles.map((at) => linearAt(grid, field, at, z) + add) }))
    .filter(({ out }) => out.every(Number.isFinite));
  const [first, ...others] = rings;
  if (first === undefined) return null;
  return others.reduce((a, b) => (worth(b.out) > worth(a.out) ? b : a), first);
}

const TRUE_ROUND: Ring = { z: Number.NaN, out: Array.from({ length: ANGLES }, () => 0) };

/** As it was read after grinding; else with all ground away that stands proud; else, before any heat, as it is meant. */
function endRing(chapters: Chapters, feature: Feature): Ring | null {
  const { work, after } = chapters;
  if (after !== null) return wantedRing(after.seen, Math.abs);
  if (work === null) return null;
  const ring = wantedRing(work.seen, Math.abs);
  if (ring !== null && shapeToCome(chapters, feature)) return TRUE_ROUND;
  return filled(ring, (e) => Math.max(0, e));
}

/** The ring with what is proud of it ground away, or as it was read. */
function filled(ring: Ring | null, keep: (e: number) => number): Ring | null {
  return ring === null ? null : { z: ring.z, out: ring.out.map(keep) };
}

/** Bushing and pin in true proportion to the hole, as far as their sizes are written down. */
function partsIn(
  { bushingOutside }: BoreFacts,
  feature: Feature,
  radius: number,
): Pick<StoryPicture, 'bushing' | 'pin'> {
  const pins = (feature.pin?.diameters ?? []).map((one) => lengthMm(one)).filter((mm) => mm > 0);
  const pin = pins.length === 0 ? Number.NaN : Math.max(...pins) / 2;
  if (feature.bushings.length === 0) {
    return { bushing: null, pin: pin < radius ? pin : (1 - USUAL_ROOM) * radius };
  }
  const outside = bushingOutside.mm / 2;
  const stated = lengthMm(feature.bushings.find((one) => lengthMm(one.inside) > 0)?.inside) / 2;
  const share = stated > 0 && outside > stated ? stated / outside : 1 - USUAL_WALL;
  const inner = share * radius;
  return {
    bushing: { outer: radius, inner },
    pin: pin > 0.5 * inner && pin < inner ? pin : (1 - USUAL_ROOM) * inner,
  };
}
