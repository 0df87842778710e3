/**
 * Likeness of two depths: the kernels along the bore's axis.
 *
 * Worn bores change fastest at their mouths, so the smooth part is stationary not in depth but in a depth that is
 * stretched near both faces.
 */
import type { DepthShape } from './prior.ts';
import { alongSpot } from './spotShapes.ts';
import type { Smoothness } from './types.ts';

/** How much the depth is stretched at a face, and over which share of the length that dies out. */
const STRETCH = 4;
const STRETCH_SHARE = 0.15;

/** Depth, stretched near the faces; still in mm, monotone, the middle unchanged in scale. */
function stretched(z: number, length: number): number {
  const d = STRETCH_SHARE * length;
  return z + STRETCH * d * (Math.exp(-(length - z) / d) - Math.exp(-z / d));
}

/** Matern 5/2 of a distance in units of its length. */
function matern(r: number): number {
  const x = Math.sqrt(5) * Math.abs(r);
  return (1 + x + (x * x) / 3) * Math.exp(-x);
}

/** The kernels between two lists of depths, one table each, `rows.length * columns.length`. */
export interface DepthTables {
  readonly columns: number;
  /** Product of the centred depths, each as a share of half the length. */
  readonly slope: Float64Array;
  readonly smooth: Float64Array;
  readonly local: Float64Array;
  /** One table for each spot. */
  readonly spots: readonly Float64Array[];
}

/** How far a dent reaches along the depth, mm. */
function localReach(length: number): number {
  return Math.min(6, 0.15 * length);
}

export function depthTables(
  rows: ArrayLike<number>,
  columns: ArrayLike<number>,
  length: number,
  smoothness: Pick<Smoothness, 'length' | 'spots'>,
): DepthTables {
  const size = rows.length * columns.length;
  const out = {
    columns: columns.length,
    slope: new Float64Array(size),
    smooth: new Float64Array(size),
    local: new Float64Array(size),
    spots: (smoothness.spots?.places ?? []).map((spot) => alongSpot(spot, rows, columns, length)),
  };
  const u = Float64Array.from(columns, (z) => stretched(z, length));
  const reach = localReach(length);
  const half = length / 2;
  for (let i = 0, k = 0; i < rows.length; i++) {
    const zi = rows[i]!;
    const ui = stretched(zi, length);
    for (let j = 0; j < columns.length; j++, k++) {
      const zj = columns[j]!;
      const apart = (zi - zj) / reach;
      out.slope[k] = ((zi - half) * (zj - half)) / (half * half);
      out.smooth[k] = matern((ui - u[j]!) / smoothness.length);
      out.local[k] = Math.exp(-0.5 * apart * apart);
    }
  }
  return out;
}

/** Covariance of one lobe's coefficient between row i and column j of the tables. */
export function mixed(shape: DepthShape, t: DepthTables, k: number): number {
  if (shape.spot !== undefined) return t.spots[shape.spot]![k]!;
  return (
    shape.constant +
    shape.slope * t.slope[k]! +
    shape.smooth * t.smooth[k]! +
    shape.local * t.local[k]!
  );
}
