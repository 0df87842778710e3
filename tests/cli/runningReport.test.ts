/** Contact and running clearance as page and report tell them, of made bores whose answer is known beforehand. */
import { describe, expect, it } from 'vitest';
import { fitFinder } from '../../src/cli/fitReport.ts';
import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { clearanceRows } from '../../src/figures/clearanceTable.ts';
import { fitAnswers } from '../../src/figures/fitAnswers.ts';
import { pressureText } from '../../src/figures/loads.ts';
import { pressedWall } from '../../src/figures/pressedWall.ts';
import { pressedHere, pressKey } from '../../src/figures/pressedWords.ts';
import { PRESSURE_STEPS, pressureMap } from '../../src/figures/pressureMap.ts';
import { describeRound, runningRound } from '../../src/figures/runningRound.ts';
import { setFit } from '../../src/job/edits.ts';
import { runningFacts } from '../../src/job/runningFacts.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { clocks, depthsWithin, jobOf, measure, type Shape } from '../fixtures/bores.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });

/** The computed example: 90/110 mm in 200 mm, 0.10 mm press fit; a pin of 89.8 mm. */
const FEATURE: Partial<Feature> = {
  length: mm('80'),
  boss: { outside: mm('200') },
  bushings: [{ id: 'b', name: 'New', seat: { face: 'A' }, outside: [mm('110')], inside: mm('90') }],
  pin: { diameters: [mm('89.80'), mm('89.79'), mm('89.80')] },
};

function job(shape: Shape, feature: Partial<Feature> = {}): Job {
  const taken = measure(shape, 'radius', clocks(12, 2 * Math.PI), depthsWithin(3, 80));
  const made = jobOf({ taken, length: 80, sd: 0.0002, feature: { ...FEATURE, ...feature } });
  return setFit(made, made.features[0]!.id, 'wall', 'measured');
}

/** The wall is the same in most of them. */
const memory: Memory = new Map();

function found(one: Job) {
  const { bores, parts } = evaluate(one, memory);
  const survey = bores[0]!.surveys[0]!;
  const fit = fitOfSurvey(one, bores[0]!, survey, null, parts)!.bushings[0]!;
  const report = fitFinder(one, null, null, parts)(bores[0]!, survey)!.bushings[0]!;
  return { fit, report };
}

const round: Shape = () => 54.95;
const oval: Shape = (theta) => 54.95 + 0.02 * Math.cos(2 * theta);

describe('a bushing in a round bore', () => {
  it('presses evenly, closes in as Lamé has it, and leaves its pin that much less', () => {
    const { fit, report } = found(job(round));
    const { press, running } = fit;
    const at = report.round.found!;
    expect(at.touching).toBe(1);
    // The wall is known to about a hundredth of the press fit.
    expect(Math.abs(at.pressure.mean / press.cases!.mean.pressure - 1)).toBeLessThan(0.01);
    expect(Math.abs(at.closesIn / press.cases!.mean.closesIn - 1)).toBeLessThan(0.01);
    expect(running.free!.tightest).toBeCloseTo(0.2, 9);
    expect(running.free!.loosest).toBeCloseTo(0.21, 9);
    expect(Math.abs(running.installed!.tightest.mm - (0.2 - at.closesIn))).toBeLessThan(0.002);
    expect(Math.abs(running.safe - 0.1)).toBeLessThan(0.002);
  });

  it('says the same on the page as in the report', () => {
    const { fit, report } = found(job(oval));
    expect(report.round.found!.pressures.flat().filter((p) => p !== null).length).toBe(
      fit.round.fit!.pressure.filter(Number.isFinite).length,
    );
    expect(report.running.installed!.tightest.across).toBe(fit.running.installed!.tightest.mm);
    expect(report.running.words.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('a bushing in an oval bore', () => {
  it('takes on nearly all of the oval, across the long way of the bore', () => {
    const at = found(job(oval)).report.round.found!;
    // 95.1 % of two lobes reach its bore: ring compliance of 90/110 in 200, as the pair's own test has it.
    expect(Math.abs(at.outOfRound.value / at.boreOutOfRound! - 0.951)).toBeLessThan(0.02);
    expect(Math.min(at.outOfRound.clock, 180 - at.outOfRound.clock)).toBeLessThan(6);
  });

  it('is told by radius too: three lobes, which no diameter shows', () => {
    const { report } = found(job((theta) => 54.95 + 0.02 * Math.cos(3 * theta)));
    const at = report.round.found!;
    expect(at.boreOutOfRound!).toBeLessThan(0.004);
    expect(at.boreRadialSpan!.lobes).toBe(3);
    // Twice the amplitude; the surface rounds a crest a little.
    expect(Math.abs(at.boreRadialSpan!.perSide - 0.04)).toBeLessThan(0.004);
    const words = report.round.words.join(' ');
    expect(words).toMatch(
      /by radius about its middle by 0\.0[34]\d+ mm per side, three lobes: a bushing/,
    );
    expect(words).not.toContain('stays round');
  });

  it('gapes where the oval is more than its press fit can follow', () => {
    const { fit, report } = found(job((theta) => 54.999 + 0.08 * Math.cos(2 * theta)));
    const at = report.round.found!;
    expect(at.touching).toBeLessThan(0.9);
    expect(at.touching).toBeGreaterThan(0.1);
    expect(at.widestGap.value).toBeGreaterThan(0);
    expect(at.pressure.least.value).toBe(0);
    const map = pressureMap(fit.seated.wall, fit.round.fit!, 'mm');
    const area = (step: number) =>
      map.patches
        .filter((one) => one.step === step)
        .reduce((sum, { width, height }) => sum + width * height, 0);
    expect(Math.abs(area(0) - (1 - at.touching))).toBeLessThan(0.02);
    expect(area(PRESSURE_STEPS)).toBeGreaterThan(0);
    // What the drawing writes are the report's own figures.
    const { greatest } = at.pressure;
    const most = pressureText(greatest.value, 'mm');
    expect(pressKey(pressedWall({ bushings: [fit] }, 'mm', Math.PI)!).hardest).toBe(most);
    const hardest = { theta: (greatest.clock * Math.PI) / 180, z: greatest.depth };
    expect(pressedHere({ bushings: [fit] }, hardest, 'mm')).toBe(`pressed with ${most}`);
    const widest = { theta: (at.widestGap.clock * Math.PI) / 180, z: at.widestGap.depth };
    expect(pressedHere({ bushings: [fit] }, widest, 'mm')).toMatch(/^no contact, a gap of /);
  });
});

describe('running clearance', () => {
  it('is tight where less is left than is wanted, and says what to hone to', () => {
    const { report } = found(job(round, { wanted: { clearance: mm('0.18') } }));
    const installed = report.running.installed!;
    expect(installed.verdict).toBe('tight');
    expect(installed.open!.to).toBeCloseTo(89.98, 9);
    expect(installed.open!.places).toHaveLength(12);
    for (const { most } of installed.open!.places) {
      expect(Math.abs(2 * most - (0.18 - installed.room))).toBeLessThan(0.002);
    }
    expect(report.running.words.join(' ')).toContain('never turn the pin down');
  });

  it.each([
    ['a thousandth of a millimetre', 0.001, /less than is worth honing/],
    [
      'half of its give or take',
      0.011,
      /Measure its inside once it sits, before anything is honed/,
    ],
  ])('short by %s is not to be honed, as nobody can tell it', (_, short, told) => {
    const before = found(job(round)).report.running.installed!;
    const least = Math.min(before.tightest.across, before.room);
    // An outside micrometer's repeatability, twice, is what is known of a size that was typed.
    expect(before.giveOrTake).toBeGreaterThan(0.011);
    const wanted = { clearance: mm((least + short).toFixed(6)) };
    const { fit, report } = found(job(round, { wanted }));
    const { verdict, short: by, open } = report.running.installed!;
    expect({ verdict, open }).toEqual({ verdict: 'near', open: null });
    expect(by).toBeCloseTo(short, 5);
    const turns = fitAnswers(fit, 'mm', true).find(({ asks }) => asks === 'turns')!.says;
    for (const words of [turns, report.running.words.join(' ')]) {
      expect(words).toMatch(told);
      expect(words).not.toMatch(/\bhone its|open the bushing|as told below/);
    }
  });

  it('is never told safer than it is: three lobes hold a pin that every diameter lets through', () => {
    // Every diameter of three lobes is alike, so that by diameters alone all of the press fit would leave 0.16 mm.
    const lobed: Shape = (theta) => 54.98 + 0.04 * Math.cos(3 * theta);
    const { fit } = found(job(lobed));
    const { safe, installed, pin } = fit.running;
    expect(safe).toBeLessThanOrEqual(Math.min(installed!.tightest.mm, installed!.room));
    // Against a straight pin the wall's nearest places count: 2 x 54.94 of the bushing's 110, all of it in its bore of 90.
    expect(Math.abs(safe - (90 - 0.12 - pin!.greatest))).toBeLessThan(0.004);
  });

  it('is wide, then worn out, as the limits have it', () => {
    const wide = { wanted: { clearance: mm('0.05') } };
    const limits = (most: string, worn: string) => {
      const one = job(round, wide);
      const id = one.features[0]!.id;
      return setFit(setFit(one, id, 'clearanceMost', mm(most)), id, 'clearanceWorn', mm(worn));
    };
    expect(found(limits('0.2', '0.3')).report.running.installed!.verdict).toBe('good');
    expect(found(limits('0.1', '0.3')).report.running.installed!.verdict).toBe('wide');
    expect(found(limits('0.08', '0.1')).report.running.installed!.verdict).toBe('worn');
  });

  it('goes by the usual figures of the pin’s size', () => {
    // Judgement, per inch of pin: 0.002 in and 0.002 in more; a pin of 2 in: 0.006, twice and three times that.
    const feature = job(round).features[0]!;
    const { least, most, worn } = runningFacts(feature, 50.8);
    expect([least.mm, most.mm, worn.mm].map((one) => one / 25.4)).toEqual([
      expect.closeTo(0.006, 9),
      expect.closeTo(0.012, 9),
      expect.closeTo(0.018, 9),
    ]);
    expect(runningFacts(feature, Number.NaN).most.from).toBe('missing');
  });

  it('is drawn by the clock', () => {
    const { fit } = found(job(oval));
    const { installed, pin, limits } = fit.running;
    const drawn = runningRound(installed!, pin!, limits.least.mm, 'mm');
    expect(drawn.hours).toHaveLength(12);
    expect(drawn.factor).toBeGreaterThan(1);
    expect(describeRound(drawn, 'mm')).toMatch(/12:00|12 /);
    // Long from 12 to 6: more room there than across it.
    const room = (hour: number) => installed!.byClock[hour]!.least;
    expect(room(0)).toBeGreaterThan(room(3));
  });

  it.each([
    [
      'without an inside',
      { bushings: [{ ...FEATURE.bushings![0]!, inside: undefined }] },
      /inside diameter/,
    ],
    ['without a boss', { boss: {} }, /outside diameter of the boss/],
    ['without a pin', { pin: { diameters: [] } }, /sizes of the pin/],
    [
      'larger inside than outside',
      { bushings: [{ ...FEATURE.bushings![0]!, inside: mm('111') }] },
      /no smaller inside/,
    ],
    ['a pin larger than the hole', { pin: { diameters: [mm('91')] } }, /check both/],
  ])('%s says so in a sentence', (_, feature, told) => {
    const { report } = found(job(round, JSON.parse(JSON.stringify(feature)) as Partial<Feature>));
    const words = [...report.round.words, ...report.running.words].join(' ');
    expect(words).toMatch(told);
    expect(words).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('published clearances', () => {
  it('are what the manuals print', () => {
    // A service manual of a compact digging machine, 0.06 to 0.32 mm new and 1.0 mm at the limit.
    expect(clearanceRows('mm')[0]).toMatchObject({ fresh: '0.06 to 0.32', worn: '1.00' });
    expect(clearanceRows('in')[0]).toMatchObject({ fresh: '0.0024 to 0.0126', worn: '0.0394' });
  });
});
