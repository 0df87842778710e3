/** A squeeze in words: its limits as the figures beside them have it, and what is said of a heat that is not the usual. */
import { describe, expect, it } from 'vitest';
import { buildUpOfSurvey } from '../../src/evaluate/buildUp.ts';
import { evaluate } from '../../src/evaluate.ts';
import { heatWarning, squeezeWords } from '../../src/figures/squeezeWords.ts';
import { setMending, setWayFigure } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';

function found(job: Job, stage = 0) {
  const bore = evaluate(job).bores[0]!;
  const survey = bore.surveys[stage]!;
  const built = buildUpOfSurvey(job, bore, survey, null)!;
  const squeeze = built.squeeze!;
  return { squeeze, words: squeezeWords(squeeze, built, survey, job.units) };
}

const whole = slipwayWinch();
const [heel] = whole.features;
const of = heel!.id;
/** Of its first bore, as found and as the last pass left it. */
const winch: Job = {
  ...whole,
  features: [
    {
      ...heel!,
      surveys: [heel!.surveys[0]!, heel!.surveys.find(({ name }) => name === 'Pass 2')!],
    },
  ],
};

describe('a squeeze in words', () => {
  it('draws the mean in by as much as it says, however little the jaws close', () => {
    for (const stage of [0, 1]) {
      const { squeeze } = found(winch, stage);
      for (const { bent, upset, close, short } of squeeze.plan.rows) {
        if (!(close + short > 0)) continue;
        expect(bent.mean - upset.mean).toBeCloseTo(squeeze.upset.most, 9);
      }
    }
  });

  it('expects cold whatever one heat may bring, where the goal is within that', () => {
    const { squeeze } = found(winch);
    const { plan, cold, goal } = squeeze;
    expect(plan.most.upset.mean).toBeLessThan(goal);
    const there = cold.filter(({ z }) => Math.abs(z - plan.most.z) < 5);
    expect(Math.min(...there.map(({ least }) => least))).toBeLessThan(goal);
    expect(Math.max(...there.map(({ most }) => most))).toBeGreaterThan(goal);
  });

  it('springs back besides what it is to close', () => {
    const { words, squeeze } = found(winch);
    const steps = words.steps.join(' ');
    expect(steps).toContain('Besides, when the jaws let go it springs back');
    expect(steps).not.toContain('Of that movement');
    expect(squeeze.move!.least - squeeze.plan.most.close).toBeCloseTo(squeeze.springs!.least, 9);
  });

  it('takes a range that was typed the wrong way round in its order', () => {
    const least = setWayFigure(winch, of, 'heatLeast', { text: '0.010', unit: 'in' });
    const job = setWayFigure(least, of, 'heatMost', { text: '0.002', unit: 'in' });
    const { words, squeeze } = found(job);
    expect(squeeze.upset.least).toBeCloseTo(0.0508, 9);
    expect(squeeze.upset.most).toBeCloseTo(0.254, 9);
    expect(words.ends.join(' ')).toContain('0.0020 to 0.0100 in');
  });

  it('warns of a heat that is not the usual, and says which counts for one that is none', () => {
    const heat = (text: string) =>
      found(setMending(winch, of, 'squeeze', 'heat', { text, unit: 'F' })).words.ends.join(' ');
    expect(heat('2000')).toContain('1090 °C (2000 °F) is too hot');
    expect(heat('800')).toContain('is little heat');
    expect(heat('abc')).toContain(
      '“abc °F” is no heat that steel is squeezed at; 600 °C (1110 °F)',
    );
    expect(heat('1150')).not.toMatch(/too hot|little heat|no heat/);
    // The usual range is 540 to 700 °C: common practice.
    expect(heatWarning({ value: 700, from: 'typed', refused: null })).toBe('');
    expect(heatWarning({ value: 540, from: 'typed', refused: null })).toBe('');
  });
});
