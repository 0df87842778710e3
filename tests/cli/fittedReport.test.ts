/** A bushing's own bore, read once it was pressed in (constructed bores whose tightest place is known beforehand). */
import { describe, expect, it } from 'vitest';
import { fitFinder } from '../../src/cli/fitReport.ts';
import { fitParts } from '../../src/cli/fitText.ts';
import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { onePinOf } from '../../src/evaluate/onePin.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { waysOfSurvey } from '../../src/evaluate/ways.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { notComparable } from '../../src/figures/stageChange.ts';
import { addSurvey } from '../../src/job/edits.ts';
import type { Bushing, Feature, Job, Stage, Survey } from '../../src/job/schema.ts';
import { clocks, depthsWithin, jobOf, measure, type Shape } from '../fixtures/bores.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });
const memory: Memory = new Map();

const LENGTH = 80;
const wall: Shape = () => 54.95;
/** Long way across 2–8 o'clock, so tightest across 5–11; narrower towards face B. */
const TURN = Math.PI / 3;
const inside: Shape = (theta, z) =>
  44.97 + 0.012 * Math.cos(2 * (theta - TURN)) - (0.004 * z) / LENGTH;

const NEW: Bushing = {
  id: 'b',
  name: 'New',
  seat: { face: 'A' },
  outside: [mm('110')],
  inside: mm('90'),
};

/** One survey of a shape, as a job of that survey alone would have it. */
function surveyOf(
  shape: Shape,
  stage: Stage,
  id: string,
  depths = depthsWithin(3, LENGTH),
): Survey {
  const taken = measure(shape, 'radius', clocks(12, 2 * Math.PI), depths);
  const job = jobOf({ taken, length: LENGTH, sd: 0.0002 });
  return { ...job.features[0]!.surveys[0]!, id, stage, name: id };
}

const FOUND = surveyOf(wall, 'as-found', 'found');
const FITTED = surveyOf(inside, 'fitted', 'in');

function jobWith(surveys: readonly Survey[], change: Partial<Feature> = {}): Job {
  const job = jobOf({ taken: [], length: LENGTH, nominal: 110 });
  const feature: Feature = {
    ...job.features[0]!,
    boss: { outside: mm('200') },
    bushings: [NEW],
    pin: { diameters: [mm('89.80'), mm('89.79'), mm('89.80')] },
    decisions: { target: mm('109.9'), fit: { wall: 'measured' } },
    ...change,
    surveys: [...surveys],
  };
  return { ...job, features: [feature] };
}

function told(job: Job, at: number, bore = 0) {
  const evaluation = evaluate(job, memory, 'quick');
  const { bores, parts } = evaluation;
  const of = bores[bore]!;
  const survey = of.surveys[at]!;
  return {
    evaluation,
    bore: of,
    survey,
    fit: fitOfSurvey(job, of, survey, null, parts)!,
    report: fitFinder(job, null, null, parts)(of, survey)!,
    text: fitParts(job, of, survey, null, null, parts)
      .flatMap(({ lines }) => lines)
      .join('\n'),
  };
}

describe('a fitted bushing whose own bore was read', () => {
  const both = jobWith([FOUND, FITTED]);
  const { fit, report, text } = told(both, 1);
  const { running } = fit.bushings[0]!;
  const at = running.installed!;

  it('runs as freely as was read, tightest where it was made so', () => {
    expect(running.measured!.survey).toBe('in');
    // Least diameter 2 (44.97 − 0.012 − 0.004), across 5–11 at face B; readings of 0.0002 mm.
    expect(Math.abs(at.tightest.mm - (2 * 44.954 - 89.8))).toBeLessThan(0.001);
    expect(Math.abs(at.tightest.theta - (TURN + Math.PI / 2))).toBeLessThan(0.06);
    expect(at.tightest.z).toBeGreaterThan(0.9 * LENGTH);
    expect(Math.abs(at.loosest.mm - (2 * 44.982 - 89.79))).toBeLessThan(0.001);
    expect(at.give).toBeGreaterThan(0);
    expect(at.give).toBeLessThan(0.02);
  });

  it('has what was worked out before beside it, in the figures and in words', () => {
    const { computed, closedIn, closesIn } = running.measured!;
    // Round wall, 0.10 of press fit: 0.0715588 closes in, by the reference of 90/110 in 200.
    expect(Math.abs(closesIn - 0.0715588)).toBeLessThan(0.001);
    expect(Math.abs(computed!.tightest.mm - (90 - 0.0715588 - 89.8))).toBeLessThan(0.001);
    expect(Math.abs(closedIn - (90 - 2 * 44.968))).toBeLessThan(0.001);
    const words = report.bushings[0]!.running.words.join(' ');
    expect(words).toContain('Read once it was in (“in”), it clears the pin by 0.108');
    expect(words).toMatch(/Worked out before: 0\.128.* measured now: 0\.108/);
    for (const line of report.bushings[0]!.running.words) expect(text).toContain(line);
    expect(report.bushings[0]!.running.measured!.computed!.tightest.across).toBe(
      computed!.tightest.mm,
    );
    expect(report.bushings[0]!.running.installed!.tightest.across).toBe(at.tightest.mm);
  });

  it('is opened where the readings have it tight, to the size wanted', () => {
    const tight = jobWith([FOUND, FITTED], { wanted: { clearance: mm('0.15') } });
    const { open, verdict } = told(tight, 1).fit.bushings[0]!.running.installed!;
    expect(verdict).toBe('tight');
    expect(open!.to).toBeCloseTo(89.95, 9);
    const hours = open!.hours.map(({ theta }) => Math.round((theta * 6) / Math.PI));
    // The long way across 2–8 is wide enough; most comes off across 5–11.
    expect(hours).not.toContain(2);
    expect(hours).not.toContain(8);
    const most = Math.max(...open!.hours.map((one) => one.most));
    const five = open!.hours.find(({ theta }) => Math.round((theta * 6) / Math.PI) === 5)!;
    expect(five.most).toBeCloseTo(most, 3);
    expect(Math.abs(most - (89.95 / 2 - 44.954))).toBeLessThan(0.001);
  });

  it('is told alike from the stage before, and not of a wall that was read since', () => {
    expect(told(both, 0).fit.bushings[0]!.running.installed!.tightest).toEqual(at.tightest);
    const again = jobWith([FOUND, FITTED, { ...FOUND, id: 'again', name: 'again' }]);
    expect(told(again, 0).fit.bushings[0]!.running.measured).not.toBeNull();
    expect(told(again, 2).fit.bushings[0]!.running.measured).toBeNull();
  });
});

describe('the plan', () => {
  const both = jobWith([FOUND, FITTED]);
  const { survey, bore } = told(both, 1);

  it('has nothing to take off the boss by readings of the bushing', () => {
    expect(survey.surface).not.toBeNull();
    expect([survey.target, survey.removal, survey.seating]).toEqual([null, null, null]);
    expect(passesOfSurvey(both, bore, survey, null)).toBeNull();
    expect(waysOfSurvey(both, bore, survey, null)).toBeNull();
    expect(survey.patterns.named).toEqual([]);
    expect(survey.notes.map(({ text }) => text).join(' ')).toContain('the bushing’s own bore');
    // No reading is taken for a slip from the boss's size.
    expect(survey.checks).toEqual([]);
  });

  it('of the wall stays as it was, and a pass after it starts from no such survey', () => {
    const before = told(jobWith([FOUND]), 0);
    const found = told(both, 0);
    expect(found.survey.target).toEqual(before.survey.target);
    const PASS = surveyOf(() => 54.955, 'pass', 'pass');
    const later = jobWith([FOUND, FITTED, PASS]);
    const { bore: of, survey: pass } = told(later, 2);
    const passes = passesOfSurvey(later, of, pass, null)!;
    expect(passes.worked).toBeNull();
    expect(passes.stages.filter(({ forecast }) => !forecast).map(({ name }) => name)).toEqual([
      'found',
      'pass',
    ]);
  });

  it('tells the bore’s size by its wall, and lays no bushing over it', () => {
    const { evaluation } = told(both, 1);
    const [part] = evaluation.joint.parts;
    expect(part).toMatchObject({ kind: 'bore', survey: 'found' });
    expect(Math.abs(part!.size.mean.mm - 109.9)).toBeLessThan(0.001);
    expect(evaluation.joint.plays[0]).toMatchObject({ hole: 'the bushing in bore' });
    expect(evaluation.joint.unread).toEqual([]);
    expect(notComparable(...(bore.surveys as [typeof survey, typeof survey]))).toContain(
      'the bushing’s own bore',
    );
  });

  it('takes over the places of the stage before, and no worn side', () => {
    const worn = jobWith([{ ...FOUND, wornSide: '6' }]);
    const added = addSurvey(worn, 'b', 'fitted').features[0]!.surveys.at(-1)!;
    expect(added.stage).toBe('fitted');
    expect(added.wornSide).toBeUndefined();
  });
});

describe('several bores on one pin', () => {
  it('let through what was read of the fitted bushing, about its own middle', () => {
    const aside: Shape = (theta, z) => inside(theta, z) + 0.05 * Math.cos(theta);
    const first = jobWith([FOUND, surveyOf(aside, 'fitted', 'in')], {
      place: { station: mm('0') },
    });
    const second: Feature = {
      ...first.features[0]!,
      id: 'other',
      name: 'other',
      place: { station: mm('200') },
      surveys: [FOUND],
    };
    const job = { ...first, features: [first.features[0]!, second] };
    const { holes } = onePinOf(job, evaluate(job, memory, 'quick'), null)!;
    expect(holes.map(({ by }) => by)).toEqual(['measured', 'shape']);
    // Two lobes and a taper: the short way at face B holds the pin.
    expect(Math.abs(holes[0]!.alone - 2 * 44.954)).toBeLessThan(0.001);
    expect(holes[0]!.off!.perSide).toBeLessThan(0.002);
  });
});

describe('what was read in part', () => {
  it('of two bushings leaves the other as worked out', () => {
    const half = (id: string, from: string, to: string): Bushing => ({
      ...NEW,
      id,
      name: id,
      seat: { face: 'A', from: mm(from), to: mm(to) },
    });
    const bushings = [half('rim', '0', '38'), half('bottom', '42', '80')];
    const rimOnly = surveyOf(inside, 'fitted', 'in', [6, 20, 34]);
    const { fit } = told(jobWith([FOUND, rimOnly], { bushings }), 1);
    const [rim, bottom] = fit.bushings;
    expect(rim!.running.measured).not.toBeNull();
    expect(bottom!.running.measured).toBeNull();
    expect(Math.abs(bottom!.running.installed!.tightest.mm - 0.1284)).toBeLessThan(0.001);
  });

  it('without the bore behind it tells how freely the pin runs, and what is missing', () => {
    const { fit, report, text } = told(jobWith([FITTED]), 0);
    expect(fit.bushings).toEqual([]);
    expect(Math.abs(fit.alone[0]!.running.installed!.tightest.mm - 0.108)).toBeLessThan(0.001);
    expect(report.alone[0]!.running.measured).toMatchObject({ survey: 'in', computed: null });
    expect(text).toContain('Too little is known of the bore behind this bushing');
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('counts figures over and under from the bushing’s inside, not from the boss’s bore', () => {
    const [row] = FITTED.readings;
    const over: Survey = {
      ...FITTED,
      readings: [{ ...row!, gauge: 'two-point', value: { text: '-0.02', unit: 'mm' } }],
    };
    const { survey } = told(jobWith([FOUND, over]), 1);
    expect(survey.sightings[0]!.value).toBeCloseTo(89.98, 9);
  });

  it('without a pin, or with a pin too large, says so in a sentence', () => {
    const none = told(jobWith([FOUND, FITTED], { pin: { diameters: [] } }), 1);
    expect(none.text).toContain('Give the sizes of the pin');
    const large = told(jobWith([FOUND, FITTED], { pin: { diameters: [mm('89.95')] } }), 1);
    expect(large.fit.bushings[0]!.running.installed!.verdict).toBe('stuck');
    expect(large.text).toContain('The pin does not go in');
    for (const { text } of [none, large]) expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });
});
