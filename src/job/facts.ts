/**
 * A job's typed texts as millimetres and radians, once, at the edge. Nothing beyond this file reads typed text for
 * its number. NaN: not known.
 */
import { clockTheta, readClock } from './clock.ts';
import { defaultClearanceMm, defaultPressFitMm } from './defaults.ts';
import { readingSd } from './gauges.ts';
import { measuredAt } from './measuredAt.ts';
import type { Bushing, Face, Feature, Gauge, Instrument, Job, Keepout, Survey } from './schema.ts';
import {
  roundnessOf,
  type SetupFacts,
  setupFacts,
  setupPlace,
  sharesSetup,
  unnamedSetups,
} from './setups.ts';
import { bushingOutsideMm, gaugeOf, nominalMm, readValue } from './sizes.ts';
import { type TemperatureFacts, temperatureFacts } from './temperature.ts';
import { lengthMm, readLength } from './units.ts';

/** A number that stands in the job, or is the trade's default for it. */
export interface Known {
  readonly mm: number;
  readonly from: 'typed' | 'default' | 'missing';
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Depths from face A; theta NaN: all round; width round the bore, mm. */
export interface KeepoutFacts extends Span {
  readonly id: string;
  readonly kind: Keepout['kind'];
  readonly theta: number;
  readonly width: number;
}

export interface BoreFacts {
  readonly nominal: Known;
  readonly length: Known;
  readonly bossOutside: Known;
  readonly bushingOutside: Known;
  readonly pressFit: Known;
  readonly clearance: Known;
  /** Depths of the wall that a bushing sits on; the whole length where no seat is stated. */
  readonly seats: readonly Span[];
  readonly keepouts: readonly KeepoutFacts[];
  /** Clock position towards which the load pulls; NaN not stated. */
  readonly load: number;
}

/** One usable reading. See Sighting in src/bore for the meaning of `value`. */
export interface ReadingFacts {
  readonly row: number;
  readonly instrument: Instrument;
  readonly theta: number;
  readonly z: number;
  readonly value: number;
  readonly sd: number;
  readonly sdStated: boolean;
  readonly setup: number;
}

/** A reading that cannot be used, and why, in one sentence without a full stop. */
export interface Unusable {
  readonly row: number;
  readonly why: string;
}

export interface SurveyFacts {
  readonly readings: readonly ReadingFacts[];
  readonly setups: readonly SetupFacts[];
  readonly unusable: readonly Unusable[];
  /** Null where none is given. The readings' values are corrected by it already. */
  readonly temperature: TemperatureFacts | null;
}

const typed = (mm: number): Known => ({ mm, from: Number.isNaN(mm) ? 'missing' : 'typed' });

function typedOr(mm: number, usual: number): Known {
  if (!Number.isNaN(mm)) return { mm, from: 'typed' };
  return Number.isNaN(usual) ? { mm: Number.NaN, from: 'missing' } : { mm: usual, from: 'default' };
}

export function boreFacts(job: Job, feature: Feature): BoreFacts {
  const outside = feature.bushings.map((b) => bushingOutsideMm(b)).filter((mm) => mm > 0);
  const length = lengthMm(feature.length);
  const nominal = lengthMm(feature.nominal);
  const pins = (feature.pin?.diameters ?? []).map((d) => lengthMm(d)).filter((mm) => mm > 0);
  const pin = pins.length > 0 ? pins.reduce((a, b) => a + b, 0) / pins.length : Number.NaN;
  return {
    nominal: typedOr(nominal, nominalMm(feature)),
    length: length > 0 ? typed(length) : typedOr(Number.NaN, lengthFromReadings(feature)),
    bossOutside: typed(lengthMm(feature.boss?.outside)),
    // Two bushings in one bore: the smaller sets the target, so that no metal is lost to the larger.
    bushingOutside: typed(outside.length > 0 ? Math.min(...outside) : Number.NaN),
    pressFit: typedOr(lengthMm(feature.wanted.pressFit), defaultPressFitMm(job.units)),
    clearance: typedOr(lengthMm(feature.wanted.clearance), defaultClearanceMm(pin)),
    seats: seatsOf(feature, length),
    keepouts: feature.keepouts.map((k) => keepoutFacts(k, length)).filter((k) => k.to > k.from),
    load: clockTheta(feature.load, 'A'),
  };
}

/** Where the length is not given: the deepest reading and as much again as the first lies below the rim. */
function lengthFromReadings(feature: Feature): number {
  const depths = feature.surveys.flatMap((s) =>
    s.readings.filter((r) => r.face === 'A').map((r) => lengthMm(r.depth)),
  );
  const known = depths.filter((z) => z >= 0);
  if (known.length === 0) return Number.NaN;
  const least = Math.min(...known);
  const deepest = Math.max(...known);
  if (deepest > least) return deepest + least;
  // One depth says nothing of the length: as long as it is wide is usual for a boss.
  return Math.max(2 * deepest, nominalMm(feature));
}

/** A depth from a face as a depth from face A. */
function fromFaceA(depth: number, face: Face, length: number): number {
  return face === 'A' ? depth : length - depth;
}

function seatsOf(feature: Feature, length: number): Span[] {
  const stated = feature.bushings.map((b) => seatOf(b, length)).filter((s) => s.to > s.from);
  return stated.length > 0 ? stated : [{ from: 0, to: Number.POSITIVE_INFINITY }];
}

/**
 * From the face, or where the seat says, to where it says, or as long as the bushing is, or to the bottom; nothing sits behind
 * the lead chamfer of the end that goes in first.
 */
export function seatOf(bushing: Bushing, length: number): Span {
  const { face, from, to, standOut } = bushing.seat;
  const start = knownOr(lengthMm(from), 0);
  const far = knownOr(length, Number.POSITIVE_INFINITY);
  const inside = lengthMm(bushing.length) - knownOr(lengthMm(standOut), 0);
  const lead = knownOr(lengthMm(bushing.leadChamfer), 0);
  const end = knownOr(lengthMm(to), knownOr(start + inside, far) - lead);
  if (face === 'A') return { from: start, to: Math.min(end, far) };
  return { from: Math.max(0, far - end), to: far - start };
}

function knownOr(mm: number, otherwise: number): number {
  return mm >= 0 ? mm : otherwise;
}

function keepoutFacts(k: Keepout, length: number): KeepoutFacts {
  const a = fromFaceA(lengthMm(k.from), k.face, length);
  const b = fromFaceA(lengthMm(k.to), k.face, length);
  const width = lengthMm(k.width);
  return {
    id: k.id,
    kind: k.kind,
    from: Math.min(a, b),
    to: Math.max(a, b),
    theta: clockTheta(k.clock, k.face),
    // A hole as wide as it is long where its width is not given.
    width: width > 0 ? width : Math.abs(b - a),
  };
}

export function surveyFacts(job: Job, feature: Feature, survey: Survey): SurveyFacts {
  const nominal = nominalMm(measuredAt(feature, survey));
  const length = lengthMm(feature.length);
  const unnamed = unnamedSetups(job, survey);
  const temperature = temperatureFacts(feature, survey);
  const readings: ReadingFacts[] = [];
  const unusable: Unusable[] = [];
  survey.readings.forEach((reading, row) => {
    if (reading.leftOut) return;
    const gauge = gaugeOf(job.gauges, reading.gauge);
    const value = readValue(reading, gauge, nominal);
    // An empty cell is a place not measured yet, not a fault.
    if (!value.ok && value.why === '') return;
    const depth = readLength(reading.depth);
    const clock = readClock(reading.clock, reading.face);
    const z = depth.ok ? fromFaceA(depth.mm, reading.face, length) : Number.NaN;
    const why = whyUnusable({ gauge, value, depth, clock, z, length, face: reading.face });
    if (why !== null || !value.ok || !clock.ok || gauge === undefined) {
      unusable.push({ row, why: why ?? 'this reading cannot be used' });
      return;
    }
    const repeat = readingSd(gauge, reading);
    const setup = survey.setups.find((one) => one.id === reading.setup);
    readings.push({
      row,
      instrument: gauge.kind,
      theta: clock.theta,
      z,
      value: value.mm * (temperature?.factor ?? 1),
      // How far the boss is out of round goes into each wall reading by itself.
      sd: Math.hypot(repeat.mm, roundnessOf(gauge.kind, setup)),
      sdStated: repeat.stated,
      setup: sharesSetup(gauge.kind) ? setupPlace(survey, unnamed, reading) : -1,
    });
  });
  return { readings, setups: setupFacts(job, feature, survey), unusable, temperature };
}

type Read = { readonly ok: true } | { readonly ok: false; readonly why: string };

function whyUnusable(r: {
  gauge: Gauge | undefined;
  value: Read;
  depth: Read;
  clock: Read;
  z: number;
  length: number;
  face: Face;
}): string | null {
  if (r.gauge === undefined) return 'its gauge is not in the list of gauges';
  if (!r.value.ok) return r.value.why;
  if (!r.depth.ok) return r.depth.why === '' ? 'its depth is missing' : r.depth.why;
  if (!r.clock.ok) return r.clock.why === '' ? 'its clock position is missing' : r.clock.why;
  if (Number.isNaN(r.z)) {
    return r.face === 'B'
      ? 'it is measured from face B, which needs the length of the bore: give the length'
      : 'its depth is missing';
  }
  if (r.z < 0 || r.z > r.length * (1 + 1e-9)) {
    return 'its depth lies outside the bore: check the depth, the face and the length';
  }
  return null;
}
