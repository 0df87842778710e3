import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearAt, resample } from '../../src/figures/sample.ts';
import { bandOf, chooseSteps, usualRange } from '../../src/figures/steps.ts';

const TURN = 2 * Math.PI;
const grid = {
  theta: Float64Array.from({ length: 36 }, (_, i) => (TURN * i) / 36),
  z: Float64Array.from([0, 3, 7, 12, 18, 25, 30]),
};
const field = (f: (theta: number, z: number) => number) =>
  Float64Array.from({ length: 36 * 7 }, (_, i) =>
    f(grid.theta[i % 36]!, grid.z[Math.floor(i / 36)]!),
  );

describe('a field between its grid points', () => {
  it('is the same a turn further', () => {
    const wavy = field((theta, z) => Math.sin(3 * theta) + z);
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (theta, z) => {
          const here = linearAt(grid, wavy, theta, z);
          expect(linearAt(grid, wavy, theta + TURN, z)).toBeCloseTo(here, 8);
        },
      ),
    );
  });

  it('keeps grid points and is straight along the depth', () => {
    const straight = field((theta, z) => Math.cos(theta) + 0.25 * z);
    expect(linearAt(grid, straight, grid.theta[35]!, 30)).toBeCloseTo(straight[6 * 36 + 35]!, 12);
    expect(linearAt(grid, straight, 0, 9.5)).toBeCloseTo(1 + 0.25 * 9.5, 12);
  });

  it('is not known outside the bore, nor beside what is not known', () => {
    const holed = field((theta, z) => (theta < 0.1 && z === 7 ? Number.NaN : 1));
    expect(linearAt(grid, holed, 0, 31)).toBeNaN();
    expect(linearAt(grid, holed, 0, -0.1)).toBeNaN();
    expect(linearAt(grid, holed, 0.05, 5)).toBeNaN();
    expect(linearAt(grid, holed, 0, 3)).toBe(1);
    expect(linearAt(grid, holed, Number.NaN, 3)).toBeNaN();
  });

  it('drawn out finer follows a smooth shape, wherever the cut', () => {
    const f = (theta: number, z: number) => Math.cos(2 * theta) + 0.02 * z * (1 - z / 40);
    for (const cut of [0, Math.PI, 1.234]) {
      const fine = resample(grid, field(f), 128, 40, cut);
      for (let row = 0; row <= 40; row++) {
        for (let column = 0; column < 128; column++) {
          const truth = f(cut + (TURN * column) / 128, (30 * row) / 40);
          // Catmull-Rom round the clock: h^3 |f'''| / 24 at most = 0.0018 at 10 degrees; the uneven depth of a
          // parabola adds at most its curvature 0.001 x 7^2 / 8 = 0.006 in the end intervals.
          expect(Math.abs(fine.values[row * 128 + column]! - truth)).toBeLessThan(0.008);
        }
      }
    }
  });

  it('drawn out finer spreads what is not known no further than its neighbours', () => {
    const holed = field((theta, z) => (theta < 0.1 && z === 7 ? Number.NaN : 2));
    const fine = resample(grid, holed, 72, 30, 0);
    const unknown = [...fine.values].flatMap((v, i) => (Number.isNaN(v) ? [i] : []));
    const columns = new Set(unknown.map((i) => i % 72));
    const rows = unknown.map((i) => Math.floor(i / 72));
    expect([...columns].sort((a, b) => a - b)).toEqual([0, 1, 71]);
    expect(Math.min(...rows)).toBeGreaterThan(3);
    expect(Math.max(...rows)).toBeLessThan(12);
    expect([...fine.values].filter((v) => !Number.isNaN(v)).every((v) => v === 2)).toBe(true);
  });
});

describe('contour steps', () => {
  it('are round, in the units of the job', () => {
    expect(chooseSteps(-0.119, 0.121, 'in').stepInUnits).toBe(1);
    expect(chooseSteps(-0.119, 0.121, 'mm').stepInUnits).toBe(2);
    expect(chooseSteps(-0.02, 0.01, 'in').stepInUnits).toBe(0.2);
    expect(chooseSteps(-3, 2, 'mm').stepInUnits).toBe(50);
  });

  it('stay few, and never stand at zero', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0.001, max: 2, noNaN: true }),
        fc.constantFrom('in' as const, 'mm' as const),
        (least, span, units) => {
          const { levels, step, stepInUnits } = chooseSteps(least, least + span, units);
          expect(levels.length).toBeLessThanOrEqual(14);
          const nowhereRight = least > step || least + span < -step;
          if (nowhereRight) expect(levels.length).toBeGreaterThan(0);
          const room = least > 0 || least + span < 0 ? step * 1.000001 : 0;
          const lead = stepInUnits / 10 ** Math.floor(Math.log10(stepInUnits) + 1e-9);
          expect([1, 2, 5]).toContain(Number(lead.toPrecision(6)));
          for (const level of levels) {
            expect(level).toBeGreaterThan(least - room);
            expect(level).toBeLessThan(least + span + room);
            expect(Math.abs(Math.round(level / step))).toBeGreaterThan(0);
            expect(level / step).toBeCloseTo(Math.round(level / step), 6);
          }
        },
      ),
    );
  });

  it('are set by the usual range, so that one gouge does not empty the map', () => {
    const wall = new Float64Array(1000).fill(0.01);
    for (let i = 0; i < 500; i++) wall[i] = -0.05;
    for (let i = 0; i < 5; i++) wall[i] = 2;
    const usual = usualRange(wall);
    expect(usual).toEqual({ least: -0.05, greatest: 0.01 });
    const { stepInUnits, levels } = chooseSteps(-0.05, 2, 'mm', usual);
    expect(stepInUnits).toBe(1);
    expect(levels[levels.length - 1]).toBeCloseTo(0.14, 9);
  });

  it('are none where nothing is known or all is the same', () => {
    expect(chooseSteps(Number.NaN, Number.NaN, 'in').levels).toEqual([]);
    expect(chooseSteps(0, 0, 'in').levels).toEqual([]);
  });

  it('put a value into the band between its levels', () => {
    const levels = [-2, -1, 1, 2];
    expect([-3, -2, -1.5, 0, 1, 5].map((v) => bandOf(v, levels))).toEqual([0, 1, 1, 2, 3, 4]);
  });
});
