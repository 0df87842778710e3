/** Minimax circles and cylinders against published and constructed answers; sources stand in the data. */
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import {
  type MinimaxCircle,
  maximumInscribedCircle,
  minimumCircumscribedCircle,
  minimumZoneCircle,
} from '../../src/geometry/minimaxCircle.ts';
import {
  minimumCircumscribedCylinder,
  minimumZoneCylinder,
} from '../../src/geometry/minimaxCylinder.ts';
import { faults } from '../laws/optimum.ts';
import minimax from './data/minimax.json' with { type: 'json' };

type Circles = (x: ArrayLike<number>, y: ArrayLike<number>) => MinimaxCircle;

function columnsOf(points: readonly (readonly number[])[]): Float64Array[] {
  return points[0]!.map((_, d) => Float64Array.from(points, (p) => p[d]!));
}

function circle(solve: Circles, points: readonly (readonly number[])[]) {
  const columns = columnsOf(points);
  const found = solve(columns[0]!, columns[1]!);
  if (found.status !== 'ok') throw new Error(found.status);
  return { ...found, columns };
}

/** Distance of every wall reading from the instrument's axis, as points; in rising depth. */
function wallPoints(points: {
  z_mm: readonly number[];
  phi_deg: readonly number[];
  rho_mm: readonly (readonly number[])[];
}): number[][] {
  return points.z_mm.flatMap((z, i) =>
    points.phi_deg.map((degrees, j) => {
      const turn = (degrees * Math.PI) / 180;
      const rho = points.rho_mm[i]![j]!;
      return [rho * Math.cos(turn), rho * Math.sin(turn), z];
    }),
  );
}

const within = (value: number, target: number, tolerance: number) =>
  expect(Math.abs(value - target)).toBeLessThanOrEqual(tolerance);

describe('published circles', () => {
  it('MCC-JTS-QUAD: smallest circle about four points, and the three that hold it', () => {
    const { points, expected } = minimax['MCC-JTS-QUAD'];
    const fit = circle(minimumCircumscribedCircle, points);
    within(fit.center[0], expected.xc, expected.tolerance);
    within(fit.center[1], expected.yc, expected.tolerance);
    within(fit.diameter / 2, expected.r, expected.tolerance);
    expect(fit.contacts).toEqual(expected.contacts);
    expect(faults(fit.columns, 'minimum-circumscribed', fit)).toEqual([]);
  });

  it('MIC-JTS-LEC: largest circle among the corners of a triangle, to every printed digit', () => {
    const { points, expected } = minimax['MIC-JTS-LEC'];
    const fit = circle(maximumInscribedCircle, points.triangle);
    within(fit.center[0], expected.triangle.xc, expected.tolerance);
    within(fit.center[1], expected.triangle.yc, expected.tolerance);
    within(fit.diameter / 2, expected.triangle.r, expected.tolerance);
    const [x, y, r] = expected.recomputed.triangle as [number, number, number];
    // Recomputed to ten decimals.
    within(fit.center[0], x, 1e-10);
    within(fit.center[1], y, 1e-10);
    within(fit.diameter / 2, r, 1e-10);
    expect(fit.contacts).toEqual([0, 1, 2]);
    expect(fit.larger).toBeNull();
    expect(faults(fit.columns, 'maximum-inscribed', fit)).toEqual([]);
  });

  it('MIC-JTS-LEC: among the corners of a square, where all four are as near', () => {
    const { points, expected } = minimax['MIC-JTS-LEC'];
    const fit = circle(maximumInscribedCircle, points.square);
    within(fit.center[0], expected.square.xc, 1e-12);
    within(fit.center[1], expected.square.yc, 1e-12);
    within(fit.diameter / 2, expected.square.r, expected.tolerance);
    within(fit.diameter / 2, expected.recomputed.square_r, 1e-12);
  });

  it('MZ-CGAL-ANNULUS: narrowest ring that holds two nested squares', () => {
    const { points, expected } = minimax['MZ-CGAL-ANNULUS'];
    const fit = circle(minimumZoneCircle, points);
    within(fit.center[0], expected.xc, expected.tolerance);
    within(fit.center[1], expected.yc, expected.tolerance);
    within(fit.deviation.range, expected.width, expected.tolerance);
    within((fit.diameter / 2 + fit.deviation.min) ** 2, expected.rin_sq, 1e-11);
    within((fit.diameter / 2 + fit.deviation.max) ** 2, expected.rout_sq, 1e-11);
    // Inner corners come first. Any two opposite ones with two of the outer square hold it.
    expect(fit.contacts.length).toBeGreaterThanOrEqual(4);
    expect(fit.contacts.map((row) => row < 4)).toEqual(fit.multipliers.map((m) => m < 0));
    expect(faults(fit.columns, 'minimum-zone', fit)).toEqual([]);
  });

  /** Distance from the middle of a Reuleaux triangle of width w to its wall, a corner at 0. */
  function reuleaux(w: number, theta: number): number {
    const far = w / Math.sqrt(3);
    const distances = [0, 1, 2].map((k) => {
      // The arc about a corner: the ray meets that circle of radius w on the far side.
      const apart = theta - (k * 2 * Math.PI) / 3;
      const along = far * Math.cos(apart);
      return along + Math.sqrt(along * along + w * w - far * far);
    });
    return Math.min(...distances);
  }

  it('MZ-REULEAUX: the same width all round, and yet far from round', () => {
    const { points, expected } = minimax['MZ-REULEAUX'];
    for (const count of [12, 360]) {
      const turn = Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
      const section = turn.map((t) => {
        const r = reuleaux(points.w, t);
        return [r * Math.cos(t), r * Math.sin(t)];
      });
      const fit = circle(minimumZoneCircle, section);
      within(fit.diameter / 2 + fit.deviation.min, expected.rin, expected.tolerance);
      within(fit.diameter / 2 + fit.deviation.max, expected.rout, expected.tolerance);
      within(fit.deviation.range, expected.mz_width, expected.tolerance);
      within(fit.deviation.range / points.w, expected.relative, expected.tolerance);
      expect(faults(fit.columns, 'minimum-zone', fit)).toEqual([]);
      const inner = circle(maximumInscribedCircle, section);
      const outer = circle(minimumCircumscribedCircle, section);
      within(inner.diameter / 2, expected.rin, expected.tolerance);
      within(outer.diameter / 2, expected.rout, expected.tolerance);
    }
  });
});

describe('circles and cylinders constructed from the optimality conditions', () => {
  it('GEN-MZ-CIRC: center, both radii, width and contacts', () => {
    const { points, expected } = minimax['GEN-MZ-CIRC'];
    const section = wallPoints({ ...points, z_mm: [0], rho_mm: [points.rho_mm] });
    const flat = section.map((p) => p.slice(0, 2));
    const fit = circle(minimumZoneCircle, flat);
    within(fit.center[0], expected.xc, expected.tolerance);
    within(fit.center[1], expected.yc, expected.tolerance);
    within(fit.diameter / 2 + fit.deviation.min, expected.rin, expected.tolerance);
    within(fit.diameter / 2 + fit.deviation.max, expected.rout, expected.tolerance);
    within(fit.deviation.range, expected.width_mm, expected.tolerance);
    expect(fit.contacts).toEqual([...expected.inner, ...expected.outer].sort((a, b) => a - b));
    expect(fit.contacts.filter((_, k) => fit.multipliers[k]! < 0)).toEqual(expected.inner);
    expect(faults(fit.columns, 'minimum-zone', fit)).toEqual([]);
    const least = circle(fitCircle as unknown as Circles, flat);
    within(least.deviation.range, expected.ls_pv_mm, expected.tolerance);
  });

  it('GEN-MZ-CYL: axis, radius, width, contacts and their weights', () => {
    const { points, expected } = minimax['GEN-MZ-CYL'];
    const columns = columnsOf(wallPoints(points));
    const fit = minimumZoneCylinder(columns[0]!, columns[1]!, columns[2]!);
    if (fit.status !== 'ok') throw new Error(fit.status);
    checkAxis(fit.axis, expected);
    within(fit.diameter / 2, expected.R, expected.tolerance);
    within(fit.deviation.range, expected.width_mm, expected.tolerance);
    expect(fit.contacts).toEqual(expected.active_points_flat_index);
    // The source writes its signs for the radius's side of the distances, and all weights sum to 1.
    const scaled = fit.multipliers.map((m) => Math.abs(m) / 2);
    scaled.forEach((m, k) => {
      within(m, expected.kkt_multipliers[k]!, 1e-8);
    });
    const sides = fit.multipliers.map(Math.sign);
    expect(sides).toEqual(expected.active_signs);
    expect(faults(columns, 'minimum-zone', fit)).toEqual([]);
    const least = fitCylinder(columns[0]!, columns[1]!, columns[2]!);
    if (least.status !== 'ok') throw new Error(least.status);
    within(least.deviation.range, expected.ls_pv_mm, expected.tolerance);
    within(least.diameter / 2, expected.ls_R, expected.tolerance);
    expect(least.deviation.range - fit.deviation.range).toBeGreaterThan(0.003);
  });

  it('GEN-MC-CYL: axis, radius, contacts and their weights', () => {
    const { points, expected } = minimax['GEN-MC-CYL'];
    const columns = columnsOf(wallPoints(points));
    const fit = minimumCircumscribedCylinder(columns[0]!, columns[1]!, columns[2]!);
    if (fit.status !== 'ok') throw new Error(fit.status);
    checkAxis(fit.axis, expected);
    within(fit.diameter / 2, expected.R, expected.tolerance);
    expect(fit.contacts).toEqual(expected.contact_points_flat_index);
    fit.multipliers.forEach((m, k) => {
      within(m, expected.kkt_multipliers[k]!, 1e-8);
    });
    expect(faults(columns, 'minimum-circumscribed', fit)).toEqual([]);
    const least = fitCylinder(columns[0]!, columns[1]!, columns[2]!);
    if (least.status !== 'ok') throw new Error(least.status);
    within(least.diameter / 2, expected.ls_R, expected.tolerance);
  });
});

function checkAxis(
  { point, direction }: { point: readonly number[]; direction: readonly number[] },
  expected: { x0: number; y0: number; slope_x: number; slope_y: number; tolerance: number },
): void {
  const slopeX = direction[0]! / direction[2]!;
  const slopeY = direction[1]! / direction[2]!;
  within(slopeX, expected.slope_x, expected.tolerance);
  within(slopeY, expected.slope_y, expected.tolerance);
  within(point[0]! - slopeX * point[2]!, expected.x0, expected.tolerance);
  within(point[1]! - slopeY * point[2]!, expected.y0, expected.tolerance);
}
