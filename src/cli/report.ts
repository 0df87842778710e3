/** Evaluation -> report: the same figures as on the screen, named and in plain arrays. */

import type { NextReading } from '../bore/nextTypes.ts';
import type {
  BoreAxis,
  Grid,
  OvalTurn,
  Plugs,
  Profile,
  Remark,
  Removal,
  Section,
  Zone,
} from '../bore/types.ts';
import type { Passes } from '../evaluate/passes.ts';
import type { BoreEvaluation, Evaluation, SurveyEvaluation } from '../evaluate.ts';
import { sayNext, saySetup } from '../figures/nextWords.ts';
import { temperatureRemarks } from '../figures/temperatureWords.ts';
import { sayZone } from '../figures/zoneWords.ts';
import type { Job, Units } from '../job/schema.ts';
import type { TemperatureFacts } from '../job/temperature.ts';
import type { FindBuildUp } from './buildUpReport.ts';
import { centresReport, type FindCentres } from './centresReport.ts';
import { checksReport } from './checksReport.ts';
import type { FindFit } from './fitReport.ts';
import { jointReport, patternsReport } from './jointReport.ts';
import { matrix } from './matrix.ts';
import { type FindOnePin, onePinReport } from './onePinReport.ts';
import type { FindOther } from './otherReport.ts';
import { passesReport } from './passesReport.ts';
import { type FindPin, pinReport } from './pinsReport.ts';
import { circlesReport, cylindersReport, type FindCylinders } from './plugsReport.ts';
import type { Report, SurveyReport } from './reportSchema.ts';
import { smoothnessReport } from './smoothnessReport.ts';
import { tradeOffReport } from './tradeOffReport.ts';
import { type FindWays, NO_WAYS } from './waysReport.ts';

/** Which bore and survey to report; left out: all. Names as in the job. */
export interface Choice {
  readonly bore?: string | undefined;
  readonly survey?: string | undefined;
}

/** Works out the passes of one survey; null where it has no target. */
export type FindPasses = (bore: BoreEvaluation, survey: SurveyEvaluation) => Passes | null;

/** What is worked out of a survey beside its evaluation; what is left out is not told. */
export interface Finders {
  readonly other?: FindOther;
  readonly ways?: FindWays;
  readonly passes?: FindPasses;
  readonly buildUp?: FindBuildUp;
  readonly fit?: FindFit;
  readonly centres?: FindCentres;
  readonly cylinders?: FindCylinders;
  readonly onePin?: FindOnePin;
}

/** What is told of pins: of which job, and how their plan is worked out. */
export interface Pins {
  readonly job: Job;
  readonly find: FindPin;
}

export function reportOf(
  evaluation: Evaluation,
  choice: Choice = {},
  finders: Finders = {},
  pins: Pins | null = null,
): Report {
  return {
    format: 'roundhand-report',
    version: 1,
    units: evaluation.units,
    bores: chosen(evaluation, choice).map((bore) => ({
      name: bore.name,
      nominal: known(bore.facts.nominal),
      length: known(bore.facts.length),
      bushingOutside: known(bore.facts.bushingOutside),
      pressFit: known(bore.facts.pressFit),
      surveys: bore.surveys.map((survey) => surveyReport(survey, bore, evaluation.units, finders)),
    })),
    pins:
      pins === null
        ? []
        : chosenPins(evaluation, choice).map((pin) => pinReport(pins.job, pin, pins.find)),
    joint: jointReport(evaluation),
    onePin: onePinReport(finders.onePin?.() ?? null, evaluation.units),
  };
}

/** The bores and surveys that a choice names. */
export function chosen({ bores }: Evaluation, choice: Choice): BoreEvaluation[] {
  return among(bores, choice);
}

/** The same of pins. */
export function chosenPins({ parts }: Evaluation, choice: Choice): BoreEvaluation[] {
  return among(
    parts.filter(({ kind }) => kind === 'pin'),
    choice,
  );
}

function among(all: readonly BoreEvaluation[], { bore, survey }: Choice): BoreEvaluation[] {
  return all
    .filter((one) => bore === undefined || one.name === bore)
    .map((one) => ({
      ...one,
      surveys: one.surveys.filter((s) => survey === undefined || s.name === survey),
    }));
}

function surveyReport(
  s: SurveyEvaluation,
  bore: BoreEvaluation,
  units: Units,
  {
    other,
    buildUp,
    fit: fitted = () => null,
    ways = () => NO_WAYS,
    passes = () => null,
    centres = () => null,
    cylinders = () => null,
  }: Finders,
): SurveyReport {
  const { surface, target, removal } = s;
  const grid = surface?.grid;
  const planned = passes(bore, s);
  const of = { bore, units, waits: planned !== null && planned.plan.waits !== null };
  return {
    name: s.name,
    status: s.status,
    sections: s.sections.map((section, i) => sectionReport(section, s.plugs?.sections[i])),
    cylinders: s.plugs && cylindersReport(s.plugs, cylinders(bore, s)),
    profile: s.profile && profileReport(s.profile),
    axis: s.axis && axisReport(s.axis),
    ovalTurn: s.ovalTurn && turnReport(s.ovalTurn),
    ...patternsReport(s, bore, units),
    temperature: s.temperature && temperatureReport(s.temperature),
    checks: checksReport(s),
    blindSpots: s.blindSpots.map(remark),
    nextReadings: s.next.readings.map((one) => nextReport(one, units)),
    nextSetups: s.next.setups.map((one) => nextReport(one, units)),
    surface: surface && {
      theta: [...surface.grid.theta],
      z: [...surface.grid.z],
      mean: matrix(surface.mean, surface.grid),
      sd: matrix(surface.sd, surface.grid),
      sdSeen: matrix(surface.sdSeen, surface.grid),
      seenLobes: [...surface.seenLobes],
      smoothness: smoothnessReport(surface.smoothness),
    },
    target: target && {
      diameter: target.diameter,
      center: [target.axis.x, target.axis.y],
      lean: [target.axis.leanX, target.axis.leanY],
      centreRule: target.centreRule,
      assumed: target.assumed,
      ...centresReport(centres(bore, s), units),
    },
    deviation: removal && grid ? matrix(removal.deviation, grid) : null,
    removal: removal && grid ? removalReport(removal, grid) : null,
    otherReading: other?.(bore, s) ?? null,
    tradeOff: tradeOffReport(s, bore, units),
    zones: s.zones.map((zone) => zoneReport(zone, s, of)),
    buildUp: buildUp?.(bore, s) ?? null,
    ...ways(bore, s),
    ...passesReport(planned, s, bore, units, matrix),
    fit: fitted(bore, s),
    notes: [...s.notes, ...temperatureRemarks(s.temperature, units)].map(remark),
  };
}

function removalReport(r: Removal, grid: Grid): SurveyReport['removal'] {
  const { likely, sure, possible, sd, volume, mass, sureMass, possibleMass } = r;
  return {
    likely: matrix(likely, grid),
    sure: matrix(sure, grid),
    possible: matrix(possible, grid),
    sd: matrix(sd, grid),
    volume,
    mass,
    sureMass,
    possibleMass,
  };
}

function sectionReport(
  s: Section,
  plugs: Plugs['sections'][number] | undefined,
): SurveyReport['sections'][number] {
  const end = (d: Section['least']) => ({ diameter: orNull(d.diameter), clock: degrees(d.theta) });
  return {
    depth: s.z,
    readings: s.count,
    meanDiameter: s.meanDiameter,
    least: end(s.least),
    greatest: end(s.greatest),
    outOfRound: orNull(s.outOfRound),
    giveOrTake: s.give,
    lobes: s.lobes.map(({ n, amplitude, sd, theta, thetaSd }) => ({
      n,
      amplitude,
      amplitudeSd: sd,
      clock: turned(theta),
      clockSd: degrees(thetaSd),
    })),
    circles: circlesReport(s, plugs),
  };
}

function profileReport(p: Profile): SurveyReport['profile'] {
  return {
    shape: p.shape,
    evidence: orNull(p.evidence),
    criterion: p.criterion,
    candidates: p.candidates.map((c) => ({ ...c })),
    taper: orNull(p.taper),
    taperSd: orNull(p.taperSd),
    depthOfShape: p.depthOfShape,
    reach: orNull(p.reach),
  };
}

function axisReport(axis: BoreAxis): SurveyReport['axis'] {
  if (axis.status === 'not-told') {
    const { status, why } = axis;
    return { status, why, instrument: null, centers: [], lean: null, straightness: null };
  }
  const { lean, straightness: far } = axis;
  return {
    status: axis.status,
    why: null,
    instrument: axis.instrument,
    centers: axis.centres.map(({ z, x, y, sd }) => ({ depth: z, x, y, sd })),
    lean: { slope: lean.slope, clock: turned(lean.theta), sd: lean.sd, chance: lean.chance },
    straightness: far && {
      distance: far.distance,
      depth: far.z,
      clock: turned(far.theta),
      sd: far.sd,
      zone: orNull(far.zone),
      chance: far.chance,
    },
  };
}

function turnReport(turn: OvalTurn): SurveyReport['ovalTurn'] {
  return {
    kind: turn.kind,
    evidence: turn.evidence,
    criterion: turn.criterion,
    candidates: turn.candidates.map((c) => ({ ...c })),
    first: { clock: turned(turn.first), sd: turned(turn.firstSd) },
    last: { clock: turned(turn.last), sd: turned(turn.lastSd) },
    turn: turned(turn.turn),
    turnSd: turned(turn.turnSd),
    fromDepth: orNull(turn.from),
    rows: [...turn.rows],
    depths: turn.depths.map(({ z, amplitude, sd, theta, thetaSd }) => ({
      depth: z,
      amplitude,
      amplitudeSd: sd,
      clock: degrees(theta),
      clockSd: degrees(thetaSd),
    })),
  };
}

function nextReport(one: NextReading, units: Units): SurveyReport['nextReadings'][number] {
  const { place, worth } = sayNext(one, units);
  return {
    instrument: one.instrument,
    gauge: one.name,
    clocks: one.clocks.map(turned),
    depths: [...one.depths],
    giveOrTake: 2 * one.before,
    giveOrTakeAfter: 2 * one.after,
    words: one.clocks.length > 1 ? saySetup(one, units) : `${place}, ${worth}`,
  };
}

/** Where a zone is told: its bore, and whether its high spots wait for better readings. */
interface ZoneOf {
  readonly bore: BoreEvaluation;
  readonly units: Units;
  readonly waits: boolean;
}

function zoneReport(
  z: Zone,
  survey: SurveyEvaluation,
  { bore, units, waits }: ZoneOf,
): SurveyReport['zones'][number] {
  return {
    kind: z.kind,
    peak: z.peak,
    clock: turned(z.theta),
    depth: z.z,
    giveOrTake: z.give,
    core: { fromClock: turned(z.from), toClock: turned(z.to), top: z.top, bottom: z.bottom },
    feather: { fromClock: turned(z.outerFrom), toClock: turned(z.outerTo) },
    allRound: z.allRound,
    gaps: z.gaps.map((gap) => ({
      fromClock: turned(gap.from),
      toClock: turned(gap.to),
      top: gap.top,
      bottom: gap.bottom,
      allRound: gap.allRound,
    })),
    patchy: z.patchy,
    area: z.area,
    volume: z.volume,
    words: sayZone(z, bore.facts.length.mm, units, survey, waits),
  };
}

function temperatureReport(t: TemperatureFacts): SurveyReport['temperature'] {
  return {
    part: orNull(t.part),
    gauge: orNull(t.gauge),
    unit: 'C',
    correction: orNull(t.correction),
    giveOrTake: orNull(t.giveOrTake),
    trusted: t.trust !== 'no',
  };
}

function remark({ kind, text }: Remark): { kind: Remark['kind']; text: string } {
  return { kind, text };
}

function known({ mm, from }: { mm: number; from: 'typed' | 'default' | 'missing' }) {
  return { mm: orNull(mm), from };
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function turned(theta: number): number {
  return (theta * 180) / Math.PI;
}

function degrees(theta: number): number | null {
  return orNull(turned(theta));
}
