/**
 * Press fits that practice and standards call for, against published tables: ISO 286-1 (ISO R286:1962) and its formulas;
 * ANSI/ASME B4.1-1967 as printed in Machinery's Handbook, 27th edition, p. 663, and 31st edition, tables 11 and 12.
 */
import { describe, expect, it } from 'vitest';
import { fitRanges } from '../../src/assembly/fitRanges.ts';
import { FORCE_FITS, LOCATION_FITS } from '../../src/assembly/inchFits.ts';
import {
  type Grade,
  holeLimits,
  type ShaftLetter,
  shaftLimits,
  toleranceOf,
} from '../../src/assembly/isoFits.ts';

const um = (mm: number) => Math.round(mm * 1e6) / 1e3;

describe('ISO 286', () => {
  // 50 H7, s6: Bhandari, Design of Machine Elements, 3.3; the others from the standard's tables.
  it.each([
    ['g', 50, 6, -25, -9],
    ['k', 50, 6, 2, 18],
    ['m', 50, 6, 9, 25],
    ['n', 50, 6, 17, 33],
    ['p', 50, 6, 26, 42],
    ['r', 50, 6, 34, 50],
    ['s', 50, 6, 43, 59],
    ['u', 50, 6, 70, 86],
    ['f', 110, 7, -71, -36],
    ['p', 110, 6, 37, 59],
    ['r', 110, 6, 54, 76],
    ['s', 110, 6, 79, 101],
    ['u', 110, 6, 144, 166],
  ] as const)('shaft %s of %i mm, grade %i: %i to %i µm', (letter, mm, grade, lower, upper) => {
    const found = shaftLimits(mm, letter as ShaftLetter, grade as Grade);
    expect([um(found.lower), um(found.upper)]).toEqual([lower, upper]);
  });

  it.each([
    [50, 7, 25],
    [110, 7, 35],
    [110, 8, 54],
    [80, 9, 74],
  ] as const)('hole H of %i mm, grade %i: 0 to %i µm', (mm, grade, upper) => {
    const found = holeLimits(mm, grade as Grade);
    expect([um(found.lower), um(found.upper)]).toEqual([0, upper]);
  });

  it('keeps to i = 0.45 D^(1/3) + 0.001 D of the standard, D the geometric mean of the step', () => {
    const steps = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];
    const times: Readonly<Record<Grade, number>> = {
      5: 7,
      6: 10,
      7: 16,
      8: 25,
      9: 40,
      10: 64,
      11: 100,
    };
    for (const grade of [5, 6, 7, 8, 9, 10, 11] as const) {
      for (let at = 1; at < steps.length; at++) {
        const mean = Math.sqrt(steps[at - 1]! * steps[at]!);
        const formula = times[grade] * (0.45 * Math.cbrt(mean) + 0.001 * mean);
        // The standard rounds to 1, 2.5 or 5 µm by size: 3 % at the most, or 1 µm.
        const off = Math.abs(um(toleranceOf(steps[at]!, grade)) - formula);
        expect(off, `IT${grade} to ${steps[at]}`).toBeLessThan(Math.max(1.1, 0.03 * formula));
      }
    }
  });

  it('keeps to the standard’s formulas for press fits: s is IT8 + 1 to 4, or IT7 + 0.4 D; u is IT7 + D; p is IT7 + 0 to 5', () => {
    const steps = [
      18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450,
      500,
    ];
    for (let at = 1; at < steps.length; at++) {
      const to = steps[at]!;
      const mean = Math.sqrt(steps[at - 1]! * to);
      const lower = (letter: ShaftLetter) => um(shaftLimits(to, letter, 6).lower);
      const it7 = um(toleranceOf(to, 7));
      const it8 = um(toleranceOf(to, 8));
      if (to <= 50) expect(lower('s') - it8).toBeGreaterThanOrEqual(1);
      if (to <= 50) expect(lower('s') - it8).toBeLessThanOrEqual(4);
      // 3 µm is what the tables’ rounding comes to.
      if (to > 50) expect(Math.abs(lower('s') - it7 - 0.4 * mean)).toBeLessThanOrEqual(3);
      expect(Math.abs(lower('u') - it7 - mean)).toBeLessThanOrEqual(3);
      expect(lower('p') - it7).toBeGreaterThanOrEqual(0);
      expect(lower('p') - it7).toBeLessThanOrEqual(5);
      expect(Math.abs(lower('r') - Math.sqrt(lower('p') * lower('s')))).toBeLessThanOrEqual(3);
    }
  });

  it('says nothing outside its tables', () => {
    expect(toleranceOf(0, 7)).toBeNaN();
    expect(toleranceOf(501, 7)).toBeNaN();
    expect(toleranceOf(Number.NaN, 7)).toBeNaN();
    expect(shaftLimits(3, 'p', 6).lower).toBeNaN();
    expect(shaftLimits(500.1, 'p', 6).upper).toBeNaN();
    expect(holeLimits(-1, 7).lower).toBeNaN();
  });
});

describe('ANSI B4.1', () => {
  const printed = (inches: number, name: string) => {
    const found = fitRanges(inches * 25.4).find((one) => one.name === name)!;
    return [found.least, found.most].map((mm) => Math.round((mm / 0.0254) * 100) / 100);
  };

  // Interference, least and most, thousandths of an inch, as printed beside the limits.
  it.each([
    [1.5, 'FN1', 0.3, 1.3],
    [1.5, 'FN2', 0.8, 2.4],
    [1.5, 'FN3', 1, 2.6],
    [1.5, 'FN4', 1.5, 3.1],
    [1.5, 'FN5', 1.4, 4],
    [1.75, 'FN1', 0.4, 1.4],
    [1.75, 'FN2', 0.8, 2.4],
    [1.75, 'FN3', 1.2, 2.8],
    [1.75, 'FN4', 1.8, 3.4],
    [1.75, 'FN5', 2.4, 5],
    [2.5, 'FN1', 0.6, 1.8],
    [2.5, 'FN2', 0.8, 2.7],
    [2.5, 'FN3', 1.3, 3.2],
    [2.5, 'FN4', 2.3, 4.2],
    [2.5, 'FN5', 3.2, 6.2],
    [3, 'FN1', 0.7, 1.9],
    [3, 'FN2', 1, 2.9],
    [3, 'FN3', 1.8, 3.7],
    [3, 'FN4', 2.8, 4.7],
    [3, 'FN5', 4.2, 7.2],
    [0.1, 'FN1', 0.05, 0.5],
    [0.5, 'FN2', 0.5, 1.6],
    [0.75, 'FN5', 1, 3],
    [1, 'FN3', 0.8, 2.1],
    [3.5, 'FN1', 0.9, 2.4],
    [3.5, 'FN2', 1.4, 3.7],
    [3.5, 'FN3', 2.1, 4.4],
    [3.5, 'FN4', 3.6, 5.9],
    [3.5, 'FN5', 4.8, 8.4],
    [5, 'FN1', 1.2, 2.9],
    [5, 'FN2', 1.9, 4.5],
    [5, 'FN3', 3.4, 6],
    [5, 'FN4', 5.4, 8],
    [5, 'FN5', 7.5, 11.6],
    [6, 'FN1', 1.5, 3.2],
    [6, 'FN5', 9.5, 13.6],
    [7, 'FN2', 2.9, 5.5],
    [7, 'FN4', 6.4, 9],
    [1.5, 'LN1', 0, 1.1],
    [1.5, 'LN2', 0, 1.6],
    [1.5, 'LN3', 0.4, 2],
    [2.5, 'LN1', 0.1, 1.3],
    [2.5, 'LN2', 0.2, 2.1],
    [2.5, 'LN3', 0.4, 2.3],
    [4, 'LN1', 0.1, 1.6],
    [4, 'LN2', 0.2, 2.5],
    [4, 'LN3', 0.6, 2.9],
    [6, 'LN1', 0.2, 1.9],
    [6, 'LN2', 0.2, 2.8],
    [6, 'LN3', 0.9, 3.5],
  ])('at %f in, %s is %f to %f', (inches, name, least, most) => {
    expect(printed(inches, name)).toEqual([least, most]);
  });

  it('is tighter from class to class, and no looser at a larger size', () => {
    for (const { FN1, FN2, FN3, FN4, FN5 } of FORCE_FITS) {
      const shafts = [FN1, FN2, FN3, FN4, FN5].flatMap((one) => (one === undefined ? [] : [one]));
      for (let at = 1; at < shafts.length; at++)
        expect(shafts[at]![1]).toBeGreaterThanOrEqual(shafts[at - 1]![1]);
    }
    for (const rows of [FORCE_FITS, LOCATION_FITS] as const) {
      for (let at = 1; at < rows.length; at++)
        expect(rows[at]!.to).toBeGreaterThan(rows[at - 1]!.to);
    }
  });

  it('has FN3 from 0.95 in on, and nothing past its table', () => {
    expect(fitRanges(0.9 * 25.4).some(({ name }) => name === 'FN3')).toBe(false);
    expect(fitRanges(8 * 25.4).some(({ source }) => source === 'B4.1')).toBe(false);
    expect(fitRanges(600).map(({ source }) => source)).toEqual(['practice', 'practice']);
  });
});

describe('practice', () => {
  it('asks 0.003 to 0.0045 in of a 3 in bushing, so much an inch', () => {
    // Field rule for press-fit pin bushings, as told: 0.001 to 0.0015 an inch.
    const found = fitRanges(76.2).find(({ name }) => name === 'inch')!;
    expect(found.least / 25.4).toBeCloseTo(0.003, 12);
    expect(found.most / 25.4).toBeCloseTo(0.0045, 12);
  });

  it('is none of a size that is not known', () => {
    for (const mm of [Number.NaN, 0, -5, Number.POSITIVE_INFINITY])
      expect(fitRanges(mm)).toEqual([]);
  });
});
