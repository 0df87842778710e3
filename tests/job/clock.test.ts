import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  angleApart,
  clockText,
  clockTheta,
  hourText,
  pairText,
  readClock,
} from '../../src/job/clock.ts';

const degrees = (text: string, face: 'A' | 'B' = 'A') => (clockTheta(text, face) * 180) / Math.PI;

describe('a clock position as typed', () => {
  it.each([
    ['12', 0],
    ['0', 0],
    ['3', 90],
    ['4:30', 135],
    ['4.5', 135],
    ['4,5', 135],
    ['12:30', 15],
    ['12.5', 15],
    ['11:59', 359.5],
    ["4 o'clock", 120],
    ['9h', 270],
    ['135d', 135],
    ['135°', 135],
    ['135 deg', 135],
    ['22,5d', 22.5],
    ['-45d', 315],
    ['360d', 0],
    ['12-6', 0],
    ['1–7', 30],
    ['1:30 - 7:30', 45],
    ['7-1', 210],
  ])('%s is %f degrees', (text, wanted) => {
    expect(degrees(text)).toBeCloseTo(wanted, 10);
  });

  it.each([
    ['13', 'hours go from 1 to 12'],
    ['4:60', '59 minutes'],
    ['4:3', 'no clock position'],
    ['4.30', '4:30'],
    ['361d', 'full turn'],
    ['1-6', 'opposite'],
    ['-3', 'no clock position'],
    ['noon', 'no clock position'],
    ['4:30:00', 'no clock position'],
  ])('%s is refused, with what would be right', (text, part) => {
    const read = readClock(text);
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : read.why).toContain(part);
  });

  it('that is empty is no fault and no angle', () => {
    expect(readClock(' ')).toEqual({ ok: false, why: '' });
    expect(clockTheta(undefined)).toBeNaN();
  });

  it('from face B is the mirror image: 3 there is 9 from face A', () => {
    expect(degrees('3', 'B')).toBeCloseTo(270, 10);
    expect(degrees('12', 'B')).toBe(0);
    expect(degrees('6', 'B')).toBeCloseTo(180, 10);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 719 }), (minutes) => {
        const text = `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
        const fromA = clockTheta(text);
        const fromB = clockTheta(text, 'B');
        // mirrored: the two run against each other and meet at 12; in [0, 2 pi) both
        expect(angleApart(fromA + fromB, 0)).toBeLessThan(1e-12);
        expect(fromB).toBeGreaterThanOrEqual(0);
        expect(fromB).toBeLessThan(2 * Math.PI);
      }),
    );
  });
});

describe('a clock position in words', () => {
  const at = (wanted: number) => (wanted * Math.PI) / 180;

  it('is hours and minutes, rounded to five', () => {
    expect(clockText(0)).toBe('12:00');
    expect(clockText(at(75))).toBe('2:30');
    expect(clockText(at(76))).toBe('2:30');
    expect(clockText(at(359))).toBe('12:00');
    expect(clockText(at(-90))).toBe('9:00');
    expect(clockText(at(29))).toBe('1:00');
    expect(clockText(Number.NaN)).toBe('–');
    expect(hourText(at(90))).toBe('3');
    expect(hourText(at(135))).toBe('4:30');
  });

  it('is a pair for a gauge that reads across, whichever end was named', () => {
    expect(pairText(0)).toBe('12–6');
    expect(pairText(Math.PI)).toBe('12–6');
    expect(pairText(at(30))).toBe('1–7');
    expect(pairText(at(210))).toBe('1–7');
    expect(pairText(at(150))).toBe('5–11');
    expect(pairText(at(45))).toBe('1:30–7:30');
    expect(pairText(at(179.9))).toBe('12–6');
  });

  it('reads back exactly where that is asked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2 * Math.PI, maxExcluded: true, noNaN: true }),
        (theta) => {
          const text = clockText(theta, true);
          expect(text.length).toBeLessThanOrEqual(20);
          // nine decimals of a degree: half of 1e-9 degrees is 8.8e-12 rad, and a minute's match of 1e-7 is 9e-10
          expect(angleApart(clockTheta(text), theta)).toBeLessThan(1e-9);
        },
      ),
    );
  });
});
