import type { Problem } from '../num/gaussNewton.ts';
import { BLOCK_ROWS, type Block, emptyBlock } from '../num/normalEquations.ts';
import type { Sides } from './tightRows.ts';

/** Greatest height of all points; see tightRows.ts. */
export function worst({ low, high }: Seen, sides: Sides): number {
  return sides === 'outer' ? high : sides === 'inner' ? -low : Math.max(high, -low);
}

/** Points within this of the least or greatest deviation touch, in scaled units. */
const TOUCHES = 1e-9;
const MOST_TOUCHING = 256;

/** Rows of the points that touch, as many as may matter. */
export function touching<State>(
  problem: Problem<State>,
  state: State,
  { low, high }: Seen,
): number[] {
  const block = emptyBlock(problem.unknowns, problem.residuals);
  problem.rows(state, 0, problem.residuals, block);
  const rows: number[] = [];
  for (let i = 0; i < problem.residuals && rows.length < MOST_TOUCHING; i++) {
    const f = block.residuals[i]!;
    if (f - low <= TOUCHES || high - f <= TOUCHES) rows.push(i);
  }
  return rows;
}

export interface Seen {
  rows: number[];
  low: number;
  high: number;
}

/** Parts of a wall, told apart by the signs of the columns: quarters of the turn, halves of depth. */
const MOST_COLUMNS = 6;

/**
 * The points farthest out in each part of the wall, on the asked sides, as far as they are farther
 * out than `beyond`; one pass.
 *
 * @param block room for BLOCK_ROWS rows, or for all of them
 */
export function farthestOut<State>(
  problem: Problem<State>,
  state: State,
  sides: Sides,
  block: Block,
  beyond = Number.NEGATIVE_INFINITY,
): Seen {
  const parts = 2 ** Math.min(problem.unknowns, MOST_COLUMNS);
  const outer = { rows: new Int32Array(parts).fill(-1), height: new Float64Array(parts) };
  const inner = { rows: new Int32Array(parts).fill(-1), height: new Float64Array(parts) };
  outer.height.fill(beyond);
  inner.height.fill(beyond);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let from = 0; from < problem.residuals; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, problem.residuals);
    problem.rows(state, from, to, block);
    for (let i = 0; i < to - from; i++) {
      const f = block.residuals[i]!;
      if (f < low) low = f;
      if (f > high) high = f;
      // Nearly all lie within; only the rest need to be told apart.
      if (!(f > beyond || -f > beyond)) continue;
      const part = partOf(block, i);
      if (sides !== 'inner' && f > outer.height[part]!) {
        outer.height[part] = f;
        outer.rows[part] = from + i;
      }
      if (sides !== 'outer' && -f > inner.height[part]!) {
        inner.height[part] = -f;
        inner.rows[part] = from + i;
      }
    }
  }
  const rows = [...outer.rows, ...inner.rows].filter((row) => row >= 0);
  return { rows: Array.from(new Set(rows)), low, high };
}

function partOf({ columns }: Block, row: number): number {
  let part = 0;
  for (let j = 0; j < columns.length && j < MOST_COLUMNS; j++) {
    if (columns[j]![row]! > 0) part |= 1 << j;
  }
  return part;
}

/** The farthest out of each of so many even stretches of rows. */
export function farthestOfStretches<State>(
  problem: Problem<State>,
  state: State,
  sides: Sides,
  stretches: number,
): number[] {
  const count = Math.min(stretches, problem.residuals);
  const block = emptyBlock(problem.unknowns, Math.ceil(problem.residuals / count));
  return Array.from({ length: count }, (_, k) => {
    const from = Math.floor((k * problem.residuals) / count);
    const to = Math.floor(((k + 1) * problem.residuals) / count);
    problem.rows(state, from, to, block);
    let row = from;
    let greatest = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < to - from; i++) {
      const f = block.residuals[i]!;
      const height = sides === 'outer' ? f : sides === 'inner' ? -f : Math.abs(f);
      if (height > greatest) {
        greatest = height;
        row = from + i;
      }
    }
    return row;
  });
}
