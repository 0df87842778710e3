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
  const cut = fieldOf(() => 0.05);

  it('lies half-way between the marks, round the clock and along the depth, where a hollow can hide', () => {
    // 12 hours at 5, 15 and 55 deep of 60: gaps of the clock of 1 h (0.75 h is narrow), of the depth of 10 and 40 mm (11.8
    // mm is narrow: 0.75 h of a radius of 30).
    const found = betweenMarks(matter(), cut, read('radius', hours(12), [5, 15, 55]));
    const round = found.filter(({ halfway }) => halfway === 'clock');
    expect(round).toHaveLength(3 * 12);
    for (const { theta, z } of round) {
      expect([5, 15, 55]).toContain(z);
      expect(((theta * 6) / Math.PI) % 1).toBeCloseTo(0.5, 9);
    }
    const along = found.filter(({ halfway }) => halfway === 'depth');
    expect(along).toHaveLength(24);
    for (const { z, takes } of along) {
      expect(z).toBeCloseTo(35, 9);
      expect(takes).toBeCloseTo(0.05, 9);
    }
  });

  it('is only where the pass takes half of its most or more, and where something sits', () => {
    const marks = read('radius', hours(12), [5, 15, 55]);
    const side = fieldOf((theta) => Math.max(0, 0.05 * Math.cos(theta)));
    const found = betweenMarks(matter(), side, marks);
    expect(found.length).toBeGreaterThan(0);
    // Between columns of the grid a field is taken straight: below a cosine by no more than 0.04 %.
    for (const { theta } of found) expect(Math.cos(theta)).toBeGreaterThan(0.4999);
    expect(
      betweenMarks(
        matter(),
        fieldOf(() => 0),
        marks,
      ),
    ).toEqual([]);
    expect(betweenMarks(matter(new Uint8Array(COLUMNS * ROWS)), cut, marks)).toEqual([]);
    expect(betweenMarks(matter(), cut, [])).toEqual([]);
  });

  it('counts what a gauge touches: a diameter both its ends, three legs all three', () => {
    const clockwise = (instrument: Sighting['instrument'], count: number, of: number) =>
      betweenMarks(matter(), cut, read(instrument, hours(of).slice(0, count), [30])).filter(
        ({ halfway }) => halfway === 'clock',
      );
    expect(clockwise('radius', 6, 12)).toHaveLength(6);
    expect(clockwise('two-point', 6, 12)).toHaveLength(12);
    expect(clockwise('three-leg', 4, 12)).toHaveLength(12);
  });

  it('the ends beyond the first and the last depth count as well; of marks that stand close nothing is left', () => {
    const dense = read('radius', hours(24), [20, 30, 40]);
    const found = betweenMarks(matter(), cut, dense);
    expect(new Set(found.map(({ z }) => z))).toEqual(new Set([10, 50]));
    // No depth was read on their other side.
    expect(new Set(found.map(({ halfway }) => halfway))).toEqual(new Set(['face']));
    const depths = Array.from({ length: 13 }, (_, i) => 5 * i);
    expect(betweenMarks(matter(), cut, read('radius', hours(24), depths))).toEqual([]);
  });
});
