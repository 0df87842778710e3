/**
 * Factors of two- and three-point gauges against the table of ISO 4292:1985 (values from memory, two decimals) and
 * against a vee worked out by contact.
 */
import { describe, expect, it } from 'vitest';
import {
  gaugeFactor,
  THREE_LEG,
  TWO_POINT,
  type Vee,
  veeTouches,
} from '../../src/geometry/gaugeResponse.ts';

const RAD = Math.PI / 180;
const LOBES = Array.from({ length: 14 }, (_, i) => i + 2);
const factor = (vee: Vee, n: number) => gaugeFactor(veeTouches(vee), n);

/** Symmetrical vee, summit method, lobes 2 to 15. */
const TABLE: Readonly<Record<string, readonly number[]>> = {
  60: [0, 3, 0, 0, 3, 0, 0, 3, 0, 0, 3, 0, 0, 3],
  72: [0.4743, 2.618, 0.3764, 1, 2.3764, 0.618, 1.5257, 2, 0.7013, 2, 1.5257, 0.618, 2.3764, 1],
  90: [1, 2, 0.4142, 2, 1, 0, 2.4142, 0, 1, 2, 0.4142, 2, 1, 0],
  108: [1.382, 1.382, 0, 2.2361, 0, 1.382, 1.382, 0, 2.2361, 0, 1.382, 1.382, 0, 2.2361],
  120: [1.5774, 1, 0.4226, 2, 0.1547, 2, 0.4226, 1, 1.5774, 0, 2.1547, 0, 1.5774, 1],
};

describe('ISO4292-F', () => {
  it.each(Object.keys(TABLE))('summit, vee of %s degrees, lobes 2 to 15', (degrees) => {
    LOBES.forEach((n, i) => {
      const found = factor({ angle: Number(degrees) * RAD, method: 'summit' }, n);
      // The table's two decimals; and the closed form to rounding of cosines of angles below 40 rad.
      expect(Math.abs(found - TABLE[degrees]![i]!), `${n}`).toBeLessThan(0.01);
      const half = (Number(degrees) / 2) * RAD;
      const closed = Math.abs(1 + Math.cos(n * (Math.PI / 2 + half)) / Math.sin(half));
      expect(Math.abs(found - closed)).toBeLessThan(1e-13);
    });
  });

  it.each(LOBES)('rider, %i lobes: the closed form', (n) => {
    for (const degrees of [60, 72, 90, 108, 120]) {
      const half = (degrees / 2) * RAD;
      const closed = Math.abs(1 - Math.cos(n * (Math.PI / 2 - half)) / Math.sin(half));
      expect(Math.abs(factor({ angle: 2 * half, method: 'rider' }, n) - closed)).toBeLessThan(
        1e-13,
      );
    }
  });

  it('two-point: 2 for even, 0 for odd', () => {
    for (const n of LOBES) expect(gaugeFactor(TWO_POINT, n)).toBeCloseTo(n % 2 === 0 ? 2 : 0, 13);
  });

  it('no three contacts see a shift of the center, and a vee sees size by 1 + 1 / sin(a/2)', () => {
    for (const skew of [0, 30, 60]) {
      for (const method of ['summit', 'rider'] as const) {
        expect(factor({ angle: 1.2, method, skew: skew * RAD }, 1)).toBeLessThan(1e-13);
      }
    }
    expect(factor({ angle: 1.2, method: 'summit' }, 0)).toBeCloseTo(1 + 1 / Math.sin(0.6), 13);
  });

  it('there is no vee of 0 or 180 degrees', () => {
    for (const angle of [0, Math.PI, Number.NaN, -1]) {
      expect(() => veeTouches({ angle, method: 'summit' })).toThrow(RangeError);
    }
  });
});

// Whitehouse, Handbook of Surface Metrology (1994), chapter on roundness; figures derived.
it('GAUGE-BLINDNESS: three legs show the mean radius, 1 for 3, 6, 9 lobes and nothing of the others', () => {
  for (const n of LOBES) {
    expect(Math.abs(gaugeFactor(THREE_LEG, n) / 2 - (n % 3 === 0 ? 1 : 0))).toBeLessThan(1e-13);
    const sixty = factor({ angle: Math.PI / 3, method: 'summit' }, n);
    expect(Math.abs((2 / 3) * sixty - gaugeFactor(THREE_LEG, n))).toBeLessThan(1e-13);
  }
});

/*
 * By contact: a part of radius 1 with lobes of amplitude A is pushed into the vee until its outline touches both
 * flanks; a flat face then comes down along the measuring direction. How far an outline reaches in a direction d is
 * found on the outline itself. It reaches beyond the radius at d by A^2 n^2 / 2 at most, so the factor is off by
 * n^2 A times the sum of the weights: 15^2 * 1e-7 * 3 < 1e-4.
 */
describe('a vee worked out by contact', () => {
  const A = 1e-7;

  function reach(n: number, turned: number, d: number): number {
    let low = d - 0.01;
    let high = d + 0.01;
    // How far the point at angle t lies below the tangent at d, without taking 1 from 1.
    const height = (t: number) =>
      A * Math.cos(n * (t - turned)) * Math.cos(t - d) - 2 * Math.sin((t - d) / 2) ** 2;
    for (let k = 0; k < 100; k++) {
      const a = low + (high - low) / 3;
      const b = high - (high - low) / 3;
      if (height(a) < height(b)) low = a;
      else high = b;
    }
    return height((low + high) / 2);
  }

  /** Largest less smallest reading, over 2 A. A lobe repeats after 2 pi / n: 400 steps miss a crest by 3e-5 of it. */
  function simulated(vee: Vee, n: number): number {
    const side = (Math.PI - vee.angle) / 2;
    const at = (vee.method === 'summit' ? Math.PI : 0) + (vee.skew ?? 0);
    let least = Number.POSITIVE_INFINITY;
    let greatest = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < 400; k++) {
      const turned = (2 * Math.PI * k) / (400 * n);
      // u . d = -reach at both flanks, two equations for the part's place.
      const [p, q] = [-reach(n, turned, side), -reach(n, turned, -side)];
      const along = (p + q) / (2 * Math.cos(side));
      const aside = (p - q) / (2 * Math.sin(side));
      const read = reach(n, turned, at) + along * Math.cos(at) + aside * Math.sin(at);
      least = Math.min(least, read);
      greatest = Math.max(greatest, read);
    }
    return (greatest - least) / (2 * A);
  }

  const settings = [60, 72, 90, 108, 120].flatMap((angle) => [
    { angle, method: 'summit' as const, skew: 0 },
    { angle, method: 'rider' as const, skew: 0 },
  ]);
  // Skewed settings: any will do to prove the rule.
  const skewed = [
    { angle: 120, method: 'summit' as const, skew: 60 },
    { angle: 60, method: 'summit' as const, skew: 30 },
    { angle: 90, method: 'rider' as const, skew: -20 },
  ];

  it.each([...settings, ...skewed])('$angle degrees, $method, skew $skew', (setting) => {
    const vee = { ...setting, angle: setting.angle * RAD, skew: setting.skew * RAD };
    for (const n of LOBES) {
      expect(Math.abs(simulated(vee, n) - factor(vee, n)), `${n} lobes`).toBeLessThan(0.5e-3);
    }
  });
});
