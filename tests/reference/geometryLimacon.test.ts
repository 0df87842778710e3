/**
 * A true circle measured off its centre: exact from its points, off by a stated amount as a limacon
 * (D. G. Chetwynd, Roundness measurement using limacons, Precision Engineering 1(3) (1979) 137-141,
 * from memory; the figures below are derived, to 9 digits).
 */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitLobes } from '../../src/geometry/harmonics.ts';
import { pointsFromRadii } from '../../src/geometry/polar.ts';

const R = 50;
const E = 0.5;
const MEAN_MINUS_R = -0.00125002344;
const TWO_LOBE = 0.00125003126;
const TOLERANCE = 1e-9;
const WAY = 0.7;

function radii(count: number, e = E): { theta: number[]; radius: number[] } {
  const theta = Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
  const radius = theta.map((angle) => {
    const t = angle - WAY;
    return e * Math.cos(t) + Math.sqrt(R * R - (e * Math.sin(t)) ** 2);
  });
  return { theta, radius };
}

function lobes(count: number, order: number, e = E) {
  const { theta, radius } = radii(count, e);
  const fit = fitLobes(theta, radius, order);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return { ...fit, theta, radius };
}

describe.each([8, 12, 36, 360])('LIMACON at %i angles', (count) => {
  it('the points give radius and centre to 1e-12', () => {
    const { theta, radius } = radii(count);
    const fit = fitCircle(...pointsFromRadii(theta, radius));
    if (fit.status !== 'ok') throw new Error(fit.status);
    expect(Math.abs(fit.diameter / 2 - R)).toBeLessThan(1e-12);
    expect(Math.abs(fit.center[0] - E * Math.sin(WAY))).toBeLessThan(1e-12);
    expect(Math.abs(fit.center[1] - E * Math.cos(WAY))).toBeLessThan(1e-12);
    expect(fit.deviation.range).toBeLessThan(1e-12);
  });

  it('the limacon gives the centre, and errs in size and two-lobe as published', () => {
    const one = lobes(count, 1);
    expect(Math.abs(one.mean - R - MEAN_MINUS_R)).toBeLessThan(TOLERANCE);
    // The radii hold no odd lobe but the first, so that the centre itself comes out right.
    expect(Math.abs(one.waves[0]!.amplitude - E)).toBeLessThan(1e-12);
    expect(Math.abs(one.waves[0]!.phase - WAY)).toBeLessThan(1e-12);
    const two = lobes(count, 2);
    expect(Math.abs(two.waves[1]!.amplitude - TWO_LOBE)).toBeLessThan(TOLERANCE);
  });
});

describe('the bound on the limacon’s error', () => {
  it.each([0.001, 0.05, 0.5, 2, 5, 20])('holds at e = %f mm, and is nearly reached', (e) => {
    const { theta, radius, mean, waves } = lobes(720, 1, e);
    const off = radius.map((r, i) => {
      return (
        r - mean - waves[0]!.cosine * Math.cos(theta[i]!) - waves[0]!.sine * Math.sin(theta[i]!)
      );
    });
    const range = Math.max(...off) - Math.min(...off);
    // R - sqrt(R^2 - e^2), of which e^2/(2R) (1 + e^2/(4R^2) + ...) is the series: its terms are
    // positive, so that two of them are below it and the rest below e^6/(16 R^5) / (1 - e^2/R^2).
    const series = ((e * e) / (2 * R)) * (1 + (e * e) / (4 * R * R));
    const rest = e ** 6 / (16 * R ** 5) / (1 - (e / R) ** 2);
    // No angle is more than pi/720 from either extreme; sin^2 t changes by less than its square there,
    // and the radius by e^2/(2 sqrt(R^2 - e^2)) times that.
    const missed = ((e * e) / Math.sqrt(R * R - e * e)) * (Math.PI / 720) ** 2;
    const rounding = R * 16 * Number.EPSILON;
    expect(range).toBeLessThan(series + rest + rounding);
    expect(range).toBeGreaterThan(series - missed - rounding);
    // The mean of R - sqrt(R^2 - e^2 sin^2 t) is e^2/(4R) (1 + 3 e^2/(16 R^2) + 5 e^4/(64 R^4) + ...).
    const meanBound = ((e * e) / (4 * R)) * (1 + (e * e) / (4 * (R * R - e * e)));
    expect(mean - R).toBeLessThan(rounding - (e * e) / (4 * R));
    expect(R - mean).toBeLessThan(meanBound + rounding);
  });
});

it('points of radii: NaN stays where it was, lengths that differ are refused', () => {
  const [x, y] = pointsFromRadii([0, Math.PI / 2, 1], [3, 4, Number.NaN]);
  expect([x[0], y[0], x[1]]).toEqual([0, 3, 4]);
  expect([x[2], y[2]]).toEqual([Number.NaN, Number.NaN]);
  expect(() => pointsFromRadii([1, 2], [1])).toThrow(RangeError);
});
