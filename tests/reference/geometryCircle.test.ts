/** Least-squares circles against published and constructed answers; sources stand in the data. */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import circles from './data/circles.json' with { type: 'json' };
import constructed from './data/constructedCircle.json' with { type: 'json' };

function columns(points: readonly (readonly number[])[]): [number[], number[]] {
  return [points.map((p) => p[0]!), points.map((p) => p[1]!)];
}

function solved(x: number[], y: number[]) {
  const fit = fitCircle(x, y);
  if (fit.status !== 'ok') throw new Error(fit.status);
  const deviations = x.map(
    (value, i) => Math.hypot(value - fit.center[0], y[i]! - fit.center[1]) - fit.diameter / 2,
  );
  return { fit, deviations, sumSquares: deviations.reduce((s, d) => s + d * d, 0) };
}

describe('published least-squares circles', () => {
  it('has three sets to check', () => expect(circles).toHaveLength(3));

  for (const { id, points, expected } of circles) {
    it(`${id}: every printed digit, and the recomputed ones`, () => {
      const { fit, sumSquares } = solved(...columns(points));
      for (const { xc, yc, r, sum_sq, tolerance } of [expected.published, expected.recomputed]) {
        expect(Math.abs(fit.center[0] - xc)).toBeLessThan(tolerance);
        expect(Math.abs(fit.center[1] - yc)).toBeLessThan(tolerance);
        expect(Math.abs(fit.diameter / 2 - r)).toBeLessThan(tolerance);
        expect(Math.abs(sumSquares - sum_sq)).toBeLessThan(tolerance);
      }
    });
  }

  it('LSC-GGS1994 and LSC-SCIPY-FULL: range of the deviations', () => {
    for (const { points, expected } of circles.slice(0, 2)) {
      const { fit } = solved(...columns(points));
      const { pv } = expected.recomputed as { pv: number };
      expect(Math.abs(fit.deviation.range - pv)).toBeLessThan(1e-9);
    }
  });
});

describe('GEN-LS-CIRC, constructed by the null-space method of Cox and Forbes 1992', () => {
  const { phi_deg, rho_mm } = constructed.points;
  const turn = phi_deg.map((d) => (d * Math.PI) / 180);
  const x = turn.map((t, i) => rho_mm[i]! * Math.cos(t));
  const y = turn.map((t, i) => rho_mm[i]! * Math.sin(t));
  const { expected } = constructed;

  it('center, radius, sum of squares and range to 1e-9 mm', () => {
    const { fit, sumSquares } = solved(x, y);
    expect(Math.abs(fit.center[0] - expected.xc)).toBeLessThan(1e-9);
    expect(Math.abs(fit.center[1] - expected.yc)).toBeLessThan(1e-9);
    expect(Math.abs(fit.diameter / 2 - expected.r)).toBeLessThan(1e-9);
    expect(Math.abs(sumSquares - expected.rss_mm2)).toBeLessThan(1e-9);
    expect(Math.abs(fit.deviation.range - expected.pv_mm)).toBeLessThan(1e-9);
  });

  it('names the rows of the least and greatest deviation', () => {
    const { fit, deviations } = solved(x, y);
    expect(fit.contacts).toEqual([
      deviations.indexOf(Math.min(...deviations)),
      deviations.indexOf(Math.max(...deviations)),
    ]);
  });

  // NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.4.4: R = mean r, a = 2/N sum r cos t.
  it('is not the one-step linear circle, which is 4e-4 mm off in the radius', () => {
    const { fit } = solved(x, y);
    const mean = rho_mm.reduce((s, r) => s + r, 0) / rho_mm.length;
    const a = (2 / rho_mm.length) * rho_mm.reduce((s, r, i) => s + r * Math.cos(turn[i]!), 0);
    const b = (2 / rho_mm.length) * rho_mm.reduce((s, r, i) => s + r * Math.sin(turn[i]!), 0);
    const linear = expected.nist_linear_estimate;
    expect(Math.abs(mean - linear.R)).toBeLessThan(1e-9);
    expect(Math.abs(a - linear.a)).toBeLessThan(1e-9);
    expect(Math.abs(b - linear.b)).toBeLessThan(1e-9);
    expect(fit.diameter / 2 - mean).toBeGreaterThan(3.9e-4);
  });
});

// D. G. Chetwynd, Precision Engineering 1(3), 1979, 137-141: the bias of the limacon.
it('LIMACON: an exact circle seen off-center is exact, however few the readings', () => {
  const radius = 50;
  const off = 0.5;
  for (const count of [8, 12, 36, 360]) {
    const theta = Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
    const r = theta.map(
      (t) => off * Math.cos(t) + Math.sqrt(radius ** 2 - (off * Math.sin(t)) ** 2),
    );
    const { fit } = solved(
      r.map((v, i) => v * Math.cos(theta[i]!)),
      r.map((v, i) => v * Math.sin(theta[i]!)),
    );
    // Coordinates of 50 mm round by 4e-15 mm; readings all round magnify that by 1.4.
    expect(Math.abs(fit.center[0] - off)).toBeLessThan(4e-14);
    expect(Math.abs(fit.center[1])).toBeLessThan(4e-14);
    expect(Math.abs(fit.diameter - 2 * radius)).toBeLessThan(8e-14);
    expect(fit.deviation.range).toBeLessThan(8e-14);
  }
});
