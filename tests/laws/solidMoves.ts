/** Moves of points, and laws that every feature in space keeps, told once for cylinders and cones. */
import fc from 'fast-check';
import { it } from 'vitest';
import { seededRandom } from '../../src/num/random.ts';
import { dot, randomDirection, squareTo } from './generated.ts';

/** Fits the points and their image by a linear map, a shift and a scale, and compares the answers. */
export type Same<Set> = (set: Set, rows: number[][], shift: number[], scale: number) => void;

const shifts = fc.double({ min: -1000, max: 1000, noNaN: true });
const scales = fc.double({ min: 0.001, max: 1000, noNaN: true });

export function movesWithItsPoints<Set>(
  sets: fc.Arbitrary<Set>,
  same: Same<Set>,
  runs: { numRuns: number },
): void {
  it('turns and moves with its points, whatever the axis', () => {
    fc.assert(
      fc.property(sets, fc.integer(), shifts, shifts, shifts, (set, seed, ...shift) => {
        const first = randomDirection(seededRandom(seed));
        const [second, third] = squareTo(first);
        same(set, [first, second, third], shift, 1);
      }),
      runs,
    );
  });

  it('is mirrored, and grows, with its points', () => {
    fc.assert(
      fc.property(sets, scales, (set, k) => {
        const swapped = [
          [0, k, 0],
          [k, 0, 0],
          [0, 0, k],
        ];
        same(set, swapped, [0, 0, 0], k);
      }),
      runs,
    );
  });
}

/** Every point through a linear map and a shift. */
export function mapped(columns: Float64Array[], rows: number[][], shift: number[]): Float64Array[] {
  return rows.map((row, d) =>
    columns[0]!.map(
      (_, i) =>
        shift[d]! +
        dot(
          row,
          columns.map((column) => column[i]!),
        ),
    ),
  );
}

export function shuffled(columns: Float64Array[], seed: number): Float64Array[] {
  const random = seededRandom(seed);
  const order = Array.from(columns[0]!, (_, row) => ({ row, key: random.uniform() }));
  order.sort((a, b) => a.key - b.key);
  return columns.map((column) => Float64Array.from(order, ({ row }) => column[row]!));
}
