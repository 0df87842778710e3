/** What the readings say of a survey's shape, whatever is wanted of it: target, centre and way of mending have no part. */
import { boreAxis } from '../bore/axis.ts';
import { checkReadings, type Earlier, type Judged, recheckReadings } from '../bore/checks.ts';
import { depthLobes } from '../bore/depthLobes.ts';
import type { Design } from '../bore/design.ts';
import { findPatterns, NO_PATTERNS } from '../bore/patterns.ts';
import type { Patterns } from '../bore/patternTypes.ts';
import { plugs } from '../bore/plugs.ts';
import { condition, type Posterior } from '../bore/posterior.ts';
import { depthMeans, profileOf } from '../bore/profile.ts';
import { sections } from '../bore/sections.ts';
import { type GridSpread, gridSpread, makeGrid, wearSurface } from '../bore/surface.ts';
import { thin } from '../bore/thin.ts';
import { ovalTurn } from '../bore/turn.ts';
import type {
  BoreAxis,
  Check,
  OvalTurn,
  Plugs,
  Profile,
  Remark,
  Section,
  Sighting,
  Smoothness,
  WearSurface,
} from '../bore/types.ts';
import { designAgain } from '../bore/valueFree.ts';
import { clockTheta } from '../job/clock.ts';
import type { BoreFacts, SurveyFacts } from '../job/facts.ts';
import { standForMany } from '../job/gauges.ts';
import { isOfBushing } from '../job/measuredAt.ts';
import type { Feature, Job, Survey } from '../job/schema.ts';
import { pastReach, retypings } from '../job/slips.ts';
import { temperatureFactor } from '../job/temperature.ts';
import { chooseSmoothness } from './given.ts';
import { isOutside } from './part.ts';
import { needleNotes } from './readingNotes.ts';

export interface Shape {
  readonly sightings: readonly Sighting[];
  readonly smoothness: Smoothness;
  /** What was learned without the readings in doubt. */
  readonly sound: Smoothness;
  readonly design: Design;
  readonly posterior: Posterior;
  readonly spread: GridSpread;
  readonly surface: WearSurface;
  /** What the measured depths show one by one, and how they go together along the bore. */
  readonly along: {
    readonly sections: readonly Section[];
    readonly profile: Profile | null;
    readonly axis: BoreAxis;
    readonly ovalTurn: OvalTurn | null;
  };
  readonly patterns: Patterns;
  readonly plugs: Plugs;
  /** Readings in doubt, besides those that cannot be used. */
  readonly checks: readonly Check[];
  /** Of needles that look turned about: told once all is settled. */
  readonly needles: readonly Remark[];
}

/** Of what a shape is worked out. */
export interface Matter {
  readonly job: Job;
  readonly facts: BoreFacts;
  readonly feature: Feature;
  readonly survey: Survey;
  readonly found: SurveyFacts;
}

/**
 * @param matter a survey with at least one usable reading, its bore's length known
 * @param earlier whose slow parts a quick answer takes over; null: all is worked out
 * @returns null where the readings contradict each other so far that no surface fits them
 */
export function shapeOf(matter: Matter, earlier: Shape | null): Shape | null {
  const { job, facts, feature, survey, found } = matter;
  const length = facts.length.mm;
  const sightings = thin(found.readings, length);
  const known = earlier?.design ?? null;
  const side = sideStated(feature, survey);
  const design = designAgain(known, sightings, found.setups, length, side);
  const nominalRadius = (facts.nominal.mm > 0 ? facts.nominal.mm : 0) / 2;
  const before = earlier?.smoothness;
  const smoothness = chooseSmoothness(design, nominalRadius, feature.decisions, before);
  const posterior = condition(design, smoothness, nominalRadius);
  if (posterior === null) return null;
  const grid = makeGrid(length);
  const spread = gridSpread(posterior, grid);
  const surface = wearSurface(posterior, grid, spread);
  const along = alongDepth(posterior, length);
  // Means of many points are nobody's typed readings.
  const { checks, sound } =
    sightings === found.readings && !standForMany(job.gauges, survey.readings)
      ? judge(matter, posterior, earlier)
      : { checks: [], sound: smoothness };
  return {
    sightings,
    smoothness,
    sound,
    design,
    posterior,
    spread,
    surface,
    along,
    // A bushing that was just pressed in has not worn: it is as its wall presses it.
    patterns: isOfBushing(feature, survey)
      ? NO_PATTERNS
      : (earlier?.patterns ?? findPatterns(posterior, sizeWhenNew(facts, survey), nominalRadius)),
    plugs: earlier?.plugs ?? plugs(surface, along.sections),
    checks,
    needles: earlier?.needles ?? needleNotes(survey, posterior, nominalRadius),
  };
}

/**
 * What it is to be called larger than new by, mm; NaN: nothing. A new size that only stands in for one is none; and once the
 * bore has been worked it is as large as it was made, not worn.
 */
function sizeWhenNew({ nominal }: BoreFacts, { stage }: Pick<Survey, 'stage'>): number {
  return nominal.from === 'typed' && stage === 'as-found' ? nominal.mm : Number.NaN;
}

/** The readings in doubt: by what the others predict, and by how deep their gauge gets. */
function judge(
  { job, facts, feature, survey }: Matter,
  posterior: Posterior,
  earlier: Shape | null,
): Judged {
  const factor = temperatureFactor(feature, survey);
  const typing = {
    nominalRadius: facts.nominal.mm > 0 ? facts.nominal.mm / 2 : 0,
    keepouts: facts.keepouts,
    retypings: (row: number) => retypings(job, feature, survey.readings[row]!, factor),
  };
  const before: Earlier | null = earlier;
  const { checks, sound } = before
    ? recheckReadings(posterior, typing, before)
    : checkReadings(posterior, typing);
  const named = new Set(checks.map(({ row }) => row));
  const deep = survey.readings.flatMap((reading, row) => {
    const slip = named.has(row) ? null : pastReach(job, reading);
    return slip === null ? [] : [doubt(row, slip)];
  });
  // What is expected is said as the gauge would read it.
  const asRead = checks.map((check) => ({ ...check, expected: check.expected / factor }));
  return { sound, checks: [...asRead, ...deep] };
}

/** A check that no other reading bears on. */
export function doubt(row: number, slip: string): Check {
  const none = { expected: Number.NaN, give: Number.NaN };
  return { row, suspect: true, slip, suggested: null, ...none };
}

function alongDepth(posterior: Posterior, length: number): Shape['along'] {
  const lobes = depthLobes(posterior);
  return {
    sections: sections(posterior),
    profile: profileOf(depthMeans(posterior), length),
    axis: boreAxis(posterior, lobes),
    ovalTurn: ovalTurn(posterior, lobes),
  };
}

/** The crescent of a stated side is a hole's; of a pin the statement is told in words alone. */
function sideStated(feature: Feature, survey: Survey): number {
  return isOutside(feature.kind) ? Number.NaN : clockTheta(survey.wornSide);
}
