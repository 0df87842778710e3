/**
 * Readings brought to 20 °C. Sources: ISO 1:2022 (reference temperature 20 °C); expansions from Callister and Rethwisch,
 * Materials Science and Engineering, appendix B, and plain steel 11.5e-6 per °C (6.4e-6 per °F), as shops reckon it.
 */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { temperatureRemarks } from '../../src/figures/temperatureWords.ts';
import { setBossMaterial, setReading, setTemperature } from '../../src/job/edits.ts';
import { surveyFacts } from '../../src/job/facts.ts';
import type { Job, Survey } from '../../src/job/schema.ts';
import { readingTable } from '../../src/job/table.ts';
import {
  metalOf,
  readTemperature,
  temperatureFactor,
  temperatureFacts,
} from '../../src/job/temperature.ts';
import { clocks, depthsWithin, jobOf, lobe, measure, round, sum } from '../fixtures/bores.ts';

const LENGTH = 50;
const NOMINAL = 63.5; // 2.5 in
const BORE = sum(round(NOMINAL / 2), lobe(2, 0.02, 1));

const cold = jobOf({
  taken: measure(BORE, 'two-point', clocks(6), depthsWithin(3, LENGTH)),
  length: LENGTH,
  nominal: NOMINAL,
  sd: 0.002,
});
const warm = (temperature: Survey['temperature'], job: Job = cold) =>
  setTemperature(job, 'b', job.features[0]!.surveys[0]!.id, temperature);
const bore = (job: Job) => job.features[0]!;
const survey = (job: Job) => bore(job).surveys[0]!;
const facts = (job: Job) => temperatureFacts(bore(job), survey(job))!;
const factor = (job: Job) => temperatureFactor(bore(job), survey(job));

describe('what a typed temperature means', () => {
  it.each([
    ['27', 'C', 27],
    ['80', 'F', 26.6667],
    ['80F', 'C', 26.6667],
    ['27 °C', 'F', 27],
    ['-10', 'C', -10],
    ['−10', 'C', -10],
    ['26,5', 'C', 26.5],
  ] as const)('%s in %s', (text, unit, celsius) => {
    const read = readTemperature(text, unit);
    expect(read.ok && read.celsius).toBeCloseTo(celsius, 3);
  });

  it('no number, and what nobody measures at, are refused with the reason', () => {
    expect(readTemperature('warm', 'C')).toMatchObject({
      ok: false,
      why: '“warm” is no number such as 27 or 80F',
    });
    expect(readTemperature('400', 'F')).toMatchObject({ ok: false });
    expect(readTemperature('', 'F')).toEqual({ ok: false, why: '' });
  });
});

describe('readings at 20 °C', () => {
  it('2.5 in of steel, 80 °F warmer than its gauge at 68 °F, read 0.0013 in large', () => {
    // 2.5 in x 6.4e-6 per °F x 80 °F = 0.00128 in: worked by hand; common practice of the trade.
    const { correction } = facts(warm({ part: '148', gauge: '68', unit: 'F' }));
    expect(correction / 25.4).toBeCloseTo(-0.00128, 5);
  });

  it('100 mm of steel, 10 °C warm, are 0.0115 mm large', () => {
    // 100 x 11.5e-6 x 10 = 0.0115 mm, by hand; at 1 + 1.15e-4 the quotient differs by 1e-6 mm.
    const job = warm({ part: '30', gauge: '20', unit: 'C' });
    expect(100 * (factor(job) - 1)).toBeCloseTo(-0.0115, 5);
  });

  it('gauge and part of one metal at one temperature need no correction', () => {
    expect(factor(warm({ part: '35', gauge: '35', unit: 'C' }))).toBe(1);
  });

  it('a warm gauge reads small: what it reads grows', () => {
    // 63.5 x 11.5e-6 x 10 = 0.0073 mm, by hand.
    expect(facts(warm({ part: '20', gauge: '30', unit: 'C' })).correction).toBeCloseTo(0.0073, 4);
  });

  it('an aluminium part at the gauge’s own 30 °C still reads large', () => {
    // 63.5 x (22.6 - 11.5)e-6 x 10 = 0.00705 mm, by hand.
    const job = setBossMaterial(
      warm({ part: '30', gauge: '30', unit: 'C' }),
      'b',
      'Aluminium housing',
    );
    expect(facts(job).correction).toBeCloseTo(-0.00705, 5);
  });

  it.each([
    ['316 stainless', 'stainless steel'],
    ['cast steel', 'plain steel'],
    ['4140', 'alloy steel'],
    ['nodular iron', 'ductile iron'],
    ['Grey iron', 'cast iron'],
    ['SAE 660 bronze', 'bronze'],
  ])('%s is taken for %s', (text, name) => {
    expect(metalOf(text)).toMatchObject({ name, named: true });
  });

  it('what names no metal is taken for steel, and said to be', () => {
    expect(metalOf('as welded')).toMatchObject({ name: 'plain steel', named: false });
    const job = warm({ part: '27', gauge: '20', unit: 'C' });
    expect(temperatureRemarks(facts(job), 'in')[0]!.text).toContain('taken for plain steel');
  });

  it('the reading facts and the table hold the corrected value, and the text stays as typed', () => {
    const job = warm({ part: '40', gauge: '20', unit: 'C' });
    const plain = surveyFacts(cold, bore(cold), survey(cold)).readings;
    surveyFacts(job, bore(job), survey(job)).readings.forEach(({ value, sd }, i) => {
      expect(value).toBeCloseTo(plain[i]!.value / (1 + 11.5e-6 * 20), 12);
      expect(sd).toBe(plain[i]!.sd);
    });
    const cell = readingTable(bore(job), survey(job), job).rows[0]!.cells[0]!.readings[0]!;
    expect(cell.mm).toBeCloseTo(plain[0]!.value / (1 + 11.5e-6 * 20), 12);
    expect(cell.text).toBe(survey(cold).readings[0]!.value.text);
  });

  it('the whole evaluation of a bore read warm is that of the bore read cold', () => {
    const temperature = { part: '45', gauge: '25', unit: 'C' } as const;
    const by = factor(warm(temperature));
    const typedWarm = survey(cold).readings.reduce(
      (job, { id, value }) =>
        setReading(job, 'b', survey(job).id, id, {
          value: { text: (Number(value.text) / by).toFixed(10), unit: 'mm' },
        }),
      cold,
    );
    const [a, b] = [cold, warm(temperature, typedWarm)].map(
      (job) => evaluate(job).bores[0]!.surveys[0]!,
    );
    expect(a!.temperature).toBeNull();
    b!.sections.forEach((section, i) => {
      // Texts are kept to 1e-10 mm; smoothness is learned to 3e-4 of its likelihood.
      expect(section.meanDiameter).toBeCloseTo(a!.sections[i]!.meanDiameter, 6);
      expect(section.outOfRound).toBeCloseTo(a!.sections[i]!.outOfRound, 6);
    });
  });

  it('a slip in a warm set is still told, and spelt as it is read', () => {
    const temperature = { part: '45', gauge: '20', unit: 'C' } as const;
    const job = jobOf({
      taken: measure(BORE, 'two-point', clocks(6), depthsWithin(3, LENGTH)).map((one) => ({
        ...one,
        value: Number((one.value / factor(warm(temperature))).toFixed(3)),
      })),
      length: LENGTH,
      nominal: NOMINAL,
      sd: 0.002,
      decimals: 3,
    });
    const wrong = survey(job).readings[4]!;
    const meant = Number(wrong.value.text);
    const slipped = setReading(job, 'b', survey(job).id, wrong.id, {
      value: { text: (meant + 0.5).toFixed(3), unit: 'mm' },
    });
    const { checks } = evaluate(warm(temperature, slipped)).bores[0]!.surveys[0]!;
    expect(checks).toHaveLength(1);
    expect(checks[0]).toMatchObject({ row: 4, suggested: meant.toFixed(3) });
    expect(Math.abs(checks[0]!.expected - meant)).toBeLessThan(checks[0]!.give);
  });
});

describe('what is said of temperatures', () => {
  const said = (temperature: Survey['temperature']) =>
    temperatureRemarks(temperatureFacts(bore(cold), survey(warm(temperature))), 'in').map(
      ({ kind, text }) => [kind, text],
    );

  it('nothing where none is given', () => {
    expect(temperatureRemarks(temperatureFacts(bore(cold), survey(cold)), 'in')).toEqual([]);
  });

  it('one alone corrects nothing, and the other is asked for', () => {
    const job = warm({ part: '27', unit: 'C' });
    expect(factor(job)).toBe(1);
    expect(said({ part: '27', unit: 'C' })).toEqual([
      ['missing', expect.stringContaining('the gauge’s is missing')],
    ]);
  });

  it('the correction in words, with its give-or-take', () => {
    const [[kind, text]] = said({ part: '27', gauge: '20', unit: 'C' }) as [[string, string]];
    expect(kind).toBe('finding');
    // 63.5 x 11.5e-6 x 7 = 0.0051 mm = 0.0002 in.
    expect(text).toContain('0.0002 in across was taken off');
    expect(text).toContain('give or take');
    expect(text).toContain('bushing’s and the pin’s sizes are taken as read at 20 °C');
  });

  it('the give-or-take is of two thermometers and two expansions', () => {
    // Steel at 27 and 20 °C: 2 x 63.5 x hypot(11.5, 11.5, 0.5 x 7, 0) x 1e-6 = 0.00211 mm, by hand.
    const { giveOrTake } = facts(warm({ part: '27', gauge: '20', unit: 'C' }));
    expect(giveOrTake).toBeCloseTo(0.00211, 5);
  });

  it.each([
    ['24', '20', 'yes'],
    ['26', '20', 'warm'],
    ['36', '20', 'no'],
    ['51', '51', 'no'],
    ['-11', '-11', 'no'],
  ] as const)('part at %s and gauge at %s °C: %s', (part, gauge, trust) => {
    const job = warm({ part, gauge, unit: 'C' });
    expect(facts(job).trust).toBe(trust);
    const warnings = said({ part, gauge, unit: 'C' }).filter(([kind]) => kind === 'warning');
    expect(warnings).toHaveLength(trust === 'yes' ? 0 : 1);
  });
});
