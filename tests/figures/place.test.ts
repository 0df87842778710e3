import { describe, expect, it } from 'vitest';
import { sayPlace } from '../../src/figures/place.ts';
import { decimalsFor } from '../../src/job/digits.ts';
import { FACTS, type Made, madeSurvey } from '../fixtures/evaluation.ts';

const IN = 25.4;
const say = (made: Made, theta = Math.PI / 2, z = 0.4 * IN, units: 'in' | 'mm' = 'in') =>
  sayPlace({ survey: madeSurvey(made), facts: FACTS }, { theta, z }, units);

describe('a place in one line', () => {
  it('says what to take off, per side, and how sure that is', () => {
    expect(say({ deviation: () => -0.0031 * IN, sd: () => 0.0002 * IN })).toBe(
      '3:00, 0.40 in deep: take off 0.0031 in per side, give or take 0.0004',
    );
  });

  it('says what is missing', () => {
    expect(say({ deviation: () => 0.0041 * IN, sd: () => 0.0002 * IN }, 4.5 * (Math.PI / 6))).toBe(
      '4:30, 0.40 in deep: 0.0041 in per side short, give or take 0.0004',
    );
    expect(say({ deviation: () => 0.079, sd: () => 0.002 }, Math.PI, 10.2, 'mm')).toBe(
      '6:00, 10.2 mm deep: 0.079 mm per side short, give or take 0.004',
    );
  });

  it('says on size where the figure is nothing', () => {
    expect(say({ deviation: () => 0.00001, sd: () => 0.0001 * IN })).toBe(
      '3:00, 0.40 in deep: on size, give or take 0.0002',
    );
  });

  it('shows no digit that the give-or-take does not allow', () => {
    expect(say({ deviation: () => -0.00312 * IN, sd: () => 0.00205 * IN })).toBe(
      '3:00, 0.40 in deep: take off 0.003 in per side, give or take 0.004',
    );
    expect(decimalsFor(0.0012 * IN, 'in')).toBe(4);
    expect(decimalsFor(0.0031 * IN, 'in')).toBe(3);
    expect(decimalsFor(0.01 * IN, 'in')).toBe(3);
    expect(decimalsFor(0.03 * IN, 'in')).toBe(3);
    expect(decimalsFor(0.00001 * IN, 'in')).toBe(4);
    expect(decimalsFor(0.25, 'mm')).toBe(2);
    expect(decimalsFor(Number.NaN, 'mm')).toBe(3);
    expect(decimalsFor(0, 'mm')).toBe(3);
  });

  it('says so where nothing is known', () => {
    expect(say({ deviation: () => Number.NaN })).toBe('3:00, 0.40 in deep: not known');
    expect(say({}, 0, 99)).toBe('12:00, 3.90 in deep: not known');
    const bare = { ...madeSurvey(), surface: null, removal: null };
    expect(sayPlace({ survey: bare, facts: FACTS }, { theta: 0, z: 0 }, 'in')).toBe(
      '12:00, 0.00 in deep: not known',
    );
  });

  it('compares with the average round before a bushing is named', () => {
    const made = { deviation: (theta: number) => 0.05 * Math.cos(2 * theta), target: false };
    expect(say({ ...made, sd: () => 0.001 }, 0, 10, 'mm')).toBe(
      '12:00, 10.0 mm deep: 0.050 mm per side larger than the average round, give or take 0.002',
    );
    expect(say({ ...made, sd: () => 0.001 }, Math.PI / 2, 10, 'mm')).toContain('smaller than');
  });

  it('warns at the grease hole, and only there', () => {
    const hole = (11 * Math.PI) / 6;
    expect(say({}, hole, 22)).toMatch(/\(grease hole: leave alone\)$/);
    // The hole is 6 mm wide on a 25.4 mm radius: 0.118 rad to either side.
    expect(say({}, hole + 0.11, 22)).toContain('grease hole');
    expect(say({}, hole + 0.13, 22)).not.toContain('grease hole');
    expect(say({}, hole, 26)).not.toContain('grease hole');
  });
});
