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
  const { rows, toReadings, own } = spread;
  const bends = (t: DepthTables, k: number) =>
    p.shapes[1]!.smooth * t.smooth[k]! + p.shapes[1]!.local * t.local[k]!;
  const straight = lineShares(rows);
  const bentRows = spread.spreads.map((one, r) => {
    const bent = {
      prior: () => bentPrior(own, bends, straight, r),
      with: (_: number, k: number) =>
        lessLine(straight, r, (q) => bends(toReadings, q * toReadings.columns + k)),
    };
    return variances(spreadOf(p, bent, [1], firstLobeApart(one, p.design.count)), p, spread.basis)
      .all;
  });
  return betweenRows(bentRows, grid);
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
