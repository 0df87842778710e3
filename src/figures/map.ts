/**
 * The flat map as data: the wall as seen from inside the bore looking outward, rim on top, the clock rising to
 * the right. x is arc length clockwise from the cut, y is depth, both mm at true size.
 */
import { ticks } from 'd3';
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import { hourText } from '../job/clock.ts';
import { inUnits, MM_PER_INCH } from '../job/units.ts';
import { contourer, type Frame, type Point, type Polyline } from './contours.ts';
import { type Mark, marksOf, nextMarks } from './marks.ts';
import { doubtField } from './mesh.ts';
import { KEEPOUT_NAMES } from './place.ts';
import { resample, type Sampled, turned } from './sample.ts';
import { signedText } from './signed.ts';
import type { Steps, Units } from './steps.ts';
import { stepsOf, type Wall, wallOf } from './wall.ts';

export type Rings = readonly (readonly Point[])[];

export interface MapZone {
  readonly x: number;
  readonly y: number;
  /** Signed, per side, in units of the map; the sign is the action: minus is to be taken off. */
  readonly text: string;
  readonly kind: 'high' | 'low';
  readonly weight: number;
  /** Half the width of a round as large as the zone's core, mm. */
  readonly reach: number;
}

export interface MapKeepout {
  readonly kind: BoreFacts['keepouts'][number]['kind'];
  readonly name: string;
  /** One or two boxes: what crosses the cut is drawn on both sides of it. */
  readonly boxes: readonly {
    readonly x: number;
    readonly y: number;
    width: number;
    height: number;
  }[];
}

export interface MapFigure extends Frame {
  /** mm; x = radius * angle from the cut. */
  readonly radius: number;
  readonly cut: number;
  readonly units: Units;
  readonly about: Wall['about'];
  readonly steps: Steps;
  /** Deviations to be coloured. */
  readonly shade: Sampled;
  readonly lines: readonly { readonly level: number; readonly lines: readonly Polyline[] }[];
  /**
   * Edges of the metal that is sure to come off, and of what possibly may: it lies to the right of the way that they
   * run. None where no size is wanted.
   */
  readonly sure: readonly Polyline[];
  readonly possible: readonly Polyline[];
  readonly unknown: Rings;
  readonly doubtful: Rings;
  readonly zones: readonly MapZone[];
  readonly clockTicks: readonly { readonly x: number; readonly text: string }[];
  readonly depthTicks: readonly { readonly y: number; readonly text: string }[];
  readonly marks: readonly (Mark & { readonly x: number; readonly y: number })[];
  /** Where the next reading would touch. */
  readonly next: readonly { readonly x: number; readonly y: number }[];
  readonly keepouts: readonly MapKeepout[];
  /** Depths between which the bushing sits, mm; left out where that is the whole wall. */
  readonly seats: readonly { readonly from: number; readonly to: number }[];
  /** x of the clock position that the load pulls to; null not stated. */
  readonly load: number | null;
  readonly face: string;
  /** What is assumed rather than measured; null where nothing is. */
  readonly assumed: string | null;
}

/** Mesh on which contours are found; finer changes no line by the width of a pen. */
const COLUMNS = 144;
const ROWS = 60;

/**
 * @param shared contour steps of several maps beside each other; left out: this wall's own
 * @returns null where the survey has no surface to draw
 */
export function mapFigure(
  survey: SurveyEvaluation,
  facts: BoreFacts,
  units: Units,
  cut: number = Math.PI,
  shared?: Steps,
): MapFigure | null {
  const wall = wallOf(survey);
  if (wall === null) return null;
  const frame = { width: 2 * Math.PI * wall.radius, height: wall.length };
  const steps = shared ?? stepsOf(wall, units);
  const xOf = (theta: number) => wall.radius * turned(theta - cut);
  return {
    ...frame,
    radius: wall.radius,
    cut,
    units,
    about: wall.about,
    steps,
    ...shading(wall, steps, cut, frame),
    zones: zonesOf(survey, units, xOf),
    clockTicks: clockTicks(cut, wall.radius),
    depthTicks: depthTicks(wall.length, units),
    marks: marksOf(survey).map((mark) => ({ ...mark, x: xOf(mark.theta), y: mark.z })),
    next: nextMarks(survey).map(({ theta, z }) => ({ x: xOf(theta), y: z })),
    keepouts: facts.keepouts.map((keepout) => mapKeepout(keepout, frame, xOf)),
    seats: facts.seats.filter(({ from, to }) => from > 1e-6 || to < wall.length - 1e-6),
    load: Number.isFinite(facts.load) ? xOf(facts.load) : null,
    face: 'seen from face A',
    assumed: survey.target?.assumed ?? null,
  };
}

/** The zones that a figure can be given for: a peak that rounds to nothing is none. */
function zonesOf(
  survey: SurveyEvaluation,
  units: Units,
  xOf: (theta: number) => number,
): MapZone[] {
  return survey.zones
    .map((zone) => ({
      x: xOf(zone.theta),
      y: zone.z,
      text: signedText(zone.peak, zone.give, units),
      kind: zone.kind,
      weight: Math.abs(zone.peak) * Math.sqrt(zone.area),
      reach: Math.sqrt(zone.area / Math.PI),
    }))
    .filter(({ text }) => Number(text) !== 0);
}

function shading(wall: Wall, steps: Steps, cut: number, frame: Frame) {
  const e = resample(wall.grid, wall.deviation, COLUMNS, ROWS, cut);
  const give = resample(wall.grid, wall.give, COLUMNS, ROWS, cut);
  const shape = contourer(e, frame);
  /** Where the wall is just on size if it is so many times its give-or-take larger than at the mean. */
  const edge = (larger: number): Polyline[] => {
    if (wall.about !== 'target') return [];
    const values = e.values.map((value, i) => value + larger * give.values[i]!);
    return contourer({ ...e, values }, frame).linesAt(0);
  };
  const nothing = { ...e, values: e.values.map((value) => (Number.isNaN(value) ? 1 : 0)) };
  return {
    shade: e,
    lines: steps.levels.map((level) => ({ level, lines: shape.linesAt(level) })),
    sure: edge(1),
    possible: edge(-1),
    unknown: contourer(nothing, frame).regionAbove(0.5),
    doubtful: contourer(doubtField(e, give, steps.step), frame).regionAbove(1),
  };
}

function clockTicks(cut: number, radius: number) {
  const hour = Math.PI / 6;
  const out: { x: number; text: string }[] = [];
  for (let k = Math.ceil(cut / hour - 1e-9); k * hour <= cut + 2 * Math.PI + 1e-9; k++) {
    out.push({ x: radius * Math.max(0, k * hour - cut), text: hourText(k * hour) });
  }
  return out;
}

export function depthTicks(length: number, units: Units) {
  const span = inUnits(length, units);
  const values = ticks(0, span, 6);
  const step = (values[1] ?? 1) - (values[0] ?? 0);
  const digits = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9) + (isQuarter(step) ? 1 : 0));
  const perUnit = units === 'in' ? MM_PER_INCH : 1;
  return values.map((value) => ({
    y: value * perUnit,
    text: value === 0 ? `0 ${units}` : value.toFixed(digits),
  }));
}

/** Steps such as 0.25 need a digit more than their size tells. */
function isQuarter(step: number): boolean {
  const lead = step / 10 ** Math.floor(Math.log10(step));
  return Math.abs(lead - 2.5) < 1e-6;
}

function mapKeepout(
  { kind, from, to, theta, width }: BoreFacts['keepouts'][number],
  frame: Frame,
  xOf: (theta: number) => number,
): MapKeepout {
  const y = Math.max(0, from);
  const height = Math.min(to, frame.height) - y;
  const name = KEEPOUT_NAMES[kind];
  if (Number.isNaN(theta)) {
    return { kind, name, boxes: [{ x: 0, y, width: frame.width, height }] };
  }
  const x = xOf(theta) - width / 2;
  const boxes = [x, x - frame.width, x + frame.width]
    .filter((left) => left < frame.width && left + width > 0)
    .map((left) => ({ x: left, y, width, height }));
  return { kind, name, boxes };
}

/** The colours alone, for what is laid over them in lines of its own. */
export function withoutLines(map: MapFigure): MapFigure {
  return { ...map, lines: [], sure: [], possible: [], zones: [] };
}

/** The map in words, for whoever cannot see it. */
export function describeMap(map: MapFigure): string {
  const unit = map.units === 'in' ? 'thou' : 'hundredths of a millimetre';
  const zones = map.zones.map(
    (zone) => `${zone.text} at ${hourText(turned(zone.x / map.radius + map.cut))}`,
  );
  const found = zones.length > 0 ? `, ${unit} per side: ${zones.join(', ')}` : '';
  const what =
    map.about === 'change'
      ? 'How the wall of the bore changed from stage to stage (plus: metal gone), rolled out'
      : 'The wall of the bore rolled out';
  return `${what}, rim on top, ${map.face}${found}.`;
}
