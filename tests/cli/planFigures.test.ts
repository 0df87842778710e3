/**
 * Every figure that the plan's sentences and tables tell stands in the report's JSON: whatever has decimals there is,
 * rounded as it is written, a number of ways, passes, build-up, zones or target. Fields over the whole wall and the
 * report's own sentences do not count, or anything would be found.
 */
import { describe, expect, it } from 'vitest';
import { buildUpFinder } from '../../src/cli/buildUpReport.ts';
import { pinFinder, pinReport } from '../../src/cli/pinsReport.ts';
import { reportOf } from '../../src/cli/report.ts';
import { waysFinder } from '../../src/cli/waysReport.ts';
import { buildUpOfSurvey } from '../../src/evaluate/buildUp.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { waysOfSurvey } from '../../src/evaluate/ways.ts';
import { type BoreEvaluation, evaluate, type SurveyEvaluation } from '../../src/evaluate.ts';
import { heatWords } from '../../src/figures/heatWords.ts';
import {
  finishWords,
  gateLines,
  leftWords,
  passTitle,
  passZone,
} from '../../src/figures/passWords.ts';
import { landRows, pinWordGroups } from '../../src/figures/pinWords.ts';
import { pinWayRows } from '../../src/figures/pinWork.ts';
import { shimWords } from '../../src/figures/shimWords.ts';
import { giveOf, squeezeWords } from '../../src/figures/squeezeWords.ts';
import { wayRows } from '../../src/figures/wayTable.ts';
import { weldWords } from '../../src/figures/weldWords.ts';
import type { Job } from '../../src/job/schema.ts';
import { demoJobs } from '../../src/practice/demos.ts';
import { FIGURE, numbersOf, RULES } from './toldFigures.ts';

/** The first survey of a bore that something is to be ground off. */
function firstOf(job: Job, bore: BoreEvaluation) {
  const survey = bore.surveys.find(({ removal }) => removal !== null && removal.mass > 0)!;
  return { job, bore, survey };
}

function missing(lines: readonly string[], numbers: readonly number[], job: Job): string[] {
  const per = job.units === 'in' ? 25.4 : 1;
  // Lengths count in the job's unit, masses in grams; half a last digit may be rounded either way.
  return lines.flatMap((line) =>
    (line.replace(RULES, '').match(FIGURE) ?? [])
      .filter((text) => {
        const half = 0.5 * 10 ** -text.split('.')[1]!.length * (1 + 1e-9);
        const is = (n: number) => Math.abs(Math.abs(n) - Number(text)) <= half;
        return !numbers.some((n) => is(n / per) || is(n));
      })
      .map((text) => `${text} of: ${line}`),
  );
}

interface Seen {
  readonly job: Job;
  readonly bore: BoreEvaluation;
  readonly survey: SurveyEvaluation;
}

function wayLines({ job, bore, survey }: Seen): string[] {
  const ways = waysOfSurvey(job, bore, survey, null)!;
  return wayRows(ways, job.units).flatMap(({ cells }) =>
    Object.values(cells).flatMap(({ text, note }) => [text, note]),
  );
}

function passLines({ job, bore, survey }: Seen): string[] {
  const passes = passesOfSurvey(job, bore, survey, null)!;
  const { plan } = passes;
  return [
    ...plan.passes.flatMap((pass, at) => [
      passTitle(pass, at + 1, job.units),
      // Where a zone begins and ends is told in the report's words alone.
      ...pass.zones.map((zone) => passZone(zone, bore.facts.length.mm, job.units).what),
      ...gateLines(pass, job.units),
    ]),
    ...plan.left.map((one) => leftWords(one, passes, job.units)),
    finishWords(passes, job.units),
  ];
}

function buildUpLines({ job, bore, survey }: Seen): string[] {
  const found = buildUpOfSurvey(job, bore, survey, null)!;
  const { squeeze, shims, heat } = found;
  const words = squeeze && squeezeWords(squeeze, found, survey, job.units);
  const shim = shims && shimWords(shims, found, job.units);
  const told = heat && heatWords(heat, giveOf(survey), job.units);
  return [
    ...(words?.ends ?? []),
    ...(words?.depths ?? []).map((row) => Object.values(row).join(' ')),
    ...(words?.cold ?? []).map((row) => Object.values(row).join(' ')),
    ...(shim?.stack ?? []),
    ...(shim?.strips ?? []).map((row) => Object.values(row).join(' ')),
    ...(told === null ? [] : [told.where, ...told.brought]),
    ...weldWords(found, 'built-up', bore.facts.length.mm, job.units).low,
    ...weldWords(found, 'built-up', bore.facts.length.mm, job.units).metal,
  ];
}

const OPEN: Job['safety'] = {
  openAndClean: 'yes',
  sealsAndPlatingOut: 'yes',
  metal: 'plain-steel',
  carriesPeople: 'no',
};

describe.each(demoJobs())('the bore of $file', ({ job: whole }) => {
  const job: Job = {
    ...whole,
    features: whole.features.filter(({ kind }) => kind === 'bore').slice(0, 1),
    safety: OPEN,
  };
  const evaluation = evaluate(job, new Map());
  const [bore] = evaluation.bores;
  const seen = firstOf(job, bore!);
  const report = reportOf(
    { ...evaluation, bores: [{ ...seen.bore, surveys: [seen.survey] }] },
    {},
    {
      buildUp: (one, survey) =>
        buildUpFinder(job, null)({ ...one, surveys: seen.bore.surveys }, survey),
      ways: waysFinder(job, null),
      passes: (one, survey) => passesOfSurvey(job, one, survey, null),
    },
  ).bores[0]!.surveys[0]!;

  it.each([
    ['the table of ways', wayLines, ['ways', 'wayAdvice']],
    ['the passes and their gates', passLines, ['passes', 'grinding']],
    ['squeeze, shims and weld', buildUpLines, ['buildUp']],
  ] as const)('%s', (_, lines, keys) => {
    const told = lines(seen);
    expect(told.join(' ').match(FIGURE)?.length ?? 0).toBeGreaterThan(0);
    const numbers = numbersOf([keys.map((key) => report[key]), report.target?.diameter]);
    expect(missing(told, numbers, job)).toEqual([]);
  });
});

const PINS = demoJobs().filter(({ job }) => job.features.some(({ kind }) => kind === 'pin'));

describe.each(PINS)('the pin of $file', ({ job: whole }) => {
  const job: Job = { ...whole, safety: OPEN };
  const memory = new Map();
  const pin = evaluate(job, memory).parts.find(({ kind }) => kind === 'pin')!;
  const find = pinFinder(job, memory, null);
  const told = pinReport(job, pin, find);

  it.each(told.surveys.map(({ name, plan }, at) => ({ name, plan, survey: pin.surveys[at]! })))(
    '$name',
    ({ plan: inReport, survey }) => {
      const plan = find(pin, survey)!;
      const lines = [
        ...pinWordGroups(plan, job.units).flatMap((group) => group.lines),
        ...landRows(plan, job.units).map(({ key: _, edges, ...row }) =>
          [...Object.values(row), ...edges].join(' '),
        ),
        ...pinWayRows(plan, job.units).flatMap(({ figures }) => figures),
      ];
      expect(lines.join(' ').match(FIGURE)?.length ?? 0).toBeGreaterThan(3);
      expect(missing(lines, numbersOf(inReport), job)).toEqual([]);
    },
  );
});
