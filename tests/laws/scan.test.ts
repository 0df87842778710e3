/**
 * Points of a scanner drawn together into readings: bores of known formula (constructed), the axis against published
 * least-squares cylinders.
 */
import { describe, expect, it } from 'vitest';
import { readingsOfScan, type Scan } from '../../src/evaluate/scan.ts';
import { drawTogether } from '../../src/geometry/drawTogether.ts';
import { localFit } from '../../src/geometry/localFit.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  bell,
  crescent,
  fading,
  gouge,
  lobe,
  round,
  type Shape,
  step,
  sum,
  taper,
} from '../fixtures/bores.ts';
import { type Columns, movedTo, rotation, scanOf, withStrays } from '../fixtures/scans.ts';
import cylinders from '../reference/data/cylinders.json' with { type: 'json' };

const R = 32.5;
const LENGTH = 50;
const WORN = sum(round(R), lobe(2, 0.2, 0.4, fading(60)), bell('lorentzian', 0.1, 16));

function scan(columns: Columns, length = LENGTH, accuracy = Number.NaN): Scan {
  const found = readingsOfScan(columns, length, accuracy);
  if ('status' in found) throw new Error(found.status);
  return found;
}

const errors = ({ readings }: Scan, wall: Shape) =>
  readings.map(({ theta, depth, radius }) => radius - wall(theta, depth));
const most = (values: readonly number[]) => Math.max(...values.map(Math.abs));
const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sumOf, v) => sumOf + v * v, 0) / values.length);

describe('a patch of wall', () => {
  it('a quadratic is read exactly at its middle, wherever its points lie', () => {
    const random = seededRandom(3);
    const count = 40;
    // All to one side, as at the edge of what was scanned.
    const u = Float64Array.from({ length: count }, () => 0.2 + 0.8 * random.uniform());
    const v = Float64Array.from({ length: count }, () => 2 * random.uniform() - 1);
    const height = u.map((a, i) => 3 - a + 2 * v[i]! + 0.5 * a * a - 0.7 * a * v[i]! + v[i]! ** 2);
    const found = localFit({ u, v, height }, new Uint8Array(count).fill(1), 0, count)!;
    expect(found.middle).toBeCloseTo(3, 9);
    expect(found.scatter).toBeLessThan(1e-9);
  });

  it('noise averages out as its weights say', () => {
    const count = 60;
    const random = seededRandom(4);
    const u = Float64Array.from({ length: count }, () => 2 * random.uniform() - 1);
    const v = u.map(() => 2 * random.uniform() - 1);
    const counts = new Uint8Array(count).fill(1);
    const trials = 4000;
    let [squares, variance, spread] = [0, 0, 0];
    for (let k = 0; k < trials; k++) {
      const height = u.map(() => random.normal());
      const found = localFit({ u, v, height }, counts, 0, count)!;
      squares += found.middle ** 2 / trials;
      spread += found.scatter ** 2 / trials;
      variance = found.variance;
    }
    // A variance from 4000 draws is known to sqrt(2 / 4000) = 2.2 %; three of these.
    expect(squares / variance).toBeGreaterThan(0.933);
    expect(squares / variance).toBeLessThan(1.067);
    expect(spread).toBeCloseTo(1, 1);
  });

  it('points in one line or one ring leave out what they do not tell', () => {
    const u = Float64Array.of(-0.5, 0, 0.5, 0.9);
    const height = u.map((a) => 2 + a);
    const zero = new Float64Array(4);
    const found = localFit({ u, v: zero, height }, new Uint8Array(4).fill(1), 0, 4)!;
    expect(found.middle).toBeCloseTo(2, 12);
    expect(found.slopeU).toBeCloseTo(1, 12);
    expect(found.slopeV).toBeNaN();
  });
});

/** Walls whose slopes are known; noise-free, so that all of the error is that of drawing together. */
const WALLS: readonly (readonly [string, Shape])[] = [
  ['an oval', sum(round(R), lobe(2, 0.3, 0.7))],
  ['five lobes', sum(round(R), lobe(5, 0.05, 0.2))],
  ['fourteen lobes', sum(round(R), lobe(14, 0.03, 0.1))],
  ['a bell with a corner', sum(round(R), bell('linear', 0.2, 13))],
  ['a steep mouth', sum(round(R), bell('exponential', 0.3, 6))],
  ['a taper', sum(round(R), taper(0.4, LENGTH))],
  ['a crescent', sum(round(R), crescent(0.5, 0.05, 2, fading(40)))],
  ['a step', sum(round(R), step(0.1, 21.3))],
  ['a gouge', sum(round(R), gouge(0.15, 1, 20, 0.3, 6))],
];

describe('drawing together', () => {
  it.each(WALLS)('%s is never wrong by more than is told', (_, wall) => {
    for (const count of [3_000, 30_000, 200_000]) {
      const points = scanOf(wall, { count, length: LENGTH, seed: count });
      const theta = points[0].map((x, i) => {
        const angle = Math.atan2(x, points[1][i]!);
        return angle < 0 ? angle + 2 * Math.PI : angle;
      });
      const radius = points[0].map((x, i) => Math.hypot(x, points[1][i]!));
      const cloud = { theta, depth: points[2], radius };
      const all = new Uint8Array(count).fill(1);
      const { bins } = drawTogether(cloud, all, { from: 0, to: LENGTH }, 1);
      expect(bins.length).toBeGreaterThan(100);
      const over = bins.filter(
        (bin) => Math.abs(bin.radius - wall(bin.theta, bin.depth)) > bin.bound + 1e-9,
      );
      expect(over).toEqual([]);
      expect(bins.reduce((sumOf, bin) => sumOf + bin.count, 0)).toBe(count);
    }
  });

  it('smooth wear is read to a hundredth of what is told', () => {
    const wall = sum(round(R), lobe(2, 0.3, 0.7));
    const found = scan(scanOf(wall, { count: 200_000, length: LENGTH }));
    // Third order at the edge of a bin: 0.3 mm x 2^3 x (pi / 36)^3 / 6 = 2.7e-4 mm. Points that lie evenly cancel it;
    // 347 at random do so to 1 / sqrt(347), and three times that is 16 %: 4.3e-5 mm.
    expect(most(errors(found, wall))).toBeLessThan(4.3e-5);
    expect(found.bound).toBeGreaterThan(4.3e-3);
    expect(found.bound).toBeLessThan(0.02);
  });

  it('a bin is as sure as its points make it, and no surer than the scanner is true', () => {
    const noise = 0.02;
    const points = scanOf(WORN, { count: 100_000, length: LENGTH, noise, seed: 5 });
    const found = scan(points, LENGTH, 0.0001);
    const off = errors(found, WORN).map((error, k) => error / found.readings[k]!.sd);
    // 576 independent places: their rms is known to 1 / sqrt(2 x 576) = 3 %; three of these.
    expect(rms(off)).toBeGreaterThan(0.91);
    expect(rms(off)).toBeLessThan(1.09);
    expect(Math.min(...scan(points, LENGTH, 0.01).readings.map(({ sd }) => sd))).toBeGreaterThan(
      0.01,
    );
  });

  it('few points are readings of their own', () => {
    const points = scanOf(WORN, { count: 640, length: LENGTH });
    const found = scan(points);
    expect(found.lattice).toBeNull();
    expect(found.readings).toHaveLength(640);
    expect(most(errors(found, WORN))).toBeLessThan(1e-12 * 100);
  });

  it('points taken ring by ring are read at the depths of the rings', () => {
    const depths = [3, 9, 15, 21, 27, 33, 39, 45];
    const points = scanOf(WORN, { count: 8000, length: LENGTH });
    const rings = points.map((c) => c.slice()) as Columns;
    for (let i = 0; i < 8000; i++) {
      const z = depths[i % 8]!;
      const theta = (2 * Math.PI * i) / 8000;
      rings[0][i] = WORN(theta, z) * Math.sin(theta);
      rings[1][i] = WORN(theta, z) * Math.cos(theta);
      rings[2][i] = z;
    }
    const found = scan(rings);
    expect(new Set(found.readings.map(({ depth }) => Number(depth.toFixed(9)))).size).toBe(8);
    expect(most(errors(found, WORN))).toBeLessThan(1e-4);
  });

  it('where nothing was scanned there is no reading', () => {
    const seen = (theta: number, z: number) => theta > 1 || z > 20;
    const found = scan(scanOf(WORN, { count: 100_000, length: LENGTH, seen }));
    expect(
      found.readings.some(({ theta, depth }) => theta < 0.9 && theta > 0.1 && depth < 18),
    ).toBe(false);
    expect(most(errors(found, WORN))).toBeLessThan(0.001);
    expect(found.bound).toBeLessThan(0.05);
  });
});

describe('strays', () => {
  const clean = scanOf(WORN, { count: 60_000, length: LENGTH, noise: 0.01, seed: 8 });
  const usual = rms(errors(scan(clean), WORN));

  it('a few per cent of burrs, and of points of the face, change no reading', () => {
    const strewn = withStrays(clean, 0.03, (random, [x, y, z]) => {
      const grow =
        random.uniform() < 0.5 ? 1 + 2 * random.uniform() : 1 - 0.006 - 0.02 * random.uniform();
      return grow > 1 ? [x * grow, y * grow, 0.02 * random.uniform()] : [x * grow, y * grow, z];
    });
    const found = scan(strewn);
    expect(rms(errors(found, WORN))).toBeLessThan(1.1 * usual);
    const { far, astray } = found.left;
    // Faces nearer than the limit are found by the wall around them.
    expect(far + astray).toBeGreaterThan(0.98 * 1800);
    expect(far + astray).toBeLessThan(1.02 * 1800);
  });

  it('hardly a point of a clean scan is left out', () => {
    const { far, beyond, ends, astray, lone } = scan(clean).left;
    // Five standard deviations: one in two million; scatter known from a hundred points makes it a few.
    expect([far, beyond, ends, lone]).toEqual([0, 0, 0, 0]);
    expect(astray).toBeLessThan(12);
  });

  it('a chamfer is left out, a worn mouth is not', () => {
    const chamfer: Shape = (_, z) => Math.max(0, 1.5 - z);
    const found = scan(scanOf(sum(WORN, chamfer), { count: 60_000, length: LENGTH, noise: 0.01 }));
    const share = found.left.ends / 60_000;
    expect(share).toBeGreaterThan(1.5 / LENGTH);
    // One ring of a two hundredth more.
    expect(share).toBeLessThan(1.5 / LENGTH + 0.012);
    expect(rms(errors(found, WORN))).toBeLessThan(1.2 * usual);
    const mouth = sum(round(R), bell('exponential', 0.3, 5));
    expect(scan(scanOf(mouth, { count: 60_000, length: LENGTH, noise: 0.01 })).left.ends).toBe(0);
  });

  it('what lies outside the length is left out and counted', () => {
    const found = scan(scanOf(WORN, { count: 20_000, length: 60 }));
    expect(found.left.beyond / 20_000).toBeCloseTo(1 / 6, 1);
    expect(Math.max(...found.readings.map(({ depth }) => depth))).toBeLessThan(LENGTH);
  });

  it('points of no bore are refused', () => {
    const random = seededRandom(2);
    const box = [0, 1, 2].map(() =>
      Float64Array.from({ length: 5000 }, () => 40 * random.uniform()),
    ) as Columns;
    const found = readingsOfScan(box, Number.NaN, Number.NaN);
    expect('status' in found).toBe(true);
  });
});

describe('the frame', () => {
  // One-sided, three-lobed, a gouge and a bell: turned, mirrored or swapped end for end it would be another bore.
  const HANDED = sum(
    round(R),
    lobe(2, 0.15, 0.5),
    lobe(3, 0.05, 0.3),
    gouge(0.2, 2, 12, 0.5, 8),
    bell('exponential', 0.1, 15),
  );
  const POINTS = scanOf(HANDED, { count: 60_000, length: LENGTH, seed: 3 });
  const IDENTITY = rotation(0, 0, 0);

  /** Mean size and the first lobe at each depth are the frame's; what is left is the shape. */
  function shapeErrors(found: Scan): number[] {
    const depths = [...new Set(found.readings.map(({ depth }) => depth))];
    return depths.flatMap((depth) => {
      const own = found.readings.filter((one) => one.depth === depth);
      const off = own.map(({ theta, radius }) => radius - HANDED(theta, depth));
      const part = (f: (t: number) => number) =>
        off.reduce((s, e, k) => s + e * f(own[k]!.theta), 0) / off.length;
      const [a, b] = [2 * part(Math.cos), 2 * part(Math.sin)];
      return off.map((e, k) => e - a * Math.cos(own[k]!.theta) - b * Math.sin(own[k]!.theta));
    });
  }

  it('the bore’s own axes are taken as they are', () => {
    const found = scan(POINTS);
    expect(found.frame.kind).toBe('own');
    expect(most(errors(found, HANDED))).toBeLessThan(1e-4);
  });

  it('z outward as in a drawing of face A is the same bore', () => {
    const found = scan(movedTo(POINTS, IDENTITY, [0, 0, 0]));
    expect(found.frame.kind).toBe('drawn');
    expect(most(errors(found, HANDED))).toBeLessThan(1e-4);
  });

  it.each([
    ['shifted far off', rotation(0, 0, 0), [300, -120, 40]],
    ['leaning', rotation(0.3, -0.4, 0), [5, 80, -300]],
    ['origin within the bore, half-way down', rotation(0, 0, 0), [0, 0, 25]],
  ] as const)('a scanner’s frame, %s: never mirrored, never end for end', (_, turn, shift) => {
    const found = scan(movedTo(POINTS, turn, shift as [number, number, number]));
    expect(found.frame.kind).toBe('scanner');
    // The axis of a worn bore leans and stands off by what the wear makes it; 12 lies where + y is seen, to first order
    // within the turn that the lean gives.
    const [three, twelve, inward] = [found.frame.three, found.frame.twelve, found.frame.inward];
    expect(
      Math.abs(twelve[0] * inward[0] + twelve[1] * inward[1] + twelve[2] * inward[2]),
    ).toBeLessThan(1e-12);
    const right = inward[1] * twelve[2] - inward[2] * twelve[1];
    expect(three[0]).toBeCloseTo(right, 12);
    if (turn[0]![0] === 1) {
      // Depth 0 is the first point of a thousand, a twentieth of a mm in; slopes of the gouge times that.
      expect(most(shapeErrors(found))).toBeLessThan(0.02);
      expect(rms(shapeErrors(found))).toBeLessThan(0.003);
    }
  });

  it('along x and along y there is a 12 o’clock as well', () => {
    for (const turn of [rotation(0, Math.PI / 2, 0), rotation(Math.PI / 2, 0, 0)]) {
      const found = scan(movedTo(POINTS, turn, [100, 100, 100]));
      const { inward, twelve } = found.frame;
      expect(Math.min(...inward)).toBeLessThan(-0.999);
      expect(Math.max(...twelve)).toBeGreaterThan(0.999);
    }
  });

  it('the axis is that of the least-squares cylinder of GEN-LS-CYL (Cox and Forbes 1992, null-space method)', () => {
    const { points, expected } = cylinders.constructed;
    const { z_mm, phi_deg, rho_mm } = points;
    const columns = [0, 1, 2].map(() => [] as number[]);
    z_mm.forEach((z, i) => {
      phi_deg.forEach((degrees, j) => {
        const turn = (degrees * Math.PI) / 180;
        columns[0]!.push(rho_mm[i]![j]! * Math.cos(turn) + 1000);
        columns[1]!.push(rho_mm[i]![j]! * Math.sin(turn));
        columns[2]!.push(z);
      });
    });
    const { frame } = scan(columns.map((c) => Float64Array.from(c)) as Columns, Number.NaN);
    expect(frame.kind).toBe('scanner');
    const [x, y, z] = frame.inward;
    // 1000 mm off, coordinates are written to 1e-13 mm: 1e-9 as in the reference test leaves room.
    expect(Math.abs(x / z - expected.slope_x)).toBeLessThan(1e-9);
    expect(Math.abs(y / z - expected.slope_y)).toBeLessThan(1e-9);
    expect(z).toBeLessThan(0);
    expect(Math.abs(frame.radius - expected.R)).toBeLessThan(1e-9);
  });

  it('strays do not tilt a scanner’s axis', () => {
    const moved = movedTo(POINTS, rotation(0.3, 0.2, 0), [200, 0, 0]);
    const face = (
      random: ReturnType<typeof seededRandom>,
      [x, y]: readonly [number, number, number],
    ): [number, number, number] => {
      const grow = 1.05 + random.uniform();
      return [x * grow, y * grow, 0];
    };
    const faced = movedTo(withStrays(POINTS, 0.05, face), rotation(0.3, 0.2, 0), [200, 0, 0]);
    const [a, b] = [scan(moved).frame.inward, scan(faced).frame.inward];
    const apart = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    // 5 % of the points are others, anyhow: the axis of the rest differs by the chance of which are left.
    expect(apart).toBeLessThan(2e-5);
  });
});
