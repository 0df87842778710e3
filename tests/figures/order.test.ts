/** The order of the work follows what was worked out (common practice of the trade), and waits where heat waits. */
import { describe, expect, it } from 'vitest';
import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { orderSteps } from '../../src/figures/orderWords.ts';
import { layerRows, sideGapMissing, sideGapWords } from '../../src/figures/sideGapWords.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { demoJobs } from '../../src/practice/demos.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });
const demo = demoJobs().find(({ file }) => file.startsWith('quarry-conveyor'))!.job;
const memory: Memory = new Map();

function told(job: Job) {
  const [bore] = evaluate(job, memory, 'quick').bores;
  const found = fitOfSurvey(job, bore!, bore!.surveys[0]!, null)!;
  return { found, steps: orderSteps(found, null, job, job.features[0]!) };
}
const withFirst = (change: (one: Feature) => Feature): Job => ({
  ...demo,
  features: [change(demo.features[0]!), ...demo.features.slice(1)],
});

const greased = withFirst((one) => ({
  ...one,
  keepouts: [
    { id: 'k1', kind: 'grease-hole', face: 'A', from: mm('40'), to: mm('46'), clock: '12' },
  ],
  rim: ['12', '3', '6', '9'].map((clock) => ({ face: 'A' as const, clock, below: mm('1.2') })),
  sideGap: { between: [mm('93')], width: [mm('90')] },
}));

describe('the order of the work', () => {
  it('fixes rim washers before the bushing, and looks at the grease hole before and after', () => {
    const keys = told(greased).steps.map(({ key }) => key);
    expect(keys.indexOf('washers-A')).toBeGreaterThanOrEqual(0);
    expect(keys.indexOf('washers-A')).toBeLessThan(keys.indexOf('press'));
    expect(keys.indexOf('grease-before')).toBeLessThan(keys.indexOf('press'));
    expect(keys.indexOf('press')).toBeLessThan(keys.indexOf('grease-after'));
    expect(keys.indexOf('inside')).toBeLessThan(keys.indexOf('pin'));
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('leaves out what there is none of', () => {
    const keys = told(demo).steps.map(({ key }) => key);
    for (const none of ['washers-A', 'grease-before', 'grease-after', 'side']) {
      expect(keys).not.toContain(none);
    }
  });

  it('smooths the leading edge over a shim', () => {
    const shimmed = withFirst((one) => ({
      ...one,
      decisions: { ...one.decisions, way: 'shim', shim: { round: mm('80.6') } },
    }));
    const [edge] = told(shimmed).steps.find(({ key }) => key === 'bushing')!.cautions;
    expect(edge).toContain('shim');
  });

  it('tells no step with heat before its questions are answered', () => {
    const hot = withFirst((one) => ({
      ...one,
      decisions: { ...one.decisions, fit: { heat: { boss: { text: '180', unit: 'C' } } } },
    }));
    const step = (safety: Job['safety']) =>
      told({ ...hot, safety }).steps.find(({ key }) => key === 'slip');
    expect(step({})?.says).toContain('once the questions about heat');
    const open = step({
      openAndClean: 'yes',
      sealsAndPlatingOut: 'yes',
      metal: 'plain-steel',
      carriesPeople: 'no',
    });
    expect(open?.says).toContain('180');
    expect(open?.cautions.length).toBeGreaterThan(0);
  });
});

describe('the side gap of a job', () => {
  it('sums washers and what stands out: 93 less 90 less 1.0 of washers less 0.2 of bushing', () => {
    // 1.2 below flush takes one washer of 1.0 (the bushing, flush as it was new, then stands out by 0.2).
    const { found } = told(greased);
    expect(layerRows(found.side, 'mm').map(({ what, thick }) => `${what} ${thick}`)).toEqual([
      'rim washers 1.00 mm',
      'bushing stands out 0.20 mm',
    ]);
    expect(found.side.now.least).toBeCloseTo(3, 9);
    expect(found.side.after.least).toBeCloseTo(1.8, 9);
    // 1.6 leaves 0.2: within 0.12 and 1.0; one washer of 0.8 would leave just 1.0 and is as few.
    expect(found.side.shims?.stack.layers).toHaveLength(1);
  });

  it('says what is missing, or typed wrong, in sentences', () => {
    const odd = withFirst((one) => ({
      ...one,
      sideGap: {
        between: [mm('-3')],
        parts: [{ name: '', thickness: mm('x'), face: 'A', when: 'both' }],
      },
    }));
    for (const job of [demo, odd]) {
      const { side } = told(job).found;
      const lines = [...sideGapMissing(side), ...sideGapWords(side, 'mm')];
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) expect(line).toMatch(/^\S.*\.$/);
      expect(lines.join(' ')).not.toMatch(/NaN|undefined/);
    }
  });
});
