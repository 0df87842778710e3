/** Heat, cold and the clock in the report: equal in text and JSON, gated, and one sentence for what cannot be. */
import { describe, expect, test } from 'vitest';
import { fitFinder } from '../../src/cli/fitReport.ts';
import { fitParts } from '../../src/cli/fitText.ts';
import { clockOf } from '../../src/evaluate/fit/clock.ts';
import { heatOf } from '../../src/evaluate/fit/heat.ts';
import { pressPart } from '../../src/evaluate/fit/press.ts';
import { fitMatter, seatedOf } from '../../src/evaluate/fit/seated.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { clockWords } from '../../src/figures/clockWords.ts';
import { slipWords } from '../../src/figures/slipWords.ts';
import { setBossProbe, setHeat, setSafety } from '../../src/job/edits.ts';
import type { HeatFigures } from '../../src/job/heatSchema.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';

const memory: Memory = new Map();

function reported(of: Job) {
  const bore = evaluate(of, memory).bores[0]!;
  const survey = bore.surveys[0]!;
  const parts = fitParts(of, bore, survey, null);
  return {
    slip: fitFinder(of, null)(bore, survey)!.bushings[0]!.slip,
    text: parts.flatMap(({ lines }) => lines).join('\n'),
  };
}

const whole = slipwayWinch();
const heel = whole.features[0]!;
const with1 = (change: Partial<Feature>): Job => ({
  ...whole,
  features: [{ ...heel, surveys: heel.surveys.slice(0, 1), ...change }],
});
const job = with1({});
const warm = (text: string, unit: 'C' | 'F' = 'C') => ({ text, unit });
const heated = <K extends keyof HeatFigures>(key: K, value: HeatFigures[K], of = job) =>
  setHeat(of, 'f1', key, value);

describe('a bushing that is to slip in', () => {
  const { slip, text } = reported(job);

  test('wins press fit and room by the cold and heat of each row', () => {
    // 0.001 of 2.0061 in, which is more than 0.001 in.
    expect(slip.room).toBeCloseTo(0.0020061 * 25.4, 4);
    const row = (which: string) => slip.rows.find(({ cold }) => cold === which)!;
    const share = (slip.press! + slip.room) / (2.0061 * 25.4);
    // From the everyday figure of plain steel, 11.5e-6, up to the most of C40E at 200 °C, 13.0e-6 (EN 10132-3).
    const { boss } = row('as-it-is');
    expect(boss!).toBeLessThan(20 + share / 11.5e-6);
    expect(boss!).toBeGreaterThan(20 + share / 13e-6);
    // Mean coefficients are published down to 80 K (0.187 % over 213.15 K) and to −100 °C (10.8e-6): it lies between.
    const { entry, smaller } = row('nitrogen');
    const mean = smaller / (20 - entry) / (2.0061 * 25.4);
    expect(mean).toBeGreaterThan(0.00187 / 213.15);
    expect(mean).toBeLessThan(10.8e-6);
    expect(slip.rows.map(({ cold }) => cold)).toEqual([
      'as-it-is',
      'freezer',
      'dry-ice',
      'nitrogen',
    ]);
  });

  test('is told alike in text and JSON', () => {
    const { way } = slip;
    for (const line of [...slip.words, ...way!.words, ...way!.clock!.words]) {
      expect(text).toContain(line);
    }
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('has a soonest, a usual and a latest time, in that order, and a curve down to nought', () => {
    const { seconds, soonest, latest, curve } = slip.way!.clock!;
    expect(soonest).toBeLessThan(seconds!);
    if (latest !== null) expect(latest).toBeGreaterThan(seconds!);
    expect(curve[0]!.room).toBeCloseTo(slip.way!.chosen.least, 9);
    expect(curve.at(-1)!.room).toBeLessThan(0);
  });

  test('tells no heat before its questions are answered', () => {
    const shut = reported(setSafety(job, 'metal', undefined));
    expect(shut.slip.way).toBeNull();
    for (const { boss, off, verdict } of shut.slip.rows) {
      expect(boss).toBeNull();
      expect(off).toBeNull();
      expect(verdict === null || verdict === 'cold').toBe(true);
    }
    expect(shut.text).toContain('Still to be answered: What metal is it?');
    expect(shut.text).not.toMatch(/heated to|flame/);
  });

  test('goes by the mean of the probes, and loses room across two warmer sides', () => {
    let probed = job;
    for (const [i, [clock, at]] of [
      ['12', '160'],
      ['3', '140'],
      ['6', '156'],
      ['9', '140'],
    ].entries()) {
      probed = setBossProbe(probed, 'f1', i, { clock: clock!, at: warm(at!) });
    }
    const { chosen, words } = reported(probed).slip.way!;
    expect(chosen.off).toBeCloseTo(149, 3);
    expect(chosen.from).toBe('probes');
    // 9 °C about the mean over two inches, with 11.5e-6 and a little more at that heat.
    expect(chosen.oval.most).toBeGreaterThan(9 * 50.9 * 11.5e-6);
    expect(chosen.oval.most).toBeLessThan(1.2 * 9 * 50.9 * 11.5e-6);
    expect(chosen.least).toBeCloseTo(chosen.room - chosen.oval.most, 12);
    expect(words.join(' ')).toContain('12–6');
  });
});

describe('what cannot be', () => {
  test.each<[string, Job, RegExp]>([
    ['a boss that melts', heated('boss', warm('1500')), /would melt/],
    ['a boss past every fit', heated('boss', warm('700')), /past any fit/],
    ['colder than anything', heated('boss', warm('-300')), /Nothing gets colder/],
    ['a word for a temperature', heated('shop', warm('warm')), /is no number/],
    [
      'a bushing warmer than the boss',
      heated('boss', warm('60'), heated('cold', 'own', heated('bushing', warm('90')))),
      /warmer than the boss/,
    ],
    ['a word for seconds', heated('carry', 'soon'), /is no number of seconds/],
  ])('%s is said in one sentence', (_, of, says) => {
    const { slip, text } = reported(of);
    expect(slip.words.filter((one) => says.test(one))).toHaveLength(1);
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('over the limit is said at once', () => {
    const { words } = reported(heated('boss', warm('400'))).slip.way!;
    expect(words.join(' ')).toContain('Too hot');
  });

  test('without a size, the rest is told, and what is missing in one sentence', () => {
    const bore = evaluate(job, memory).bores[0]!;
    const matter = fitMatter(job, bore, bore.surveys[0]!, null)!;
    const whole = seatedOf(matter)[0]!;
    const none = Number.NaN;
    for (const [seated, says] of [
      [{ ...whole, boss: { ...whole.boss, outside: none } }, 'Give the boss’s outside diameter'],
      [{ ...whole, inside: none }, 'Give the bushing’s inside diameter'],
      [{ ...whole, inside: whole.outside }, 'as large inside as outside'],
      [{ ...whole, boss: { ...whole.boss, outside: 50 } }, 'no larger outside than its bore'],
    ] as const) {
      const heat = heatOf(matter, seated);
      const clock = clockOf(heat, seated);
      expect(clock).toBeNull();
      expect(clockWords(clock, heat, seated, 'in').missing.join(' ')).toContain(says);
      const slip = slipWords({ heat, press: pressPart(matter, seated) }, 'in');
      expect(slip.rows).toHaveLength(4);
      expect(JSON.stringify(slip)).not.toMatch(/NaN|undefined|Infinity/);
    }
    const loose = { ...whole, wall: { ...whole.wall, press: whole.wall.press.map(() => -0.1) } };
    const heat = heatOf(matter, loose);
    expect(slipWords({ heat, press: pressPart(matter, loose) }, 'in').wrong).toEqual([
      expect.stringContaining('nowhere larger than the bore'),
    ]);
  });
});
