/**
 * Give-or-take of the deviation in the frame of the chosen target.
 *
 * Where the target's axis follows the bore (free), not knowing where the bore stands costs nothing: shift and lean
 * are taken out of the first lobe. With a kept centre they count in full.
 */
import { type DepthTables, mixed } from './depth.ts';
import { cosineColumn } from './instruments.ts';
import { type DepthSpread, type Likeness, type Posterior, spreadOf } from './posterior.ts';
import type { DepthShape } from './prior.ts';
import { betweenRows, type GridSpread, inWords, variances } from './surface.ts';
import type { Field, Grid } from './types.ts';
import { valueFree } from './valueFree.ts';

const keptSds = valueFree<Field>();

/** Standard deviation of the deviation at every place, shift and lean of the target being free. */
export function freeSpread(p: Posterior, grid: Grid, spread: GridSpread): Field {
  return keptSds(p, inWords(grid), () => {
    const rows = freeSpreads(p, spread).map((one) => variances(one, p, spread.basis).all);
    return betweenRows(rows, grid);
  });
}

/** The coefficients' spread at each depth of `spread`, shift and lean taken out of the first lobe. */
export function freeSpreads(p: Posterior, spread: GridSpread): DepthSpread[] {
  const { rows, toReadings, own } = spread;
  const straight = lineShares(rows);
  const bent = bentLikeness(p, rows, toReadings);
  const among = bentLikeness(p, rows, own);
  const likenessAt = (r: number): Likeness => ({
    prior: (n) => lessLine(straight, r, (q) => among(r, q, n)),
    with: (n, k) => bent(r, k, n),
    across: (n) => among(r, r, n),
  });
  return spread.spreads.map((one, r) =>
    spreadOf(p, likenessAt(r), [1], firstLobeApart(one, p.design.pressed.count)),
  );
}

/**
 * Covariance of the first lobe (or of an amount of a known shape, which moves it) at a row of the tables, less the
 * straight line through all rows, with the same itself at a column, mm2.
 */
export function bentLikeness(
  p: Posterior,
  rows: Float64Array,
  t: DepthTables,
): (r: number, k: number, n?: number) => number {
  const straight = lineShares(rows);
  return (r, k, n = 1) => lessLine(straight, r, (q) => bendOf(p.shapes[n]!, t, q * t.columns + k));
}

/** What of a likeness is no straight line. */
function bendOf(shape: DepthShape, t: DepthTables, k: number): number {
  if (shape.spot !== undefined) return mixed(shape, t, k);
  return shape.smooth * t.smooth[k]! + shape.local * t.local[k]!;
}

/** A copy whose first lobe may be written over. */
function firstLobeApart(spread: DepthSpread, count: number): DepthSpread {
  const whitened = spread.whitened.slice();
  whitened.fill(0, cosineColumn(1) * count, (cosineColumn(1) + 2) * count);
  return {
    whitened,
    prior: spread.prior.slice(),
    shared: spread.shared === null ? null : spread.shared.slice(),
  };
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
