/** Least-squares cylinders against published and constructed answers; sources stand in the data. */
import { describe, expect, it } from 'vitest';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import cylinders from './data/cylinders.json' with { type: 'json' };

const [worn, trivial, fivePoints] = [
  cylinders.constructed,
  cylinders.trivial,
  cylinders.fivePoints,
];

function solved(points: readonly (readonly number[])[]) {
  const [x, y, z] = [0, 1, 2].map((d) => points.map((p) => p[d]!)) as [
    number[],
    number[],
    number[],
  ];
  const fit = fitCylinder(x, y, z);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return fit;
}

describe('GEN-LS-CYL, constructed by the null-space method of Cox and Forbes 1992', () => {
  const { z_mm, phi_deg, rho_mm } = worn.points;
  const points = z_mm.flatMap((z, i) =>
    phi_deg.map((degrees, j) => {
      const turn = (degrees * Math.PI) / 180;
      return [rho_mm[i]![j]! * Math.cos(turn), rho_mm[i]![j]! * Math.sin(turn), z];
    }),
  );
  const { expected } = worn;

  it('axis, radius, range and sum of squares to 1e-9', () => {
    const fit = solved(points);
    const { point, direction } = fit.axis;
    const slopeX = direction[0] / direction[2];
    const slopeY = direction[1] / direction[2];
    expect(Math.abs(slopeX - expected.slope_x)).toBeLessThan(1e-9);
    expect(Math.abs(slopeY - expected.slope_y)).toBeLessThan(1e-9);
    expect(Math.abs(point[0] - slopeX * point[2] - expected.x0)).toBeLessThan(1e-9);
    expect(Math.abs(point[1] - slopeY * point[2] - expected.y0)).toBeLessThan(1e-9);
    expect(Math.abs(fit.diameter / 2 - expected.R)).toBeLessThan(1e-9);
    expect(Math.abs(fit.deviation.range - expected.pv_mm)).toBeLessThan(1e-9);
    const sum = deviations(points, fit).reduce((s, d) => s + d * d, 0);
    expect(Math.abs(sum - expected.rss_mm2)).toBeLessThan(1e-9);
  });

  it('names the rows of the least and greatest deviation', () => {
    const fit = solved(points);
    const all = deviations(points, fit);
    expect(fit.contacts).toEqual([all.indexOf(Math.min(...all)), all.indexOf(Math.max(...all))]);
  });

  it('is not the one-step linear fit about the datum axis, 1.8e-4 mm off in the radius', () => {
    const gap = solved(points).diameter / 2 - expected.linear_limacon_fit.R;
    expect(gap).toBeGreaterThan(1.7e-4);
    expect(gap).toBeLessThan(1.8e-4);
  });
});

describe('exact cylinders through few points', () => {
  it('CYL-TRIVIAL: of the four cylinders through these six points the smallest is found', () => {
    const fit = solved(trivial.points);
    expect(Math.abs(fit.diameter / 2 - trivial.expected.r)).toBeLessThan(1e-9);
    trivial.expected.axis.forEach((value, d) => {
      expect(Math.abs(fit.axis.direction[d]! - value)).toBeLessThan(1e-9);
    });
    expect(Math.abs(fit.axis.point[0])).toBeLessThan(1e-9);
    expect(Math.abs(fit.axis.point[1])).toBeLessThan(1e-9);
  });

  it('CYL-5POINT: tilted 19 and 21 degrees; the smaller of the two, with nothing left over', () => {
    const { axis, r, foot_from_origin } = fivePoints.expected.solutions[1]!;
    const fit = solved(fivePoints.points);
    expect(Math.abs(fit.diameter / 2 - r)).toBeLessThan(1e-9);
    const length = Math.hypot(...axis);
    axis.forEach((value, d) => {
      expect(Math.abs(fit.axis.direction[d]! - value / length)).toBeLessThan(1e-9);
    });
    const { point, direction } = fit.axis;
    const along = point.reduce((s, v, d) => s + v * direction[d]!, 0);
    foot_from_origin.forEach((value, d) => {
      // The foot is given to 8 decimals.
      expect(Math.abs(point[d]! - along * direction[d]! - value)).toBeLessThan(1e-8);
    });
    expect(fit.deviation.range).toBeLessThan(1e-14);
  });
});

function deviations(
  points: readonly (readonly number[])[],
  { axis, diameter }: ReturnType<typeof solved>,
): number[] {
  const [i, j, k] = axis.direction;
  return points.map((p) => {
    const [x, y, z] = axis.point.map((v, d) => p[d]! - v) as [number, number, number];
    return Math.hypot(y * k - z * j, z * i - x * k, x * j - y * i) - diameter / 2;
  });
}
