/** Heat through rings and bars, against published figures and against series worked out here. */
import { describe, expect, it } from 'vitest';
import { conduct, type Layer, type Rings } from '../../src/assembly/conduction.ts';
import { after, coolingOf } from '../../src/assembly/cooling.ts';

const steel = { conductivity: 46, density: 7850, heat: 460 };

/** J0 and J1 by their integrals, trapezium over a whole period: exact to rounding. */
function bessel(n: number, x: number): number {
  let sum = 0;
  for (let i = 0; i < 64; i++) {
    const t = (Math.PI * (i + 0.5)) / 64;
    sum += Math.cos(n * t - x * Math.sin(t)) / 64;
  }
  return sum;
}

/** Roots of z J1(z) = Bi J0(z), and their shares in the middle: the series of every textbook of heat transfer. */
function series(biot: number, terms: number): { zeta: number; share: number }[] {
  const wrong = (z: number) => z * bessel(1, z) - biot * bessel(0, z);
  const found: { zeta: number; share: number }[] = [];
  for (let z = 1e-6; found.length < terms; z += 0.01) {
    if (!(wrong(z) < 0 !== wrong(z + 0.01) < 0)) continue;
    let [low, high] = [z, z + 0.01];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (wrong(low) < 0 === wrong(middle) < 0) low = middle;
      else high = middle;
    }
    const share = (2 * bessel(1, low)) / (low * (bessel(0, low) ** 2 + bessel(1, low) ** 2));
    found.push({ zeta: low, share });
  }
  return found;
}

const SECOND = { radius: 50, metal: { conductivity: 50, density: 1000, heat: 125 } };

/** Temperatures of a bar at a time, by cell, from 1 towards air at 0. */
function bar(film: number, seconds: number, radius = SECOND.radius, metal = SECOND.metal) {
  const layer: Layer = { inner: 0, outer: radius, metal, start: 1 };
  const rings: Rings = { layers: [layer], edges: { inside: 0, outside: film, air: 0 }, cells: 64 };
  let found = new Float64Array();
  const steps = 400;
  const times = Array.from({ length: steps }, (_, i) => seconds * ((i + 1) / steps) ** 3);
  conduct(
    rings,
    times,
    () => 0,
    ({ celsius }) => {
      found = celsius.slice();
      return true;
    },
  );
  return found;
}

/** At a radius as a share of the outer one, straight between cells. */
function at(celsius: Float64Array, share: number): number {
  const place = share * celsius.length - 0.5;
  const i = Math.min(Math.max(0, Math.floor(place)), celsius.length - 2);
  return celsius[i]! + (place - i) * (celsius[i + 1]! - celsius[i]!);
}

describe('a bar in air', () => {
  it('is the series whose first root and share textbooks print', () => {
    // Incropera, table 5.1: infinite cylinder.
    for (const [biot, zeta, share] of [
      [0.01, 0.1412, 1.0025],
      [0.1, 0.4417, 1.0246],
      [0.5, 0.9408, 1.1143],
      [1, 1.2558, 1.2071],
      [2, 1.5994, 1.3384],
      [5, 1.9898, 1.5029],
      [10, 2.1795, 1.5677],
      [100, 2.3809, 1.6015],
    ] as const) {
      const [first] = series(biot, 1);
      expect(first!.zeta.toFixed(4)).toBe(zeta.toFixed(4));
      expect(Math.abs(first!.share - share)).toBeLessThan(0.6e-4);
    }
  });

  it.each([
    [0.1, [0.9974, 0.9837, 0.9293, 0.843, 0.6936]],
    [1, [0.9768, 0.8702, 0.5486, 0.2494, 0.0515]],
    [10, [0.9001, 0.6002, 0.1458, 0.0136, 0.0001]],
  ] as const)('has in its middle what the series of six terms gives, Bi %f', (biot, told) => {
    const terms = series(biot, 6);
    for (const [i, fourier] of [0.1, 0.2, 0.5, 1, 2].entries()) {
      const exact = terms.reduce(
        (s, { zeta, share }) => s + share * Math.exp(-(zeta ** 2) * fourier),
        0,
      );
      expect(exact.toFixed(4)).toBe(told[i]!.toFixed(4));
      // Diffusivity 4e-4 m²/s: one Fourier number is 6.25 s.
      const film = (biot * 50) / 0.05;
      expect(Math.abs(at(bar(film, fourier * 6.25), 0) - exact)).toBeLessThan(5e-4);
    }
  });

  it('cools an aluminium bar as Holman, example 4-7, asks: 119.67 °C halfway out (his chart reads 118.4)', () => {
    const metal = { conductivity: 215, density: 2700, heat: 215 / 2700 / 8.4e-5 };
    const celsius = bar(525, 60, 25, metal).map((share) => 70 + 130 * share);
    expect(Math.abs(at(celsius, 0) - 120.04)).toBeLessThan(0.02);
    expect(Math.abs(at(celsius, 0.5) - 119.67)).toBeLessThan(0.02);
  });

  it('cools an aluminium bar as Som, example 4.7, asks: 317.6 °C at 0.12 m (the chart reads 300)', () => {
    const metal = { conductivity: 200, density: 2700, heat: 200 / 2700 / 8.5e-5 };
    const celsius = bar(380, 265, 150, metal).map((share) => 30 + 500 * share);
    expect(Math.abs(at(celsius, 0.8) - 317.56)).toBeLessThan(0.06);
  });
});

describe('two rings', () => {
  const layers: Layer[] = [
    { inner: 45, outer: 55, metal: steel, start: -50 },
    { inner: 55, outer: 100, metal: steel, start: 170 },
  ];

  it('keep their heat where no air takes it, and end alike', () => {
    const rings: Rings = { layers, edges: { inside: 0, outside: 0, air: 20 }, cells: 24 };
    const times = Array.from({ length: 200 }, (_, i) => 1e-3 * 1.1 ** i);
    // By area: 1000 parts of bushing and 6975 of boss, in mm² over pi.
    const mixed = (1000 * -50 + 6975 * 170) / 7975;
    conduct(
      rings,
      times,
      () => 1000,
      ({ seconds, celsius }) => {
        const heat = [...celsius].reduce((sum, one, i) => {
          const { inner, outer } = layers[Math.floor(i / 24)]!;
          const wide = (outer - inner) / 24;
          return sum + one * 2 * wide * (inner + ((i % 24) + 0.5) * wide);
        }, 0);
        expect(Math.abs(heat / 7975 / mixed - 1)).toBeLessThan(1e-9);
        if (seconds > 1e5)
          for (const one of celsius) expect(Math.abs(one - mixed)).toBeLessThan(1e-6);
        return true;
      },
    );
    expect(times.at(-1)).toBeGreaterThan(1e5);
  });

  it('let through, when steady, what resistances in a row let through', () => {
    // Constructed: 1000 W/m² into the outside, a film inside; drops by ln(r2 / r1) q r / k and q r / (h r).
    const rings: Rings = {
      layers,
      edges: { inside: 200, outside: 0, air: 20, flame: () => 1000 },
      cells: 24,
    };
    const through = 1000 * 0.1;
    const onBore = 20 + through / (200 * 0.045);
    const outward = onBore + (through / 46) * Math.log(55 / 45) + through / (500 * 0.055);
    let last = new Float64Array();
    const times = Array.from({ length: 300 }, (_, i) => 1e-2 * 1.08 ** i);
    conduct(
      rings,
      times,
      () => 500,
      ({ celsius }) => {
        last = celsius.slice();
        return true;
      },
    );
    const first = (ring: number) => {
      const { inner, outer } = layers[ring]!;
      return (through / 46) * Math.log((inner + (outer - inner) / 48) / inner);
    };
    expect(Math.abs(last[0]! - onBore - first(0))).toBeLessThan(1e-6);
    expect(Math.abs(last[24]! - outward - first(1))).toBeLessThan(1e-6);
  });
});

describe('one piece in air', () => {
  it('has the time of a 90 / 110 by 80 mm bushing of steel', () => {
    // Worked from density 7850, 460 J/kg K: 1.973 kg, 0.05655 m²; 1605 s at 10 W/m² K and 107 s at 150.
    const bushing = { inside: 90, outside: 110, length: 80, metal: steel };
    for (const [film, told] of [
      [5, '3210'],
      [10, '1605'],
      [25, '642'],
      [150, '107'],
    ] as const) {
      expect(coolingOf(bushing, film).time.toFixed(0)).toBe(told);
    }
    expect(coolingOf(bushing, 10).mass.toFixed(3)).toBe('1.973');
    expect(coolingOf(bushing, 10).biot).toBeLessThan(0.1);
  });

  it('falls by its exponential, as Holman’s ball: 450 to 150 °C in air at 100 in 5819 s', () => {
    // Holman, example 4-1: r 25 mm, 7800 kg/m³, 460 J/kg K, 10 W/m² K. Printed 5819; exact 5818.3.
    const time = (7800 * 460 * 0.025) / 3 / 10;
    expect(Math.abs(after({ time, biot: 0, mass: 0 }, 450, 100, 5818.3) - 150)).toBeLessThan(1e-3);
  });

  it('is none without a size', () => {
    expect(coolingOf({ inside: 110, outside: 90, length: 80, metal: steel }, 10).time).toBeNaN();
  });
});
