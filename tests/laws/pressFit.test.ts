/** What any press fit must keep to, whatever its sizes and metals: the stresses of both rings hold each other. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Pressed,
  pressed,
  type Rings,
  ringsFault,
  slip,
  stressed,
  yieldsAt,
} from '../../src/assembly/pressFit.ts';

const metal = fc.record({
  elastic: fc.double({ min: 5e4, max: 3e5, noNaN: true }),
  poisson: fc.double({ min: 0.1, max: 0.45, noNaN: true }),
});
const rings = fc
  .record({
    seat: fc.double({ min: 5, max: 400, noNaN: true }),
    bored: fc.double({ min: 0.05, max: 0.97, noNaN: true }),
    thick: fc.double({ min: 1.03, max: 8, noNaN: true }),
    bushing: metal,
    boss: metal,
  })
  .map(({ seat, bored, thick, bushing, boss }): Rings => {
    return { inside: bored * seat, seat, outside: thick * seat, bushing, boss };
  });

/** How far the ring's own wall moves across, by Hooke: (hoop - nu radial) / E times the size there. */
const hooke = (hoop: number, radial: number, size: number, of: Rings['boss']) =>
  ((hoop - of.poisson * radial) / of.elastic) * size;

describe('a press fit', () => {
  it('moves both walls by the fit in all, and each ring holds its load', () => {
    fc.assert(
      fc.property(rings, (given) => {
        const { inside, seat, outside, bushing, boss } = given;
        const found = pressed(given, 0.05);
        const opens = hooke(found.boss.hoopInside, -found.pressure, seat, boss);
        const closes = -hooke(found.bushing.hoopOutside, -found.pressure, seat, bushing);
        expect(Math.abs((opens + closes) / 0.05 - 1)).toBeLessThan(1e-9);
        // Free walls have no radial stress: hoop alone moves them.
        expect(found.grows).toBeCloseTo(hooke(found.boss.hoopOutside, 0, outside, boss), 9);
        expect(found.closesIn).toBeCloseTo(-hooke(found.bushing.hoopInside, 0, inside, bushing), 9);
        // Lamé: hoop + radial is the same all through a ring.
        const near = (a: number, b: number) =>
          expect(Math.abs(a - b)).toBeLessThan(1e-9 * (1 + Math.abs(a)));
        near(found.boss.hoopInside - found.pressure, found.boss.hoopOutside);
        near(found.bushing.hoopOutside - found.pressure, found.bushing.hoopInside);
      }),
    );
  });

  it('is in step with the fit, and yields where it is said to', () => {
    fc.assert(
      fc.property(rings, fc.boolean(), (given, brittle) => {
        const of = { strength: 250, brittle };
        for (const which of ['bushing', 'boss'] as const) {
          const fit = yieldsAt(given, which, of);
          if (brittle && which === 'bushing') expect(fit).toBe(Number.POSITIVE_INFINITY);
          else expect(stressed(pressed(given, fit)[which], of)).toBeCloseTo(250, 6);
        }
      }),
    );
  });

  const steel = { elastic: 210_000, poisson: 0.3 };
  const plain: Rings = { inside: 50, seat: 63.5, outside: 100, bushing: steel, boss: steel };

  it('in a boss without end is the limit of thicker and thicker ones', () => {
    const far = pressed({ ...plain, outside: Number.POSITIVE_INFINITY }, 0.05);
    const large = pressed({ ...plain, outside: 63.5 * 1e4 }, 0.05);
    expect(Math.abs(large.pressure / far.pressure - 1)).toBeLessThan(1e-7);
    expect(far.grows).toBe(0);
    // An endless plate pulls at the hole as hard as it is pressed.
    expect(far.boss.hoopInside).toBe(far.pressure);
  });

  it('of a bushing without a bore is the limit of finer and finer ones, but for the edge of the hole', () => {
    const solid = pressed({ ...plain, inside: 0 }, 0.05);
    const fine = pressed({ ...plain, inside: 1e-4 }, 0.05);
    expect(Math.abs(fine.pressure / solid.pressure - 1)).toBeLessThan(1e-9);
    expect(solid.closesIn).toBe(0);
    expect(fine.bushing.equivalent / solid.bushing.equivalent).toBeCloseTo(2, 9);
  });

  it('of a thin bushing in a stiff boss closes its bore in by all of it', () => {
    const stiff = { elastic: 210_000 * 1e6, poisson: 0.3 };
    const thin = pressed({ ...plain, inside: 63.5 * (1 - 1e-5), boss: stiff }, 0.05);
    expect(Math.abs(thin.closesIn / 0.05 - 1)).toBeLessThan(1e-4);
  });

  it('that is loose presses on nothing and holds nothing', () => {
    const loose = pressed(plain, -0.02);
    expect([loose.pressure, loose.closesIn, loose.grows]).toEqual([0, 0, 0]);
    expect(slip(plain, loose, 50, 0.1)).toEqual({ force: 0, torque: 0 });
  });

  it.each([
    ['size', { ...plain, seat: Number.NaN }],
    ['size', { ...plain, seat: 0 }],
    ['bushing', { ...plain, inside: 63.5 }],
    ['bushing', { ...plain, inside: 70 }],
    ['bushing', { ...plain, inside: Number.NaN }],
    ['boss', { ...plain, outside: 63.5 }],
    ['boss', { ...plain, outside: 40 }],
    ['boss', { ...plain, outside: Number.NaN }],
    ['material', { ...plain, boss: { elastic: 0, poisson: 0.3 } }],
    ['material', { ...plain, bushing: { elastic: 210_000, poisson: 0.5 } }],
  ] as const)('is none where the %s is at fault', (fault, given) => {
    expect(ringsFault(given)).toBe(fault);
    const numbers = (of: Pressed) => [of.pressure, of.closesIn, of.grows, of.boss.hoopInside];
    for (const one of numbers(pressed(given, 0.05))) expect(one).toBeNaN();
  });

  it('that is not known is none', () => {
    expect(ringsFault(plain)).toBeNull();
    expect(pressed(plain, Number.NaN).pressure).toBeNaN();
  });
});
