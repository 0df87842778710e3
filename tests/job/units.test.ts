import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Typed, Unit } from '../../src/job/schema.ts';
import {
  formatAcross,
  formatDepth,
  formatDeviation,
  formatLength,
  formatPerSide,
  formatThou,
  inUnits,
  lengthMm,
  readingNominal,
  readLength,
  showTyped,
} from '../../src/job/units.ts';

const typed = (text: string, unit: Unit = 'in'): Typed => ({ text, unit });
const NOMINAL = 2.5 * 25.4;

describe('a length as typed', () => {
  // text, unit, millimetres by hand, echo
  it.each<[string, Unit, number, string]>([
    ['2.5005', 'in', 63.5127, '2.5005 in'],
    ['2 1/2', 'in', 63.5, '2.5000 in'],
    ['2-1/2', 'in', 63.5, '2.5000 in'],
    ['2 - 1/2', 'in', 63.5, '2.5000 in'],
    ['2  1/2', 'in', 63.5, '2.5000 in'],
    ['5/8', 'in', 15.875, '0.6250 in'],
    ['33/64', 'in', 13.096875, '0.515625 in'],
    ['13/8', 'in', 41.275, '1.6250 in'],
    ['.5', 'in', 12.7, '0.5000 in'],
    ['5.', 'in', 127, '5.0000 in'],
    ['2,75', 'in', 69.85, '2.7500 in'],
    [',5', 'mm', 0.5, '0.500 mm'],
    ['½', 'in', 12.7, '0.5000 in'],
    ['2½', 'in', 63.5, '2.5000 in'],
    ['2 ¾', 'in', 69.85, '2.7500 in'],
    ['1⅛', 'in', 28.575, '1.1250 in'],
    ['5⁄8', 'in', 15.875, '0.6250 in'],
    ['−0.25', 'in', -6.35, '−0.2500 in'],
    ['-2 1/2', 'in', -63.5, '−2.5000 in'],
    ['+3', 'in', 76.2, '3.0000 in'],
    ['65.1mm', 'in', 65.1, '65.100 mm'],
    ['65,1 mm', 'in', 65.1, '65.100 mm'],
    ['2.5"', 'mm', 63.5, '2.5000 in'],
    ['2.5”', 'mm', 63.5, '2.5000 in'],
    ['2.5 in', 'mm', 63.5, '2.5000 in'],
    ['2 1/2 inches', 'mm', 63.5, '2.5000 in'],
    ['3 thou', 'in', 0.0762, '0.0030 in'],
    ['3', 'thou', 0.0762, '0.0030 in'],
    ['0', 'mm', 0, '0.000 mm'],
    [' 25.4 ', 'mm', 25.4, '25.400 mm'],
    ['25.40005', 'mm', 25.40005, '25.40005 mm'],
  ])('%s with unit %s is %f mm', (text, unit, mm, echo) => {
    const read = readLength(typed(text, unit));
    expect(read).toMatchObject({ ok: true, echo });
    expect(lengthMm(typed(text, unit))).toBeCloseTo(mm, 9);
  });

  // a reading: text, unit, millimetres over the nominal size by hand
  it.each<[string, Unit, number]>([
    ['+3', 'in', 0.0762],
    ['-3', 'in', -0.0762],
    ['−3', 'in', -0.0762],
    ['+ 3', 'in', 0.0762],
    ['+0.5', 'in', 0.0127],
    ['+0.05', 'in', 0.00127],
    ['+0.003', 'in', 0.0762],
    ['+.0005', 'in', 0.0127],
    ['+0', 'in', 0],
    ['+0.1', 'mm', 0.1],
    ['-0,05', 'mm', -0.05],
    ['3', 'thou', 0.0762],
    ['-3', 'thou', -0.0762],
    ['0', 'thou', 0],
    ['4 thou', 'in', 0.1016],
    ['+0.1 mm', 'in', 0.1],
    ['-2 thou', 'mm', -0.0508],
    ['+0.002"', 'mm', 0.0508],
  ])('%s with unit %s on a reading is %f mm over nominal', (text, unit, over) => {
    expect(lengthMm(typed(text, unit), NOMINAL)).toBeCloseTo(NOMINAL + over, 9);
  });

  it('without a sign is the size itself, nominal or not', () => {
    expect(lengthMm(typed('2.503'), NOMINAL)).toBeCloseTo(2.503 * 25.4, 9);
    expect(lengthMm(typed('63.6', 'mm'), NOMINAL)).toBe(63.6);
    expect(lengthMm(typed('2.503"', 'thou'), NOMINAL)).toBeCloseTo(2.503 * 25.4, 9);
  });

  it('over or under a nominal size that is not known says what is needed', () => {
    const read = readLength(typed('+3'), Number.NaN);
    expect(read).toMatchObject({ ok: false });
    expect(read.ok ? '' : read.why).toContain('give the nominal size');
    expect(lengthMm(typed('2.5'), Number.NaN)).toBeCloseTo(63.5, 9);
  });

  it.each([
    '2..5',
    '2.5.3',
    '1e3',
    'NaN',
    'Infinity',
    '5/0',
    '2 5/3',
    '1,234.5',
    '2 5',
    'abc',
    '±3',
    '--3',
    '0x10',
    'in',
    '"',
    '1/2/3',
    '٣',
  ])('%s is refused with the text and what would be right', (text) => {
    const read = readLength(typed(text));
    expect(read.ok).toBe(false);
    const why = read.ok ? '' : read.why;
    expect(why).toContain(`“${text}”`);
    expect(why).toContain('type');
    expect(lengthMm(typed(text))).toBeNaN();
  });

  it('says of a mil that it means two things, and of other units which it takes', () => {
    const why = (text: string) => {
      const read = readLength(typed(text));
      return read.ok ? '' : read.why;
    };
    expect(why('3 mil')).toContain('thou to some');
    expect(why('2 ft')).toContain('inches, thou or millimetres');
    expect(why('2 cm')).toContain('inches, thou or millimetres');
  });

  it('that is empty is no fault and no number', () => {
    expect(readLength(typed('  '))).toEqual({ ok: false, why: '' });
    expect(lengthMm(undefined)).toBeNaN();
  });

  it('keeps what was typed when it is shown, with its unit where the job has another', () => {
    expect(showTyped(typed('2 1/2'), 'in')).toBe('2 1/2');
    expect(showTyped(typed('65.1', 'mm'), 'in')).toBe('65.1 mm');
    expect(showTyped(typed('2.5"', 'mm'), 'in')).toBe('2.5"');
    expect(showTyped(typed('+3', 'thou'), 'in')).toBe('+3');
    expect(showTyped(typed('3', 'thou'), 'in')).toBe('3 thou');
    expect(showTyped(typed('+3', 'thou'), 'mm')).toBe('+3 thou');
    expect(showTyped(typed('+0.02', 'thou'), 'in')).toBe('+0.02 thou');
    // never `+3 in`, which would be three inches
    expect(showTyped(typed('+3'), 'mm')).toBe('+3 thou');
    expect(showTyped(typed('-0.03'), 'mm')).toBe('-0.03 in');
  });

  it('shown in a job of any unit still means the same', () => {
    const texts = fc.constantFrom('2 1/2', '+3', '3', '-0.02', '65,1', '2.5"', '0.1 mm', '4 thou');
    const unit = fc.constantFrom<Unit>('in', 'thou', 'mm');
    fc.assert(
      fc.property(
        texts,
        unit,
        fc.constantFrom('in' as const, 'mm' as const),
        (text, own, units) => {
          const shown = showTyped({ text, unit: own }, units);
          const again = lengthMm({ text: shown, unit: units }, NOMINAL);
          expect(again).toBeCloseTo(lengthMm({ text, unit: own }, NOMINAL), 9);
        },
      ),
    );
  });

  it('reads back every decimal that a micrometer can show', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), fc.boolean(), (ticks, comma) => {
        const text = (ticks / 10_000).toFixed(4);
        const mm = lengthMm(typed(comma ? text.replace('.', ',') : text));
        // a product and a quotient, each rounded once: at most two units in the last place
        expect(Math.abs(mm - (ticks * 25.4) / 10_000)).toBeLessThanOrEqual(2 * Number.EPSILON * mm);
      }),
    );
  });
});

describe('the nominal of a signed reading', () => {
  it('is a diameter, a radius, nothing or none, by the instrument', () => {
    expect(readingNominal('two-point', 50)).toBe(50);
    expect(readingNominal('three-leg', 50)).toBe(50);
    expect(readingNominal('radius', 50)).toBe(25);
    expect(readingNominal('sweep', 50)).toBe(0);
    expect(readingNominal('wall', 50)).toBeUndefined();
  });

  it('makes a needle that reads +3 three thou', () => {
    expect(lengthMm(typed('+3'), readingNominal('sweep', 50))).toBeCloseTo(0.0762, 12);
  });
});

describe('lengths for people', () => {
  it('have the digits of the trade and say what they are', () => {
    expect(formatLength(63.5762, 'in')).toBe('2.5030 in');
    expect(formatLength(63.5762, 'mm')).toBe('63.576 mm');
    expect(formatAcross(63.5762, 'in')).toBe('2.5030 in across');
    expect(formatAcross(63.5762, 'in', 3)).toBe('2.503 in across');
    expect(formatPerSide(0.07874, 'in')).toBe('0.0031 in per side');
    expect(formatPerSide(0.07874, 'mm')).toBe('0.079 mm per side');
    expect(formatDepth(17.78, 'in')).toBe('0.70 in');
    expect(formatDepth(17.78, 'mm')).toBe('17.8 mm');
    expect(inUnits(25.4, 'in')).toBe(1);
  });

  it('carry a real sign, and none on a zero', () => {
    expect(formatThou(-0.0889)).toBe('−3.5');
    expect(formatThou(0.10414)).toBe('+4.1');
    expect(formatThou(0)).toBe('0.0');
    expect(formatThou(-0.0004)).toBe('0.0');
    expect(formatDeviation(-0.0889, 'mm')).toBe('−0.089');
    expect(formatDeviation(-0.0889, 'in')).toBe('−3.5');
    expect(formatLength(-0.0001, 'mm')).toBe('0.000 mm');
    expect(formatLength(-1, 'mm')).toBe('−1.000 mm');
  });

  it('are a dash where not known', () => {
    for (const text of [
      formatLength(Number.NaN, 'in'),
      formatDepth(Number.NaN, 'mm'),
      formatThou(Number.NaN),
    ]) {
      expect(text).toBe('–');
    }
  });
});
