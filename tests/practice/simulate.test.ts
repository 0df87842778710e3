import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placesOn, type Reader, read } from '../../src/practice/simulate.ts';
import * as wear from '../../src/practice/wear.ts';

const EXACT: Reader = { noise: 0, resolution: 0, seed: 1 };
const R = 30;
const L = 60;
const HOUR = Math.PI / 6;
const one = (
  truth: wear.Truth,
  instrument: Parameters<typeof read>[1],
  theta: number,
  z = 0,
  reader = EXACT,
) => read(truth, instrument, [{ theta, z }], reader)[0]!;

describe('parts of wear', () => {
  it('are as large as they say, where they say', () => {
    const oval = wear.wornBore(R, [wear.oval(0.3, HOUR)]);
    // an oval of 0.3 across: its longest and shortest diameters are 0.3 apart
    expect(one(oval, 'two-point', HOUR) - one(oval, 'two-point', HOUR + Math.PI / 2)).toBeCloseTo(
      0.3,
      12,
    );
    expect(wear.barrel(0.1, L)(0, L / 2)).toBeCloseTo(0.1, 15);
    expect(wear.barrel(0.1, L)(0, 0)).toBeCloseTo(0, 15);
    expect(wear.waist(0.1, L)(0, L)).toBeCloseTo(0.1, 15);
    expect(wear.waist(0.1, L)(0, L / 2)).toBeCloseTo(0, 15);
    expect(wear.taper(0.1, L)(0, L / 4)).toBeCloseTo(0.025, 15);
    expect(wear.step(0.1, 20)(0, 19.99)).toBe(0.1);
    expect(wear.step(0.1, 20)(0, 20)).toBe(0);
    const spot = { theta: 0, z: 30, halfWidth: 6, halfLength: 10 };
    const gouge = wear.gouge(0.2, R, spot);
    expect(gouge(0, 30)).toBeCloseTo(0.2, 15);
    // across 12 o'clock as well as before it: 6 mm round is 0.2 rad
    expect(gouge(0.1, 30)).toBeCloseTo(0.1, 15);
    expect(gouge(2 * Math.PI - 0.1, 30)).toBeCloseTo(0.1, 15);
    expect(gouge(0.21, 30)).toBe(0);
    expect(gouge(0, 41)).toBe(0);
  });

  it('open a mouth at either face in three shapes', () => {
    for (const shape of ['exponential', 'quadratic', 'linear'] as const) {
      expect(wear.mouth(shape, 10, 'A', L)(0)).toBe(1);
      expect(wear.mouth(shape, 10, 'B', L)(L)).toBe(1);
      expect(wear.mouth(shape, 10, 'B', L)(L - 4)).toBeCloseTo(
        wear.mouth(shape, 10, 'A', L)(4),
        12,
      );
    }
    expect(wear.mouth('linear', 10, 'A', L)(5)).toBe(0.5);
    expect(wear.mouth('quadratic', 10, 'A', L)(5)).toBe(0.25);
    expect(wear.mouth('exponential', 10, 'A', L)(10)).toBeCloseTo(Math.exp(-1), 15);
    expect(wear.mouth('quadratic', 10, 'A', L)(15)).toBe(0);
  });

  it('leave of a smaller part the crescent of the formula, to second order', () => {
    const thetas = Array.from({ length: 361 }, (_, degree) => (degree * Math.PI) / 180);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (w, c) => {
          const part = wear.crescent(R, w, c, Math.PI);
          for (const theta of thetas) {
            const formula = Math.max(0, (w + c) * Math.cos(theta - Math.PI) - c);
            // sqrt(p2 - s2) >= p - s2/p for s < p: with s <= w + c and p = R - c the two differ by at most that
            expect(Math.abs(part(theta, 0) - formula)).toBeLessThanOrEqual((w + c) ** 2 / (R - c));
          }
          expect(part(Math.PI, 0)).toBeCloseTo(w, 12);
          expect(part(0, 0)).toBe(0);
        },
      ),
    );
    const fading = wear.crescent(R, 0.4, 0.1, 0, wear.fading(40));
    expect(fading(0, 0)).toBeCloseTo(0.4, 12);
    expect(fading(0, 20)).toBeCloseTo(0.2, 12);
    expect(fading(0, 50)).toBeCloseTo(0, 12);
  });

  it('of a crescent have the third lobe that a smaller part is known to leave', () => {
    // 0.05 of the wear where the part is smaller by a quarter of it, 0.14 where by as much: the lobe's amplitude by
    // a sum over the circle
    const third = (share: number) => {
      const w = 0.01;
      const part = wear.crescent(R, w, share * w, 0);
      const n = 7200;
      let sum = 0;
      for (let k = 0; k < n; k++) {
        const theta = (2 * Math.PI * k) / n;
        sum += part(theta, 0) * Math.cos(3 * theta);
      }
      return ((2 / n) * sum) / w;
    };
    expect(third(0)).toBeCloseTo(0, 3);
    expect(third(0.25)).toBeCloseTo(0.05, 2);
    expect(third(1)).toBeCloseTo(0.14, 2);
  });
});

describe('instruments on a true bore', () => {
  const lobed = (n: number, perSide: number) => wear.wornBore(R, [wear.lobes(n, perSide, 0.4)]);
  const clocks = Array.from({ length: 12 }, (_, hour) => hour * HOUR);

  it('read a round bore as it is', () => {
    const bore = wear.wornBore(R, []);
    expect(one(bore, 'two-point', 1)).toBe(2 * R);
    expect(one(bore, 'three-leg', 1)).toBeCloseTo(2 * R, 10);
    expect(one(bore, 'radius', 1)).toBe(R);
    expect(one(bore, 'sweep', 1, 0, { ...EXACT, zero: R })).toBe(0);
    expect(one(bore, 'wall', 1, 0, { ...EXACT, boss: 45 })).toBe(15);
  });

  it('across see no odd lobes, and three legs no oval but in second order', () => {
    for (const theta of clocks) {
      expect(one(lobed(3, 0.05), 'two-point', theta)).toBeCloseTo(2 * R, 12);
      expect(one(lobed(5, 0.05), 'two-point', theta)).toBeCloseTo(2 * R, 12);
      // the centre moves by about the amplitude, over a wall that slopes by twice amplitude over radius
      expect(Math.abs(one(lobed(2, 0.05), 'three-leg', theta) - 2 * R)).toBeLessThan(
        ((0.05 ** 2 * 4) / R) * 2,
      );
      // three lobes push all three legs at once: 2 (R + a cos 3 theta) exactly, as the legs stay centred
      expect(one(lobed(3, 0.05), 'three-leg', theta)).toBeCloseTo(
        2 * (R + 0.05 * Math.cos(3 * (theta - 0.4))),
        9,
      );
    }
  });

  it('from a spindle off the axis read its offset as a first lobe, exactly as a circle would', () => {
    const bore = wear.wornBore(R, []);
    const standing = { x: 0.6, y: -0.8, leanX: 0.01, leanY: 0 };
    for (const theta of clocks) {
      const x = 0.6 + 0.01 * 20;
      const along = x * Math.sin(theta) - 0.8 * Math.cos(theta);
      const aside = x * Math.cos(theta) + 0.8 * Math.sin(theta);
      const reach = Math.sqrt(R * R - aside * aside) - along;
      expect(one(bore, 'radius', theta, 20, { ...EXACT, standing })).toBeCloseTo(reach, 10);
      const needle = { ...EXACT, standing, sign: -1 as const, zero: 29 };
      expect(one(bore, 'sweep', theta, 20, needle)).toBeCloseTo(29 - reach, 10);
    }
  });

  it('from an offset end on the wall, whatever its shape', () => {
    const bore = wear.wornBore(R, [wear.oval(0.8, 1), wear.crescent(R, 0.5, 0.1, 3)]);
    const standing = { x: 1.5, y: 2, leanX: 0, leanY: 0 };
    for (const theta of clocks) {
      const reach = one(bore, 'radius', theta, 0, { ...EXACT, standing });
      const [x, y] = [1.5 + reach * Math.sin(theta), 2 + reach * Math.cos(theta)];
      expect(Math.hypot(x, y)).toBeCloseTo(bore(Math.atan2(x, y), 0), 9);
    }
  });

  it('on three legs touch the wall at three places, equally far from one centre', () => {
    const bore = wear.wornBore(R, [wear.oval(0.8, 1), wear.lobes(5, 0.03, 2)]);
    for (const theta of clocks) {
      const radius = one(bore, 'three-leg', theta) / 2;
      // three points at 120 degrees of a circle sum to three times its centre: search that centre by a fine grid of
      // its own, and see that one of that radius touches within the grid's step
      let best = Number.POSITIVE_INFINITY;
      for (let x = -0.6; x <= 0.6; x += 0.01) {
        for (let y = -0.6; y <= 0.6; y += 0.01) {
          const gaps = [0, 1, 2].map((leg) => {
            const angle = theta + (leg * 2 * Math.PI) / 3;
            const [px, py] = [x + radius * Math.sin(angle), y + radius * Math.cos(angle)];
            return Math.abs(Math.hypot(px, py) - bore(Math.atan2(px, py), 0));
          });
          best = Math.min(best, Math.max(...gaps));
        }
      }
      expect(best).toBeLessThan(0.01);
    }
  });

  it('measure a wall from a boss that is not concentric', () => {
    const bore = wear.wornBore(R, []);
    const boss = { ...EXACT, boss: 45, standing: { x: 0, y: 0.5, leanX: 0, leanY: 0 } };
    expect(one(bore, 'wall', 0, 0, boss)).toBeCloseTo(15.5, 12);
    expect(one(bore, 'wall', Math.PI, 0, boss)).toBeCloseTo(14.5, 12);
  });
});

describe('a reader', () => {
  const bore = wear.wornBore(R, []);
  const places = placesOn(
    Array.from({ length: 100 }, (_, k) => k / 16),
    [5, 10, 15, 20],
  );

  it('repeats itself by seed and not otherwise', () => {
    const hand = { noise: 0.01, resolution: 0, seed: 7 };
    expect(read(bore, 'two-point', places, hand)).toEqual(read(bore, 'two-point', places, hand));
    expect(read(bore, 'two-point', places, { ...hand, seed: 8 })).not.toEqual(
      read(bore, 'two-point', places, hand),
    );
  });

  it('scatters as it says, about the truth', () => {
    const readings = read(bore, 'two-point', places, { noise: 0.01, resolution: 0, seed: 3 });
    const n = readings.length;
    const mean = readings.reduce((sum, value) => sum + value, 0) / n;
    const sd = Math.sqrt(readings.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
    // four standard errors: sd/sqrt(n) of the mean, sd/sqrt(2n) of the deviation
    expect(Math.abs(mean - 2 * R)).toBeLessThan((4 * 0.01) / Math.sqrt(n));
    expect(Math.abs(sd - 0.01)).toBeLessThan((4 * 0.01) / Math.sqrt(2 * n));
  });

  it('reads in steps of its gauge', () => {
    const step = 0.0127;
    for (const value of read(bore, 'two-point', places, {
      noise: 0.05,
      resolution: step,
      seed: 5,
    })) {
      expect(Math.abs(value / step - Math.round(value / step))).toBeLessThan(1e-9);
    }
    expect(
      read(wear.wornBore(1.2512, []), 'two-point', [{ theta: 0, z: 0 }], {
        ...EXACT,
        resolution: 0.01,
      }),
    ).toEqual([2.5]);
  });

  it('goes round each depth in turn', () => {
    expect(placesOn([0, 1], [5, 10])).toEqual([
      { theta: 0, z: 5 },
      { theta: 1, z: 5 },
      { theta: 0, z: 10 },
      { theta: 1, z: 10 },
    ]);
  });
});
