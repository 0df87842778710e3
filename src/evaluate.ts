/** The application on one page: Job -> Evaluation, each stage named in order. */
import { boreAxis } from './bore/axis.ts';
import { checkReadings, type Earlier, type Judged, recheckReadings } from './bore/checks.ts';
import { depthLobes } from './bore/depthLobes.ts';
import type { Design } from './bore/design.ts';
import { mapAsked, NOTHING_NEXT, type WhatNext, whatNext } from './bore/next.ts';
import { findPatterns, NO_PATTERNS } from './bore/patterns.ts';
import type { Patterns } from './bore/patternTypes.ts';
import { plugs } from './bore/plugs.ts';
import { condition, type Posterior } from './bore/posterior.ts';
import { depthMeans, profileOf } from './bore/profile.ts';
import { axisRemarks, blindSpots, faults, turnRemarks } from './bore/remarks.ts';
import { sections } from './bore/sections.ts';
import { usualSmoothness } from './bore/smoothness.ts';
import { gridSpread, makeGrid, wearSurface } from './bore/surface.ts';
import { thin } from './bore/thin.ts';
import { ovalTurn } from './bore/turn.ts';
import type {
  BoreAxis,
  Check,
  OvalTurn,
  Plugs,
  Profile,
  Remark,
  Removal,
  Section,
  Sighting,
  Smoothness,
  Target,
  WearSurface,
  Zone,
} from './bore/types.ts';
import { designAgain } from './bore/valueFree.ts';
import { findZones } from './bore/zones.ts';
import { chooseSmoothness } from './evaluate/given.ts';
import { jointOf } from './evaluate/joint.ts';
import type { Joint } from './evaluate/jointTypes.ts';
import { asOutside, isOutside } from './evaluate/part.ts';
import { needleNotes, readingNotes } from './evaluate/readingNotes.ts';
import { chooseTarget, missing, planRemoval, targetNotes } from './evaluate/wanted.ts';
import { type AtHand, gaugesAtHand } from './job/atHand.ts';
import { clockTheta } from './job/clock.ts';
import { type BoreFacts, boreFacts, type SurveyFacts, surveyFacts } from './job/facts.ts';
import { standForMany } from './job/gauges.ts';
import type { Feature, Job, Survey, Units } from './job/schema.ts';
import type { Shop } from './job/shop.ts';
import { pastReach, retypings } from './job/slips.ts';
import { type TemperatureFacts, temperatureFactor } from './job/temperature.ts';
import { formatDepth } from './job/units.ts';

export type { BoreFacts };

export interface SurveyEvaluation {
  readonly id: string;
  readonly name: string;
  readonly status: 'ok' | 'no-readings' | 'no-length' | 'failed';
  readonly sightings: readonly Sighting[];
  readonly sections: readonly Section[];
  readonly profile: Profile | null;
  /** Null where there is no surface. */
  readonly axis: BoreAxis | null;
  /** Null where fewer than three depths show an oval that points somewhere. */
  readonly ovalTurn: OvalTurn | null;
  /** What wore, of an inside feature. A quick answer keeps what was last settled. */
  readonly patterns: Patterns;
  /** Null where there is no surface. A quick answer keeps the last settled ones. */
  readonly plugs: Plugs | null;
  /** Null where none is given. */
  readonly temperature: TemperatureFacts | null;
  readonly checks: readonly Check[];
  readonly blindSpots: readonly Remark[];
  /** A quick answer keeps what was settled before. */
  readonly next: WhatNext;
  readonly surface: WearSurface | null;
  /** Null where the bushing's outside diameter is not known: the shape stands, the target waits. */
  readonly target: Target | null;
  readonly removal: Removal | null;
  readonly zones: readonly Zone[];
  readonly notes: readonly Remark[];
}

/** A bore; or a pin or bushing as measured, which has no target and no removal map. */
export interface BoreEvaluation {
  readonly id: string;
  readonly name: string;
  readonly kind: Feature['kind'];
  readonly facts: BoreFacts;
  readonly surveys: readonly SurveyEvaluation[];
}

export interface Evaluation {
  readonly units: Units;
  /** Every measured bore of the job, in its order. */
  readonly bores: readonly BoreEvaluation[];
  /** Every measured pin and bushing, inside or outside. */
  readonly parts: readonly BoreEvaluation[];
  /** What wore of the joint, side by side. */
  readonly joint: Joint;
}

/** What was worked out before, by survey: a change in one survey leaves the others as they are. */
export type Memory = Map<string, Outcome & { readonly key: string }>;

/**
 * The whole evaluation of a job. The same job gives the same answer, whatever `memory` holds.
 *
 * @param memory what was worked out before; kept up to date
 * @param pace `quick` takes a changed survey's smoothness from before instead of learning it anew: an answer
 *   within milliseconds, to be followed by the settled one
 * @param shop what is at hand for the next reading; null: nobody has said
 */
export function evaluate(
  job: Job,
  memory: Memory = new Map(),
  pace: 'settled' | 'quick' = 'settled',
  shop: Shop | null = null,
): Evaluation {
  const all = job.features.map((f) => evaluateBore(job, f, memory, pace, shop));
  const bores = all.filter(({ kind }) => kind === 'bore');
  const parts = all.filter(({ kind }) => kind !== 'bore');
  return { units: job.units, bores, parts, joint: jointOf(job, bores, parts) };
}

function evaluateBore(
  job: Job,
  feature: Feature,
  memory: Memory,
  pace: 'settled' | 'quick',
  shop: Shop | null,
): BoreEvaluation {
  const facts = boreFacts(job, feature);
  return {
    id: feature.id,
    name: feature.name,
    kind: feature.kind,
    facts,
    surveys: feature.surveys.map((survey) => {
      // The next reading is sought among those that get into a hole.
      const outside = isOutside(feature.kind);
      const hand = outside ? [] : gaugesAtHand(job, feature, survey, facts.length.mm, shop);
      const found = { ...surveyFacts(job, feature, survey), hand };
      const name = `${feature.id} ${survey.id}`;
      const key = JSON.stringify([
        job.units,
        survey.name,
        survey.wornSide,
        survey.note,
        survey.zeroAfter,
        facts,
        found,
        feature.decisions,
        // What is offered for a reading in doubt is spelt as the reading was.
        survey.readings.map(({ value }) => value),
        job.gauges,
      ]);
      const before = memory.get(name);
      if (before?.key === key) return before.done;
      const earlier = pace === 'quick' && before?.done.surface ? before : undefined;
      const whole = evaluateSurvey(job, facts, feature, survey, found, earlier);
      const outcome = outside ? { ...whole, done: asOutside(whole.done) } : whole;
      // A quick answer leaves the key open, so that the settled one is still worked out.
      memory.set(name, { key: earlier === undefined ? key : '', ...outcome });
      return outcome.done;
    }),
  };
}

interface Outcome {
  readonly done: SurveyEvaluation;
  readonly smoothness: Smoothness;
  /** What was learned without the readings in doubt. */
  readonly sound: Smoothness;
  /** Of needles that look turned about: told once all is settled. */
  readonly needles: readonly Remark[];
  /** Null where there is no surface. */
  readonly design: Design | null;
}

/** Beside a survey that has no surface. */
function nothingLearned(smoothness: Smoothness = usualSmoothness(1)): Omit<Outcome, 'done'> {
  return { smoothness, sound: smoothness, needles: [], design: null };
}

/** One survey through every stage: readings, surface, sections, profile, target, removal, zones. */
function evaluateSurvey(
  job: Job,
  facts: BoreFacts,
  feature: Feature,
  survey: Survey,
  found: SurveyFacts & { readonly hand: readonly AtHand[] },
  earlier: Outcome | undefined,
): Outcome {
  const length = facts.length.mm;
  const notes = [...ownNote(survey), ...readingNotes(job, found, facts, feature, survey)];
  const empty = emptySurvey(survey, found, notes);
  const waiting = nothingLearned();
  if (found.readings.length === 0) {
    const why = missing('No readings yet: type the first one into the table.');
    return { done: { ...empty, notes: [...notes, why] }, ...waiting };
  }
  if (!(length > 0)) {
    const why = missing(lengthMissing(feature));
    return { done: { ...empty, status: 'no-length', notes: [...notes, why] }, ...waiting };
  }
  const sightings = thin(found.readings, length);
  const wornSide = sideStated(feature, survey);
  const known = earlier?.design ?? null;
  const readings = designAgain(known, sightings, found.setups, length, wornSide);
  const nominalRadius = (facts.nominal.mm > 0 ? facts.nominal.mm : 0) / 2;
  const before = earlier?.smoothness;
  const smoothness = chooseSmoothness(readings, nominalRadius, feature.decisions, before);
  const posterior = condition(readings, smoothness, nominalRadius);
  if (posterior === null) return contradictory(empty, notes, smoothness);
  const grid = makeGrid(length);
  const spread = gridSpread(posterior, grid);
  const surface = wearSurface(posterior, grid, spread);
  const target = chooseTarget(facts, feature, survey, posterior, surface);
  const removal = target && planRemoval(posterior, surface, spread, target, facts);
  const along = alongDepth(posterior, length);
  const deepText = (z: number) => formatDepth(z, job.units);
  // Means of many points are nobody's typed readings.
  const { checks, sound } =
    sightings === found.readings && !standForMany(job.gauges, survey.readings)
      ? judge(job, facts, feature, survey, posterior, earlier)
      : { checks: [], sound: smoothness };
  const needles = earlier?.needles ?? needleNotes(survey, posterior, nominalRadius);
  return {
    smoothness,
    sound,
    needles,
    design: readings,
    done: {
      ...empty,
      status: 'ok',
      sightings,
      ...along,
      patterns: earlier?.done.patterns ?? findPatterns(posterior, statedSize(facts), nominalRadius),
      plugs: earlier?.done.plugs ?? plugs(surface, along.sections),
      checks: [...empty.checks, ...checks],
      blindSpots: [
        ...blindSpots(sightings, length, deepText, found.hand),
        ...axisRemarks(along.axis, sightings),
      ],
      next: earlier?.done.next ?? whatNext(posterior, mapAsked(surface, target, facts), found.hand),
      surface,
      target,
      removal,
      zones: removal === null ? [] : findZones(surface, removal),
      notes: [
        ...faults(found.readings),
        ...needles,
        ...turnRemarks(along.ovalTurn, deepText),
        ...notes,
        ...targetNotes(feature, target, survey, along.sections, job.units),
      ],
    },
  };
}

function contradictory(
  empty: SurveyEvaluation,
  notes: readonly Remark[],
  smoothness: Smoothness,
): Outcome {
  const why = missing('These readings contradict each other so far that no surface fits them.');
  const done: SurveyEvaluation = { ...empty, status: 'failed', notes: [...notes, why] };
  return { done, ...nothingLearned(smoothness) };
}

/** A new size that only stands in for one is none to say that the bore has grown. */
function statedSize({ nominal }: BoreFacts): number {
  return nominal.from === 'typed' ? nominal.mm : Number.NaN;
}

/** The readings in doubt: by what the others predict, and by how deep their gauge gets. */
function judge(
  job: Job,
  facts: BoreFacts,
  feature: Feature,
  survey: Survey,
  posterior: Posterior,
  earlier: Outcome | undefined,
): Judged {
  const factor = temperatureFactor(feature, survey);
  const typing = {
    nominalRadius: facts.nominal.mm > 0 ? facts.nominal.mm / 2 : 0,
    keepouts: facts.keepouts,
    retypings: (row: number) => retypings(job, feature, survey.readings[row]!, factor),
  };
  const before: Earlier | undefined = earlier && { ...earlier.done, sound: earlier.sound };
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
function doubt(row: number, slip: string): Check {
  const none = { expected: Number.NaN, give: Number.NaN };
  return { row, suspect: true, slip, suggested: null, ...none };
}

/** What the measured depths show one by one, and how they go together along the bore. */
function alongDepth(posterior: Posterior, length: number) {
  const lobes = depthLobes(posterior);
  return {
    sections: sections(posterior),
    profile: profileOf(depthMeans(posterior), length),
    axis: boreAxis(posterior, lobes),
    ovalTurn: ovalTurn(posterior, lobes),
  };
}

function lengthMissing({ kind }: Feature): string {
  const what = kind === 'bore' ? 'bore' : 'part';
  return `The length of the ${what} is missing: give it, and the map follows.`;
}

/** The crescent of a stated side is a hole's; of a pin the statement is told in words alone. */
function sideStated(feature: Feature, survey: Survey): number {
  return isOutside(feature.kind) ? Number.NaN : clockTheta(survey.wornSide);
}

function emptySurvey(
  survey: Survey,
  found: SurveyFacts,
  notes: readonly Remark[],
): SurveyEvaluation {
  return {
    id: survey.id,
    name: survey.name,
    status: 'no-readings',
    sightings: [],
    sections: [],
    profile: null,
    axis: null,
    ovalTurn: null,
    patterns: NO_PATTERNS,
    plugs: null,
    temperature: found.temperature,
    checks: found.unusable.map(({ row, why }) => doubt(row, why)),
    blindSpots: [],
    next: NOTHING_NEXT,
    surface: null,
    target: null,
    removal: null,
    zones: [],
    notes,
  };
}

/** What the survey says of itself: of a scan's points, what became of them. */
function ownNote({ note }: Survey): Remark[] {
  return note === undefined ? [] : [{ kind: 'finding', text: note }];
}
