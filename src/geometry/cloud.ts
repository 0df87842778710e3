import { symmetricEigen } from '../num/eigen.ts';
import { seededRandom } from '../num/random.ts';
import type { FitFailure } from './ending.ts';

/**
 * Points made ready for a fit. Inside a fit a coordinate is `(value - middle) / scale`, which lies
 * between -1 and 1: far-off origins and large or small units then cost no digits. The scale is a
 * power of two, so that dividing by it is exact.
 */
export interface Cloud {
  /** the coordinates as given, one array each */
  columns: readonly Float64Array[];
  count: number;
  /** middle of the box around all points, one number a column */
  middle: readonly number[];
  scale: number;
  /** what rounding to doubles may have done to a coordinate when it was written, in scaled units */
  grain: number;
}

/**
 * Checks and measures the points in one pass each.
 *
 * @param given one array of numbers for each coordinate, all of the same length
 * @param needed how many different points the feature needs
 * @throws RangeError when the arrays differ in length
 */
export function readCloud(given: readonly ArrayLike<number>[], needed: number): Cloud | FitFailure {
  const columns = given.map((c) => (c instanceof Float64Array ? c : Float64Array.from(c)));
  const count = columns[0]!.length;
  if (columns.some((c) => c.length !== count)) {
    throw new RangeError(
      `coordinates differ in number: ${columns.map((c) => c.length).join(', ')}`,
    );
  }
  const boxes = columns.map(measure);
  const rows = boxes.filter((box) => typeof box === 'number');
  if (rows.length > 0) return { status: 'not-finite', row: Math.min(...rows) };
  const found = differentPoints(columns, needed);
  if (found < needed) return { status: 'too-few-points', needed, found };
  const spans = boxes.filter((box) => typeof box !== 'number');
  const half = Math.max(...spans.map(({ low, high }) => high / 2 - low / 2));
  const largest = Math.max(...spans.map(({ low, high }) => Math.max(-low, high)));
  // 2^-1000 keeps the inverse of the scale finite.
  const scale = 2 ** Math.max(Math.ceil(Math.log2(half)), -1000);
  return {
    columns,
    count,
    middle: spans.map(({ low, high }) => low / 2 + high / 2),
    scale,
    grain: (Number.EPSILON * Math.max(largest, scale)) / scale,
  };
}

/** Smallest and largest, or the first row that is not finite. */
function measure(column: Float64Array): { low: number; high: number } | number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [least, most] = [low, high];
  const even = column.length - (column.length % 2);
  // Math.min and Math.max hand NaN on; two of each need not wait for each other.
  for (let i = 0; i < even; i += 2) {
    const first = column[i]!;
    const second = column[i + 1]!;
    low = Math.min(low, first);
    high = Math.max(high, first);
    least = Math.min(least, second);
    most = Math.max(most, second);
  }
  for (let i = even; i < column.length; i++) {
    low = Math.min(low, column[i]!);
    high = Math.max(high, column[i]!);
  }
  low = Math.min(low, least);
  high = Math.max(high, most);
  if (column.length === 0 || high - low < Number.POSITIVE_INFINITY) return { low, high };
  const row = column.findIndex((value) => !Number.isFinite(value));
  return row < 0 ? { low, high } : row;
}

/** Number of different points, counted no further than `enough`. */
function differentPoints(columns: readonly Float64Array[], enough: number): number {
  const count = columns[0]!.length;
  const found: number[] = [];
  for (let i = 0; i < count && found.length < enough; i++) {
    if (!found.some((row) => columns.every((c) => c[row] === c[i]))) found.push(i);
  }
  return found.length;
}

/**
 * At most `limit` of the points, one drawn from each of `limit` even stretches of rows: a fixed
 * step could fall in with the order of the rows and see two clock positions only. Fixed seed.
 */
export function sampleCloud(cloud: Cloud, limit: number): Cloud {
  if (cloud.count <= limit) return cloud;
  const random = seededRandom(limit);
  const rows = new Int32Array(limit);
  for (let k = 0; k < limit; k++) {
    rows[k] = Math.floor(((k + random.uniform()) * cloud.count) / limit);
  }
  return rowsOf(cloud, rows);
}

/** Some rows of a cloud, copied. */
function rowsOf(cloud: Cloud, rows: Int32Array): Cloud {
  const columns = cloud.columns.map((column) => {
    const some = new Float64Array(rows.length);
    for (let k = 0; k < rows.length; k++) some[k] = column[rows[k]!]!;
    return some;
  });
  return { ...cloud, count: rows.length, columns };
}

/** The coordinates in scaled units, copied: for samples. */
export function scaledColumns({ columns, middle, scale }: Cloud): Float64Array[] {
  return columns.map((column, d) => column.map((value) => (value - middle[d]!) / scale));
}

/** Mean of the points in scaled units. */
export function meanOf({ columns, count, middle, scale }: Cloud): number[] {
  return columns.map((column, d) => sumFrom(column, count, middle[d]!) / count / scale);
}

/** Sum of the differences from `from`; four running sums, as one addition waits for the last. */
function sumFrom(column: Float64Array, count: number, from: number): number {
  let [s0, s1, s2, s3] = [0, 0, 0, 0];
  const even = count - (count % 4);
  for (let i = 0; i < even; i += 4) {
    s0 += column[i]! - from;
    s1 += column[i + 1]! - from;
    s2 += column[i + 2]! - from;
    s3 += column[i + 3]! - from;
  }
  for (let i = even; i < count; i++) s0 += column[i]! - from;
  return s0 + s1 + (s2 + s3);
}

/** Mean product of the scaled coordinates about `mean`, d * d row-major. */
export function scatterOf({ columns, count, middle, scale }: Cloud, mean: number[]): Float64Array {
  const d = columns.length;
  const scatter = new Float64Array(d * d);
  const q = new Float64Array(d);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < d; j++) q[j] = (columns[j]![i]! - middle[j]!) / scale - mean[j]!;
    for (let j = 0; j < d; j++) {
      for (let k = 0; k < d; k++)
        scatter[j * d + k] = scatter[j * d + k]! + (q[j]! * q[k]!) / count;
    }
  }
  return scatter;
}

/** Whether all points lie, to rounding, on a line (in two dimensions). */
export function liesOnLine(cloud: Cloud): boolean {
  const mean = meanOf(cloud);
  const { values, vectors } = symmetricEigen(scatterOf(cloud, mean), 2);
  return !isThick(values[0]!) && liesFlat(cloud, mean, [vectors[0]!]);
}

/** Mean squares across are rounded by about 1e-16: well above that, points need no closer look. */
const THICK = 1e-12;

/** Whether points of such a mean square across, in scaled units, cannot lie on a line or plane. */
export function isThick(meanSquare: number): boolean {
  return meanSquare > THICK;
}

/** Points nearer than this many roundings to a line or plane lie in it. */
const FLAT = 8;

/**
 * Whether all points lie, to rounding, on the line or plane through `mean` that every direction of
 * `acrossAll` is square to.
 */
export function liesFlat(cloud: Cloud, mean: number[], acrossAll: number[][]): boolean {
  return farthestAcross(cloud, mean, acrossAll) <= FLAT * cloud.grain;
}

/** Largest distance, in scaled units, of any point from that line or plane. */
function farthestAcross(
  { columns, count, middle, scale }: Cloud,
  mean: number[],
  acrossAll: number[][],
): number {
  let farthest = 0;
  for (let i = 0; i < count; i++) {
    let square = 0;
    for (const across of acrossAll) {
      let along = 0;
      for (let j = 0; j < columns.length; j++) {
        along += ((columns[j]![i]! - middle[j]!) / scale - mean[j]!) * across[j]!;
      }
      square += along * along;
    }
    if (square > farthest) farthest = square;
  }
  return Math.sqrt(farthest);
}
