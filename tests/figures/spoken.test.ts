/** How a shop calls readings out: common practice, digit by digit with “point”. */
import { describe, expect, test } from 'vitest';
import { sayAccepted, sayClock, sayDoubt, sayReading } from '../../src/figures/spoken.ts';

describe('readings', () => {
  test.each([
    ['2.0014', 'two point zero zero one four'],
    ['50,81', 'five zero point eight one'],
    ['+3', 'plus three'],
    ['−0.02', 'minus zero point zero two'],
    ['2 1/16', 'two and one over one six'],
    ['65.1mm', 'six five point one millimetres'],
    ['2.5 in', 'two point five inches'],
    ['2.0143; 2.0140', 'two point zero one four three; and two point zero one four zero'],
  ])('%s', (text, said) => {
    expect(sayReading(text)).toBe(said);
  });
});

test('clock positions are hours, and minutes only where there are some', () => {
  expect(sayClock('2–8')).toBe('two, eight');
  expect(sayClock('12')).toBe('twelve');
  expect(sayClock('1:30–7:30')).toBe('one thirty, seven thirty');
  expect(sayClock('4:15')).toBe('four fifteen');
  expect(sayClock('137.25d')).toBe('one three seven point two five degrees');
});

test('the next place follows; its depth only where that changes; the last is said to be the last', () => {
  const here = { clock: '1–7', depth: '0.15' };
  expect(sayAccepted('2.0014', here, { clock: '2–8', depth: '0.15' })).toBe(
    'two point zero zero one four. Next: two, eight.',
  );
  expect(sayAccepted('2.0014', here, { clock: '12–6', depth: '0.65' })).toBe(
    'two point zero zero one four. Next: twelve, six, at zero point six five deep.',
  );
  expect(sayAccepted('2.0014', here, null)).toBe(
    'two point zero zero one four. That was the last.',
  );
  expect(sayAccepted(' ', here, null)).toBe('left empty. That was the last.');
  expect(sayDoubt(here)).toBe('Check one, seven, at zero point one five deep.');
});
