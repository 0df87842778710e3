import { describe, expect, it } from 'vitest';
import { amountWords, sayAmounts } from '../../src/figures/amountWords.ts';
import { madeSurvey } from '../fixtures/evaluation.ts';

const removal = (sureMass: number, mass: number, possibleMass: number) => ({
  ...madeSurvey().removal!,
  sureMass,
  mass,
  possibleMass,
  volume: mass / 7.85e-3,
});

describe('how much comes off in all', () => {
  it('says what is sure, likely and possible, to the digits that the spread allows', () => {
    // Half of the way from 0.43 to 2.51 is 1.04: its first digit is a 1, so one digit more.
    expect(sayAmounts(removal(0.43, 1.134, 2.51))).toBe(
      'surely 0.4 g of steel to come off, likely 1.1 g, possibly up to 2.5 g',
    );
    // 1.04 g are 132 mm3: tens.
    expect(amountWords(removal(0.43, 1.134, 2.51)).volume).toBe('140 mm³');
    expect(amountWords(removal(31.2, 54.7, 88.9))).toMatchObject({ sure: '30 g', likely: '50 g' });
  });

  it('calls nothing sure that rounds to nothing', () => {
    expect(sayAmounts(removal(0.01, 3.3, 28.4))).toBe(
      'none of the steel is sure to come off; likely 3 g, possibly up to 28 g',
    );
  });
});
