/** A boss that is warmer on one side than on another. */
import { describe, expect, it } from 'vitest';
import { celsiusRound, ovalOf, unevenOf } from '../../src/assembly/unevenHeat.ts';

const hour = (h: number) => (h * Math.PI) / 6;
const steel = { family: 'steel', perKelvin: 11.7e-6 } as const;

describe('temperatures round a boss', () => {
  it('go through one to four probes, wherever they are', () => {
    const at = [hour(12), hour(2), hour(7), hour(9)];
    const told = [150, 141, 163, 120];
    for (let n = 1; n <= 4; n++) {
      const found = unevenOf(at.slice(0, n).map((theta, i) => ({ theta, celsius: told[i]! })))!;
      for (let i = 0; i < n; i++) {
        expect(Math.abs(celsiusRound(found, at[i]!) - told[i]!)).toBeLessThan(1e-3);
      }
    }
  });

  it('are a mean, a side and a pair with probes at 12, 3, 6 and 9', () => {
    const celsius = (theta: number) =>
      150 + 12 * Math.cos(theta - hour(6)) + 5 * Math.cos(2 * theta);
    const found = unevenOf(
      [12, 3, 6, 9].map((h) => ({ theta: hour(h), celsius: celsius(hour(h)) })),
    )!;
    expect(found.mean).toBeCloseTo(150, 3);
    expect(found.side.celsius).toBeCloseTo(12, 3);
    expect(found.side.theta).toBeCloseTo(hour(6), 4);
    expect(found.pair.celsius).toBeCloseTo(5, 3);
    expect(Math.sin(found.pair.theta)).toBeCloseTo(0, 4);
  });

  it('are none without a probe, or with two at one place', () => {
    expect(unevenOf([])).toBeNull();
    expect(unevenOf([{ theta: 1, celsius: Number.NaN }])).toBeNull();
    expect(
      unevenOf([
        { theta: 1, celsius: 100 },
        { theta: 1, celsius: 120 },
      ]),
    ).toBeNull();
  });
});

/**
 * Plane strain without stress: where T is the real part of an analytic f, u + i v = alpha times f's integral. Radial
 * move of a bore of radius 1 by summing that path numerically, for T = (r² + insulated r^-2) cos 2 theta.
 */
function moves(inward: number, outward: number, theta: number): number {
  const f = (r: number, t: number) => ({
    re: outward * r ** 2 * Math.cos(2 * t) + inward * r ** -2 * Math.cos(2 * t),
    im: outward * r ** 2 * Math.sin(2 * t) - inward * r ** -2 * Math.sin(2 * t),
  });
  // Along the bore from theta to theta + pi: by symmetry of two lobes the far side moves oppositely by as much.
  let [u, v] = [0, 0];
  const n = 4000;
  for (let i = 0; i < n; i++) {
    const t = theta + (Math.PI * (i + 0.5)) / n;
    const { re, im } = f(1, t);
    const [dx, dy] = [(-Math.sin(t) * Math.PI) / n, (Math.cos(t) * Math.PI) / n];
    u += re * dx - im * dy;
    v += re * dy + im * dx;
  }
  return -(u * Math.cos(theta) + v * Math.sin(theta)) / 2;
}

describe('an oval by heat', () => {
  it('is tight across the warmer sides by a third where heat came in from outside, by all where through the bore', () => {
    // No heat through the bore: both terms alike, and T there is 2 cos 2 theta.
    expect(moves(1, 1, 0) / 2).toBeCloseTo(-1 / 3, 6);
    expect(moves(1, 0, 0)).toBeCloseTo(-1, 6);
    // A warm side alone moves the bore and leaves it round: no such term is told.
    const found = unevenOf(
      [12, 3, 6, 9].map((h) => ({ theta: hour(h), celsius: h % 6 === 0 ? 160 : 140 })),
    )!;
    const { least, most } = ovalOf(found, steel, 100);
    // 10 K at 100 mm: 0.0117 mm by the coefficient at room temperature, 14 % more at 150 °C.
    expect(most).toBeGreaterThan(0.0117 * 1.1);
    expect(most).toBeLessThan(0.0117 * 1.15);
    expect(least).toBeCloseTo(most / 3, 12);
  });
});
