/** The wear surface on a grid: mean, and how sure, at every place. */
import { type DepthTables, depthTables } from './depth.ts';
import { cosineColumn, LOBES, TERMS } from './instruments.ts';
import {
  atDepth,
  type DepthSpread,
  meanCoefficients,
  type Posterior,
  predicted,
  spreadOf,
} from './posterior.ts';
import type { Field, Grid, WearSurface } from './types.ts';
import { valueFree } from './valueFree.ts';

/** 3 degrees and 64 steps along the depth: ten places an hour of the clock. */
const THETA_COUNT = 120;
const Z_COUNT = 65;
/** The spread is found at every second depth and drawn out between. */
const SPREAD_STEP = 2;

export function makeGrid(length: number): Grid {
  return {
    theta: Float64Array.from({ length: THETA_COUNT }, (_, i) => (2 * Math.PI * i) / THETA_COUNT),
    z: Float64Array.from({ length: Z_COUNT }, (_, i) => (length * i) / (Z_COUNT - 1)),
  };
}

/** cos and sin of every lobe at every angle, theta.length * TERMS. */
export function harmonics(theta: Float64Array): Float64Array {
  const out = new Float64Array(theta.length * TERMS);
  theta.forEach((angle, i) => {
    out[i * TERMS] = 1;
    for (let n = 1; n <= LOBES; n++) {
      const c = i * TERMS + cosineColumn(n);
      out[c] = Math.cos(n * angle);
      out[c + 1] = Math.sin(n * angle);
    }
  });
  return out;
}

/** Coefficients, row by row, drawn out to a field. */
export function drawOut(coefficients: Float64Array, basis: Float64Array): Field {
  const rows = coefficients.length / TERMS;
  const columns = basis.length / TERMS;
  const terms = TERMS;
  const out = new Float64Array(rows * columns);
  for (let r = 0; r < rows; r++) {
    for (let i = 0; i < columns; i++) {
      let sum = 0;
      for (let c = 0; c < terms; c++) sum += coefficients[r * terms + c]! * basis[i * terms + c]!;
      out[r * columns + i] = sum;
    }
  }
  return out;
}

/** The coefficients' spread at every second depth of the grid, from which all standard deviations follow. */
export interface GridSpread {
  readonly rows: Float64Array;
  readonly toReadings: DepthTables;
  readonly own: DepthTables;
  readonly spreads: readonly DepthSpread[];
  readonly basis: Float64Array;
}

const ALL_COLUMNS = Array.from({ length: TERMS }, (_, c) => c);
const ODD_COLUMNS = ALL_COLUMNS.filter((c) => ((c + 1) >> 1) % 2 === 1);
const ALL_LOBES = Array.from({ length: LOBES + 1 }, (_, n) => n);

const keptSpread = valueFree<GridSpread>();

export function gridSpread(p: Posterior, grid: Grid): GridSpread {
  return keptSpread(p, inWords(grid), () => spreadOn(p, grid));
}

/** What tells a bore's grids apart: they are even, from rim to bottom. */
export function inWords({ theta, z }: Grid): string {
  return `${theta.length} x ${z.length}`;
}

function spreadOn(p: Posterior, grid: Grid): GridSpread {
  const rows = grid.z.filter((_, i) => i % SPREAD_STEP === 0);
  const toReadings = depthTables(rows, p.design.depths, p.design.length, p.smoothness);
  const own = depthTables(rows, rows, p.design.length, p.smoothness);
  const spreads = Array.from(rows, (_, r) =>
    spreadOf(p, atDepth(p, toReadings, own, r), ALL_LOBES),
  );
  return { rows, toReadings, own, spreads, basis: harmonics(grid.theta) };
}

const keptSds = valueFree<Pick<WearSurface, 'sd' | 'sdSeen'>>();

function standardDeviations(p: Posterior, grid: Grid, spread: GridSpread) {
  const rows = spread.spreads.map((one) => variances(one, p, spread.basis));
  return {
    sd: betweenRows(
      rows.map((v) => v.all),
      grid,
    ),
    sdSeen: betweenRows(
      rows.map((v) => v.seen),
      grid,
    ),
  };
}

export function wearSurface(p: Posterior, grid: Grid, spread: GridSpread): WearSurface {
  const { sd, sdSeen } = keptSds(p, inWords(grid), () => standardDeviations(p, grid, spread));
  const surface: WearSurface = {
    grid,
    mean: meanOn(p, grid, spread),
    sd,
    sdSeen,
    smoothness: p.smoothness,
    seenLobes: p.design.seen,
    predicted: predicted(p),
  };
  posteriors.set(surface, p);
  return surface;
}

const posteriors = new WeakMap<WearSurface, Posterior>();

/** What a surface was drawn out of; undefined of one that was made in another way. */
export function posteriorOf(surface: WearSurface): Posterior | undefined {
  return posteriors.get(surface);
}

/** The mean radius at every place, mm. */
export function meanOn(p: Posterior, grid: Grid, { basis }: Pick<GridSpread, 'basis'>): Field {
  return drawOut(meanCoefficients(p, grid.z), basis);
}

/** Variance of the radius round one depth: of all that is unknown, and of what the instruments respond to. */
export function variances(
  spread: DepthSpread,
  p: Posterior,
  basis: Float64Array,
): { all: Float64Array; seen: Float64Array } {
  // Known shapes of a stated side tie lobes together, and so does a spot where odd lobes are seen at all.
  const { seen: lobes, known } = p.design;
  const apart = known.length === 0 && !lobes.some((n) => n % 2 === 1);
  const columns =
    spread.shared === null || apart
      ? [0, ...lobes.flatMap((n) => [cosineColumn(n), cosineColumn(n) + 1])]
      : ALL_COLUMNS;
  // What an unseen lobe may be besides any known shape is kept apart: it is alike all round.
  const prior = spread.prior.slice();
  let unseen = 0;
  for (let n = 1; n <= LOBES; n++) {
    if (p.design.seen.includes(n)) continue;
    const c = cosineColumn(n);
    unseen += prior[c]!;
    prior.fill(0, c, c + 2);
  }
  const seen = varianceOf(leftOver({ ...spread, prior }, columns), columns, basis);
  if (spread.shared === null || !apart) return { seen, all: seen.map((v) => v + unseen) };
  // The odd half of a spot that only diameters tell of.
  const odd = varianceOf(leftOver({ ...spread, prior }, ODD_COLUMNS), ODD_COLUMNS, basis);
  return { seen, all: seen.map((v, i) => v + unseen + odd[i]!) };
}

/** Variance round the clock of a sum of columns of that covariance (lower triangle row by row), mm2. */
function varianceOf(
  covariance: Float64Array,
  columns: readonly number[],
  basis: Float64Array,
): Float64Array {
  const m = columns.length;
  const out = new Float64Array(basis.length / TERMS);
  const wave = new Float64Array(m);
  for (let i = 0; i < out.length; i++) {
    for (let a = 0; a < m; a++) wave[a] = basis[i * TERMS + columns[a]!]!;
    let sum = 0;
    for (let a = 0, k = 0; a < m; a++) {
      let inner = 0;
      for (let b = 0; b < a; b++, k++) inner += covariance[k]! * wave[b]!;
      sum += wave[a]! * (2 * inner + covariance[k++]! * wave[a]!);
    }
    out[i] = Math.max(0, sum);
  }
  return out;
}

/** Posterior covariance of some columns, lower triangle row by row, mm2. */
function leftOver(spread: DepthSpread, columns: readonly number[]): Float64Array {
  const { whitened, prior, shared } = spread;
  const count = whitened.length / TERMS;
  const out = new Float64Array((columns.length * (columns.length + 1)) / 2);
  for (let a = 0, k = 0; a < columns.length; a++) {
    const rowA = columns[a]! * count;
    for (let b = 0; b <= a; b++, k++) {
      const rowB = columns[b]! * count;
      let taken = 0;
      for (let i = 0; i < count; i++) taken += whitened[rowA + i]! * whitened[rowB + i]!;
      const together = shared === null ? 0 : shared[columns[a]! * TERMS + columns[b]!]!;
      out[k] = (a === b ? prior[columns[a]!]! : 0) + together - taken;
    }
  }
  return out;
}

/** Variances at every second depth, drawn out to a field of standard deviations. */
export function betweenRows(rows: readonly Float64Array[], grid: Grid): Field {
  const columns = grid.theta.length;
  const out = new Float64Array(grid.z.length * columns);
  for (let iz = 0; iz < grid.z.length; iz++) {
    const at = iz / SPREAD_STEP;
    const k = Math.floor(at);
    const low = rows[k]!;
    const high = rows[Math.min(k + 1, rows.length - 1)]!;
    for (let it = 0; it < columns; it++) {
      out[iz * columns + it] = Math.sqrt(low[it]! + (at - k) * (high[it]! - low[it]!));
    }
  }
  return out;
}
