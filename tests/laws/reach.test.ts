/** What a wheel reaches, against every stand of the wheel tried one by one, and against circles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reach, rowsCovered, sagitta } from '../../src/bore/reach.ts';
import type { Grid } from '../../src/bore/types.ts';
import { seededRandom } from '../../src/num/random.ts';

const gridOf = (columns: number, z: readonly number[]): Grid => ({
  theta: Float64Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns),
  z: Float64Array.from(z),
});

/** How far a wheel of radius r that touches a circle of radius R at angle 0 stands off it at `turn`, from the circles. */
function gap(R: number, r: number, turn: number): number {
  const c = R - r;
  // Where the ray from the bore's middle meets the wheel, the farther of the two points: |ray - centre| = r.
  const along = c * Math.cos(turn);
  const across = c * Math.sin(turn);
  const far = along + Math.sqrt(r * r - across * across);
  // Behind the wheel, or past its edge: NaN fails the question too.
  return far > 0 ? R - far : Number.POSITIVE_INFINITY;
}

const scene = fc.record({
  columns: fc.integer({ min: 4, max: 24 }),
  rows: fc.integer({ min: 1, max: 9 }),
  radius: fc.double({ min: 8, max: 60, noNaN: true }),
  share: fc.double({ min: 0.05, max: 0.98, noNaN: true }),
  width: fc.double({ min: 0.1, max: 60, noNaN: true }),
  seed: fc.integer(),
});

describe('the reach of a wheel', () => {
  it('is all that any stand of it cuts without cutting below the floor', () => {
    fc.assert(
      fc.property(scene, ({ columns, rows, radius, share, width, seed }) => {
        const random = seededRandom(seed);
        const z = [0];
        for (let i = 1; i < rows; i++) z.push(z[i - 1]! + 0.5 + 8 * random.uniform());
        const grid = gridOf(columns, z);
        const r = share * radius;
        const deviation = Float64Array.from({ length: columns * rows }, () => random.normal() / 5);
        const limit = deviation.map((e) => {
          const draw = random.uniform();
          if (draw < 0.1) return Number.POSITIVE_INFINITY;
          return draw < 0.4 ? 0 : Math.max(0, -e) * random.uniform();
        });
        const tool = { rigid: true, radius: r, width, bite: 1 };
        const found = reach(deviation, limit, grid, radius, tool);
        // Every stand: a column, and rows from..end that it covers.
        const best = new Float64Array(columns * rows).fill(Number.NEGATIVE_INFINITY);
        for (const [from, end] of standsOf(z, width)) {
          for (let at = 0; at < columns; at++) {
            const off = (k: number) =>
              gap(radius, r, (2 * Math.PI * ((k % columns) - at)) / columns);
            const cells: number[] = [];
            for (let row = from; row <= end; row++) {
              for (let it = 0; it < columns; it++) cells.push(row * columns + it);
            }
            const facing = cells.filter((k) => off(k) < Number.POSITIVE_INFINITY);
            const deep = Math.min(...facing.map((k) => deviation[k]! + limit[k]! + off(k)));
            for (const k of facing) best[k] = Math.max(best[k]!, deep - off(k));
          }
        }
        found.forEach((cut, k) => {
          const expected = Math.min(limit[k]!, Math.max(0, best[k]! - deviation[k]!));
          if (limit[k] !== Number.POSITIVE_INFINITY)
            expect(Math.abs(cut - expected)).toBeLessThan(1e-12);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('does not go into a groove narrower than the wheel is wide, and into a wider one it does', () => {
    // Round wall; 0.1 mm may come off in a ring of depths only. Constructed.
    const grid = gridOf(
      60,
      Array.from({ length: 41 }, (_, i) => i),
    );
    const deviation = new Float64Array(60 * 41).fill(-0.1);
    const ring = (from: number, to: number) =>
      deviation.map((_, k) =>
        grid.z[Math.floor(k / 60)]! >= from && grid.z[Math.floor(k / 60)]! <= to ? 0.1 : 0,
      );
    const tool = { rigid: true, radius: 12, width: 10, bite: 1 };
    expect(Math.max(...reach(deviation, ring(15, 24), grid, 25, tool))).toBe(0);
    expect([...reach(deviation, ring(15, 25), grid, 25, tool)]).toEqual([...ring(15, 25)]);
    // Half of the wheel may hang out over the rim.
    expect([...reach(deviation, ring(0, 5), grid, 25, tool)]).toEqual([...ring(0, 5)]);
    expect(Math.max(...reach(deviation, ring(0, 4), grid, 25, tool))).toBe(0);
  });

  it('in a slot along the bore it bottoms on both edges: the depth is the sagitta between the circles', () => {
    // 25 mm bore radius, slot 8 columns of 3 degrees to either side. Constructed; the circles give the depth.
    const grid = gridOf(120, [0, 10, 20]);
    const deviation = new Float64Array(360).fill(-0.6);
    const limit = deviation.map((_, k) => (Math.min(k % 120, 120 - (k % 120)) < 8 ? 0.6 : 0));
    for (const r of [8, 12, 20]) {
      const cut = reach(deviation, limit, grid, 25, { rigid: true, radius: r, width: 5, bite: 1 });
      const edge = gap(25, r, (8 * 3 * Math.PI) / 180);
      expect(Math.abs(cut[0]! - Math.min(0.6, edge))).toBeLessThan(1e-12);
    }
  });

  it('takes a ridge on a worn wall right down: the target is a hollow that any smaller wheel fits', () => {
    const grid = gridOf(120, [0, 5, 10, 15, 20]);
    // A ridge of one column, 0.1 mm proud; all else 0.2 mm low, where nothing may come off. Constructed.
    const deviation = Float64Array.from({ length: 600 }, (_, k) => (k % 120 === 30 ? -0.1 : 0.2));
    const limit = deviation.map((e) => Math.max(0, -e));
    const cut = reach(deviation, limit, grid, 25, { rigid: true, radius: 20, width: 15, bite: 1 });
    expect([...cut]).toEqual([...limit]);
  });

  it('a wheel as large as the bore reaches nothing; what follows the wall is held by nothing', () => {
    const grid = gridOf(12, [0, 1]);
    const deviation = new Float64Array(24).fill(-0.1);
    const limit = deviation.map((_, k) => (k === 5 ? 0.1 : 0));
    const drum = { rigid: true, radius: 25, width: 5, bite: 1 };
    expect(Math.max(...reach(deviation, limit, grid, 25, drum))).toBe(0);
    expect([...reach(deviation, limit, grid, 25, { ...drum, rigid: false })]).toEqual([...limit]);
  });
});

describe('the shape of a wheel', () => {
  it('stands off by the sagitta: close to half the arc squared times the difference of curvatures', () => {
    // Sagitta of a circle, x^2 / (2 r), to second order: any handbook of geometry.
    const sag = sagitta(720, 40, 25, 0.2);
    sag.forEach((off, j) => {
      const arc = (40 * 2 * Math.PI * j) / 720;
      const second = ((arc * arc) / 2) * (1 / 25 - 1 / 40);
      expect(Math.abs(off - second)).toBeLessThan(2 * off * (arc / 25) ** 2 + 1e-13);
    });
    expect(sag.length).toBeGreaterThan(5);
  });

  it('covers rows that span its width, and keeps half of it in the bore', () => {
    expect(rowsCovered(Float64Array.of(0, 1, 2, 3, 4, 5), 2)).toEqual([
      [0, 1],
      [0, 2],
      [1, 3],
      [2, 4],
      [3, 5],
      [4, 5],
    ]);
    expect(rowsCovered(Float64Array.of(0, 1, 2), 30)).toEqual([[0, 2]]);
  });
});

/** Stands by their first covered row or by their last, straight from the definition: fewest rows that span the width. */
function standsOf(z: readonly number[], width: number): [number, number][] {
  const last = z.length - 1;
  const found = new Set<string>();
  for (let from = 0; from <= last; from++) {
    for (let end = from; end <= last; end++) {
      const span = z[end]! - z[from]!;
      const inner = from > 0 && end < last;
      const shorter = end > from ? z[end - 1]! - z[from]! : -1;
      const enough = span >= width && shorter < width;
      const overRim = from === 0 && span >= width / 2 && (end === 0 || shorter < width);
      const overEnd = end === last && span >= width / 2 && span < width;
      const all = from === 0 && end === last && span < width / 2;
      if (inner ? enough : enough || overRim || overEnd || all) found.add(`${from} ${end}`);
    }
  }
  return [...found].map((key) => key.split(' ').map(Number) as [number, number]);
}
