/** What enters a bore and what cleans it up, on surfaces whose answers are known by construction. */
import { describe, expect, it } from 'vitest';
import type { Gives } from '../../src/bore/plugGive.ts';
import { plugs } from '../../src/bore/plugs.ts';
import type { Section, WearSurface } from '../../src/bore/types.ts';
import { cylinderRows, cylinderWords } from '../../src/figures/plugWords.ts';

const TURNS = 120;
const LEVELS = 65;
const LENGTH = 80;

function surfaceOf(radius: (theta: number, z: number) => number): WearSurface {
  const theta = Float64Array.from({ length: TURNS }, (_, i) => (2 * Math.PI * i) / TURNS);
  const z = Float64Array.from({ length: LEVELS }, (_, i) => (LENGTH * i) / (LEVELS - 1));
  const mean = Float64Array.from({ length: TURNS * LEVELS }, (_, i) =>
    radius(theta[i % TURNS]!, z[Math.floor(i / TURNS)]!),
  );
  return { grid: { theta, z }, mean } as unknown as WearSurface;
}

const at = (...depths: number[]) => depths.map((z) => ({ z }) as Section);

describe('plugs', () => {
  // R0 + a cos 2(theta - 1): inscribed and circumscribed circles touch at the ends of the short and the long way, since
  // a is far below R0 / 3, where a section would no longer be bent outward all round. The grid of 3 degrees
  // misses these ends by half a step at most: a (1 - cos 3 degrees).
  it('of an oval: its least and greatest diameter, and the zone between', () => {
    const [radius, a] = [30, 0.2];
    const miss = 2 * a * (1 - Math.cos((3 * Math.PI) / 180));
    const found = plugs(
      surfaceOf((theta) => radius + a * Math.cos(2 * (theta - 1))),
      at(10, 40, 70),
    );
    for (const circles of [...found.sections, found.bore!]) {
      expect(Math.abs(circles.entering!.diameter - 2 * (radius - a))).toBeLessThan(miss);
      expect(Math.abs(circles.around!.diameter - 2 * (radius + a))).toBeLessThan(miss);
      expect(Math.abs(circles.zone!.range - 2 * a)).toBeLessThan(miss);
      expect(Math.abs(circles.zone!.diameter - 2 * radius)).toBeLessThan(miss);
      // To second order the average radius differs from R0 by a^2 / R0 at most.
      expect(Math.abs(circles.average!.diameter - 2 * radius)).toBeLessThan((2 * a * a) / radius);
    }
    expect(found.from).toBe(10);
    expect(found.to).toBe(70);
  });

  it('of a straight taper: the cone is it, and the plug is as large as its narrow end', () => {
    const slope = 0.002;
    const found = plugs(
      surfaceOf((_, z) => 25 + slope * z),
      at(0, 80),
    );
    expect(found.taper!.from).toBeCloseTo(50, 10);
    expect(found.taper!.to).toBeCloseTo(50 + 2 * slope * LENGTH, 10);
    expect(found.taper!.range).toBeLessThan(1e-10);
    // A polygon of 120 sides lets a leaning plug gain no more than its sagitta, R (1 - cos 1.5 degrees).
    const sagitta = 25 * (1 - Math.cos((1.5 * Math.PI) / 180));
    expect(found.bore!.entering!.diameter).toBeGreaterThanOrEqual(50 - 1e-9);
    expect(found.bore!.entering!.diameter).toBeLessThan(50 + 2 * sagitta);
    expect(found.bore!.around!.diameter).toBeLessThanOrEqual(50 + 2 * slope * LENGTH + 1e-9);
  });

  it('follow a bore that lies off the axis and leans', () => {
    const axis = { x: 0.3, y: -0.2, leanX: 0.001, leanY: 0.002 };
    // Radius of a leaning cylinder about the datum, exact: the positive root of |foot| = 20.
    const found = plugs(
      surfaceOf((theta, z) => {
        const [s, c] = [Math.sin(theta), Math.cos(theta)];
        const norm = Math.hypot(1, axis.leanX, axis.leanY);
        const d = [axis.leanX / norm, axis.leanY / norm, 1 / norm] as const;
        const q = [-axis.x, -axis.y, z] as const;
        const along = (u: readonly number[]) => u[0]! * d[0] + u[1]! * d[1] + u[2]! * d[2];
        const u = [s, c, 0] as const;
        const a = 1 - along(u) ** 2;
        const b = q[0] * s + q[1] * c - along(q) * along(u);
        const e = q[0] ** 2 + q[1] ** 2 + q[2] ** 2 - along(q) ** 2 - 400;
        return (-b + Math.sqrt(b * b - a * e)) / a;
      }),
      at(0, 40, 80),
    );
    for (const plug of [found.bore!.average!, found.bore!.zone!, found.bore!.around!]) {
      expect(plug.diameter).toBeCloseTo(40, 9);
      for (const key of ['x', 'y', 'leanX', 'leanY'] as const) {
        expect(plug.axis[key]).toBeCloseTo(axis[key], 9);
      }
    }
  });

  it('of one depth: circles, and no cylinder', () => {
    const found = plugs(
      surfaceOf(() => 20),
      at(12),
    );
    expect(found.bore).toBeNull();
    expect(found.taper).toBeNull();
    expect(found.sections[0]!.entering!.diameter).toBeCloseTo(40, 9);
    expect(cylinderRows(found, null, 'mm')).toEqual([]);
    expect(cylinderWords(found, null, [], 'mm')).toEqual([]);
  });

  it('are said in the order a repairer asks', () => {
    const found = plugs(
      surfaceOf((theta) => 30 + 0.2 * Math.cos(2 * theta)),
      at(0, 80),
    );
    const all: Gives = { average: 0.02, zone: 0.03, entering: 0.2, around: 0.04, range: 0.05 };
    const rows = cylinderRows(found, { all, seen: null }, 'mm');
    expect(rows.map(({ name, across, give }) => [name, across, give])).toEqual([
      ['biggest plug', '59.60', '0.20'],
      ['average round', '60.00', '0.02'],
      ['smallest clean-up', '60.40', '0.04'],
      ['minimum zone', '60.00', '0.03'],
    ]);
    expect(cylinderRows(found, null, 'mm').map(({ give }) => give)).toEqual(['', '', '', '']);
    // The zone of an oval of 0.2 per side is 0.4 wide.
    expect(cylinderWords(found, { all, seen: null }, [1, 2, 3], 'mm')).toEqual([
      expect.stringContaining('within 0.40 mm per side, give or take 0.05 mm'),
    ]);
    const seen = { ...all, entering: 0.03 };
    expect(cylinderWords(found, { all, seen }, [2, 4], 'mm')[1]).toContain(
      'Were there no bow along the bore and no three-lobed shape, the biggest plug would be known to 0.03 mm across.',
    );
    expect(cylinderWords(found, { all, seen }, [3], 'mm')[1]).toContain(
      'no bow along the bore and no oval,',
    );
  });
});
