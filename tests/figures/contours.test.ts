import { describe, expect, it } from 'vitest';
import { contourer, type Point } from '../../src/figures/contours.ts';
import type { Sampled } from '../../src/figures/sample.ts';

const COLUMNS = 72;
const ROWS = 30;
const FRAME = { width: 2 * Math.PI, height: 1 };

function sampled(f: (theta: number, v: number) => number, cut = 0): Sampled {
  const values = Float64Array.from({ length: COLUMNS * (ROWS + 1) }, (_, i) =>
    f(cut + (2 * Math.PI * (i % COLUMNS)) / COLUMNS, Math.floor(i / COLUMNS) / ROWS),
  );
  return { columns: COLUMNS, rows: ROWS, cut, values };
}

function area(rings: readonly (readonly Point[])[]): number {
  let sum = 0;
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      sum += (p[0] * q[1] - q[0] * p[1]) / 2;
    });
  }
  return Math.abs(sum);
}

describe('contours on the unrolled wall', () => {
  it('lie where the field has their value', () => {
    const shape = contourer(
      sampled((theta) => Math.cos(2 * theta)),
      FRAME,
    );
    for (const level of [-0.5, 0.3, 0.8]) {
      const lines = shape.linesAt(level);
      expect(lines).toHaveLength(4);
      for (const { points, closed } of lines) {
        expect(closed).toBe(false);
        // Straight between samples: off by at most (4 / 8) (5 degrees)^2 of height, and the slope is over 1.
        for (const [x] of points) expect(Math.abs(Math.cos(2 * x) - level)).toBeLessThan(0.004);
        const depths = points.map((p) => p[1]);
        expect(Math.min(...depths)).toBeCloseTo(0, 9);
        expect(Math.max(...depths)).toBeCloseTo(1, 9);
      }
    }
  });

  it('meet themselves across the cut', () => {
    const f = (theta: number, v: number) => Math.sin(theta + 0.4) + 1.3 * v;
    const shape = contourer(sampled(f), FRAME);
    let crossings = 0;
    for (const level of [0.2, 0.5, 0.9, 1.4]) {
      const ends = shape
        .linesAt(level)
        .flatMap(({ points, closed }) => (closed ? [] : [points[0]!, points[points.length - 1]!]));
      const left = ends
        .filter(([x]) => x < 1e-9)
        .map(([, y]) => y)
        .sort();
      const right = ends
        .filter(([x]) => x > FRAME.width - 1e-9)
        .map(([, y]) => y)
        .sort();
      expect(right).toHaveLength(left.length);
      left.forEach((y, i) => {
        expect(right[i]).toBeCloseTo(y, 9);
      });
      crossings += left.length;
    }
    expect(crossings).toBeGreaterThanOrEqual(3);
  });

  it('do not change but for place when the cut is moved', () => {
    const f = (theta: number, v: number) => Math.cos(theta - 1) * (1 - v);
    const quarter = (2 * Math.PI * 18) / COLUMNS;
    const at = (cut: number) => area(contourer(sampled(f, cut), FRAME).regionAbove(0.3));
    expect(at(quarter)).toBeCloseTo(at(0), 9);
    expect(at(quarter)).toBeGreaterThan(0.5);
  });

  it('fill the area of the region, rim, bottom and holes counted', () => {
    const shape = contourer(
      sampled((_, v) => v),
      FRAME,
    );
    expect(area(shape.regionAbove(0.25))).toBeCloseTo(0.75 * FRAME.width, 6);
    const hole = contourer(
      sampled((theta, v) => Math.hypot(theta - Math.PI, 3 * (v - 0.5))),
      FRAME,
    );
    // An ellipse of half axes 1 and 1/3 is cut out; the polygon is inside it, by about 1 % of its area.
    const left = area(hole.regionAbove(1));
    expect(FRAME.width - left).toBeGreaterThan(0.98 * (Math.PI / 3));
    expect(FRAME.width - left).toBeLessThan(1.001 * (Math.PI / 3));
    const lines = hole.linesAt(1);
    expect(lines.map((line) => line.closed)).toEqual([true]);
  });

  it('draw no line along the rim, the bottom or the cut', () => {
    const shape = contourer(
      sampled((theta, v) => Math.cos(theta) + 0.2 * v),
      FRAME,
    );
    for (const { points } of shape.linesAt(0.4)) {
      for (let i = 0; i + 1 < points.length; i++) {
        const [a, b] = [points[i]!, points[i + 1]!];
        const along = (k: 0 | 1, end: number) =>
          [0, end].some((e) => Math.abs(a[k] - e) < 1e-9 && Math.abs(b[k] - e) < 1e-9);
        expect(along(0, FRAME.width) || along(1, FRAME.height)).toBe(false);
      }
    }
  });

  it('leave what is not known out of every region, a first cell of the last row too', () => {
    const f = (theta: number, v: number) => (v > 0.99 && theta < 1 ? Number.NaN : 1);
    const shape = contourer(sampled(f), FRAME);
    const missing = FRAME.width - area(shape.regionAbove(-5));
    // 12 of 72 columns lack their last row, half a step deep and half a column wider at either end at most.
    expect(missing).toBeGreaterThan((11 / 72) * FRAME.width * (0.4 / ROWS));
    expect(missing).toBeLessThan((13 / 72) * FRAME.width * (1.01 / ROWS));
  });
});
