/**
 * A way that brings a size of its own, once it is chosen: what its card says, the target with its removal map, the passes and
 * the build-up are the same figures. Constructed from demo jobs; the report is held against itself.
 */
import { describe, expect, test } from 'vitest';
import { buildUpFinder } from '../../src/cli/buildUpReport.ts';
import { reportOf } from '../../src/cli/report.ts';
import type { SurveyReport } from '../../src/cli/reportSchema.ts';
import { waysFinder } from '../../src/cli/waysReport.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { chooseWay } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { inUnits } from '../../src/job/units.ts';
import { demoJobs } from '../../src/practice/demos.ts';

/** The bore that each job begins with, as found: its first survey. */
function firstBore(job: Job): Job {
  const bore = job.features.find(({ kind }) => kind === 'bore')!;
  return { ...job, features: [{ ...bore, surveys: bore.surveys.slice(0, 1), issued: [] }] };
}

function reported(job: Job, memory: Memory): SurveyReport {
  const found = {
    ways: waysFinder(job, null),
    passes: (...of: Parameters<ReturnType<typeof waysFinder>>) =>
      passesOfSurvey(job, of[0], of[1], null),
    buildUp: buildUpFinder(job, null),
  };
  return reportOf(evaluate(job, memory), {}, found).bores[0]!.surveys[0]!;
}

const OWN = ['oversize', 'sleeve', 'shim'] as const;

describe.each(demoJobs())('$file', ({ job: whole }) => {
  const job = firstBore(whole);
  const memory: Memory = new Map();
  const before = reported(job, memory);
  const offered = OWN.flatMap((name) => before.ways.filter((one) => one.name === name));

  test.each(offered)('$name', (card) => {
    // As the page takes it over: to as many digits as a target is typed with.
    const [digits, step] = job.units === 'in' ? [4, 0.00254] : [3, 0.001];
    const text = inUnits(card.target, job.units).toFixed(digits);
    const chosen = chooseWay(job, job.features[0]!.id, card.name as (typeof OWN)[number], {
      text,
      unit: job.units,
    });
    const after = reported(chosen, memory);
    const again = after.ways.find(({ name }) => name === card.name)!;
    // The card does not change by being chosen.
    expect(again.target).toBeCloseTo(card.target, 9);
    expect(again.passes).toBe(card.passes);
    expect(again.volumeOff).toBeCloseTo(card.volumeOff, 6);
    // Nor does the plan say anything else: a typed size differs by no more than half of its last digit, across.
    const { target, removal } = after;
    expect(Math.abs(target!.diameter - card.target)).toBeLessThanOrEqual(step / 2 + 1e-9);
    expect(target!.center.map((c, i) => Math.abs(c - card.center[i]!) < 1e-9)).toEqual([
      true,
      true,
    ]);
    const wall = (Math.PI * card.target * lengthOf(after) * step) / 4;
    expect(Math.abs(removal!.volume - card.volumeOff)).toBeLessThanOrEqual(wall + 1e-6);
    if (card.passes !== null) expect(after.passes).toHaveLength(card.passes);
    if (card.name !== 'shim') return;
    const { shims } = after.buildUp!;
    expect(shims!.layers).toEqual(card.layers);
    expect(shims!.round).toBeCloseTo(card.target, 9);
    expect(shims!.volumeOff).toBeCloseTo(card.volumeOff, 6);
  });
});

/** Of the bore, mm. */
function lengthOf({ surface }: SurveyReport): number {
  return surface!.z.at(-1)!;
}
