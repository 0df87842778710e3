/** The hole that a pin runs in: sizes by hand, and the largest straight pin against shapes whose answer is known. */
import { describe, expect, it } from 'vitest';
import { radialSpan } from '../../src/assembly/radialSpan.ts';
import { holeSizes, largestPin, radiusAbout } from '../../src/assembly/running.ts';

const columns = 120;
const z = Float64Array.from({ length: 9 }, (_, i) => 10 * i);

/** Constructed. */
function hole(radius: (theta: number, deep: number) => number) {
  const all = Float64Array.from({ length: z.length * columns }, (_, k) =>
    radius((2 * Math.PI * (k % columns)) / columns, z[Math.floor(k / columns)]!),
  );
  return { radius: all, z, columns };
}

describe('the sizes of a hole', () => {
  it('are its diameters, and where', () => {
    // An oval of 0.02 per side across 3 to 9 that grows with the depth: by hand.
    const found = holeSizes(hole((t, deep) => 20 - 0.02 * Math.cos(2 * t) * (deep / 80)))!;
    expect(found.greatest.mm).toBeCloseTo(40.04, 12);
    expect(found.greatest.theta).toBeCloseTo(Math.PI / 2, 12);
    expect(found.greatest.z).toBe(80);
    expect(found.least.mm).toBeCloseTo(39.96, 12);
    expect([found.least.theta, found.least.z]).toEqual([0, 80]);
    expect(found.outOfRound.mm).toBeCloseTo(0.08, 12);
    expect(found.mean).toBeCloseTo(40, 12);
  });

  it('leave out what is not known, and are none where nothing is', () => {
    const one = hole((t, deep) => (deep === 0 && t < 1 ? Number.NaN : 20));
    expect(holeSizes(one)!.least.mm).toBe(40);
    expect(holeSizes(hole(() => Number.NaN))).toBeNull();
    expect(largestPin(hole(() => Number.NaN))).toBeNull();
  });
});

describe('out of round by radius', () => {
  it('is twice the amplitude of lobes about their middle, wherever that stands, and names them', () => {
    for (const n of [2, 3, 5]) {
      const one = hole((t, deep) => 20 + 0.1 * Math.sin(t) + (0.01 * deep * Math.cos(n * t)) / 80);
      const found = radialSpan(one)!;
      // Evenly over 120 places: the trough of odd lobes falls on a place, too.
      expect(found.perSide).toBeCloseTo(0.02, 6);
      expect([found.lobes, found.z]).toEqual([n, 80]);
    }
  });

  it('is nothing in a round, and none where too little is known', () => {
    const found = radialSpan(hole((t) => 20 + 0.1 * Math.cos(t)))!;
    expect(found.perSide).toBeLessThan(1e-9);
    expect(found.lobes).toBe(0);
    expect(radialSpan(hole(() => Number.NaN))).toBeNull();
    expect(radialSpan(hole((t) => (t < 0.06 ? 20 : Number.NaN)))).toBeNull();
  });
});

describe('the largest straight pin that goes through', () => {
  it('is the hole itself, wherever its axis stands', () => {
    const away = (t: number, deep: number) =>
      (0.01 + 0.0002 * deep) * Math.sin(t) - 0.02 * Math.cos(t);
    const one = hole((t, deep) => 20 + away(t, deep));
    const found = largestPin(one)!;
    expect(found.diameter).toBeCloseTo(40, 6);
    expect(found.x).toBeCloseTo(0.01, 6);
    expect(found.y).toBeCloseTo(-0.02, 6);
    expect(found.leanX).toBeCloseTo(0.0002, 8);
    for (const r of radiusAbout(one, found)) expect(r).toBeCloseTo(20, 6);
  });

  it('is the least diameter of an oval, and less than that in a three-lobed hole', () => {
    expect(largestPin(hole((t) => 20 + 0.01 * Math.cos(2 * t)))!.diameter).toBeCloseTo(39.98, 6);
    // Three lobes: every diameter is 40, and a bar touches the three high places.
    const three = hole((t) => 20 + 0.01 * Math.cos(3 * t));
    expect(holeSizes(three)!.least.mm).toBeCloseTo(40, 12);
    expect(largestPin(three)!.diameter).toBeCloseTo(39.98, 6);
  });

  it('is smaller by the bow of a hole that is not straight', () => {
    // A bow of 0.04 in the middle: a bar lies 0.02 off at the ends and in the middle.
    const bow = (deep: number) => 0.04 * (1 - ((deep - 40) / 40) ** 2);
    const found = largestPin(hole((t, deep) => 20 + bow(deep) * Math.sin(t)))!;
    expect(found.diameter).toBeCloseTo(40 - 0.04, 6);
  });
});
