/** What the repairer states of the shape between the readings stands, and the rest is learned beside it. */
import { describe, expect, it } from 'vitest';
import type { Field, WearSurface } from '../../src/bore/types.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { setDecision } from '../../src/job/edits.ts';
import type { Decisions, Job } from '../../src/job/schema.ts';
import { orchardLiftClevis } from '../../src/practice/demos/orchardLiftClevis.ts';

const job = orchardLiftClevis();
const mm = (text: string) => ({ text, unit: 'mm' as const });
const stated = (between: Decisions['between']): Job =>
  setDecision(job, job.features[0]!.id, { between });

function surfaceOf(of: Job, memory: Memory = new Map(), pace: 'settled' | 'quick' = 'settled') {
  return evaluate(of, memory, pace).bores[0]!.surveys[0]!.surface!;
}

/** Mean over the wall. */
const average = (field: Field) => field.reduce((sum, v) => sum + v, 0) / field.length;

describe('the shape between the readings, as stated', () => {
  const learned = surfaceOf(job);
  const smoother = surfaceOf(stated({ smooth: mm('60') }));
  const dented = surfaceOf(stated({ dents: mm('0.1') }));

  it('the figure stands as it is stated, and says so', () => {
    expect(smoother.smoothness.length).toBe(60);
    expect(smoother.smoothness.given).toEqual({ length: 60 });
    expect(dented.smoothness.local).toBe(0.1);
    expect(learned.smoothness.given).toBeUndefined();
  });

  it('smoother along the depth is surer between the depths; more dents are less sure', () => {
    expect(average(smoother.sdSeen)).toBeLessThan(average(learned.sdSeen));
    expect(average(dented.sdSeen)).toBeGreaterThan(average(learned.sdSeen));
  });

  it('what cannot be read or is not above zero states nothing', () => {
    const none = surfaceOf(stated({ smooth: mm('a lot'), dents: mm('0') }));
    expect(none.smoothness).toEqual(learned.smoothness);
  });

  it('a quick answer keeps it too', () => {
    const memory: Memory = new Map();
    surfaceOf(job, memory);
    const quick: WearSurface = surfaceOf(stated({ smooth: mm('60') }), memory, 'quick');
    expect(quick.smoothness).toEqual({ ...learned.smoothness, length: 60, given: { length: 60 } });
  });
});
