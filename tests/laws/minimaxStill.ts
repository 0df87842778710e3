/** Holds a minimax answer against its proof and against one linear programme about it. */
import { expect } from 'vitest';
import { type Axis, linearStep, type Moves } from './minimaxLinear.ts';
import { type Claimed, type Criterion, faults } from './optimum.ts';

/**
 * The library keeps every row to 1e-10 of the range of the deviations, and every reduced cost to
 * 1e-10 with moves of at most one range, up to six of them: so much may a promised gain be off, 1e-9
 * of the range. Ranges here are about 0.1 mm, which makes it 1e-10 mm.
 */
export const LIBRARY = 1e-9;

/** Ours is proved, and cannot be bettered by the library from where it is. */
export function checkStill(
  columns: Float64Array[],
  criterion: Criterion,
  moves: Moves,
  ours: Claimed,
): void {
  expect(faults(columns, criterion, ours)).toEqual([]);
  const axis: Axis =
    ours.axis === undefined
      ? { point: ours.center!, direction: [0, 0, 1], halfAngle: 0 }
      : { ...ours.axis, halfAngle: 0 };
  const size = ours.deviation.range;
  const { gain } = linearStep(columns, criterion, moves, axis, size);
  expect(Math.abs(gain)).toBeLessThan(LIBRARY * size);
}
