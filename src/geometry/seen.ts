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

/** All points of a feature, and room to look at them in. */
export interface Look<State> {
  cloud: Cloud;
  feature: Feature<State>;
  sides: Sides;
  whole: Problem<State>;
  distances: Float64Array;
  one: Block;
}

export function lookAt<State>(cloud: Cloud, feature: Feature<State>, sides: Sides): Look<State> {
  const whole = feature.problemOn(cloud);
  const distances = new Float64Array(Math.min(BLOCK_ROWS, cloud.count));
  return { cloud, feature, sides, whole, distances, one: emptyBlock(whole.unknowns, 1) };
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
const FEW = 128;

/** Of a few points drawn evenly from all rows, those farthest out in each part of the wall. */
export function firstSeen<State>(look: Look<State>, state: State): Seen {
  const { count } = look.cloud;
  const drawn: number[] = [];
  const random = seededRandom(FEW);
  const stretch = Math.max(count / FEW, 1);
  for (let from = 0; from < count; from += stretch) {
    drawn.push(
      count <= FEW
        ? from
        : Math.floor(from + random.uniform() * (count - from < stretch ? count - from : stretch)),
    );
  }
  return farthestByPart(look, state, drawn);
}

/** Of all points whose height is above `beyond`, those farthest out in each part of the wall. */
export function seenBeyond<State>(look: Look<State>, state: State, beyond: number): Seen {
  const { sides } = look;
  const out: number[] = [];
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const most = sides === 'inner' ? Number.POSITIVE_INFINITY : beyond;
  const least = sides === 'outer' ? Number.NEGATIVE_INFINITY : -beyond;
  eachBlock(look, state, (distances, from, to) => {
    for (let i = 0; i < to - from; i++) {
      const f = distances[i]!;
      if (f < low) low = f;
      if (f > high) high = f;
      if (f > most || f < least) out.push(from + i);
    }
  });
  const { rows } = farthestByPart(look, state, out);
  return { rows, low, high };
}

function eachBlock<State>(
  { cloud, feature, distances }: Look<State>,
  state: State,
  see: (distances: Float64Array, from: number, to: number) => void,
): void {
  for (let from = 0; from < cloud.count; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, cloud.count);
    feature.distances(cloud, state, from, to, distances);
    see(distances, from, to);
  }
}

/** Of some rows, those farthest out in each part of the wall. */
function farthestByPart<State>(
  { whole, one, sides }: Look<State>,
  state: State,
  asked: readonly number[],
): Seen {
  const outer = new Map<number, { row: number; f: number }>();
  const inner = new Map<number, { row: number; f: number }>();
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const row of asked) {
    whole.rows(state, row, row + 1, one);
    const f = one.residuals[0]!;
    low = Math.min(low, f);
    high = Math.max(high, f);
    const part = partOf(one);
    if (sides !== 'inner' && !((outer.get(part)?.f ?? Number.NaN) >= f))
      outer.set(part, { row, f });
    if (sides !== 'outer' && !((inner.get(part)?.f ?? Number.NaN) <= f))
      inner.set(part, { row, f });
  }
  const rows = new Set([...outer.values(), ...inner.values()].map(({ row }) => row));
  return { rows: [...rows], low, high };
}

/** Parts of a wall, told apart by the signs of the columns: quarters of the turn, halves of depth. */
function partOf({ columns }: Block): number {
  let part = 0;
  for (let j = 0; j < columns.length; j++) if (columns[j]![0]! > 0) part |= 1 << j;
  return part;
}

/** Points within this of the least or greatest deviation touch, in scaled units. */
const TOUCHES = 1e-9;
const MOST_TOUCHING = 256;

/** Rows of the points that touch, as many as may matter. */
export function touching<State>(look: Look<State>, state: State): number[] {
  const { low, high } = seenBeyond(look, state, Number.POSITIVE_INFINITY);
  const rows: number[] = [];
  eachBlock(look, state, (distances, from, to) => {
    for (let i = 0; i < to - from && rows.length < MOST_TOUCHING; i++) {
      const f = distances[i]!;
      if (f - low <= TOUCHES || high - f <= TOUCHES) rows.push(from + i);
    }
  });
  return rows;
}

/** The farthest out of each of so many even stretches of rows. */
export function farthestOfStretches<State>(
  look: Look<State>,
  state: State,
  stretches: number,
): number[] {
  const rows = new Map<number, { row: number; height: number }>();
  eachBlock(look, state, (distances, from, to) => {
    for (let i = 0; i < to - from; i++) {
      const f = distances[i]!;
      const height = worst({ low: f, high: f }, look.sides);
      const stretch = Math.floor(((from + i) * stretches) / look.cloud.count);
      const known = rows.get(stretch);
      if (known === undefined || height > known.height) {
        rows.set(stretch, { row: from + i, height });
      }
    }
  });
  return Array.from(rows.values(), ({ row }) => row);
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
