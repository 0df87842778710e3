/** Where a first pass is felt for hollows: far from every reading, where it takes most. Constructed surveys. */
import { describe, expect, it } from 'vitest';
import { betweenMarks } from '../../src/bore/between.ts';
import type { PassMatter } from '../../src/bore/passes.ts';
import type { Field, Sighting } from '../../src/bore/types.ts';

const RADIUS = 30;
const LENGTH = 60;
const COLUMNS = 120;
const ROWS = 65;
const grid = {
  theta: Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS),
  z: Float64Array.from({ length: ROWS }, (_, i) => (LENGTH * i) / (ROWS - 1)),
};
const fieldOf = (of: (theta: number, z: number) => number): Field =>
  Float64Array.from({ length: COLUMNS * ROWS }, (_, k) =>
    of(grid.theta[k % COLUMNS]!, grid.z[Math.floor(k / COLUMNS)]!),
  );
const matter = (places = new Uint8Array(COLUMNS * ROWS).fill(1)) =>
  ({ surface: { grid }, places, radius: RADIUS }) as unknown as PassMatter;
const read = (
  instrument: Sighting['instrument'],
  thetas: readonly number[],
  depths: readonly number[],
) => depths.flatMap((z) => thetas.map((theta) => ({ instrument, theta, z }) as Sighting));
const hours = (n: number) => Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n);

describe('what is felt for before the first pass', () => {
  it('lies half-way between the marks, in the middle of the widest gap, where the pass takes at least half of its most', () => {
    // Read at 12 hours, 5 and 15 deep, and 55 deep: 35 deep lies 20 from the next.
    const marks = read('radius', hours(12), [5, 15, 55]);
    const cut = fieldOf((theta) => Math.max(0, 0.05 * Math.cos(theta)));
    const found = betweenMarks(matter(), cut, marks);
    expect(found.length).toBeGreaterThan(0);
    for (const { theta, z, takes } of found) {
      expect(takes).toBeGreaterThanOrEqual(0.025);
      expect(Math.cos(theta)).toBeGreaterThanOrEqual(0.5 - 1e-9);
      // No mark within the least gap that matters: 0.75 h of the clock, half of it either way.
      const near = Math.min(
        ...marks.map((mark) => {
          const turn = Math.abs(theta - mark.theta);
          return Math.hypot(RADIUS * Math.min(turn, 2 * Math.PI - turn), z - mark.z);
        }),
      );
      expect(near).toBeGreaterThan(((0.75 * Math.PI) / 6 / 2) * RADIUS);
    }
    expect(Math.abs(found[0]!.z - 35)).toBeLessThan(LENGTH / (ROWS - 1) + 1e-9);
  });

  it('is told of each place once, four at most, and of none where nothing is taken or nothing sits', () => {
    const marks = read('radius', hours(4), [30]);
    const cut = fieldOf(() => 0.05);
    const found = betweenMarks(matter(), cut, marks);
    expect(found).toHaveLength(4);
    found.forEach((a, i) => {
      for (const b of found.slice(i + 1)) {
        const turn = Math.abs(a.theta - b.theta);
        const apart = RADIUS * Math.min(turn, 2 * Math.PI - turn);
        expect(Math.hypot(apart, a.z - b.z)).toBeGreaterThan(RADIUS / 2);
      }
    });
    expect(
      betweenMarks(
        matter(),
        fieldOf(() => 0),
        marks,
      ),
    ).toEqual([]);
    expect(betweenMarks(matter(new Uint8Array(COLUMNS * ROWS)), cut, marks)).toEqual([]);
  });

  it('counts what a gauge touches: a diameter both its ends, three legs all three', () => {
    const cut = fieldOf((theta, z) =>
      Math.abs(z - 30) < 1 ? 0.05 * Math.max(0, Math.cos(theta) ** 3) : 0,
    );
    const dense = [27, 30, 33];
    const half = hours(48).slice(12, 36);
    // The worked side lies across from every reading.
    expect(betweenMarks(matter(), cut, read('radius', half, dense)).length).toBeGreaterThan(0);
    expect(betweenMarks(matter(), cut, read('two-point', half, dense))).toEqual([]);
    const third = hours(48).slice(16, 33);
    expect(betweenMarks(matter(), cut, read('radius', third, dense)).length).toBeGreaterThan(0);
    expect(betweenMarks(matter(), cut, read('three-leg', third, dense))).toEqual([]);
  });

  it('of marks that stand close nothing is left to be felt for', () => {
    const cut = fieldOf(() => 0.05);
    const depths = Array.from({ length: 13 }, (_, i) => 5 * i);
    expect(betweenMarks(matter(), cut, read('radius', hours(24), depths))).toEqual([]);
  });
});
