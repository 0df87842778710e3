/** Weld build-up: volumes against calculus, electrodes and preheat against published figures. */
import { describe, expect, it } from 'vitest';
import {
  carbonEquivalent,
  depositOf,
  EFFICIENCY,
  ELECTRODES,
  preheatOf,
  skipOrder,
  stringersOf,
} from '../../src/assembly/weld.ts';

const bead = { height: 2.5, width: 8, overlap: 0.375 };
const electrode = ELECTRODES[1]!;

/** A bore of radius r, evenly sampled over its length. */
function evenly(r: number, t: (theta: number) => number, length: number) {
  const count = 360;
  const radius = new Float64Array(count).fill(r);
  const share = new Float64Array(count).fill((2 * Math.PI * length) / count);
  const thickness = radius.map((_, i) => t((2 * Math.PI * i) / count));
  return { radius, share, thickness, run: length, bead, electrode };
}

describe('a deposit', () => {
  it('all round is the ring that it makes, in volume and in grams of steel', () => {
    // 3.175 per side (1/8 in, common practice) in a 50 mm bore, 60 long.
    const found = depositOf(evenly(25, () => 3.175, 60));
    const ring = Math.PI * (25 ** 2 - (25 - 3.175) ** 2) * 60;
    expect(found.volume).toBeCloseTo(ring, 6);
    // Density 0.283 lb/in3 as published for steel filler: 453.592 g a pound, 16387.064 mm3 a cubic inch.
    expect(Math.abs(found.mass / ((ring * 0.283 * 453.592) / 16387.064) - 1)).toBeLessThan(0.003);
    expect(found.greatest).toBe(3.175);
    expect(found.layers).toBe(2);
    // 157.1 round, beads 8 wide lapping by 3: 31.4 of them.
    expect(found.stringers).toBe(32);
  });

  it('uneven is the integral over the clock', () => {
    // t = 0.5 (1 + cos): mean 0.5, mean square 0.375, so that each mm of depth takes 2 pi (25 x 0.5 - 0.375 / 2).
    const found = depositOf(evenly(25, (theta) => 0.5 * (1 + Math.cos(theta)), 10));
    expect(found.volume).toBeCloseTo(2 * Math.PI * (25 * 0.5 - 0.375 / 2) * 10, 6);
  });

  it('nothing is deposited where nothing is wanted or known', () => {
    const none = depositOf(evenly(25, (theta) => (theta > 3 ? 0 : Number.NaN), 10));
    expect(none).toMatchObject({ volume: 0, mass: 0, greatest: 0, layers: 0, electrodes: 0 });
  });

  it('electrodes: 150 g from five of 4.0 x 380 as their makers publish; counted up for ours', () => {
    const five = { ...electrode, core: 4, deposit: 30 };
    const asked = evenly(25, () => 1, 60);
    const found = depositOf({ ...asked, electrode: five });
    expect(found.electrodes).toBe(Math.ceil(found.mass / 30));
    expect(found.toBuy).toBeCloseTo(found.mass / 0.62, 9);
    // Electrode makers' deposition figures for stick electrodes 14 in long, 2 in stub: 62 %.
    expect(EFFICIENCY).toBe(0.62);
  });
});

describe('the order of stringers', () => {
  it('skips straight across, then to the quarters: 12, 6, 3, 9, then the next hours', () => {
    const hours = skipOrder(12).map((place) => (place === 0 ? 12 : place));
    expect(hours).toEqual([12, 6, 3, 9, 1, 7, 4, 10, 2, 8, 5, 11]);
  });

  it('of low places alone goes over these alone, to and fro between them; all round as the clock skips', () => {
    // Constructed: 24 places of the clock, two depths, radius 24 / pi: 2 mm a place. Low at 4 to 5 and, deeper, at 9.
    const theta = Float64Array.from({ length: 24 }, (_, i) => (2 * Math.PI * i) / 24);
    const radius = new Float64Array(48).fill(24 / Math.PI);
    const of = (low: readonly number[]) =>
      stringersOf({
        thickness: radius.map((_, k) => (low.includes(k) ? 1 : k % 5 === 0 ? Number.NaN : 0)),
        radius,
        theta,
        pitch: 2,
        round: 24,
      }).map((at) => (6 * at) / Math.PI);
    const hours = of([8, 9, 10, 24 + 18]);
    expect(hours).toHaveLength(4);
    [4, 9, 5, 4.5].forEach((hour, i) => {
      expect(hours[i]).toBeCloseTo(hour, 9);
    });
    // Across 12, in one stretch.
    expect(of([23, 0, 1]).map((hour) => (Math.round(2 * hour) / 2) % 12)).toEqual([11.5, 0.5, 0]);
    expect(of([])).toEqual([]);
    const all = of(Array.from({ length: 24 }, (_, i) => i));
    expect(all).toHaveLength(24);
    all.forEach((hour, i) => {
      expect(hour).toBeCloseTo(skipOrder(24)[i]! / 2, 9);
    });
  });

  it('takes every place once, however many there are', () => {
    for (let count = 1; count < 60; count++) {
      expect([...skipOrder(count)].sort((a, b) => a - b)).toEqual(
        Array.from({ length: count }, (_, i) => i),
      );
    }
  });
});

describe('preheat', () => {
  it('carbon equivalent as the International Institute of Welding has it', () => {
    const steel = { C: 0.18, Mn: 1.2, Cr: 0.2, Mo: 0.1, V: 0, Ni: 0.15, Cu: 0.2 };
    expect(carbonEquivalent(steel)).toBeCloseTo(0.4633, 4);
  });

  // Bands as commonly published beside AWS D1.1 and EN 1011-2.
  it.each([
    [0.35, 0, 0, false],
    [0.42, 100, 100, false],
    [0.4633, 150, 200, false],
    [0.6, 150, 200, false],
    [0.7, 200, Number.NaN, true],
  ])('at %f', (equivalent, least, most, slowCool) => {
    expect(preheatOf(equivalent)).toEqual({ least, most, slowCool });
  });

  it('is not told where the steel is not known', () => {
    expect(preheatOf(Number.NaN)).toBeNull();
    expect(preheatOf(0)).toBeNull();
  });
});
