/**
 * What the readings of one set-up share and nobody measures: a spindle's place and lean (sweep), or the boss whose wall
 * is measured. Millimetres, one standard deviation each.
 */
import type { Feature, Instrument, Job, Setup, Survey } from './schema.ts';
import { gaugeOf } from './sizes.ts';
import { lengthMm } from './units.ts';

/** See SetupPrior in src/bore. */
export interface SetupFacts {
  readonly sign: 1 | -1;
  readonly offset: number;
  readonly lean: number;
  readonly zero: number;
  readonly zeroSd: number;
  readonly resetEachDepth: boolean;
}

export type SharedKind = 'sweep' | 'wall';

/** How true a set-up is, one standard deviation, mm: off the bore's middle, over its length, and round (a boss). */
export interface SetupFigures {
  readonly offset: number;
  readonly lean: number;
  readonly zeroSd: number;
  /** Per side; 0 for a spindle, which turns about itself. */
  readonly roundness: number;
}

/** Where a set-up states nothing: judgement, always shown as usual and editable. */
const SWEEP: SetupFigures = { offset: 1, lean: 0.02, zeroSd: 2, roundness: 0 };
/** A boss that was turned or milled outside when it was made. */
const WALL: SetupFigures = { offset: 0.1, lean: 0.05, zeroSd: 0.5, roundness: 0.03 };
/** A boss of which nobody knows how it was made: as cast, flame-cut or welded on. */
const WALL_NOT_KNOWN: SetupFigures = { offset: 1, lean: 0.5, zeroSd: 1, roundness: 0.25 };

export function sharesSetup(kind: Instrument | undefined): kind is SharedKind {
  return kind === 'sweep' || kind === 'wall';
}

/** The figures that stand where a set-up of that kind states none of its own. */
export function usualSetup(kind: SharedKind, notKnown = false): SetupFigures {
  if (kind === 'sweep') return SWEEP;
  return notKnown ? WALL_NOT_KNOWN : WALL;
}

/** The set-up that the next readings with a gauge belong to: the chosen one, else the survey's last of that gauge. */
export function setupInHand(survey: Survey, gaugeId: string): Setup | undefined {
  const own = survey.setups.filter(({ gauge }) => gauge === gaugeId);
  return own.find(({ id }) => id === survey.plan.setup) ?? own.at(-1);
}

/** Gauges with readings that name no set-up: those of one gauge share one, after the stated ones. */
export function unnamedSetups(job: Job, survey: Survey): string[] {
  const without = survey.readings.filter(({ setup }) => setup === undefined);
  const gauges = new Set(without.map(({ gauge }) => gauge));
  return [...gauges].filter((id) => sharesSetup(gaugeOf(job.gauges, id)?.kind));
}

/** Which of `setupFacts` a reading belongs to. */
export function setupPlace(
  survey: Survey,
  unnamed: readonly string[],
  { gauge, setup }: { readonly gauge: string; readonly setup?: string | undefined },
): number {
  const at = survey.setups.findIndex(({ id }) => id === setup);
  return at >= 0 ? at : survey.setups.length + unnamed.indexOf(gauge);
}

/** The stated set-ups in their order, then one for each gauge of `unnamedSetups`. */
export function setupFacts(job: Job, feature: Feature, survey: Survey): SetupFacts[] {
  const stated = survey.setups.map((setup) => setupFact(job, feature, setup.gauge, setup));
  const unnamed = unnamedSetups(job, survey).map((gauge) => setupFact(job, feature, gauge));
  return [...stated, ...unnamed];
}

function setupFact(job: Job, feature: Feature, gaugeId: string, setup?: Setup): SetupFacts {
  const gauge = gaugeOf(job.gauges, gaugeId);
  const kind = gauge?.kind === 'wall' ? 'wall' : 'sweep';
  const smaller = kind === 'wall' || gauge?.needle === 'smaller';
  return { ...fresh(kind, feature, setup), sign: smaller ? -1 : 1 };
}

function fresh(kind: SharedKind, feature: Feature, setup?: Setup): SetupFacts {
  const usual = usualSetup(kind, setup?.notKnown);
  const boss = lengthMm(feature.boss?.outside) / 2;
  return {
    sign: kind === 'wall' ? -1 : 1,
    offset: statedOr(lengthMm(setup?.offset), usual.offset),
    lean: statedOr(lengthMm(setup?.lean), usual.lean),
    zero: kind === 'wall' && boss > 0 ? boss : Number.NaN,
    zeroSd: usual.zeroSd,
    resetEachDepth: setup?.resetEachDepth === true,
  };
}

/** A set-up of that kind that is not made yet: the usual figures. */
export function freshSetup(kind: SharedKind, feature: Feature): SetupFacts {
  return fresh(kind, feature);
}

/** How far the boss is out of round: it goes into each wall reading by itself. 0 for every other kind of gauge. */
export function roundnessOf(kind: Instrument, setup: Setup | undefined): number {
  if (kind !== 'wall') return 0;
  return statedOr(lengthMm(setup?.roundness), usualSetup(kind, setup?.notKnown).roundness);
}

function statedOr(mm: number, usual: number): number {
  return mm >= 0 ? mm : usual;
}
