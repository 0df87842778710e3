/**
 * The room beside a boss: sums by hand (constructed), and shims to the practice of makers' manuals for digging and loading
 * machines: the gap normally under 0.040 in (1.0 mm), shims from 0.020 to 0.060 in.
 */
import { describe, expect, it } from 'vitest';
import { barCentre } from '../../src/assembly/barCentre.ts';
import { faceShims, sideGap } from '../../src/assembly/sideGap.ts';

const SHIMS = [0.02, 0.03, 0.04, 0.06].map((t) => t * 25.4);

describe('the side gap', () => {
  it('is what is left of the space, tightest and widest', () => {
    const gap = sideGap({ between: [121.5, 121.9], width: [119.0, 119.2], parts: [1, 0.5, -0.3] });
    expect(gap.least).toBeCloseTo(121.5 - 119.2 - 1.2, 12);
    expect(gap.greatest).toBeCloseTo(121.9 - 119.0 - 1.2, 12);
  });

  it('is not known where a size is not', () => {
    expect(sideGap({ between: [], width: [100], parts: [] }).least).toBeNaN();
    expect(sideGap({ between: [101], width: [100], parts: [Number.NaN] }).greatest).toBeNaN();
  });

  it('of 0.100 in wants one shim of 0.060: 0.040 stay, the limit', () => {
    const gap = { least: 2.54, greatest: 2.54 };
    const found = faceShims(gap, { least: 0.12, most: 1.016 }, SHIMS)!;
    // One shim that brings it under the limit is preferred to two that fill it better.
    expect(found.stack.layers).toEqual([0.06 * 25.4]);
    expect(found.left.least).toBeCloseTo(0.04 * 25.4, 12);
  });

  it('never fills what must stay open, whatever the gap', () => {
    for (let gap = 1.1; gap < 8; gap += 0.13) {
      const found = faceShims({ least: gap, greatest: gap + 0.2 }, { least: 0.12, most: 1 }, SHIMS);
      if (found === null) {
        expect(gap - 0.12).toBeLessThan(SHIMS[0]!);
        continue;
      }
      expect(found.left.least).toBeGreaterThanOrEqual(0.12 - 1e-9);
      const sum = [...found.A, ...found.B].reduce((total, t) => total + t, 0);
      expect(sum).toBeCloseTo(found.stack.thickness, 12);
      expect(found.left.greatest).toBeCloseTo(gap + 0.2 - sum, 12);
    }
  });

  it('within the limits asks for nothing, and so does one that nothing fits into', () => {
    expect(faceShims({ least: 0.5, greatest: 0.9 }, { least: 0.12, most: 1 }, SHIMS)).toBeNull();
    expect(faceShims({ least: 0.3, greatest: 1.2 }, { least: 0.12, most: 1 }, SHIMS)).toBeNull();
  });
});

describe('a centre from a straight bar', () => {
  const at = (hour: number, far: number) => ({ theta: (hour * Math.PI) / 6, far });

  it('is off by half of the feeler difference (common practice)', () => {
    const found = barCentre([at(12, 0.3), at(3, 0.25), at(6, 0.1), at(9, 0.15)])!;
    expect(found.y).toBeCloseTo((0.3 - 0.1) / 2, 12);
    expect(found.x).toBeCloseTo((0.25 - 0.15) / 2, 12);
    expect(found.miss).toBeCloseTo(0, 12);
  });

  it('is not moved by an oval, which is what four readings then miss by', () => {
    const oval = 0.04;
    const found = barCentre([
      at(12, 0.2 + oval),
      at(3, 0.2 - oval),
      at(6, 0.2 + oval),
      at(9, 0.2 - oval),
    ])!;
    expect(Math.hypot(found.x, found.y)).toBeLessThan(1e-12);
    // Four residuals of 0.04 with one to spare: root of 4 x 0.04^2 / 1.
    expect(found.miss).toBeCloseTo(2 * oval, 12);
  });

  it('leaves out how the wall itself runs, where that is known', () => {
    const lobe = (theta: number) => 0.05 * Math.cos(theta);
    const places = [12, 3, 6, 9].map((hour) => at(hour, 1 + lobe((hour * Math.PI) / 6)));
    expect(barCentre(places)!.y).toBeCloseTo(0.05, 12);
    expect(barCentre(places, lobe)!.y).toBeCloseTo(0, 12);
  });

  it('is not told from places that do not go round', () => {
    expect(barCentre([at(12, 0.1), at(6, 0.2)])).toBeNull();
    expect(barCentre([at(12, 0.1), at(6, 0.2), at(12, 0.1)])).toBeNull();
    expect(barCentre([at(12, 0.1), at(12.5, 0.1), at(1, 0.2)])).toBeNull();
  });
});
