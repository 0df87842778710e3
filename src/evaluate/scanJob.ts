/** A job made from a scanner's points, with the sizes that they do not say. */
import { type FitFailure, failureInWords } from '../geometry/ending.ts';
import type { FrameFailure, ScanFrame } from '../geometry/scanFrame.ts';
import { clockText, clockTheta } from '../job/clock.ts';
import { type CsvSizes, gaugesOf, jobOfSurveys } from '../job/fromCsv.ts';
import type { Job, Reading, Survey, Typed, Units } from '../job/schema.ts';
import { formatPerSide, inUnits, lengthMm, MM_PER_INCH } from '../job/units.ts';
import { readingsOfScan, type Scan, type ScanReading } from './scan.ts';

/** A file of points, in its own unit. */
interface ScanFile {
  readonly name: string;
  readonly columns: readonly [x: Float64Array, y: Float64Array, z: Float64Array];
}

/** Sizes as for readings; `units` null: not said, neither for the points. */
interface ScanSizes extends Omit<CsvSizes, 'units'> {
  readonly units: Units | null;
  /** One standard deviation that the scanner's points have in common from place to place. */
  readonly accuracy?: string | undefined;
}

type ScanJob =
  | { readonly ok: true; readonly job: Job; readonly scan: Scan }
  | { readonly ok: false; readonly why: string };

/** Bores are 25 to 150 mm across: a radius below this is in inches. */
const LEAST_MM = 6;
/** Sizes that differ by this factor, or its inverse, are in two units. */
const OTHER_UNIT = MM_PER_INCH / 2;
const LEAST_READINGS = 2;

/** @returns the job, or one sentence without a full stop that says what is wrong with the points */
export function jobFromScan({ name, columns }: ScanFile, sizes: ScanSizes): ScanJob {
  const units = sizes.units ?? unitsOf(columns);
  const mm = units === 'mm' ? columns : scaled(columns);
  const typedMm = (text: string | undefined) =>
    text === undefined ? Number.NaN : lengthMm({ text, unit: units });
  const scan = readingsOfScan(mm, typedMm(sizes.length), typedMm(sizes.accuracy));
  if ('status' in scan) return { ok: false, why: frameFailureInWords(scan) };
  const wrong = faultOf(scan, typedMm(sizes.nominal) / 2, units);
  if (wrong !== null) return { ok: false, why: wrong };
  const job = jobOfSurveys(gaugesOf(['points']), [surveyOf(scan, name, units)], {
    ...sizes,
    units,
  });
  return { ok: true, job, scan };
}

function unitsOf([x, y, z]: ScanFile['columns']): Units {
  const spans = [x, y, z].map((column) => {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < column.length; i++) {
      low = Math.min(low, column[i]!);
      high = Math.max(high, column[i]!);
    }
    return high - low;
  });
  // The widest way is a diameter at least.
  return Math.max(...spans) < 2 * LEAST_MM ? 'in' : 'mm';
}

function scaled(columns: ScanFile['columns']): ScanFile['columns'] {
  return columns.map((column) =>
    column.map((value) => value * MM_PER_INCH),
  ) as unknown as ScanFile['columns'];
}

function frameFailureInWords(failure: FrameFailure): string {
  if (failure.status !== 'not-round') return failureInWords(failure as FitFailure, 'bore');
  const share = Math.round(100 * failure.share);
  return `${share} % of the points lie far off any round wall; give the points of one bore, what else was in view cut away`;
}

function faultOf(scan: Scan, nominalRadius: number, units: Units): string | null {
  const { radius } = scan.frame;
  const ratio = radius / nominalRadius;
  if (ratio > OTHER_UNIT || ratio < 1 / OTHER_UNIT) {
    return `the points lie ${formatPerSide(radius, units)} off their axis, and the nominal size asks for ${formatPerSide(nominalRadius, units)}; say the unit of the points`;
  }
  if (scan.readings.length >= LEAST_READINGS) return null;
  const { beyond } = scan.left;
  return `of ${counted(scan.points)} none lie on a wall between the ends of the bore (${beyond} above the rim or below the bottom); depths go inward from face A`;
}

function surveyOf(scan: Scan, name: string, units: Units): Survey {
  const readings = scan.readings.map((one, index) => readingOf(one, index, units));
  return {
    id: 's1',
    name: 'Points',
    stage: 'as-found',
    plan: { ...placesOf(readings, scan.lattice), face: 'A', gauge: 'g1' },
    setups: [],
    readings,
    note: noteOf(scan, name, units),
  };
}

/** Points drawn together make a table; single ones lie anywhere. */
function placesOf(
  readings: readonly Reading[],
  lattice: Scan['lattice'],
): { clocks: string[]; depths: Typed[] } {
  if (lattice === null) return { clocks: [], depths: [] };
  const clocks = [...new Set(readings.map(({ clock }) => clock))];
  const depths = new Map(readings.map(({ depth }) => [depth.text, depth]));
  const turn = (clock: string) => clockTheta(clock);
  return {
    clocks: clocks.sort((a, b) => turn(a) - turn(b)),
    depths: [...depths.values()].sort((a, b) => lengthMm(a) - lengthMm(b)),
  };
}

function readingOf(
  { theta, depth, radius, sd, count }: ScanReading,
  index: number,
  units: Units,
): Reading {
  const alone = Number.isNaN(sd);
  const length = (mm: number, digits: number): Typed => ({
    text: plainText(inUnits(mm, units), alone ? AS_GIVEN : digits),
    unit: units,
  });
  const inch = units === 'in' ? 1 : 0;
  const reading: Reading = {
    id: `r${index + 1}`,
    face: 'A',
    depth: length(depth, DEPTH_DIGITS + inch),
    clock: clockText(theta, true),
    gauge: 'g1',
    value: length(radius, RADIUS_DIGITS + inch),
  };
  if (alone) return reading;
  const note = `stands for ${counted(count)}`;
  return { ...reading, sd: { text: inUnits(sd, units).toPrecision(3), unit: units }, note };
}

/** Decimals in mm; an inch has one more. A single point keeps all that any scanner writes. */
const AS_GIVEN = 12;
const RADIUS_DIGITS = 4;
const DEPTH_DIGITS = 3;

/** Without an exponent, which nobody types, and without zeros at the end. */
function plainText(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return text.replace(/\.?0+$/, '').replace(/^-0$/, '0');
}

/** What the readings stand for: a job holds them, not the points. */
function noteOf(scan: Scan, name: string, units: Units): string {
  const { points, lattice, frame, bound } = scan;
  const what = `${counted(points)} of ${name}`;
  const head =
    lattice === null
      ? `${what}, each a reading of its own.`
      : `${what}, drawn together into ${lattice.turns} clock positions × ${lattice.layers} depths; that makes no radius wrong by more than ${formatPerSide(bound, units, units === 'in' ? 5 : 4)}.`;
  return [head, AXES[frame.kind], leftOut(scan, units)].filter((part) => part !== '').join(' ');
}

const AXES: Readonly<Record<ScanFrame['kind'], string>> = {
  own: 'Their axes are taken as the bore’s: x to 3 o’clock, y to 12, z inward from face A.',
  drawn:
    'Their axes are taken as the bore’s, z outward: x to 3 o’clock, y to 12, depth −z from face A.',
  scanner:
    'The axis is that of the average round cylinder through them, in right-handed coordinates. Face A is the end towards + on the axis of the points that runs nearest to it, and the first points there are depth 0; 12 o’clock is towards + y (+ z where y runs along the bore).',
};

function leftOut({ left, frame, lattice }: Scan, units: Units): string {
  const reasons: readonly (readonly [number, string])[] = [
    [
      left.far,
      `more than ${formatPerSide(frame.limit, units)} off the middle radius (a face, a hole, something else in view)`,
    ],
    [left.beyond, 'above the rim or below the bottom'],
    [left.ends, 'where the wall ends in a chamfer or face'],
    [
      left.astray,
      'off the wall around them by more than five times its scatter (burrs, dirt, edges)',
    ],
    [left.lone, 'too few in their place to say anything'],
  ];
  const said = reasons.filter(([count]) => count > 0);
  if (said.length === 0) return lattice === null ? '' : 'None is left out.';
  return `Left out: ${said.map(([count, why]) => `${grouped(count)} ${why}`).join('; ')}.`;
}

function counted(points: number): string {
  return points === 1 ? '1 point' : `${grouped(points)} points`;
}

function grouped(count: number): string {
  return count.toLocaleString('en-US');
}
