/**
 * What gauges see of a lobed bore, against the published rules of two- and three-point measurement, and what the
 * evaluation makes of it.
 *
 * Sources: ISO 4292:1985, Methods for the assessment of departure from roundness - measurement by two- and
 * three-point methods; D. J. Whitehouse, Handbook of Surface Metrology (1994), chapter on roundness; F. Reuleaux,
 * The Kinematics of Machinery (1876), for the section of constant width.
 */
import { describe, expect, it } from 'vitest';
import { cosineColumn, gains, LOBES, seenLobes, TERMS } from '../../src/bore/instruments.ts';
import type { Sighting } from '../../src/bore/types.ts';
import { evaluate } from '../../src/evaluate.ts';
import type { Instrument } from '../../src/job/schema.ts';
import {
  clocks,
  crescent,
  depthsWithin,
  IDEAL,
  type JobParts,
  jobOf,
  lobe,
  measure,
  round,
  sum,
} from '../fixtures/bores.ts';

const LENGTH = 50;
const RADIUS = 25;
const DEPTHS = depthsWithin(3, LENGTH);
const ALL_ROUND = clocks(24, 2 * Math.PI);
const survey = (parts: JobParts) => evaluate(jobOf(parts)).bores[0]!.surveys[0]!;

/** A gauge turned once round at one depth. */
function turnedRound(instrument: Instrument, steps: number): Sighting[] {
  return Array.from({ length: steps }, (_, row) => ({
    row,
    instrument,
    theta: (2 * Math.PI * row) / steps,
    z: 0,
    value: 0,
    sd: 0.005,
    sdStated: true,
    setup: -1,
  }));
}

/**
 * Largest less smallest reading of a bore R0 + A cos n(theta - at), over the lobe's own 2 A. Turning the bore under
 * the gauge goes through every `at`: gain_cos cos n at + gain_sin sin n at swings by twice its length.
 */
function factors(instrument: Instrument, n: number): number[] {
  const gain = gains(turnedRound(instrument, 7), []);
  return Array.from({ length: 7 }, (_, row) => {
    const c = row * TERMS + cosineColumn(n);
    return Math.hypot(gain[c]!, gain[c + 1]!);
  });
}

function expectFactor(instrument: Instrument, n: number, wanted: number): void {
  // Sums of a few cosines of angles below 100 radians: rounding is below 100 * 2.2e-16 * 3.
  for (const f of factors(instrument, n)) expect(Math.abs(f - wanted)).toBeLessThan(1e-13);
}

/** Summit method of ISO 4292 on three points: F for the angle a of the vee, degrees. */
const isoFactor = (n: number, a: number) =>
  Math.abs(1 + Math.cos((n * (90 + a / 2) * Math.PI) / 180) / Math.sin((a * Math.PI) / 360));

describe('gains by lobe number (ISO 4292)', () => {
  const lobes = Array.from({ length: LOBES - 1 }, (_, i) => i + 2);

  it.each(lobes)('two-point, lobe %i: 2 for even, 0 for odd', (n) => {
    expectFactor('two-point', n, n % 2 === 0 ? 2 : 0);
  });

  it.each(lobes)('three-leg, lobe %i: the mean radius sees 1 for 3, 6, 9, 12 and 0 else', (n) => {
    // The gauge shows a mean diameter: twice the mean radius.
    expectFactor('three-leg', n, n % 3 === 0 ? 2 : 0);
  });

  it.each(lobes)('three-leg, lobe %i: two thirds of F for legs 120 degrees apart', (n) => {
    // Table of ISO 4292 for a = 60 degrees: F = 3 for 3, 6, 9, ..., 0 else; F counts the sum of the three radii.
    expect(isoFactor(n, 60)).toBeCloseTo(n % 3 === 0 ? 3 : 0, 12);
    expectFactor('three-leg', n, (2 / 3) * isoFactor(n, 60));
  });

  it.each(lobes)('radius, lobe %i: 1, whatever the lobe', (n) => {
    expectFactor('radius', n, 1);
  });

  it.each(['two-point', 'three-leg', 'radius'] as const)(
    '%s: gains add up to what it reads',
    (gauge) => {
      const taken = turnedRound(gauge, 11);
      const gain = gains(taken, []);
      for (let n = 1; n <= LOBES; n++) {
        const truth = lobe(n, 1, 0.3);
        taken.forEach((s, row) => {
          const c = row * TERMS + cosineColumn(n);
          const read = gain[c]! * Math.cos(n * 0.3) + gain[c + 1]! * Math.sin(n * 0.3);
          expect(Math.abs(read - IDEAL[gauge](truth, s.theta, 0))).toBeLessThan(1e-13);
        });
      }
    },
  );

  it('sizes: two radii across, two mean radii for three legs, one for a radius', () => {
    for (const [instrument, size] of [
      ['two-point', 2],
      ['three-leg', 2],
      ['radius', 1],
    ] as const) {
      const gain = gains(turnedRound(instrument, 7), []);
      for (let row = 0; row < 7; row++) expect(gain[row * TERMS]).toBeCloseTo(size, 12);
    }
  });

  it('names the lobes that are seen', () => {
    const seen = (instrument: Instrument) => seenLobes(gains(turnedRound(instrument, 12), []));
    expect(seen('two-point')).toEqual([2, 4, 6, 8, 10, 12, 14]);
    expect(seen('three-leg')).toEqual([3, 6, 9, 12]);
    expect(seen('radius')).toEqual(Array.from({ length: LOBES }, (_, i) => i + 1));
  });
});

describe('one lobe at a time, evaluated', () => {
  const A = 0.02;
  const sd = 0.002;

  it('an oval: shop out-of-round across is four times the amplitude, twice the radial roundness', () => {
    const truth = sum(round(RADIUS), lobe(2, A, 0.7));
    const taken = measure(truth, 'two-point', clocks(6), DEPTHS);
    for (const section of survey({ taken, length: LENGTH, sd }).sections) {
      // Smoothness draws a lobe in by the noise's share of its own spread: 0.002^2 / 6 in 0.02^2, below 1 %.
      expect(Math.abs(section.outOfRound - 4 * A)).toBeLessThan(0.01 * 4 * A);
      expect(Math.abs(section.greatest.theta - 0.7)).toBeLessThan((2 * Math.PI) / 720);
      expect(section.greatest.diameter - section.least.diameter).toBeCloseTo(
        section.outOfRound,
        12,
      );
    }
  });

  it('the same oval by a three-leg gauge: no figure for out-of-round, and the reader is told', () => {
    const truth = sum(round(RADIUS), lobe(2, A, 0.7));
    const taken = measure(truth, 'three-leg', clocks(6, (2 * Math.PI) / 3), DEPTHS);
    const found = survey({ taken, length: LENGTH, sd });
    for (const section of found.sections) {
      expect(section.outOfRound).toBeNaN();
      expect(section.least).toEqual({ diameter: Number.NaN, theta: Number.NaN });
      expect(section.lobes.map((one) => one.n)).toEqual([3, 6]);
      expect(Math.abs(section.meanDiameter - 2 * RADIUS)).toBeLessThan(1e-6);
    }
    expect(found.blindSpots.map((one) => one.text).join()).toMatch(
      /three-leg gauge reads the mean of an oval/,
    );
    // Unseen means unknown: the map's sd holds an oval of the usual size that the gauge could never have shown.
    const { sd: all, sdSeen } = found.surface!;
    expect(all.every((value, k) => value > 1.5 * sdSeen[k]!)).toBe(true);
  });

  it.each([3, 5])('%i lobes across read round', (n) => {
    const truth = sum(round(RADIUS), lobe(n, A, 0.7));
    const taken = measure(truth, 'two-point', clocks(6), DEPTHS);
    for (const section of survey({ taken, length: LENGTH, sd }).sections) {
      // Typed to 1e-10 mm: cos n t + cos n(t + pi) is nothing.
      expect(section.outOfRound).toBeLessThan(1e-8);
    }
  });

  it('three lobes by a three-leg gauge turned round: all of them', () => {
    const truth = sum(round(RADIUS), lobe(3, A, 0.3));
    const taken = measure(truth, 'three-leg', clocks(6, (2 * Math.PI) / 3), DEPTHS);
    for (const section of survey({ taken, length: LENGTH, sd }).sections) {
      const third = section.lobes.find((one) => one.n === 3)!;
      expect(Math.abs(third.amplitude - A)).toBeLessThan(0.02 * A);
      expect(Math.abs(third.theta - 0.3)).toBeLessThan(0.01);
    }
  });

  it('a crescent reads across like wear of half as much on both sides', () => {
    const w = 0.018 * 25.4;
    const one = sum(round(RADIUS), crescent(w, 0, Math.PI));
    const both = sum(round(RADIUS), crescent(w / 2, 0, Math.PI), crescent(w / 2, 0, 0));
    const [a, b] = [one, both].map((truth) =>
      survey({ taken: measure(truth, 'two-point', clocks(6), DEPTHS), length: LENGTH, sd }),
    );
    // The very same readings to rounding, so the very same surface.
    expect(
      Math.max(...a!.surface!.mean.map((r, k) => Math.abs(r - b!.surface!.mean[k]!))),
    ).toBeLessThan(1e-8);
  });
});

/*
 * Constant width. A Reuleaux triangle of width w has an incircle (1 - 1/sqrt 3) w and a circumcircle w / sqrt 3 about
 * one centre: 0.15470053837925168 w apart (Yaglom and Boltyanskii, Convex Figures, 1961). Grown outward by g it
 * keeps a constant width, w + 2 g, and that same difference: a bore that every caliper calls round.
 */
describe('a Reuleaux section', () => {
  const w = 1;
  const g = RADIUS - w / 2;
  const CIRCLES_APART = 0.15470053837925168;
  const corners = [0, 1, 2].map((k) => {
    const at = (2 * Math.PI * k) / 3;
    return [Math.sin(at) / Math.sqrt(3), Math.cos(at) / Math.sqrt(3)] as const;
  });
  /** Support function of the triangle about its centre: how far it reaches in a direction. */
  function reach(theta: number): number {
    const [s, c] = [Math.sin(theta), Math.cos(theta)];
    const tips = corners.map(([x, y]) => x * s + y * c);
    // In the sixth of a turn about a corner's direction that corner reaches farthest; in the sixths between, which lie
    // opposite the corners, the arc about the opposite one does.
    const fromCorner = Math.acos(Math.min(1, Math.max(...tips) * Math.sqrt(3)));
    return fromCorner <= Math.PI / 6 ? Math.max(...tips) : w + Math.min(...tips);
  }
  /** Distance from the centre to the grown outline, by halving: p is inside where no direction is exceeded. */
  const directions = Array.from({ length: 3600 }, (_, i) => (2 * Math.PI * i) / 3600);
  const supports = directions.map((d) => reach(d) + g);
  function radiusAt(theta: number): number {
    let r = Number.POSITIVE_INFINITY;
    directions.forEach((d, i) => {
      const c = Math.cos(d - theta);
      if (c > 0.5) r = Math.min(r, supports[i]! / c);
    });
    return r;
  }

  it('is of constant width, between its two circles', () => {
    for (const d of directions) expect(reach(d) + reach(d + Math.PI)).toBeCloseTo(w, 12);
    // Tangents every 0.1 degree overshoot the outline by at most R (1 - cos 0.05 deg) = 1e-5 mm.
    expect(Math.abs(radiusAt(0) - (w / Math.sqrt(3) + g))).toBeLessThan(2e-5);
    expect(Math.abs(radiusAt(Math.PI) - (w - w / Math.sqrt(3) + g))).toBeLessThan(2e-5);
    expect(Math.abs(radiusAt(0) - radiusAt(Math.PI) - CIRCLES_APART * w)).toBeLessThan(4e-5);
  });

  it('reads round across by parallel jaws', () => {
    const taken = DEPTHS.flatMap((z) =>
      clocks(6).map((theta) => {
        const value = reach(theta) + reach(theta + Math.PI) + 2 * g;
        return { theta, z, value, gauge: 'two-point' as const };
      }),
    );
    for (const section of survey({ taken, length: LENGTH, sd: 0.002 }).sections) {
      expect(section.outOfRound).toBeLessThan(1e-8);
      expect(Math.abs(section.meanDiameter - 2 * RADIUS)).toBeLessThan(1e-6);
    }
  });

  it('shows its three lobes by radius', () => {
    const taken = measure((theta) => radiusAt(theta), 'radius', ALL_ROUND, DEPTHS);
    const found = survey({ taken, length: LENGTH, sd: 0.002 });
    const { theta, z } = found.surface!.grid;
    for (let iz = 0; iz < z.length; iz++) {
      const row = found.surface!.mean.subarray(iz * theta.length, (iz + 1) * theta.length);
      // The outline's radius of curvature is w and 0 by turns, so its lobes are 2 w / (pi k (n^2 - 1)), n = 3 k, k odd:
      // those of 15, 21, 27, ..., which the surface cuts off, add up to 0.001 w at crest and trough: 1.3 % of the
      // difference. The rest of the 2 % is the noise's share.
      const apart = Math.max(...row) - Math.min(...row);
      expect(Math.abs(apart - CIRCLES_APART * w)).toBeLessThan(0.02 * CIRCLES_APART * w);
    }
    for (const section of found.sections) {
      const [largest] = [...section.lobes].sort((a, b) => b.amplitude - a.amplitude);
      expect(largest!.n).toBe(3);
      expect(Math.min(largest!.theta, (2 * Math.PI) / 3 - largest!.theta)).toBeLessThan(1e-3);
    }
  });
});

/*
 * Sampling: of N equally spaced readings a lobe of n = k N +- 1 looks like a shifted centre, and one of n = k N like
 * another size (Whitehouse 1994). The evaluation knows lobe 11 but must not invent it where 12 radii cannot tell.
 */
describe('12 equally spaced radii of a lobed bore', () => {
  const A = 0.02;
  const around = clocks(12, 2 * Math.PI);

  it('11 lobes are taken for a centre shifted by the amplitude', () => {
    const taken = measure(sum(round(RADIUS), lobe(11, A)), 'radius', around, DEPTHS);
    for (const section of survey({ taken, length: LENGTH, sd: 0.002 }).sections) {
      // The centre may stand off by 1 mm and lobe 11 by 0.35 * 3 / 120 of an oval: shares of 1 and below 1e-3.
      expect(Math.abs(section.circle!.y - A)).toBeLessThan(0.01 * A);
      expect(Math.abs(section.circle!.x)).toBeLessThan(0.01 * A);
    }
  });

  it('12 lobes are taken for another size', () => {
    const taken = measure(sum(round(RADIUS), lobe(12, A)), 'radius', around, DEPTHS);
    for (const section of survey({ taken, length: LENGTH, sd: 0.002 }).sections) {
      expect(Math.abs(section.meanDiameter - 2 * (RADIUS + A))).toBeLessThan(0.01 * 2 * A);
    }
  });
});
