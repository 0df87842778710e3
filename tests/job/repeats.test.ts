/** How far repeats at one place lie apart: Tukey's table against simulation, and the words of an evaluation. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { setCell } from '../../src/job/edits.ts';
import { repeatSpread } from '../../src/job/repeats.ts';
import { seededRandom } from '../../src/num/random.ts';
import { smallJob } from './jobs.ts';

describe('the spread of repeats', () => {
  it.each([2, 3, 5, 10])('%i readings pass the limit once in twenty', (count) => {
    const random = seededRandom(count);
    const sets = 20000;
    let past = 0;
    for (let i = 0; i < sets; i++) {
      const { range, limit } = repeatSpread(
        Array.from({ length: count }, () => 7 + 0.01 * random.normal()),
        0.01,
      );
      if (range > limit) past++;
    }
    // 0.05 give or take four standard deviations of a share of 20000: 4 sqrt(0.05 x 0.95 / 20000) = 0.0062.
    expect(Math.abs(past / sets - 0.05)).toBeLessThan(0.0062);
  });

  it('is greatest less least, with as many as there were', () => {
    expect(repeatSpread([2.5, 2.8, 2.6], 0.1)).toEqual({
      count: 3,
      range: expect.closeTo(0.3, 12),
      limit: expect.closeTo(0.3314, 12),
    });
  });

  it('three tries within what the gauge repeats to go without a word; wider ones are named with their place', () => {
    const notes = (values: string) => {
      const job = setCell(smallJob(), 'f1', 's1', { depth: 1, clock: 0, values });
      return evaluate(job)
        .bores[0]!.surveys[0]!.notes.map(({ text }) => text)
        .join('\n');
    };
    expect(notes('2.5010; 2.5012; 2.5011')).not.toContain('tries');
    expect(notes('2.5010; 2.5040; 2.5011')).toMatch(
      /At 12:00, 1\.50 in deep, 3 tries lie 0\.0030 in apart/,
    );
  });
});
