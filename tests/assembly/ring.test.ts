/** Thick rings under lobes, and steel when it is hot, against published figures. */
import { describe, expect, it } from 'vitest';
import { lobeMoves } from '../../src/assembly/ring.ts';
import { springback } from '../../src/assembly/springback.ts';
import { hotShares, STEEL_MODULUS } from '../../src/assembly/steel.ts';
import { ringElements } from './ringElements.ts';

const ring = (ratio: number, poisson = 0.3) => ({ bore: 1, outside: ratio, poisson });

describe('a ring under n lobes', () => {
  // E u / (p a) of the bore and the outside under a load on the bore, and of the outside under its own load; nu 0.3,
  // plane stress. Independent solution of Michell's terms (1899) to five digits.
  it.each([
    [1.1, 2, 1554.3, 1554.0, 1553.8],
    [1.25, 2, 126.29, 125.94, 125.82],
    [1.25, 3, 18.724, 18.525, 18.549],
    [1.5, 2, 23.668, 23.232, 23.201],
    [2, 2, 6.4062, 5.8272, 5.9395],
    [2, 4, 0.70964, 0.33325, 0.61631],
    [3, 3, 0.94232, 0.34635, 0.76732],
  ])('of outside over bore %f moves with %i lobes as tabulated', (ratio, n, ownBore, far, own) => {
    const inside = lobeMoves(ring(ratio), n, 'bore');
    const outside = lobeMoves(ring(ratio), n, 'outside');
    // Half of the table's last digit.
    const near = (value: number, told: number) =>
      expect(Math.abs(value / told - 1)).toBeLessThan(5e-5);
    near(inside.bore, ownBore);
    near(inside.outside, far);
    // The table counts the move under a load on the outside by the outside's radius.
    near(-outside.outside / ratio, own);
    // Maxwell and Betti: what one load does at the other's place is the same either way.
    near(-outside.bore, ratio * far);
  });

  // By hand from the two of Michell's terms that stay finite: u = (p a / 4 mu) [k / (n - 1) + 1 / (n + 1)] for a hole in
  // a plate, -(p b / 4 mu) [1 / (n - 1) + k / (n + 1)] for a disc; k = (3 - nu) / (1 + nu).
  const k = (3 - 0.3) / 1.3;
  it.each([2, 3, 4, 6, 12, 60])(
    'with %i lobes is a hole in an endless plate where the outside is far away',
    (n) => {
      const told = (1.3 / 2) * (k / (n - 1) + 1 / (n + 1));
      expect(Math.abs(lobeMoves(ring(1e4), n, 'bore').bore / told - 1)).toBeLessThan(1e-6);
      expect(lobeMoves(ring(Number.POSITIVE_INFINITY), n, 'bore').bore).toBeCloseTo(told, 12);
    },
  );

  it.each([2, 3, 4, 6, 12, 60])('with %i lobes is a disc where the bore is small', (n) => {
    const told = -(1.3 / 2) * (1 / (n - 1) + k / (n + 1));
    const { outside } = lobeMoves(ring(1e4), n, 'outside');
    expect(Math.abs(outside / 1e4 / told - 1)).toBeLessThan(1e-6);
  });

  it('is Lamé’s ring under even pressure', () => {
    // Budynas and Nisbett, Shigley’s Mechanical Engineering Design, equation 3-51: hoop (b2 + a2) / (b2 - a2) at the
    // bore under pressure there; -2 b2 / (b2 - a2) under pressure outside.
    expect(lobeMoves(ring(2), 0, 'bore').hoop).toBeCloseTo(5 / 3, 14);
    expect(lobeMoves(ring(2), 0, 'bore').bore).toBeCloseTo(5 / 3 + 0.3, 14);
    expect(lobeMoves(ring(2), 0, 'outside').hoop).toBeCloseTo(-8 / 3, 14);
    expect(lobeMoves(ring(2), 0, 'outside').outside).toBeCloseTo(-2 * (5 / 3 - 0.3), 14);
    expect(lobeMoves(ring(Number.POSITIVE_INFINITY), 0, 'bore').bore).toBeCloseTo(1.3, 14);
  });

  it.each([
    [0, 'bore'],
    [0, 'outside'],
    [1, 'bore'],
    [1, 'outside'],
    [2, 'outside'],
    [5, 'bore'],
  ] as const)('with %i lobes moves as finite elements have it, pressed on the %s', (n, on) => {
    const found = lobeMoves(ring(1.5), n, on);
    const coarse = ringElements(1.5, 0.3, n, on, 30);
    const fine = ringElements(1.5, 0.3, n, on, 60);
    for (const key of ['bore', 'outside'] as const) {
      // Linear elements err by the square of their size: what is left after that, from the change between the two.
      const told = fine[key] + (fine[key] - coarse[key]) / 3;
      expect(Math.abs(found[key] - told)).toBeLessThan(0.05 * Math.abs(fine[key] - coarse[key]));
    }
  });

  it('is a thin ring in bending where it is thin', () => {
    // u = p R^4 / (E t^3 / 12 (n^2 - 1)^2); a thick-ring solution is 1.0003 (n = 2) of it at t / R = 0.02.
    const t = 0.02;
    const thin = 1 / ((t ** 3 / 12) * 9);
    const thick = lobeMoves({ bore: 1 - t / 2, outside: 1 + t / 2, poisson: 0.3 }, 2, 'bore');
    // A pressure on the bore is one on the middle less by a / R, by which the move is counted too.
    expect(Math.abs(thick.bore / thin - 1.0003)).toBeLessThan(5e-5);
  });

  it('pulls at the bore, pinched across, as Timoshenko and Goodier’s table says', () => {
    // Theory of Elasticity, ring of a / b = 0.5 under two forces P: -8.942 x 2 P / (pi b) at the bore, across the
    // forces; the table's own sums were rounded, and the full series gives -8.899.
    const b = 2;
    const lame = (-2 * b ** 2) / (b ** 2 - 1);
    let hoop = lame / 2;
    for (let n = 2; n <= 60; n += 2) {
      hoop += lobeMoves(ring(b), n, 'outside').hoop * Math.cos((n * Math.PI) / 2);
    }
    expect(Math.abs(hoop / -8.899 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(hoop / -8.942 - 1)).toBeLessThan(5e-3);
  });

  it('is none where the outside is no larger than the bore', () => {
    expect(lobeMoves(ring(1), 2, 'bore').bore).toBeNaN();
    expect(lobeMoves(ring(Number.NaN), 2, 'outside').hoop).toBeNaN();
  });
});

describe('hot steel', () => {
  // EN 1993-1-2:2005, table 3.1: k_y and k_E.
  it.each([
    [20, 1, 1],
    [400, 1, 0.7],
    [500, 0.78, 0.6],
    [600, 0.47, 0.31],
    [700, 0.23, 0.13],
    [1200, 0, 0],
  ])('at %i °C keeps the shares of the table', (celsius, strength, modulus) => {
    expect(hotShares(celsius)).toEqual({ yield: strength, modulus });
  });

  it('lies straight between the rows, and nowhere outside', () => {
    expect(hotShares(550).yield).toBeCloseTo((0.78 + 0.47) / 2, 12);
    expect(hotShares(650).modulus).toBeCloseTo((0.31 + 0.13) / 2, 12);
    expect(hotShares(10).yield).toBeNaN();
    expect(hotShares(1201).modulus).toBeNaN();
    expect(hotShares(Number.NaN).yield).toBeNaN();
  });
});

describe('springback', () => {
  const boss = { bore: 50.8, boss: 95.25, yield: 235, heat: 600 };

  it('is the elastic move at the load that yields, by hand', () => {
    // Constructed from the table above: two lobes on the outside of a ring of b / a = 2, 40 mm bore, cold.
    const found = springback({ bore: 40, boss: 80, yield: 210, heat: 20 })!;
    const { bore, hoop } = lobeMoves(ring(2), 2, 'outside');
    const pressure = 210 / Math.abs(hoop);
    expect(found.least).toBeCloseTo((Math.abs(bore) * pressure * 40) / STEEL_MODULUS, 12);
    expect(found.most).toBeCloseTo(1.5 * found.least, 12);
  });

  it('is less where the metal yields sooner, and grows with the size in step', () => {
    const cold = springback({ ...boss, heat: 20 })!;
    const hot = springback(boss)!;
    expect(hot.least).toBeLessThan(cold.least);
    const twice = springback({ ...boss, bore: 101.6, boss: 190.5 })!;
    expect(twice.most / hot.most).toBeCloseTo(2, 9);
  });

  it('is not told without a boss, or outside the table of heats', () => {
    expect(springback({ ...boss, boss: Number.NaN })).toBeNull();
    expect(springback({ ...boss, boss: 50 })).toBeNull();
    expect(springback({ ...boss, heat: 1300 })).toBeNull();
  });
});
