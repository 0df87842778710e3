/** What a squeeze brought and what the shop's log teaches; a steel told by its parts; places of a weld that are too low. */
import { describe, expect, test } from 'vitest';
import { buildUpFinder } from '../../src/cli/buildUpReport.ts';
import { buildUpParts } from '../../src/cli/buildUpText.ts';
import { buildUpOfSurvey } from '../../src/evaluate/buildUp.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { setDecision, setMending, setWayFigure } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import type { Shop } from '../../src/job/shop.ts';
import { isLogged, squeezeEntry, withoutSqueeze, withSqueeze } from '../../src/job/squeezeLog.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';

const inch = (text: string) => ({ text, unit: 'in' as const });
const memory: Memory = new Map();

/** As found and after squeezing. */
const whole = slipwayWinch();
const [heel] = whole.features;
const two: Job = { ...whole, features: [{ ...heel!, surveys: heel!.surveys.slice(0, 2) }] };
const one: Job = { ...whole, features: [{ ...heel!, surveys: heel!.surveys.slice(0, 1) }] };

function told(of: Job, at: number, shop: Shop | null = null) {
  const bore = evaluate(of, memory).bores[0]!;
  const survey = bore.surveys[at]!;
  return {
    report: buildUpFinder(of, shop)(bore, survey)!,
    found: buildUpOfSurvey(of, bore, survey, shop)!,
    text: buildUpParts(of, bore, survey, shop)
      .flatMap(({ lines }) => lines)
      .join('\n'),
    sections: bore.surveys.map(({ sections }) => sections),
  };
}

describe('what a squeeze brought', () => {
  const moved = setMending(setDecision(two, 'f1', { way: 'squeeze' }), 'f1', 'squeeze', 'moved', {
    text: '0.030',
    unit: 'in',
  });

  test('is the one survey less the other, from whichever of the two it is asked', () => {
    const before = told(moved, 0);
    const after = told(moved, 1);
    expect(after.report.heat).toEqual(before.report.heat);
    const { brought, along, depth } = before.report.heat!;
    // Sections are fitted to the readings of their own depth: an independent account of the same means.
    const near = (sections: (typeof before.sections)[number]) =>
      sections.reduce((a, b) => (Math.abs(b.z - depth) < Math.abs(a.z - depth) ? b : a));
    const [old, now] = before.sections.slice(0, 2).map((all) => near(all!));
    const give = 2 * Math.max(old!.give, now!.give);
    const drew = brought!.meanBefore! - brought!.meanAfter!;
    expect(Math.abs(drew - (old!.meanDiameter - now!.meanDiameter))).toBeLessThan(give);
    expect(brought!.springShare).toBeCloseTo(1 - brought!.came! / (0.03 * 25.4), 12);
    // Six pairs; the one along the jaws closed by about what is told of them.
    const jaws = brought!.across.reduce((a, b) => (b.before! > a.before! ? b : a));
    expect(Math.abs(jaws.before! - along)).toBeLessThan(0.02 * 25.4);
    for (const line of before.report.heat!.words) expect(before.text).toContain(line);
    expect(before.text).toContain('By clock position, in across: 12–6 ');
  });

  test('is told by two readings where nothing was measured after it', () => {
    expect(told(one, 0).report.heat!.brought).toBeNull();
    let job = setMending(one, 'f1', 'squeeze', 'moved', inch('0.020'));
    const { along, between } = told(job, 0).report.heat!;
    const less = (mm: number, thou: number) => inch(String(mm / 25.4 - thou / 1000));
    job = setMending(job, 'f1', 'squeeze', 'along', less(along, 12));
    job = setMending(job, 'f1', 'squeeze', 'between', less(between, -8));
    const { brought } = told(job, 0).report.heat!;
    // Constructed: 12 thou closed of 20, 8 opened across it; the mean drew in by (12 - 8) / 2.
    expect(brought!.came! / 25.4).toBeCloseTo(0.012, 9);
    expect(brought!.springShare).toBeCloseTo(0.4, 9);
    expect((brought!.meanBefore! - brought!.meanAfter!) / 25.4).toBeCloseTo(0.002, 9);
    expect(brought!.across).toEqual([]);
  });

  test('three of them in the log stand for themselves, in the figures and in words', () => {
    const entry = (came: number, drew: number) =>
      squeezeEntry(
        {
          moved: 0.02 * 25.4,
          came: came * 25.4,
          meanBefore: 2 * 25.4,
          meanAfter: (2 - drew) * 25.4,
          across: [],
        },
        'in',
        '2031-05-04',
        'Heel bore',
      );
    const entries = [entry(0.012, 0.002), entry(0.013, 0.002), entry(0.014, 0.002)];
    const shop = entries.reduce<Shop | null>(withSqueeze, null)!;
    const squeezing = setDecision(one, 'f1', { way: 'squeeze' });
    const { report, text } = told(squeezing, 0, shop);
    expect(report.squeezeLog.squeezes.map(({ springShare }) => springShare)).toEqual(
      [0.4, 0.35, 0.3].map((share) => expect.closeTo(share, 9)),
    );
    // All three drew in by one thousandth of their size: so does this bore.
    const target = 2.0041 * 25.4;
    expect(report.squeeze!.upset).toMatchObject({ squeezes: 3 });
    expect(report.squeeze!.upset.least / target).toBeCloseTo(0.001, 6);
    expect(report.squeeze!.upset.most / target).toBeCloseTo(0.001, 6);
    // Shares 0.4, 0.35, 0.3: mean 0.35, standard deviation 0.05, of a next one 0.05 sqrt(4 / 3).
    const { springback, move } = report.squeeze!.setUp!;
    const most = 0.35 + 0.1 * Math.sqrt(4 / 3);
    expect(springback!.squeezes).toBe(3);
    expect(springback!.most / move!.most!).toBeCloseTo(most, 9);
    expect(text).toContain('3 squeezes stand in this shop’s log: all of them tell');
    expect(text).toContain('from 3 squeezes of this shop');
    expect(text).toContain(
      'Logged 2031-05-04, Heel bore: jaws moved 0.0200, 0.0120 stayed, in across',
    );
    expect(isLogged(shop, { ...entries[0]!, when: 'later' })).toBe(true);
    expect(withoutSqueeze(shop, 1).squeezes).toEqual([entries[0], entries[2]]);
    expect(isLogged(withoutSqueeze(shop, 0), entries[0]!)).toBe(false);
  });
});

describe('the steel of a weld', () => {
  const by = (known: 'parts' | 'nothing' | 'equivalent') =>
    setMending(setDecision(one, 'f1', { way: 'weld' }), 'f1', 'weld', 'known', known);
  const parts = { C: '0.18', Mn: '1.2', Cr: '0,2', Mo: '0.1', Ni: '0.15', Cu: '0.2' };

  test('told by its parts has the published carbon equivalent, and the preheat of its band', () => {
    const { report, text } = told(setMending(by('parts'), 'f1', 'weld', 'steel', parts), 0);
    // International Institute of Welding, as in AWS D1.1 and EN 1011: this steel comes to 0.4633.
    expect(report.weld.carbonEquivalent).toBeCloseTo(0.4633, 4);
    expect(report.weld.preheat).toEqual({ least: 150, most: 200 });
    expect(text).toContain('C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15');
    const without = { ...parts, C: '' };
    const open = told(setMending(by('parts'), 'f1', 'weld', 'steel', without), 0);
    expect(open.report.weld.preheat).toBeNull();
  });

  test('not known takes the careful side, and says who decides', () => {
    const { report, text } = told(by('nothing'), 0);
    expect(report.weld).toMatchObject({ carbonEquivalent: null, preheat: null });
    expect(text).toContain('What the steel is made of is not known');
    expect(text).toContain('written procedure of a welder');
  });
});

describe('places lower than finished size and allowance', () => {
  test('make up the whole deposit between them, each with its grams and layers', () => {
    const allowance = setWayFigure(one, 'f1', 'weldAllowance', inch('0.010'));
    const { report, found } = told(allowance, 0);
    const { low, volume, mass, lowShare } = report.weld;
    expect(lowShare).toBe(1);
    const sum = low.reduce((total, place) => total + place.volume, 0);
    // A place of less than 0.0025 mm is on size and in none of them; all of this seat is lower.
    expect(Math.abs(sum / volume - 1)).toBeLessThan(1e-9);
    expect(low.reduce((total, place) => total + place.mass, 0)).toBeCloseTo(mass, 9);
    for (const { peak, layers } of low) expect(layers).toBe(Math.ceil(peak / 2.54));
    expect(Math.max(...low.map(({ peak }) => peak))).toBeCloseTo(
      Math.max(...found.weld.short.filter((t) => t > 0)),
      9,
    );
  });

  test('a bore that stands high enough has none', () => {
    // All of it is cut: any centre costs the same metal, so the one with the shallowest cut is asked for.
    const small = setDecision(one, 'f1', { target: inch('2.1'), centre: { rule: 'least-cut' } });
    expect(
      told(setWayFigure(small, 'f1', 'weldAllowance', inch('0.001')), 0).report.weld,
    ).toMatchObject({ low: [], lowShare: 0, mass: 0 });
  });
});
