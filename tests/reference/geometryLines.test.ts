/** Straight lines against certified and published answers; sources stand in the data. */
import { describe, expect, it } from 'vitest';
import { lineAt, straightLine } from '../../src/geometry/profile.ts';
import lines from './data/lines.json' with { type: 'json' };

function solved(points: readonly (readonly number[])[], zero = 0) {
  const line = straightLine(
    points.map((p) => p[0]! - zero),
    points.map((p) => p[1]!),
  );
  if (line.status !== 'ok') throw new Error(line.status);
  return line;
}

function relative(value: number, certified: number): number {
  return Math.abs(value / certified - 1);
}

it('STRD-NORRIS: the certified line, its standard errors and scatter to 1e-10', () => {
  const { points, expected } = lines.norris;
  expect(points).toHaveLength(36);
  const line = solved(points);
  expect(relative(line.intercept, expected.B0)).toBeLessThan(expected.rel_tolerance);
  expect(relative(line.slope, expected.B1)).toBeLessThan(expected.rel_tolerance);
  expect(relative(line.interceptSd, expected.sB0)).toBeLessThan(expected.rel_tolerance);
  expect(relative(line.slopeSd, expected.sB1)).toBeLessThan(expected.rel_tolerance);
  expect(relative(line.residualSd, expected.residual_sd)).toBeLessThan(expected.rel_tolerance);
});

describe('GUM-H3: a calibration line with its uncertainties', () => {
  const { points, expected } = lines.thermometer;
  const line = solved(points, expected.t0);

  it('to every printed digit (half a unit of the last)', () => {
    expect(Math.abs(line.intercept - expected.y1)).toBeLessThan(0.5e-4);
    expect(Math.abs(line.interceptSd - expected.s_y1)).toBeLessThan(0.5e-4);
    expect(Math.abs(line.slope - expected.y2)).toBeLessThan(0.5e-5);
    expect(Math.abs(line.slopeSd - expected.s_y2)).toBeLessThan(0.5e-5);
    expect(Math.abs(line.correlation - expected.corr)).toBeLessThan(0.5e-2);
    expect(Math.abs(line.residualSd - expected.s)).toBeLessThan(0.5e-4);
    const at30 = lineAt(line, 30 - expected.t0);
    expect(Math.abs(at30.value - expected.b_at_30)).toBeLessThan(0.5e-4);
    expect(Math.abs(at30.sd - expected.u_b_at_30)).toBeLessThan(0.5e-4);
  });

  it('to the digits recomputed from the same data (half a unit of the last, relative)', () => {
    const { recomputed } = expected;
    expect(relative(line.intercept, recomputed.y1)).toBeLessThan(3e-8);
    expect(relative(line.interceptSd, recomputed.s_y1)).toBeLessThan(1.8e-5);
    expect(relative(line.slope, recomputed.y2)).toBeLessThan(2.3e-5);
    expect(relative(line.slopeSd, recomputed.s_y2)).toBeLessThan(7.5e-6);
    expect(relative(line.correlation, recomputed.corr)).toBeLessThan(5.4e-10);
    expect(relative(line.residualSd, recomputed.s)).toBeLessThan(1.5e-9);
    expect(relative(lineAt(line, 10).value, recomputed.b30)).toBeLessThan(4e-9);
    expect(relative(lineAt(line, 10).sd, recomputed.u30)).toBeLessThan(1.3e-7);
  });
});

describe('lines that are not there', () => {
  it('needs two different depths', () => {
    expect(straightLine([], [])).toEqual({ status: 'too-few-points', found: 0 });
    expect(straightLine([3, 3, 3], [1, 2, 3])).toEqual({ status: 'too-few-points', found: 1 });
    expect(straightLine([0, 1], [1, Number.NaN])).toEqual({ status: 'not-finite', row: 1 });
  });

  it('through two points it is exact and knows nothing of its errors', () => {
    const line = solved([
      [0, 50],
      [20, 50.01],
    ]);
    expect(line.slope).toBeCloseTo(0.0005, 15);
    expect(line.slopeSd).toBeNaN();
    expect(lineAt(line, 10).value).toBeCloseTo(50.005, 12);
  });
});
