/**
 * Give-or-take of the deviation in the frame of the chosen target.
 *
 * Where the target's axis follows the bore (free), not knowing where the bore stands costs nothing: shift and lean
 * are taken out of the first lobe. With a kept centre they count in full.
 */
import type { DepthTables } from './depth.ts';
import { cosineColumn } from './instruments.ts';
import { type DepthSpread, type Posterior, spreadOf } from './posterior.ts';
import { betweenRows, type GridSpread, variances } from './surface.ts';
import type { Field, Grid } from './types.ts';

/** Standard deviation of the deviation at every place, shift and lean of the target being free. */
export function freeSpread(p: Posterior, grid: Grid, spread: GridSpread): Field {
  const rows = freeSpreads(p, spread).map((one) => variances(one, p, spread.basis).all);
  return betweenRows(rows, grid);
}

/** The coefficients' spread at each depth of `spread`, shift and lean taken out of the first lobe. */
export function freeSpreads(p: Posterior, spread: GridSpread): DepthSpread[] {
  const { rows, toReadings, own } = spread;
  const straight = lineShares(rows);
  const bent = bentLikeness(p, rows, toReadings);
  const bends = (t: DepthTables, k: number) => bendOf(p, t, k);
  return spread.spreads.map((one, r) =>
    spreadOf(
      p,
      { prior: () => bentPrior(own, bends, straight, r), with: (_, k) => bent(r, k) },
      [1],
      firstLobeApart(one, p.design.pressed.count),
    ),
  );
}

/**
 * Covariance of the first lobe at a row of the tables, less the straight line through all rows, with the first lobe
 * itself at a column, mm2.
 */
export function bentLikeness(
  p: Posterior,
  rows: Float64Array,
  t: DepthTables,
): (r: number, k: number) => number {
  const straight = lineShares(rows);
  return (r, k) => lessLine(straight, r, (q) => bendOf(p, t, q * t.columns + k));
}

/** What of the first lobe's likeness is no straight line. */
function bendOf(p: Posterior, t: DepthTables, k: number): number {
  return p.shapes[1]!.smooth * t.smooth[k]! + p.shapes[1]!.local * t.local[k]!;
}

/** A copy whose first lobe may be written over. */
function firstLobeApart(spread: DepthSpread, count: number): DepthSpread {
  const whitened = spread.whitened.slice();
  whitened.fill(0, cosineColumn(1) * count, (cosineColumn(1) + 2) * count);
  return { whitened, prior: spread.prior.slice() };
}

/** rows * rows: share of depth q in the straight line's value at depth r (hat matrix of 1 and z). */
function lineShares(rows: Float64Array): Float64Array {
  const n = rows.length;
  const mean = rows.reduce((a, b) => a + b, 0) / n;
  const spread = rows.reduce((a, z) => a + (z - mean) ** 2, 0);
  const out = new Float64Array(n * n);
  for (let r = 0; r < n; r++) {
    for (let q = 0; q < n; q++)
      out[r * n + q] = 1 / n + ((rows[r]! - mean) * (rows[q]! - mean)) / spread;
  }
  return out;
}

/** A value at depth r less that of the straight line through all depths. */
function lessLine(shares: Float64Array, r: number, value: (q: number) => number): number {
  const n = Math.sqrt(shares.length);
  let line = 0;
  for (let q = 0; q < n; q++) line += shares[r * n + q]! * value(q);
  return value(r) - line;
}

/** Prior variance of what is left of the first lobe at depth r once the straight line is out. */
function bentPrior(
  own: DepthTables,
  bends: (t: DepthTables, k: number) => number,
  shares: Float64Array,
  r: number,
): number {
  const bent = (a: number) => lessLine(shares, r, (q) => bends(own, a * own.columns + q));
  return lessLine(shares, r, bent);
}
