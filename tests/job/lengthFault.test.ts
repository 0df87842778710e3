/** What a field says of a figure that cannot be used: constructed texts. */
import { describe, expect, it } from 'vitest';
import { lengthFault } from '../../src/job/lengthFault.ts';
import type { Typed } from '../../src/job/schema.ts';
import { wayFigureMm } from '../../src/job/wayFigures.ts';

const inches = (text: string): Typed => ({ text, unit: 'in' });

describe('a length as it was typed', () => {
  it('is let be where nothing, or something usable, is typed', () => {
    expect(lengthFault(undefined, 'above none', inches('2'))).toBeNull();
    expect(lengthFault(inches(''), 'above none', inches('2'))).toBeNull();
    expect(lengthFault(inches('0.002'), 'above none', inches('2'))).toBeNull();
    expect(lengthFault(inches('0'), 'none')).toBeNull();
    expect(lengthFault(inches('-0.001'))).toBeNull();
  });

  it('is told where it is too small, with what counts instead', () => {
    expect(lengthFault(inches('-5'), 'above none', inches('2.0041'))).toBe(
      '“-5” is no size: it is to be above 0; 2.0041 in counts until then',
    );
    expect(lengthFault(inches('0'), 'above none')).toBe('“0” is no size: it is to be above 0');
    expect(lengthFault(inches('-1'), 'none', { text: '2 thou', unit: 'in' })).toBe(
      '“-1” is below 0, which it cannot be; 2 thou counts until then',
    );
  });

  it('is told where it is no length', () => {
    expect(lengthFault(inches('abc'), 'any', inches('1'))).toMatch(
      /abc.*; 1 in counts until then$/,
    );
  });
});

describe('figures of the ways of mending', () => {
  it('take nothing at all as a limit, and never as a size', () => {
    const zero = inches('0');
    const set = { wayFigures: { acceptLow: zero, sleeveWall: zero } };
    expect(wayFigureMm(set, 'acceptLow', 'in')).toBe(0);
    // The usual 1/8 in (src/job/wayFigures.ts).
    expect(wayFigureMm(set, 'sleeveWall', 'in')).toBeCloseTo(3.175, 9);
    expect(wayFigureMm({ wayFigures: { acceptLow: inches('-1') } }, 'acceptLow', 'mm')).toBe(0.05);
  });
});
