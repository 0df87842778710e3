/**
 * Very many points of a wall drawn together on an even lattice of clock positions and depths.
 *
 * Each bin's points say what the radius is at the bin's middle, by a quadratic in angle and depth: a lean or a bend of
 * the wall within a bin costs nothing. How wrong the rest may make it is told.
 */
import { type LocalFit, localFit, type Patch } from './localFit.ts';

export interface Bin {
  readonly theta: number;
  readonly depth: number;
  readonly radius: number;
  /** One standard deviation of it from what the points scatter, in their unit; what they are all wrong by not in it. */
  readonly sd: number;
  /** Points that count. */
  readonly count: number;
  /** The radius at the middle is wrong by no more, noise apart, where the wall's slopes stay between those of the bins around. */
  readonly bound: number;
}

export interface DrawnTogether {
  readonly bins: readonly Bin[];
  readonly turns: number;
  readonly layers: number;
  /** Points that lie off the wall around them: burrs, dirt, edges of holes. */
  readonly astray: number;
  /** Points in bins that hold too few to say anything. */
  readonly lone: number;
}

/** Points a bin should have on average. */
const POINTS_PER_BIN = 16;
/** Lobes up to 14 need 29 places round the clock; no more bins than say something new, and than are quick to solve for. */
const MOST_TURNS = 36;
const MOST_LAYERS = 16;
const FEWEST_LAYERS = 4;
/** Clock positions for each depth. */
const TURNS_PER_LAYER = 2.25;
/** Fewer points say nothing of a bin. */
const FEWEST = 4;
/** A point this many robust standard deviations off the wall around it is no part of it. */
const ASTRAY = 5;
const MAD_TO_SD = 1.4826;
const ROUNDS = 6;
/** Weights of a bin whose points lie all to one side: they guess at the middle from afar. */
const MOST_VARIANCE = 1;

/** How many bins are worth making. */
function latticeFor(points: number): { turns: number; layers: number } {
  const bins = Math.min(MOST_TURNS * MOST_LAYERS, points / POINTS_PER_BIN);
  const layers = Math.max(
    FEWEST_LAYERS,
    Math.min(MOST_LAYERS, Math.round(Math.sqrt(bins / TURNS_PER_LAYER))),
  );
  const turns = Math.max(8, Math.min(MOST_TURNS, Math.floor(bins / layers)));
  return { turns, layers };
}

/**
 * @param wall clock positions (radians, 0 to 2 pi), depths and radii, as many of each
 * @param counts 1 where a point is to be looked at; it stays as it is
 * @param from least and `to` greatest depth of the lattice; points that count lie between
 * @param least points nearer the wall than this, in their unit, are never astray
 */
export function drawTogether(
  wall: { theta: Float64Array; depth: Float64Array; radius: Float64Array },
  counts: Uint8Array,
  { from, to }: { from: number; to: number },
  least: number,
): DrawnTogether {
  const points = counts.reduce((sum, one) => sum + one, 0);
  const { turns, layers } = latticeFor(points);
  const cells = gather(wall, counts, { turns, layers, from, to });
  const fits = cells.starts.length - 1;
  const found = Array.from({ length: fits }, (_, cell) => fitCell(cells, cell, least));
  let [astray, lone] = [0, 0];
  found.forEach((fit, cell) => {
    const held = cells.starts[cell + 1]! - cells.starts[cell]!;
    if (fit === null) lone += held;
    else astray += held - fit.count;
  });
  const usual = usualScatter(found);
  const kept = found.flatMap((fit, cell) => {
    if (fit === null) return [];
    const turn = cell % turns;
    const layer = (cell - turn) / turns;
    return [{ fit, turn, layer, near: around(found, turn, layer, turns, layers) }];
  });
  const bounds = boundsOf(kept, usual);
  const bins = kept.map(
    ({ fit, turn, layer }, k): Bin => ({
      theta: (2 * Math.PI * turn) / turns,
      depth: cells.depths[layer]!,
      radius: cells.base + fit.middle,
      sd: sdOf(fit, usual),
      count: fit.count,
      bound: bounds[k]!,
    }),
  );
  return { bins, turns, layers, astray, lone };
}

interface Cells {
  readonly patch: Patch;
  readonly counts: Uint8Array;
  /** Where each cell's points begin in the patch, layer by layer; one more for the end. */
  readonly starts: Int32Array;
  /** Depth of each layer: the mean of its points, so that points taken ring by ring are read where they are. */
  readonly depths: Float64Array;
  /** Heights are radii less this. */
  readonly base: number;
}

interface Lattice {
  readonly turns: number;
  readonly layers: number;
  readonly from: number;
  readonly to: number;
}

/** The points sorted by cell, with their places in it. */
function gather(
  { theta, depth, radius }: { theta: Float64Array; depth: Float64Array; radius: Float64Array },
  counts: Uint8Array,
  { turns, layers, from, to }: Lattice,
): Cells {
  const width = (2 * Math.PI) / turns;
  const thick = (to - from) / layers;
  const cellOf = new Int32Array(theta.length);
  const starts = new Int32Array(turns * layers + 1);
  const depths = new Float64Array(layers);
  const inLayer = new Int32Array(layers);
  let base = 0;
  for (let i = 0; i < theta.length; i++) {
    if (counts[i] !== 1) continue;
    const turn = Math.floor(theta[i]! / width + 0.5) % turns;
    const at = thick > 0 ? Math.floor((depth[i]! - from) / thick) : 0;
    const layer = Math.max(0, Math.min(layers - 1, at));
    const cell = layer * turns + turn;
    cellOf[i] = cell;
    starts[cell + 1] = starts[cell + 1]! + 1;
    depths[layer] = depths[layer]! + depth[i]!;
    inLayer[layer] = inLayer[layer]! + 1;
    base += radius[i]!;
  }
  for (let c = 0; c + 1 < starts.length; c++) starts[c + 1] = starts[c + 1]! + starts[c]!;
  const held = starts[turns * layers]!;
  base /= held;
  for (let l = 0; l < layers; l++) depths[l] = depths[l]! / inLayer[l]!;
  const patch = {
    u: new Float64Array(held),
    v: new Float64Array(held),
    height: new Float64Array(held),
  };
  const next = starts.slice();
  for (let i = 0; i < theta.length; i++) {
    if (counts[i] !== 1) continue;
    const cell = cellOf[i]!;
    const turn = cell % turns;
    const at = next[cell]!;
    next[cell] = at + 1;
    const apart = theta[i]! - turn * width;
    patch.u[at] = (apart > Math.PI ? apart - 2 * Math.PI : apart) / (width / 2);
    patch.v[at] = thick > 0 ? (depth[i]! - depths[(cell - turn) / turns]!) / (thick / 2) : 0;
    patch.height[at] = radius[i]! - base;
  }
  return { patch, counts: new Uint8Array(held).fill(1), starts, depths, base };
}

/** A cell's fit once what stands off it is taken out; null where too few points are left. */
function fitCell({ patch, counts, starts }: Cells, cell: number, least: number): LocalFit | null {
  const from = starts[cell]!;
  const to = starts[cell + 1]!;
  if (to - from < FEWEST) return null;
  const off = new Float64Array(to - from);
  const fitted = () => {
    for (const most of [6, 3, 1]) {
      const one = localFit(patch, counts, from, to, most, off);
      if (one !== null && (most === 1 || one.variance <= MOST_VARIANCE)) return one;
    }
    return null;
  };
  let found = fitted();
  for (let round = 0; round < ROUNDS && found !== null; round++) {
    const sizes = off.map(Math.abs);
    const middle = sizes.slice().sort()[sizes.length >> 1]!;
    const limit = Math.max(least, ASTRAY * MAD_TO_SD * middle);
    let changed = false;
    for (let i = 0; i < sizes.length; i++) {
      const now = sizes[i]! <= limit ? 1 : 0;
      if (now !== counts[from + i]) changed = true;
      counts[from + i] = now;
    }
    if (!changed) break;
    found = fitted();
  }
  return found !== null && found.count >= FEWEST ? found : null;
}

function usualScatter(found: readonly (LocalFit | null)[]): number {
  const all = found.flatMap((fit) => (fit !== null && fit.scatter >= 0 ? [fit.scatter] : []));
  return all.sort((a, b) => a - b)[all.length >> 1] ?? 0;
}

/** Beyond this many times the usual scatter a bin is rough: by chance one of twenty points is by less than half. */
const ROUGH = 1.5;

/** Noise averages out; what a bin scatters beyond the usual is the wall's own roughness, and does not. */
function sdOf({ scatter, variance }: LocalFit, usual: number): number {
  const rough = scatter > ROUGH * usual;
  const noise = rough || !(scatter > usual) ? usual : scatter;
  return Math.hypot(noise * Math.sqrt(variance), rough ? Math.sqrt(scatter ** 2 - usual ** 2) : 0);
}
/** The fits of the cells beside, before, above and below; those that there are. */
function around(
  found: readonly (LocalFit | null)[],
  turn: number,
  layer: number,
  turns: number,
  layers: number,
): LocalFit[] {
  const at = (t: number, l: number) =>
    l < 0 || l >= layers ? null : (found[l * turns + ((t + turns) % turns)] ?? null);
  return [
    at(turn - 1, layer),
    at(turn + 1, layer),
    at(turn, layer - 1),
    at(turn, layer + 1),
  ].filter((fit) => fit !== null);
}

/** How a fit's slope one way reads, and how far noise may make it read wrong. */
interface Way {
  readonly slope: (fit: LocalFit) => number;
  readonly variance: (fit: LocalFit) => number;
}
const U: Way = { slope: (fit) => fit.slopeU, variance: (fit) => fit.varianceU };
const V: Way = { slope: (fit) => fit.slopeV, variance: (fit) => fit.varianceV };

/** Slopes that differ by no more than this many standard deviations differ by noise alone. */
const BY_NOISE = 3;

/** What two bins' slopes differ by, its variance from noise; a slope that a bin does not tell is 0, and all counts. */
function differences(
  own: LocalFit,
  near: readonly LocalFit[],
  { slope, variance }: Way,
  noise: number,
) {
  const mine = slope(own);
  const told = near.filter((fit) => !Number.isNaN(slope(fit)));
  if (Number.isNaN(mine)) {
    return told.map((fit) => ({ by: Math.abs(slope(fit)), variance: noise ** 2 * variance(fit) }));
  }
  const all = told.map((fit) => ({
    by: Math.abs(slope(fit) - mine),
    variance: noise ** 2 * (variance(fit) + variance(own)),
  }));
  return all.length > 0 ? all : [{ by: Math.abs(mine), variance: noise ** 2 * variance(own) }];
}

/**
 * With weights that sum to 1 and give planes exactly, the middle is wrong by sum of weight times what the wall departs
 * from the plane of the bin's own slopes, and it departs by no more than |u| and |v| times the most that slopes differ.
 * Slopes of few points differ by noise as well: what stands out of it counts, and what all bins show together.
 */
function boundsOf(fits: readonly { fit: LocalFit; near: readonly LocalFit[] }[], noise: number) {
  const ways = [U, V].map((way) => {
    const all = fits.map(({ fit, near }) => differences(fit, near, way, noise));
    const flat = all.flat();
    const square = flat.reduce((sum, { by, variance }) => sum + by * by - variance, 0);
    const together = Math.sqrt(Math.max(0, square / flat.length));
    return all.map((one) =>
      one.reduce(
        (most, { by, variance }) => Math.max(most, by - BY_NOISE * Math.sqrt(variance)),
        together,
      ),
    );
  });
  return fits.map(({ fit }, k) => fit.reachU * ways[0]![k]! + fit.reachV * ways[1]![k]!);
}
