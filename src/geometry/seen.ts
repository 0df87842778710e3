import type { Problem } from '../num/gaussNewton.ts';
import { BLOCK_ROWS, type Block, emptyBlock } from '../num/normalEquations.ts';
import { seededRandom } from '../num/random.ts';
import type { Cloud } from './cloud.ts';
import type { Sides } from './tightRows.ts';

/** A feature's deviations, with and without what its moves change. */
export interface Feature<State> {
  /** of the points of a cloud, in the frame of the whole */
  problemOn(cloud: Cloud): Problem<State>;
  /** of rows `from` to `to` (not included) of a cloud into `out`, from 0; scaled units */
  distances(cloud: Cloud, state: State, from: number, to: number, out: Float64Array): void;
}

/** Some points that stick out, and how far the points asked lie at least and at most. */
export interface Seen {
  rows: number[];
  low: number;
  high: number;
}

/** Greatest height of all points; see tightRows.ts. */
export function worst({ low, high }: Omit<Seen, 'rows'>, sides: Sides): number {
  return sides === 'outer' ? high : sides === 'inner' ? -low : Math.max(high, -low);
}

/** Points enough to set out from. */
const FEW = 256;

/** Of a few hundred points drawn evenly from all rows, those farthest out in each part of the wall. */
export function firstSeen<State>(
  cloud: Cloud,
  feature: Feature<State>,
  state: State,
  sides: Sides,
): Seen {
  const count = Math.min(FEW, cloud.count);
  const random = seededRandom(FEW);
  const drawn = Array.from({ length: count }, (_, k) =>
    cloud.count <= FEW ? k : Math.floor(((k + random.uniform()) * cloud.count) / count),
  );
  return farthestByPart(cloud, feature, state, sides, drawn);
}

/** Of all points whose height is above `beyond`, those farthest out in each part of the wall. */
export function seenBeyond<State>(
  cloud: Cloud,
  feature: Feature<State>,
  state: State,
  sides: Sides,
  beyond: number,
): Seen {
  const out: number[] = [];
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const most = sides === 'inner' ? Number.POSITIVE_INFINITY : beyond;
  const least = sides === 'outer' ? Number.NEGATIVE_INFINITY : -beyond;
  eachBlock(cloud, feature, state, (distances, from, to) => {
    for (let i = 0; i < to - from; i++) {
      const f = distances[i]!;
      if (f < low) low = f;
      if (f > high) high = f;
      if (f > most || f < least) out.push(from + i);
    }
  });
  const { rows } = farthestByPart(cloud, feature, state, sides, out);
  return { rows, low, high };
}

function eachBlock<State>(
  cloud: Cloud,
  feature: Feature<State>,
  state: State,
  see: (distances: Float64Array, from: number, to: number) => void,
): void {
  const distances = new Float64Array(Math.min(BLOCK_ROWS, cloud.count));
  for (let from = 0; from < cloud.count; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, cloud.count);
    feature.distances(cloud, state, from, to, distances);
    see(distances, from, to);
  }
}

/** Some rows of a cloud, copied. */
export function rowsOf(cloud: Cloud, rows: readonly number[]): Cloud {
  const columns = cloud.columns.map((column) => {
    const some = new Float64Array(rows.length);
    for (let k = 0; k < rows.length; k++) some[k] = column[rows[k]!]!;
    return some;
  });
  return { ...cloud, count: rows.length, columns };
}

/** Of some rows, those farthest out in each part of the wall. */
function farthestByPart<State>(
  cloud: Cloud,
  { problemOn }: Feature<State>,
  state: State,
  sides: Sides,
  asked: readonly number[],
): Seen {
  const problem = problemOn(rowsOf(cloud, asked));
  const block = emptyBlock(problem.unknowns, asked.length);
  problem.rows(state, 0, asked.length, block);
  const outer = new Map<number, number>();
  const inner = new Map<number, number>();
  const f = block.residuals;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < asked.length; i++) {
    low = Math.min(low, f[i]!);
    high = Math.max(high, f[i]!);
    const part = partOf(block, i);
    if (sides !== 'inner' && !(f[outer.get(part) ?? -1]! >= f[i]!)) outer.set(part, i);
    if (sides !== 'outer' && !(f[inner.get(part) ?? -1]! <= f[i]!)) inner.set(part, i);
  }
  const rows = new Set([...outer.values(), ...inner.values()].map((i) => asked[i]!));
  return { rows: [...rows], low, high };
}

/** Parts of a wall, told apart by the signs of the columns: quarters of the turn, halves of depth. */
function partOf({ columns }: Block, row: number): number {
  let part = 0;
  for (let j = 0; j < columns.length; j++) if (columns[j]![row]! > 0) part |= 1 << j;
  return part;
}

/** Points within this of the least or greatest deviation touch, in scaled units. */
const TOUCHES = 1e-9;
const MOST_TOUCHING = 256;

/** Rows of the points that touch, as many as may matter. */
export function touching<State>(cloud: Cloud, feature: Feature<State>, state: State): number[] {
  const { low, high } = seenBeyond(cloud, feature, state, 'both', Number.POSITIVE_INFINITY);
  const rows: number[] = [];
  eachBlock(cloud, feature, state, (distances, from, to) => {
    for (let i = 0; i < to - from && rows.length < MOST_TOUCHING; i++) {
      const f = distances[i]!;
      if (f - low <= TOUCHES || high - f <= TOUCHES) rows.push(from + i);
    }
  });
  return rows;
}

/** The farthest out of each of so many even stretches of rows. */
export function farthestOfStretches<State>(
  cloud: Cloud,
  feature: Feature<State>,
  state: State,
  sides: Sides,
  stretches: number,
): number[] {
  const rows = new Map<number, { row: number; height: number }>();
  eachBlock(cloud, feature, state, (distances, from, to) => {
    for (let i = 0; i < to - from; i++) {
      const f = distances[i]!;
      const height = worst({ low: f, high: f }, sides);
      const stretch = Math.floor(((from + i) * stretches) / cloud.count);
      const known = rows.get(stretch);
      if (known === undefined || height > known.height) {
        rows.set(stretch, { row: from + i, height });
      }
    }
  });
  return Array.from(rows.values(), ({ row }) => row);
}
