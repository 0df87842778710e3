/** A scanner's points made readings: about the bore's axis, what is no wall left out, many drawn together. */
import { drawTogether } from '../geometry/drawTogether.ts';
import { type FrameFailure, type ScanFrame, scanFrame, unroll } from '../geometry/scanFrame.ts';
import { wallEnds } from '../geometry/wallEnds.ts';
import { gaugeKind } from '../job/gauges.ts';

/** Up to here each point is a reading of its own. */
const MOST_SINGLE = 640;
/** Points this near the wall around them, mm, are what a scanner scatters by. */
const NEVER_ASTRAY = gaugeKind('points').repeatability;
/**
 * What a scanner is wrong by from place to place and does not average out, mm, one standard deviation, where nothing
 * is stated: a quarter of what single points scatter by. Judgement.
 */
const USUAL_ACCURACY = gaugeKind('points').repeatability / 4;
/** Depth 0 of a frame that is not the bore's: all but so many of the points lie deeper. */
const STRAY_SHARE = 0.001;
/** So far above that, as a share of the depths, a point may still be the wall's. */
const RIM = 0.01;

type Columns = readonly [x: Float64Array, y: Float64Array, z: Float64Array];

/** One reading: a radius about the frame's axis, mm and radians. */
export interface ScanReading {
  readonly theta: number;
  readonly depth: number;
  readonly radius: number;
  /** NaN where it is a point by itself: the gauge's own. */
  readonly sd: number;
  /** Points that it stands for. */
  readonly count: number;
}

export interface Scan {
  readonly points: number;
  readonly frame: ScanFrame;
  readonly readings: readonly ScanReading[];
  /** Null where each point is a reading of its own. */
  readonly lattice: { readonly turns: number; readonly layers: number } | null;
  /** Most that drawing together can be wrong by, mm; 0 where nothing was drawn together. */
  readonly bound: number;
  /** Points left out, by why. */
  readonly left: {
    /** Farther off the average round than `frame.limit`. */
    readonly far: number;
    /** Above the rim or below the bottom. */
    readonly beyond: number;
    /** Where the wall ends in a chamfer or face. */
    readonly ends: number;
    /** Off the wall around them. */
    readonly astray: number;
    /** In places with too few points to say anything. */
    readonly lone: number;
  };
}

/**
 * @param columns finite, mm, as many of each
 * @param length of the bore, mm; NaN: not known
 * @param accuracy of the scanner, mm, one standard deviation; NaN: the usual one
 */
export function readingsOfScan(
  columns: Columns,
  length: number,
  accuracy: number,
): Scan | FrameFailure {
  const frame = scanFrame(columns);
  if ('status' in frame) return frame;
  const wall = unroll(columns, frame);
  const points = wall.radius.length;
  const counts = new Uint8Array(points);
  let far = 0;
  for (let i = 0; i < points; i++) {
    if (Math.abs(wall.radius[i]! - frame.radius) <= frame.limit) counts[i] = 1;
    else far++;
  }
  const { beyond, from, to } = within(wall.depth, counts, frame, length);
  const found = { points, frame };
  if (points <= MOST_SINGLE) {
    const single = { lattice: null, bound: 0, left: { far, beyond, ends: 0, astray: 0, lone: 0 } };
    return { ...found, ...single, readings: eachPoint(wall, counts) };
  }
  const held = wallEnds(wall.depth, wall.radius, counts, from, to);
  const ends = leaveOut(wall.depth, counts, held);
  const drawn = drawTogether(wall, counts, held, NEVER_ASTRAY);
  const own = accuracy > 0 ? accuracy : USUAL_ACCURACY;
  return {
    ...found,
    readings: drawn.bins.map(({ bound: _, ...bin }) => ({ ...bin, sd: Math.hypot(bin.sd, own) })),
    lattice: { turns: drawn.turns, layers: drawn.layers },
    bound: drawn.bins.reduce((most, bin) => Math.max(most, bin.bound), 0),
    left: { far, beyond, ends, astray: drawn.astray, lone: drawn.lone },
  };
}

interface Wall {
  readonly theta: Float64Array;
  readonly depth: Float64Array;
  readonly radius: Float64Array;
}

/**
 * Leaves out what lies beyond the ends, and counts depths from the rim where the points' own axes do not say where
 * it is.
 */
function within(
  depth: Float64Array,
  counts: Uint8Array,
  { kind }: ScanFrame,
  length: number,
): { beyond: number; from: number; to: number } {
  const slack = kind === 'scanner' ? countFromRim(depth, counts) : 0;
  const most = length > 0 ? length : Number.POSITIVE_INFINITY;
  const beyond = leaveOut(depth, counts, { from: -slack, to: most });
  let [from, to] = [Number.POSITIVE_INFINITY, 0];
  for (let i = 0; i < depth.length; i++) {
    if (counts[i] !== 1) continue;
    // The few that the rim was counted without lie at it.
    depth[i] = Math.max(0, depth[i]!);
    from = Math.min(from, depth[i]!);
    to = Math.max(to, depth[i]!);
  }
  return { beyond, from, to };
}

/** @returns how far above the rim a point may still lie */
function countFromRim(depth: Float64Array, counts: Uint8Array): number {
  const sorted = depth.filter((_, i) => counts[i] === 1).sort();
  const rim = sorted[Math.floor(STRAY_SHARE * sorted.length)] ?? 0;
  const bottom = sorted[Math.ceil((1 - STRAY_SHARE) * sorted.length) - 1] ?? 0;
  for (let i = 0; i < depth.length; i++) depth[i] = depth[i]! - rim;
  return RIM * (bottom - rim);
}

/** Points between the depths stay; how many went. */
function leaveOut(
  depth: Float64Array,
  counts: Uint8Array,
  { from, to }: { from: number; to: number },
): number {
  let gone = 0;
  for (let i = 0; i < depth.length; i++) {
    if (counts[i] !== 1 || (depth[i]! >= from && depth[i]! <= to)) continue;
    counts[i] = 0;
    gone++;
  }
  return gone;
}

function eachPoint({ theta, depth, radius }: Wall, counts: Uint8Array): ScanReading[] {
  const out: ScanReading[] = [];
  for (let i = 0; i < theta.length; i++) {
    if (counts[i] !== 1) continue;
    const place = { theta: theta[i]!, depth: depth[i]!, radius: radius[i]! };
    out.push({ ...place, sd: Number.NaN, count: 1 });
  }
  return out;
}
