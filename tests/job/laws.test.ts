/** What holds for any job and any edit. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import * as edit from '../../src/job/edits.ts';
import { openJob, saveJob } from '../../src/job/parse.ts';
import { Job } from '../../src/job/schema.ts';
import { anyJob, anyTyped } from './jobs.ts';

const long = fc.string({ maxLength: 300 });
const unit = fc.constantFrom('in' as const, 'thou' as const, 'mm' as const);
const tried = (result: edit.Tried, before: Job): Job => (result.ok ? result.job : before);

/** One edit with arguments of any kind, applied to a job of any kind. */
const anyEdit: fc.Arbitrary<(job: Job) => Job> = fc.oneof(
  long.map((text) => (job: Job) => edit.rename(job, text)),
  long.map((text) => (job: Job) => edit.setJobText(job, 'place', text)),
  fc.constantFrom('in' as const, 'mm' as const).map((one) => (job: Job) => edit.setUnits(job, one)),
  long.map((text) => (job: Job) => edit.setSafety(job, 'signedOffBy', text)),
  fc.constant((job: Job) => edit.addGauge(job, 'indicator')),
  fc.constant((job: Job) => tried(edit.removeGauge(job, 'g2'), job)),
  anyTyped.map(
    (typed) => (job: Job) => edit.setGauge(job, 'g1', { reach: typed, type: 'caliper' }),
  ),
  fc.constant((job: Job) => tried(edit.addFeature(job, 'bore'), job)),
  fc.constant((job: Job) => tried(edit.removeFeature(job, 'f1'), job)),
  fc
    .tuple(
      fc.constantFrom<edit.Dimension>(
        'nominal',
        'length',
        'bossOutside',
        'pressFit',
        'clearance',
        'target',
      ),
      long,
      unit,
    )
    .map(
      ([which, text, of]) =>
        (job: Job) =>
          edit.setDimension(job, 'f1', which, { text, unit: of }),
    ),
  anyTyped.map((typed) => (job: Job) => edit.setPinDiameter(job, 'f1', 20, typed)),
  anyTyped.map((typed) => (job: Job) => edit.setPlace(job, 'f1', 'x', typed)),
  fc.constant((job: Job) => tried(edit.addBushing(job, 'f1', 'B'), job)),
  anyTyped.map((typed) => (job: Job) => edit.setBushing(job, 'f1', 'b1', 'from', typed)),
  anyTyped.map((typed) => (job: Job) => edit.setBushingOutside(job, 'f1', 'b1', 0, typed)),
  anyTyped.map(
    (typed) => (job: Job) => edit.setKeepout(job, 'f1', 'k1', { to: typed, width: typed }),
  ),
  fc.constant((job: Job) => edit.setDecision(job, 'f1', { way: 'shim', centre: undefined })),
  long.map((name) => (job: Job) => edit.addSurvey(job, 'f1', 'pass', { name })),
  fc.constant((job: Job) => edit.removeSurvey(job, 'f1', 's1')),
  long.map((text) => (job: Job) => edit.setWornSide(job, 'f1', 's1', text)),
  anyTyped.map((typed) => (job: Job) => tried(edit.addDepth(job, 'f1', 's1', typed), job)),
  long.map((text) => (job: Job) => tried(edit.addClock(job, 'f1', 's1', text), job)),
  fc.constant((job: Job) => tried(edit.removeDepth(job, 'f1', 's1', 0), job)),
  fc.constant((job: Job) => tried(edit.removeClock(job, 'f1', 's1', 0), job)),
  fc.tuple(fc.oneof(fc.nat(5), long), fc.oneof(fc.nat(5), long), long, unit).map(
    ([depth, clock, values, of]) =>
      (job: Job) =>
        edit.setCell(job, 'f1', 's1', { depth, clock, values, unit: of }),
  ),
  fc.boolean().map((out) => (job: Job) => edit.setLeftOut(job, 'f1', 's1', 'r1', out)),
  fc.constant((job: Job) => edit.removeReading(job, 'f1', 's1', 'r2')),
  fc
    .tuple(
      fc.nat(3),
      fc.nat(3),
      fc.string({ unit: fc.constantFrom('1', '2', '.', ',', ';', '\t', '\n', ':', 'a', ' ') }),
    )
    .map(
      ([row, column, text]) =>
        (job: Job) =>
          tried(edit.pasteBlock(job, 'f1', 's1', row, column, text), job),
    ),
);

function deepFreeze<T>(of: T): T {
  if (typeof of === 'object' && of !== null && !Object.isFrozen(of)) {
    Object.freeze(of);
    Object.values(of).forEach(deepFreeze);
  }
  return of;
}

describe('any job', () => {
  it('comes back from its file as it was, and gives the same file again', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const text = saveJob(job);
        const opened = openJob(text, 'job');
        expect(opened).toMatchObject({ ok: true });
        if (!opened.ok) return;
        expect(opened.job).toEqual(job);
        expect(saveJob(opened.job)).toBe(text);
        expect(JSON.parse(text)).toEqual(job);
      }),
    );
  });

  it('is saved alike whatever order its keys were set in', () => {
    const turned = (of: unknown): unknown => {
      if (Array.isArray(of)) return of.map(turned);
      if (typeof of !== 'object' || of === null) return of;
      return Object.fromEntries(
        Object.entries(of)
          .reverse()
          .map(([key, one]) => [key, turned(one)]),
      );
    };
    fc.assert(
      fc.property(anyJob, (job) => {
        expect(saveJob(turned(job) as Job)).toBe(saveJob(job));
      }),
    );
  });

  it('edited in any way is still a job, with ids of their own, and the old one untouched', () => {
    let changed = 0;
    fc.assert(
      fc.property(anyJob, fc.array(anyEdit, { minLength: 1, maxLength: 8 }), (job, changes) => {
        let now = deepFreeze(job);
        for (const change of changes) {
          const next = change(now);
          if (next !== now) changed++;
          expect(v.safeParse(Job, next).issues).toBeUndefined();
          expect(openJob(saveJob(next), 'job')).toMatchObject({ ok: true });
          now = deepFreeze(next);
        }
      }),
      { numRuns: 300 },
    );
    // 300 runs of 1 to 8 edits: a law about edits that change nothing would prove nothing
    expect(changed).toBeGreaterThan(300);
  });

  it('that an edit leaves as it was is the same object, so that it leaves no step to undo', () => {
    fc.assert(
      fc.property(anyJob, fc.array(anyEdit, { minLength: 1, maxLength: 6 }), (job, changes) => {
        for (const change of changes) {
          const next = change(job);
          if (next !== job) expect(saveJob(next)).not.toBe(saveJob(job));
        }
      }),
    );
  });
});
