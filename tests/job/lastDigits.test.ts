/** Last digits against whole readings: constructed, and a property over all sizes that a bore can be worn to. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { completeCell, completeReading, stemOf } from '../../src/job/lastDigits.ts';

describe('what may be left out', () => {
  test('inches of four decimals: three digits, a tenth of an inch', () => {
    expect(stemOf(['2.0143', '2.0129', '2.0018'], 'in')).toEqual({
      digits: 3,
      decimals: 4,
      near: 2.0129,
      point: '.',
      span: 0.1,
    });
  });
  test('millimetres: the decimals, a whole millimetre, with the comma that was typed', () => {
    expect(stemOf(['50,81', '50,84'], 'mm')).toMatchObject({ digits: 2, point: ',', span: 1 });
    expect(stemOf(['50.812'], 'mm')).toMatchObject({ digits: 3, point: '.' });
  });
  test('one slip among the readings does not move the leading digits', () => {
    expect(stemOf(['2.0143', '2.9129', '2.0018', '2.0034'], 'in')?.near).toBe(2.0143);
  });
  test('nothing, before a whole reading, for a needle, in thou, with signs or units, or with one decimal', () => {
    expect(stemOf([], 'in')).toBeNull();
    expect(stemOf(['0.0123'], 'in')).toBeNull();
    expect(stemOf(['3.2'], 'thou')).toBeNull();
    expect(stemOf(['+3', '2.0034 in', '2 1/16'], 'in')).toBeNull();
    expect(stemOf(['50.8'], 'mm')).toBeNull();
    expect(stemOf(['2.01'], 'in')).toBeNull();
  });
});

describe('completing', () => {
  const inch = stemOf(['2.0034'], 'in')!;
  const reading = (text: string) => completeReading(text, inch);
  test('the leading digits are those that come nearest, up or down', () => {
    expect(reading('143')).toEqual({ ok: true, text: '2.0143' });
    expect(reading('003')).toEqual({ ok: true, text: '2.0003' });
    expect(reading('981')).toEqual({ ok: true, text: '1.9981' });
  });
  test('where two figures lie about as near, both are named and none is taken', () => {
    expect(reading('543')).toEqual({ ok: false, either: ['1.9543', '2.0543'] });
    expect(reading('450')).toEqual({ ok: false, either: ['1.9450', '2.0450'] });
  });
  test('anything that is not exactly the last digits stays as it is typed', () => {
    for (const text of ['2.0143', '14', '1434', '.014', '+3', '14a', ''])
      expect(reading(text)).toEqual({ ok: true, text });
  });
  test('each try at one place is completed', () => {
    expect(completeCell('143; 140;2.0141', inch)).toEqual({
      ok: true,
      text: '2.0143; 2.0140; 2.0141',
    });
    expect(completeCell('143; 543', inch).ok).toBe(false);
  });
  test('a reading within three tenths of a turn of what is near is always found again', () => {
    // Sizes in steps of the last digit, so that nothing is rounded: near 0.3 to 8 in, off by up to 0.03 in.
    const steps = fc.integer({ min: 3_000, max: 80_000 });
    const off = fc.integer({ min: -300, max: 300 });
    fc.assert(
      fc.property(steps, off, (near, by) => {
        const stem = stemOf([(near / 10_000).toFixed(4)], 'in')!;
        const whole = ((near + by) / 10_000).toFixed(4);
        const done = completeReading(whole.slice(-3), stem);
        // At the very edge the last bit of a double decides; there two figures may be named.
        if (Math.abs(by) === 300 && !done.ok) return;
        expect(done).toEqual({ ok: true, text: whole });
      }),
    );
  });
});
