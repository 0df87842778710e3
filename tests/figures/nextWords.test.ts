/** What to read next, in words: the place as the table names it, the worth per side, and no narrowing made up. */
import { describe, expect, it } from 'vitest';
import type { NextReading } from '../../src/bore/nextTypes.ts';
import { sayNext, saySetup } from '../../src/figures/nextWords.ts';

const NEXT: NextReading = {
  gauge: 'g',
  name: 'Dial bore gauge',
  instrument: 'two-point',
  clocks: [(3 * Math.PI) / 4],
  depths: [0.95 * 25.4],
  before: 0.0006 * 25.4,
  after: 0.00045 * 25.4,
};

describe('the next reading in words', () => {
  it('names the pair, the depth, the gauge and what the map gains', () => {
    expect(sayNext(NEXT, 'in')).toEqual({
      place: '4:30–10:30 at 0.95 in deep',
      worth:
        'with the dial bore gauge; it would narrow the map from ±0.0012 to ±0.0009 in per side.',
    });
  });

  it('gives a share where the shop’s digits would not show it, and says when there is hardly any', () => {
    const worth = (after: number) => sayNext({ ...NEXT, after: after * 25.4 }, 'in').worth;
    expect(worth(0.000585)).toContain('narrow the map by 2 % (±0.0012 in per side)');
    expect(worth(0.0005985)).toContain('hardly narrow the map (±0.0012 in per side)');
  });

  it('tells of a set-up as a whole', () => {
    const clocks = Array.from({ length: 8 }, (_, k) => (k * Math.PI) / 4);
    const set: NextReading = {
      ...NEXT,
      name: 'Dial indicator, swept',
      instrument: 'sweep',
      clocks,
      depths: [4, 30, 56],
      before: 0.01,
      after: 0.006,
    };
    expect(saySetup(set, 'mm')).toBe(
      'One set-up with the dial indicator, swept, 8 clock positions each at 4.0 mm, 30.0 mm and 56.0 mm deep, would ' +
        'narrow the map from ±0.020 to ±0.012 mm per side.',
    );
  });
});
