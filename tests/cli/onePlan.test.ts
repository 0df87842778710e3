/** What a way of mending comes to and what the part below it plans are the same figures, in the report as it is told. */
import { describe, expect, test } from 'vitest';
import { buildUpFinder } from '../../src/cli/buildUpReport.ts';
import { reportOf } from '../../src/cli/report.ts';
import type { SurveyReport } from '../../src/cli/reportSchema.ts';
import { waysFinder } from '../../src/cli/waysReport.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { evaluate } from '../../src/evaluate.ts';
import type { Job, ToolKind } from '../../src/job/schema.ts';
import { seededRandom } from '../../src/num/random.ts';
import { demoJobs } from '../../src/practice/demos.ts';

function reported(job: Job): SurveyReport[] {
  const report = reportOf(
    evaluate(job),
    {},
    {
      ways: waysFinder(job, null),
      passes: (bore, survey) => passesOfSurvey(job, bore, survey, null),
      buildUp: buildUpFinder(job, null),
    },
  );
  return report.bores.flatMap(({ surveys }) => surveys);
}

/** Figures of the report that are held against each other. */
let held = 0;

function holdTogether(survey: SurveyReport): void {
  const by = (name: string) => survey.ways.find((one) => one.name === name);
  const ground = by('grind');
  if (ground !== undefined && survey.grinding !== null) {
    expect(ground.passes).toBe(survey.passes.length);
    expect(ground.stays).toBe(survey.grinding.leftMost);
    expect(ground.target).toBe(survey.target!.diameter);
    held++;
  }
  const { squeeze, shims } = survey.buildUp ?? { squeeze: null, shims: null };
  expect(by('squeeze')?.squeeze ?? null).toEqual(
    squeeze && {
      closing: Math.max(...squeeze.depths.map(({ close, staysOver }) => close + staysOver)),
      upset: Math.max(...squeeze.depths.map(({ staysOver }) => staysOver)),
      bentOver: expect.closeTo(
        (Math.max(...squeeze.depths.map(({ bending }) => bending.largest)) -
          by('squeeze')!.target) /
          2,
        12,
      ),
      heats: squeeze.setUp!.heats,
      drawnIn: expect.anything(),
    },
  );
  if (squeeze !== null) held++;
  const shim = by('shim');
  expect(shim?.layers ?? []).toEqual(shims?.layers ?? []);
  if (shim === undefined || shims === null) return;
  held++;
  expect(shim.target).toBe(shims.round);
  expect(shim.volumeOff).toBe(shims.volumeOff);
  if (shims.pressFit !== null) expect(shim.pressFit.least).toBeCloseTo(shims.pressFit, 9);
}

/** No question on heat is open: the heats are told. */
const answered = (job: Job): Job => ({
  ...job,
  safety: {
    openAndClean: 'yes',
    sealsAndPlatingOut: 'yes',
    metal: 'plain-steel',
    carriesPeople: 'no',
  },
});

const TOOLS: readonly ToolKind[] = ['drum', 'stone', 'burr', 'flap-wheel', 'file'];
const RULES = ['free', 'least-cut', 'keep'] as const;

/** A demo job with centre, tool and size drawn at random. */
function drawn(seed: number): Job {
  const r = seededRandom(seed);
  const jobs = demoJobs();
  const base = jobs[Math.floor(r.uniform() * jobs.length)]!.job;
  const pressFit = { text: (0.01 + 0.2 * r.uniform()).toFixed(3), unit: 'mm' } as const;
  const bite = { text: (0.02 + 0.1 * r.uniform()).toFixed(3), unit: 'mm' } as const;
  return {
    ...base,
    features: base.features.map((one) => ({
      ...one,
      wanted: { ...one.wanted, pressFit },
      decisions: {
        centre: { rule: RULES[seed % RULES.length]! },
        grinding: { kind: TOOLS[seed % TOOLS.length]!, bite },
      },
    })),
  };
}

describe('a way and its plan', () => {
  test.each(demoJobs())('of $file', ({ job }) => {
    for (const survey of reported(answered(job))) holdTogether(survey);
  });

  test('of 20 jobs drawn at random', () => {
    for (let seed = 1; seed <= 20; seed++) {
      for (const survey of reported(answered(drawn(seed)))) holdTogether(survey);
    }
    expect(held).toBeGreaterThan(60);
  });
});
