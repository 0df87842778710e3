import { BLOCK_ROWS, emptyNormal, type NormalEquations } from '../num/normalEquations.ts';
import type { Cloud } from './cloud.ts';
import { cross, type Vector, type Wall } from './wall.ts';

/** What one pass over many points tells of a wall; all in scaled units. */
export interface WallSums {
  /** its matrix is 0 when it was not asked for */
  normal: NormalEquations;
  /** mean distance of the points along the axis from p */
  level: number;
  /** longest such distance; 0 without the matrix */
  reach: number;
  /** least and greatest signed distance of each block of rows */
  lows: Float64Array;
  highs: Float64Array;
}

/** Below this curvature the short cuts taken here would cost digits. */
export const BENT_ENOUGH = 0.3;

const cosines = new Float64Array(BLOCK_ROWS);
const sines = new Float64Array(BLOCK_ROWS);
const depths = new Float64Array(BLOCK_ROWS);

/**
 * The sums of the columns of wall.ts for walls of curvature BENT_ENOUGH or more, in a quarter of
 * the time that writing the columns out would take: lengths are counted in radii, e is the square
 * of the distance from the axis less 1, and what can be had from other sums is not summed itself.
 */
export function wallSums(cloud: Cloud, wall: Wall, withMatrix: boolean): WallSums {
  const blocks = Math.ceil(cloud.count / BLOCK_ROWS);
  const lows = new Float64Array(blocks);
  const highs = new Float64Array(blocks);
  const slopes = new Float64Array(SLOPES);
  const products = new Float64Array(PRODUCTS);
  const frame = frameOf(cloud, wall);
  for (let block = 0; block < blocks; block++) {
    const from = block * BLOCK_ROWS;
    const to = Math.min(from + BLOCK_ROWS, cloud.count);
    addSlopes(slopes, cloud, frame, from, to, withMatrix);
    lows[block] = slopes[LOW]! / wall.k;
    highs[block] = slopes[HIGH]! / wall.k;
    if (withMatrix) addProducts(products, to - from);
  }
  const normal = emptyNormal(5);
  writeGradient(normal, slopes, wall.k);
  if (withMatrix) writeMatrix(normal.matrix, products, slopes, cloud.count, wall.k);
  const reach = products[REACH]!;
  return { normal, level: slopes[DEPTH]! / cloud.count, reach, lows, highs };
}

/** Rows that turn a coordinate less the middle into the place seen from p, and where p is. */
interface Frame {
  along: Vector;
  out: Vector;
  side: Vector;
  at: Vector;
}

function frameOf({ scale }: Cloud, { p, a, m, k }: Wall): Frame {
  const s = cross(a, m);
  const over = (v: Vector, by: number): Vector => [v[0] * by, v[1] * by, v[2] * by];
  const along = (v: Vector) => p[0] * v[0] + p[1] * v[1] + p[2] * v[2];
  return {
    along: over(a, 1 / scale),
    out: over(m, k / scale),
    side: over(s, k / scale),
    at: [along(a), k * along(m), k * along(s)],
  };
}

/** Places in `slopes`: sums of f c, z f c, f t, z f t, f, f f, z, and the extremes of a block. */
const [FC, ZFC, FT, ZFT, F, FF, DEPTH, LOW, HIGH, SLOPES] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

function addSlopes(
  slopes: Float64Array,
  { columns, middle }: Cloud,
  { along, out, side, at }: Frame,
  from: number,
  to: number,
  keep: boolean,
): void {
  const [x, y, z] = columns as [Float64Array, Float64Array, Float64Array];
  const [x0, y0, z0] = middle as [number, number, number];
  const [ax, ay, az] = along;
  const [mx, my, mz] = out;
  const [sx, sy, sz] = side;
  const [ap, mp, sp] = at;
  let fc = 0;
  let zfc = 0;
  let ft = 0;
  let zft = 0;
  let fSum = 0;
  let ff = 0;
  let zSum = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const dx = x[i]! - x0;
    const dy = y[i]! - y0;
    const dz = z[i]! - z0;
    const depth = dx * ax + dy * ay + dz * az - ap;
    const o = dx * mx + dy * my + dz * mz - mp;
    const s = dx * sx + dy * sy + dz * sz - sp;
    const e = o * (2 + o) + s * s;
    const square = 1 + e;
    const length = square > 0 ? Math.sqrt(square) : 0;
    // One division tells all: f / length, from which f, c and t follow.
    const per = length > 0 ? 1 / (length + square) : 0;
    const share = e * per;
    const f = length > 0 ? share * length : e;
    const outward = (1 + o) * share;
    const sideward = s * share;
    fc += outward;
    zfc += depth * outward;
    ft += sideward;
    zft += depth * sideward;
    fSum += f;
    ff += f * f;
    zSum += depth;
    if (f < low) low = f;
    if (f > high) high = f;
    if (keep) {
      const unit = (1 + length) * per;
      cosines[i - from] = (1 + o) * unit;
      sines[i - from] = s * unit;
      depths[i - from] = depth;
    }
  }
  slopes[FC]! += fc;
  slopes[ZFC]! += zfc;
  slopes[FT]! += ft;
  slopes[ZFT]! += zft;
  slopes[F]! += fSum;
  slopes[FF]! += ff;
  slopes[DEPTH]! += zSum;
  slopes[LOW] = low;
  slopes[HIGH] = high;
}

/** Places in `products`, and the longest z. */
const [C, ZC, T, ZT, CC, ZCC, ZZCC, CT, ZCT, ZZCT, ZZ, REACH, PRODUCTS] = [
  0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
] as const;

function addProducts(products: Float64Array, rows: number): void {
  let c1 = 0;
  let zc1 = 0;
  let t1 = 0;
  let zt1 = 0;
  let cc = 0;
  let zcc = 0;
  let zzcc = 0;
  let ct = 0;
  let zct = 0;
  let zzct = 0;
  let zz = 0;
  let reach = products[REACH]!;
  for (let i = 0; i < rows; i++) {
    const c = cosines[i]!;
    const t = sines[i]!;
    const z = depths[i]!;
    const zc = z * c;
    const zt = z * t;
    const square = z * z;
    c1 += c;
    zc1 += zc;
    t1 += t;
    zt1 += zt;
    cc += c * c;
    zcc += zc * c;
    zzcc += zc * zc;
    ct += c * t;
    zct += zc * t;
    zzct += zc * zt;
    zz += square;
    if (z > reach) reach = z;
    else if (-z > reach) reach = -z;
  }
  const sums = [c1, zc1, t1, zt1, cc, zcc, zzcc, ct, zct, zzct, zz];
  for (let j = 0; j < sums.length; j++) products[j]! += sums[j]!;
  products[REACH] = reach;
}

function writeGradient(normal: NormalEquations, slopes: Float64Array, k: number): void {
  const { gradient } = normal;
  gradient[0] = -slopes[FC]! / k;
  gradient[1] = -slopes[ZFC]! / k;
  gradient[2] = slopes[FT]! / (k * k);
  gradient[3] = slopes[ZFT]! / (k * k);
  gradient[4] = (slopes[F]! - slopes[FC]!) / (k * k * k);
  normal.sumSquares = slopes[FF]! / (k * k);
}

/** With t in radii c c + t t = 1, and v = (1 - c) / k^2. */
function writeMatrix(
  matrix: Float64Array,
  products: Float64Array,
  slopes: Float64Array,
  count: number,
  k: number,
): void {
  const sum = (at: number) => products[at]!;
  const bend = 1 / (k * k);
  const rows = [
    [sum(CC)],
    [sum(ZCC), sum(ZZCC)],
    [-sum(CT) / k, -sum(ZCT) / k, (count - sum(CC)) * bend],
    [
      -sum(ZCT) / k,
      -sum(ZZCT) / k,
      (slopes[DEPTH]! - sum(ZCC)) * bend,
      (sum(ZZ) - sum(ZZCC)) * bend,
    ],
    [
      (sum(CC) - sum(C)) * bend,
      (sum(ZCC) - sum(ZC)) * bend,
      ((sum(T) - sum(CT)) * bend) / k,
      ((sum(ZT) - sum(ZCT)) * bend) / k,
      (count - 2 * sum(C) + sum(CC)) * bend * bend,
    ],
  ];
  rows.forEach((row, i) => {
    row.forEach((value, j) => {
      matrix[i * 5 + j] = value;
    });
  });
}
