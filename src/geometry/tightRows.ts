import type { Problem } from '../num/gaussNewton.ts';
import type { Rows } from '../num/minimaxStep.ts';
import type { Block } from '../num/normalEquations.ts';

/** Which deviations are to be kept down: outward ones, inward ones, or both alike. */
export type Sides = 'outer' | 'inner' | 'both';

/** Deviations to keep down, and the moves that may do it. */
export interface Task<State> {
  problem: Problem<State>;
  sides: Sides;
  /** how many of the problem's unknowns, counted from the first, may move */
  moves: number;
  /** room for all rows of the problem, or more */
  room: Block;
}

/**
 * A height is a deviation counted from the asked side: heights 0 to residuals - 1 are the outward
 * deviations (the inward ones on side `inner`), the rest, on side `both`, the inward ones.
 */
export function sideOf({ problem, sides }: Task<never>, height: number): 1 | -1 {
  return sides === 'inner' || height >= problem.residuals ? -1 : 1;
}

/** Greatest height at a state; NaN where one is NaN. */
export function levelAt<State>({ problem, sides, room }: Task<State>, state: State): number {
  problem.rows(state, 0, problem.residuals, room);
  let level = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < problem.residuals; i++) {
    const f = room.residuals[i]!;
    const height = sides === 'outer' ? f : sides === 'inner' ? -f : Math.abs(f);
    // NaN must not hide behind a comparison.
    if (!(height <= level)) level = height;
  }
  return level;
}

/** All heights at a state and how each changes with the moves. */
export function rowsAt<State>(task: Task<State>, state: State): Rows {
  const { problem, sides, moves, room } = task;
  const count = problem.residuals;
  problem.rows(state, 0, count, room);
  const total = sides === 'both' ? 2 * count : count;
  // Plain arrays: small ones are made and let go of faster.
  const a: number[] = [];
  const b: number[] = [];
  for (let at = 0; at < total; at++) {
    const row = at < count ? at : at - count;
    const side = sideOf(task as Task<never>, at);
    b.push(side * room.residuals[row]!);
    for (let j = 0; j < moves; j++) a.push(side * room.columns[j]![row]!);
  }
  return { a, b, count: total, unknowns: moves };
}

/** The state after a step over the task's moves. */
export function moved<State>({ problem }: Task<State>, state: State, step: ArrayLike<number>) {
  const all = new Float64Array(problem.unknowns);
  for (let j = 0; j < step.length; j++) all[j] = step[j]!;
  return problem.move(state, all);
}
