/**
 * Doubts about a job that is well formed: texts that cannot be understood, and sizes that cannot be. They are
 * for the person to mend; a job in doubt can still be opened.
 */

import { readClock } from './clock.ts';
import { measuredAt } from './measuredAt.ts';
import type { Bushing, Feature, Gauge, Job, Reading, Survey, Typed } from './schema.ts';
import { bushingOutsideMm, gaugeOf, nominalMm, readValue } from './sizes.ts';
import { readTemperature } from './temperature.ts';
import { formatLength, lengthMm, readLength } from './units.ts';
import { entryWords } from './words.ts';

/** Nobody mends a bore of 5 m or of 1 mm by hand; a slip of unit or point is likelier. */
const LARGEST_MM = 5000;
const SMALLEST_MM = 1;
/** A press fit beyond this share of the diameter is a slip: steel yields at about a tenth of it. */
const MOST_PRESS = 0.02;
/** A bushing belongs to its bore within this share of the bore's size. */
const OTHER_SIZE = 0.25;
/** A depth may pass the length by rounding of what was typed. */
const DEPTH_SLACK_MM = 0.05;
const MOST_DOUBTS = 20;

type Say = (doubt: string) => void;

/** Each doubt with its place, as one sentence without a full stop; at most 20 and the number of the rest. */
export function doubtsOf(job: Job): string[] {
  const doubts: string[] = [];
  job.gauges.forEach((gauge, index) => {
    gaugeDoubts(gauge, index, (doubt) => doubts.push(doubt));
  });
  job.features.forEach((feature, index) => {
    const place = entryWords('features', feature, index);
    featureDoubts(job, feature, (doubt) => doubts.push(`${place}: ${doubt}`));
    feature.surveys.forEach((survey, number) => {
      const inSurvey = `${place}, ${entryWords('surveys', survey, number)}`;
      surveyDoubts(job, feature, survey, (doubt) => doubts.push(`${inSurvey}${doubt}`));
    });
  });
  const rest = doubts.length - MOST_DOUBTS;
  return rest > 0
    ? [...doubts.slice(0, MOST_DOUBTS), `and ${rest} more places like these`]
    : doubts;
}

/** Of one gauge in a list, by its place there. */
export function gaugeDoubts(gauge: Gauge, index: number, doubt: Say): void {
  const say = (text: string) => doubt(`${entryWords('gauges', gauge, index)}: ${text}`);
  aboveZero(say, 'resolution', gauge.resolution);
  aboveZero(say, 'repeatability', gauge.repeatability);
  aboveZero(say, 'reach', gauge.reach);
  aboveZero(say, 'size at which it was zeroed', gauge.zeroedAt);
}

/** mm, or NaN after saying why; silent NaN where nothing was given. */
function readable(say: Say, what: string, typed: Typed | undefined): number {
  if (typed === undefined) return Number.NaN;
  const read = readLength(typed);
  if (read.ok) return read.mm;
  if (read.why !== '') say(`${what}: ${read.why}`);
  return Number.NaN;
}

function aboveZero(say: Say, what: string, typed: Typed | undefined): number {
  const mm = readable(say, what, typed);
  if (mm <= 0) say(`${what} is ${shown(typed!)}, and should be above zero`);
  return mm;
}

/** A size of the part itself: above zero, and of a size that hands can mend. */
function partSize(say: Say, what: string, typed: Typed | undefined): number {
  const mm = aboveZero(say, what, typed);
  const absurd = mm > LARGEST_MM || (mm > 0 && mm < SMALLEST_MM);
  if (absurd)
    say(`${what} is ${shown(typed!)}, and should be between 1 mm and 5 m: check its unit`);
  return mm;
}

function clockReadable(say: Say, what: string, clock: string | undefined): void {
  if (clock === undefined) return;
  const read = readClock(clock);
  if (!read.ok) say(`${what}: ${read.why || 'it is empty'}`);
}

function shown(typed: Typed): string {
  const read = readLength(typed);
  return read.ok ? read.echo : typed.text;
}

function featureDoubts(job: Job, feature: Feature, say: Say): void {
  const nominal = partSize(say, 'nominal size', feature.nominal);
  const length = partSize(say, 'length', feature.length);
  const size = nominal > 0 ? nominal : nominalMm(feature);
  const boss = partSize(say, 'boss outside', feature.boss?.outside);
  if (feature.kind === 'bore' && boss <= size) {
    say('the boss is no larger outside than the bore inside: check both');
  }
  for (const [index, bushing] of feature.bushings.entries()) {
    const name = entryWords('bushings', bushing, index);
    bushingDoubts(bushing, size, length, (doubt) => say(`${name}: ${doubt}`));
  }
  feature.pin?.diameters.forEach((typed, index) => {
    partSize(say, `pin diameter ${index + 1}`, typed);
  });
  wantedDoubts(job, feature, size, say);
  keepoutDoubts(feature, length, say);
  for (const [key, typed] of Object.entries(feature.place ?? {}))
    readable(say, `place: ${key}`, typed);
  for (const [key, typed] of Object.entries(feature.decisions.centre ?? {})) {
    if (typeof typed === 'object') readable(say, `centre: ${key}`, typed);
  }
  partSize(say, 'target diameter', feature.decisions.target);
  clockReadable(say, 'direction of the load', feature.load);
}

function bushingDoubts(bushing: Bushing, size: number, length: number, say: Say): void {
  bushing.outside.forEach((typed, index) => {
    partSize(say, `outside diameter ${index + 1}`, typed);
  });
  const outside = bushingOutsideMm(bushing);
  const inside = partSize(say, 'inside diameter', bushing.inside);
  if (inside >= outside) say('it is no smaller inside than outside: check both');
  if (Math.abs(outside - size) > OTHER_SIZE * size) {
    say(`its outside diameter is far from the bore's size: check the units of both`);
  }
  partSize(say, 'length', bushing.length);
  readable(say, 'lead chamfer', bushing.leadChamfer);
  readable(say, 'stand-out', bushing.seat.standOut);
  const from = depthInside(say, 'seat from', bushing.seat.from, length);
  const to = depthInside(say, 'seat to', bushing.seat.to, length);
  if (to <= from) say('its seat ends before it begins: check both depths');
  if (bushing.seat.face === 'B' && Number.isNaN(length)) say(needsLength('its seat is given'));
}

function wantedDoubts(job: Job, feature: Feature, size: number, say: Say): void {
  const press = readable(say, 'press fit', feature.wanted.pressFit);
  if (press < 0) say('the press fit is below zero: the bushing would be loose');
  if (press > MOST_PRESS * size) {
    const most = formatLength(MOST_PRESS * size, job.units);
    say(
      `the press fit is ${shown(feature.wanted.pressFit!)}, more than 2 % of the diameter (${most}): check its unit`,
    );
  }
  const clearance = readable(say, 'running clearance', feature.wanted.clearance);
  if (clearance < 0) say('the running clearance is below zero: the pin would not turn');
}

function keepoutDoubts(feature: Feature, length: number, say: Say): void {
  for (const [index, keepout] of feature.keepouts.entries()) {
    const at = (doubt: string) => say(`${entryWords('keepouts', keepout, index)}: ${doubt}`);
    const from = depthInside(at, 'from', keepout.from, length);
    const to = depthInside(at, 'to', keepout.to, length);
    if (to < from) at('it ends before it begins: check both depths');
    if (keepout.face === 'B' && Number.isNaN(length)) at(needsLength('it is given'));
    readable(at, 'width', keepout.width);
    clockReadable(at, 'clock position', keepout.clock);
  }
}

function needsLength(what: string): string {
  return `${what} from face B, which needs the length of the bore: give the length`;
}

/** A depth between the face and the bottom; NaN where it is not known. */
function depthInside(say: Say, what: string, typed: Typed | undefined, length: number): number {
  const mm = readable(say, what, typed);
  if (mm < 0) say(`${what} ${shown(typed!)} is below zero: depths go inward from the face`);
  if (mm > length + DEPTH_SLACK_MM) {
    const long = formatLength(length, typed!.unit === 'mm' ? 'mm' : 'in');
    say(`${what} ${shown(typed!)} lies outside the bore, which is ${long} long`);
  }
  return mm;
}

function surveyDoubts(job: Job, feature: Feature, survey: Survey, say: Say): void {
  const length = lengthMm(feature.length);
  const plain = (doubt: string) => say(`: ${doubt}`);
  survey.plan.depths.forEach((typed, index) => {
    depthInside(plain, `depth ${index + 1} of the table`, typed, length);
  });
  survey.plan.clocks.forEach((clock, index) => {
    clockReadable(plain, `clock position ${index + 1} of the table`, clock);
  });
  clockReadable(plain, 'worn side', survey.wornSide);
  for (const key of ['part', 'gauge'] as const) {
    const { [key]: text = '', unit = 'C' } = survey.temperature ?? {};
    const read = readTemperature(text, unit);
    if (!read.ok && read.why !== '') plain(`temperature of the ${key}: ${read.why}`);
  }
  survey.setups.forEach((setup, index) => {
    const at = (doubt: string) => say(`, ${entryWords('setups', setup, index)}: ${doubt}`);
    readable(at, 'lean', setup.lean);
    readable(at, 'offset', setup.offset);
    readable(at, 'roundness', setup.roundness);
  });
  const nominal = nominalMm(measuredAt(feature, survey));
  survey.readings.forEach((reading, index) => {
    const at = (doubt: string) => say(`, reading ${index + 1}: ${doubt}`);
    readingDoubts(job, reading, nominal, length, at);
  });
}

function readingDoubts(
  job: Job,
  reading: Reading,
  nominal: number,
  length: number,
  say: Say,
): void {
  const gauge = gaugeOf(job.gauges, reading.gauge);
  const value = readValue(reading, gauge, nominal);
  if (!value.ok && value.why !== '') say(value.why);
  if (value.ok && gauge?.kind !== 'sweep' && !(value.mm > 0)) {
    say(`it is ${value.echo}, and should be above zero`);
  }
  if (reading.depth.text.trim() === '') say('its depth is missing');
  depthInside(say, 'depth', reading.depth, length);
  clockReadable(say, 'clock position', reading.clock);
  if (reading.face === 'B' && Number.isNaN(length)) say(needsLength('it is taken'));
  aboveZero(say, 'its standard deviation', reading.sd);
}
