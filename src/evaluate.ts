/** The application on one page: Job -> Evaluation, each stage named in order. */
import { mapAsked, NOTHING_NEXT, type WhatNext, whatNext } from './bore/next.ts';
import { NO_PATTERNS } from './bore/patterns.ts';
import type { Patterns } from './bore/patternTypes.ts';
import { axisRemarks, blindSpots, faults, turnRemarks } from './bore/remarks.ts';
import type { Seating } from './bore/seating.ts';
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
  Target,
  WearSurface,
  Zone,
} from './bore/types.ts';
import { findZones } from './bore/zones.ts';
import { jointOf } from './evaluate/joint.ts';
import type { Joint } from './evaluate/jointTypes.ts';
import { asOutside, isOutside } from './evaluate/part.ts';
import { type Partner, partnerOf } from './evaluate/partner.ts';
import { readingNotes } from './evaluate/readingNotes.ts';
import { doubt, type Shape, shapeOf } from './evaluate/shape.ts';
import { chooseTarget, missing, planRemoval, seatingOf, targetNotes } from './evaluate/wanted.ts';
import { type AtHand, gaugesAtHand } from './job/atHand.ts';
import { type BoreFacts, boreFacts, type SurveyFacts, surveyFacts } from './job/facts.ts';
import { measuredAt } from './job/measuredAt.ts';
import { pinFacts } from './job/pinFacts.ts';
import type { Feature, Job, Survey, Units } from './job/schema.ts';
import type { Shop } from './job/shop.ts';
import type { TemperatureFacts } from './job/temperature.ts';
import { formatDepth } from './job/units.ts';

export type { BoreFacts };

export interface SurveyEvaluation {
  readonly id: string;
  readonly name: string;
  /** `fitted`, of a bore: the bushing's own bore was read, once it was pressed in, and not the wall. */
  readonly stage: Survey['stage'];
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
  /** What a bushing sits on once the target is ground; null without a target. */
  readonly seating: Seating | null;
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
export type Memory = Map<string, Outcome & { readonly key: string; readonly shapeKey: string }>;

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
      const measured = measuredAt(feature, survey);
      const own = measured === feature ? facts : boreFacts(job, measured);
      // The next reading is sought among those that get into a hole.
      const outside = isOutside(feature.kind);
      const hand = outside ? [] : gaugesAtHand(job, measured, survey, facts.length.mm, shop);
      const found = surveyFacts(job, feature, survey);
      const name = `${feature.id} ${survey.id}`;
      const partner = partnerOf(job, feature);
      const shapeKey = shapeKeyOf(job, measured, survey, own, found);
      const { target, centre, way } = feature.decisions;
      const part = { stage: survey.stage, steps: stepsOf(job, feature, facts.length.mm) };
      const key = JSON.stringify([shapeKey, target, centre, way, hand, partner, part]);
      const before = memory.get(name);
      if (before?.key === key) return before.done;
      const earlier = pace === 'quick' ? (before?.shape ?? null) : null;
      const kept = before?.shape && before.shapeKey === shapeKey ? before.shape : null;
      const known = { kept, earlier, next: before?.next ?? null, hurried: pace === 'quick' };
      const { settled, ...whole } = evaluateSurvey(
        job,
        own,
        measured,
        survey,
        { ...found, hand, partner },
        known,
      );
      const outcome = outside ? { ...whole, done: asOutside(whole.done, part) } : whole;
      // A quick answer leaves the keys open, so that the settled one is still worked out.
      const learned = kept !== null || earlier === null;
      memory.set(name, {
        key: settled ? key : '',
        shapeKey: learned ? shapeKey : '',
        ...outcome,
      });
      return outcome.done;
    }),
  };
}

/** Depths, mm, at which a pin may step; none of anything else, nor of a pin that runs all along. */
function stepsOf(job: Job, feature: Feature, length: number): number[] {
  if (feature.kind !== 'pin') return [];
  const { lands } = pinFacts(job, feature, length);
  return lands.flatMap(({ from, to }) => [from, to]).filter((z) => z > 0 && z < length);
}

/** Equal keys: the same shape, whatever is wanted of it. */
function shapeKeyOf(
  job: Job,
  { decisions }: Feature,
  survey: Survey,
  facts: BoreFacts,
  found: SurveyFacts,
): string {
  return JSON.stringify([
    job.units,
    survey.name,
    survey.stage,
    survey.wornSide,
    survey.note,
    survey.zeroAfter,
    facts,
    found,
    decisions.between,
    // What is offered for a reading in doubt is spelt as the reading was.
    survey.readings.map(({ value }) => value),
    job.gauges,
  ]);
}

interface Outcome {
  readonly done: SurveyEvaluation;
  /** Null where there is no surface. */
  readonly shape: Shape | null;
  /** What was settled last of the next reading; null: nothing. */
  readonly next: NextKnown | null;
}

/** The next readings, and of which frame and gauges. */
interface NextKnown {
  readonly key: string;
  readonly next: WhatNext;
}

/** What was worked out of the survey before. */
interface Before {
  /** Its shape, where nothing of that has changed; else null. */
  readonly kept: Shape | null;
  /** A shape whose slow parts a quick answer takes over; null: all is worked out. */
  readonly earlier: Shape | null;
  readonly next: NextKnown | null;
  readonly hurried: boolean;
}

/** One survey through every stage: readings, shape, target, removal, zones, what to read next. */
function evaluateSurvey(
  job: Job,
  facts: BoreFacts,
  feature: Feature,
  survey: Survey,
  found: SurveyFacts & { readonly hand: readonly AtHand[]; readonly partner: Partner },
  { kept, earlier, next: nextBefore, hurried }: Before,
): Outcome & { readonly settled: boolean } {
  const length = facts.length.mm;
  const notes = [
    ...ownNote(survey),
    ...readingNotes(job, found, facts, feature, survey, found.partner),
  ];
  const empty = emptySurvey(survey, found, notes);
  const waiting = { shape: null, next: null, settled: true };
  if (found.readings.length === 0) {
    const why = missing('No readings yet: type the first one into the table.');
    return { done: { ...empty, notes: [...notes, why] }, ...waiting };
  }
  if (!(length > 0)) {
    const why = missing(lengthMissing(feature));
    return { done: { ...empty, status: 'no-length', notes: [...notes, why] }, ...waiting };
  }
  const shape = kept ?? shapeOf({ job, facts, feature, survey, found }, earlier);
  if (shape === null) {
    return { done: contradictory(empty, notes), ...waiting, settled: earlier === null };
  }
  const { posterior, spread, surface } = shape;
  const target = chooseTarget(facts, feature, survey, posterior, surface, found.partner);
  const removal = target && planRemoval(posterior, surface, spread, target, facts);
  const deepText = (z: number) => formatDepth(z, job.units);
  const asked = mapAsked(surface, target, facts);
  const nextKey = JSON.stringify([asked.frame, found.hand]);
  const same = kept !== null && nextBefore?.key === nextKey;
  const next =
    nextBefore !== null && (same || hurried)
      ? nextBefore
      : { key: nextKey, next: whatNext(posterior, asked, found.hand) };
  return {
    settled: next !== nextBefore || same,
    shape,
    next,
    done: {
      ...empty,
      status: 'ok',
      sightings: shape.sightings,
      ...shape.along,
      patterns: shape.patterns,
      plugs: shape.plugs,
      checks: [...empty.checks, ...shape.checks],
      blindSpots: [
        ...blindSpots(shape.sightings, length, deepText, found.hand),
        ...axisRemarks(shape.along.axis, shape.sightings),
      ],
      next: next.next,
      surface,
      target,
      removal,
      seating: target && removal && seatingOf(surface, target, removal, facts),
      zones: removal === null ? [] : findZones(surface, removal),
      notes: [
        ...faults(found.readings),
        ...shape.needles,
        ...turnRemarks(shape.along.ovalTurn, deepText),
        ...notes,
        ...targetNotes(feature, target, survey, shape.along.sections, job.units),
      ],
    },
  };
}

function contradictory(empty: SurveyEvaluation, notes: readonly Remark[]): SurveyEvaluation {
  const why = missing('These readings contradict each other so far that no surface fits them.');
  return { ...empty, status: 'failed', notes: [...notes, why] };
}

function lengthMissing({ kind }: Feature): string {
  const what = kind === 'bore' ? 'bore' : 'part';
  return `The length of the ${what} is missing: give it, and the map follows.`;
}

function emptySurvey(
  survey: Survey,
  found: SurveyFacts,
  notes: readonly Remark[],
): SurveyEvaluation {
  return {
    id: survey.id,
    name: survey.name,
    stage: survey.stage,
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
    seating: null,
    zones: [],
    notes,
  };
}

/** What the survey says of itself: of a scan's points, what became of them. */
function ownNote({ note }: Survey): Remark[] {
  return note === undefined ? [] : [{ kind: 'finding', text: note }];
}
