import { symmetricEigen } from '../num/eigen.ts';
import { minimaxStep } from '../num/minimaxStep.ts';
import { emptyBlock } from '../num/normalEquations.ts';
import { levelAt, moved, rowsAt, sideOf, type Task } from './tightRows.ts';

/** Moves whose second differences tell a curvature: rounding and fourth order come to 1e-9, 1e-6. */
const APART = 1e-3;
/** Curvature less downward than this is rounding, or gains nothing. */
const DOWNWARD = 1e-5;
/** A direction square to unit directions to this is free of them. */
const FREE = 1e-9;

/**
 * Second change of the weighted heights of the held rows per two moves, moves * moves, symmetric.
 *
 * @param held heights, see tightRows.ts
 */
export function curvatureOf<State>(
  task: Task<State>,
  state: State,
  held: readonly number[],
  weights: readonly number[],
): number[] {
  const { problem, moves } = task;
  const block = emptyBlock(problem.unknowns, 1);
  const heightAfter = (i: number, si: number, j: number, sj: number) => {
    const step = new Float64Array(moves);
    step[i]! += si * APART;
    step[j]! += sj * APART;
    const next = moved(task, state, step);
    let sum = 0;
    held.forEach((at, k) => {
      const row = at % problem.residuals;
      problem.rows(next, row, row + 1, block);
      sum += weights[k]! * sideOf(task as Task<never>, at) * block.residuals[0]!;
    });
    return sum;
  };
  const middle = heightAfter(0, 0, 0, 0);
  const out = new Array<number>(moves * moves).fill(0);
  for (let i = 0; i < moves; i++) {
    const bend = heightAfter(i, 1, i, 0) - 2 * middle + heightAfter(i, -1, i, 0);
    out[i * moves + i] = bend / (APART * APART);
    for (let j = 0; j < i; j++) {
      const alike = heightAfter(i, 1, j, 1) + heightAfter(i, -1, j, -1);
      const apart = heightAfter(i, 1, j, -1) + heightAfter(i, -1, j, 1);
      out[i * moves + j] = out[j * moves + i] = (alike - apart) / (4 * APART * APART);
    }
  }
  return out;
}

/** The same curvature along every move. */
export function evenly(n: number, curvature: number): number[] {
  const out = new Array<number>(n * n).fill(0);
  for (let i = 0; i < n; i++) out[i * n + i] = curvature;
  return out;
}

/** How much curvature is given across the held rows, in turn, until none is downward. */
const ACROSS = [0, 1, 10, 100];

/**
 * A definite matrix with the same curvature along every move that leaves the held heights level, as
 * far as that is upward (the convexity that augmented Lagrangians add; the held rows themselves
 * decide across it).
 *
 * @param gradients of the held heights
 */
export function definiteAlong(
  curvature: readonly number[],
  gradients: readonly (readonly number[])[],
  n: number,
  least: number,
): number[] {
  for (const across of ACROSS) {
    const out = curvature.slice();
    for (const g of gradients) {
      for (let i = 0; i < n; i++)
        for (let j = 0; j < n; j++) out[i * n + j]! += across * g[i]! * g[j]!;
    }
    if (symmetricEigen(out, n).values[0]! >= least) return out;
  }
  return definite(curvature, n, least);
}

/** The same matrix with downward curvatures turned upward and none below `least`. */
export function definite(curvature: readonly number[], n: number, least: number): number[] {
  const { values, vectors } = symmetricEigen(curvature, n);
  const out = new Array<number>(n * n).fill(0);
  values.forEach((value, k) => {
    const size = Math.max(Math.abs(value), least);
    const v = vectors[k]!;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) out[i * n + j]! += size * v[i]! * v[j]!;
    }
  });
  return out;
}

/**
 * Where a move that leaves all held heights level leads down (a saddle, or the slope beside one: an
 * inscribed circle between two points, free to slip to either side), a state lower down; null where
 * there is none. Each trial goes along that direction and is then leveled out again.
 *
 * @param gradients change of each held height with the moves
 * @param curvature as `curvatureOf` gives it
 * @param present greatest height at `state`
 */
export function downhill<State>(
  task: Task<State>,
  state: State,
  gradients: readonly (readonly number[])[],
  curvature: readonly number[],
  present: number,
): State | null {
  const direction = mostDownward(gradients, curvature, task.moves);
  if (direction === null) return null;
  let best: State | null = null;
  let least = present;
  for (let part = 0.25; part > 1e-7; part /= 2) {
    for (const sign of [1, -1]) {
      const along = direction.map((v) => sign * part * v);
      const next = leveled(task, moved(task, state, along));
      const height = levelAt(task, next);
      if (height < least) {
        least = height;
        best = next;
      }
    }
  }
  return best;
}

/** The state after the shortest step that lowers the greatest height to where others meet it. */
export function leveled<State>(task: Task<State>, state: State): State {
  const step = minimaxStep(rowsAt(task, state), evenly(task.moves, 1), []);
  return step === null ? state : moved(task, state, step.x);
}

/** Unit direction square to all gradients along which the curvature is most downward, or null. */
function mostDownward(
  gradients: readonly (readonly number[])[],
  curvature: readonly number[],
  n: number,
): number[] | null {
  const spanned: number[][] = [];
  for (const gradient of gradients) {
    const rest = squaredTo(gradient, spanned);
    const length = Math.hypot(...rest);
    if (length > FREE * Math.hypot(...gradient)) spanned.push(rest.map((v) => v / length));
  }
  const columns = Array.from({ length: n }, (_, j) => {
    const unit = Array.from({ length: n }, (_, i) => (i === j ? 1 : 0));
    return squaredTo(unit, spanned);
  });
  const inside = new Array<number>(n * n).fill(0);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      for (let k = 0; k < n; k++) {
        for (let l = 0; l < n; l++) {
          inside[i * n + j]! += columns[i]![k]! * curvature[k * n + l]! * columns[j]![l]!;
        }
      }
    }
  }
  const { values, vectors } = symmetricEigen(inside, n);
  return values[0]! < -DOWNWARD ? vectors[0]! : null;
}

/** What is left of a vector without its parts along unit vectors square to each other. */
function squaredTo(vector: readonly number[], units: readonly (readonly number[])[]): number[] {
  const rest = [...vector];
  for (let twice = 0; twice < 2; twice++) {
    for (const unit of units) {
      const part = unit.reduce((s, v, j) => s + v * rest[j]!, 0);
      for (let j = 0; j < rest.length; j++) rest[j]! -= part * unit[j]!;
    }
  }
  return rest;
}
