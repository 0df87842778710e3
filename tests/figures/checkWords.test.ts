/** Readings in doubt, in the words that page and command line share. The figures are constructed. */
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/bore/types.ts';
import { sayDoubts } from '../../src/figures/checkWords.ts';
import { madeSurvey } from '../fixtures/evaluation.ts';

const made = madeSurvey();
const across = made.sightings[5]!;
/** One sighting of every row from 0 to 3, at 12 and 0.50 in deep, a size of 2.5281 in across. */
const sightings = [0, 1, 2, 3].map((row) => ({
  ...across,
  row,
  instrument: 'two-point' as const,
  theta: 0,
  z: row < 3 ? 12.7 : 25.4,
  value: 2.5281 * 25.4,
}));
const doubts = (checks: readonly Check[]) => sayDoubts({ ...made, sightings, checks }, 'in');
const check = (slip: string, suggested: string | null, row = 0): Check => ({
  row,
  suspect: true,
  slip,
  suggested,
  expected: 2.5031 * 25.4,
  give: 0.0008 * 25.4,
});
const many = (row: number, slip: string): Check => ({
  ...check(slip, null, row),
  expected: Number.NaN,
  give: Number.NaN,
});

describe('sayDoubts', () => {
  it('says what stands there, what is expected with its give-or-take, and the slip; sizes are across', () => {
    expect(doubts([check('one micrometer turn, 0.025 in', '2.5031')])).toEqual([
      {
        rows: [0],
        place: '12–6 at 0.50 in deep',
        text: '12–6 at 0.50 in deep reads 2.5281 in across, and the others lead one to expect 2.5031 in across, give or take 0.0008. Likely one micrometer turn, 0.025 in.',
        brief: 'one micrometer turn, 0.025 in?',
        suggested: '2.5031',
      },
    ]);
  });

  it('asks for another reading where nothing can be offered', () => {
    expect(
      doubts([check('a burr or dirt under the gauge, which reads low', null)])[0]!.text,
    ).toMatch(
      /Likely a burr or dirt under the gauge, which reads low: wipe, deburr and read it again\.$/,
    );
    expect(doubts([check('unexplained', null)])[0]!.text).toMatch(
      /No usual slip explains it: read it again\.$/,
    );
  });

  it('says once what several readings share, and from where to where', () => {
    const slip = 'the clock turned by 2 hours clockwise in these rows';
    expect(doubts([0, 1, 2].map((row) => many(row, slip)))).toMatchObject([
      { rows: [0, 1, 2], place: '3 readings at 0.50 in deep', suggested: null },
    ]);
    expect(doubts([2, 3].map((row) => many(row, slip)))[0]!.text).toBe(
      `2 readings from 0.50 in to 1.00 in deep: ${slip}? Check, and read again.`,
    );
  });

  it('leaves out what cannot be used at all: its reason stands beside it', () => {
    expect(doubts([many(7, 'its depth is missing')])).toEqual([]);
    expect(doubts([{ ...check('unexplained', null), suspect: false }])).toEqual([]);
  });
});
