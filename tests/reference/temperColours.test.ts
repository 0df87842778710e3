/** The drawn strip of oxide colours, and what hardened steel may have, against the tables that they are drawn from. */
import { describe, expect, it } from 'vitest';
import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { evaluate } from '../../src/evaluate.ts';
import { colourSaid, TEMPER_COLOURS } from '../../src/figures/temperColours.ts';
import { temperStrip } from '../../src/figures/temperStrip.ts';
import type { Job } from '../../src/job/schema.ts';
import { clocks, depthsWithin, jobOf, measure, round } from '../fixtures/bores.ts';

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
const mm = (text: string) => ({ text, unit: 'mm' as const });

type Family =
  | 'pale straw'
  | 'straw'
  | 'dark straw'
  | 'brown'
  | 'purple'
  | 'violet'
  | 'blue'
  | 'grey-blue';
/** Colour as printed, its degrees, and the name that the strip has for it. */
type Row = readonly [string, number, Family];

/** Table of °F as handbooks print it (to 530 found in a stored table, above that from memory). */
const HANDBOOK: readonly Row[] = [
  ['very pale yellow', 430, 'pale straw'],
  ['light yellow', 440, 'pale straw'],
  ['pale straw', 450, 'pale straw'],
  ['straw', 460, 'straw'],
  ['deep straw', 470, 'dark straw'],
  ['dark yellow', 480, 'dark straw'],
  ['yellow-brown', 490, 'brown'],
  ['brown-yellow', 500, 'brown'],
  ['spotted red-brown', 510, 'brown'],
  ['brown-purple', 520, 'purple'],
  ['light purple', 530, 'purple'],
  ['full purple', 540, 'purple'],
  ['dark purple', 550, 'violet'],
  ['full blue', 560, 'blue'],
  ['dark blue', 570, 'blue'],
  ['light blue', 640, 'grey-blue'],
];
/** Averages of five old sources, °F. */
const AVERAGES: readonly Row[] = [
  ['faint yellow', 430, 'pale straw'],
  ['light straw', 458, 'straw'],
  ['dark straw', 478, 'dark straw'],
  ['purple, reddish', 523, 'purple'],
  ['purple, bluish', 551, 'violet'],
  ['blue', 572, 'blue'],
  ['grey blue', 603, 'grey-blue'],
  ['greenish blue', 627, 'grey-blue'],
];
/** A published chart in °C: clean bright carbon steel held for minutes. */
const CHART: readonly Row[] = [
  ['light yellow', 210, 'pale straw'],
  ['straw', 220, 'straw'],
  ['yellow', 230, 'straw'],
  ['dark yellow', 240, 'dark straw'],
  ['yellow brown', 250, 'brown'],
  ['red brown', 260, 'brown'],
  ['purple', 270, 'purple'],
  ['violet', 280, 'violet'],
  ['dark blue', 290, 'blue'],
  ['blue', 300, 'blue'],
  ['light blue', 310, 'grey-blue'],
  ['grey blue', 320, 'grey-blue'],
  ['grey green', 330, 'grey-blue'],
];
/** What shops go by, °F: the far ends of what each is told by. */
const SHOP: readonly Row[] = [
  ['pale straw', 430, 'pale straw'],
  ['brown', 500, 'brown'],
  ['purple', 530, 'purple'],
  ['blue', 570, 'blue'],
  ['blue', 590, 'blue'],
];

const inCelsius = (rows: readonly Row[]) =>
  rows.map(([name, degrees, family]): Row => [name, celsius(degrees), family]);
const ALL: readonly Row[] = [
  ...inCelsius(HANDBOOK),
  ...inCelsius(AVERAGES),
  ...CHART,
  ...inCelsius(SHOP),
];

describe('the strip of oxide colours', () => {
  it.each(TEMPER_COLOURS)('$name spreads as far as the tables differ, and no farther', (colour) => {
    const told = ALL.filter(([, , family]) => family === colour.name).map(([, at]) => at);
    expect(told.length).toBeGreaterThan(1);
    expect(colour.least).toBe(Math.round(Math.min(...told)));
    expect(colour.most).toBe(Math.round(Math.max(...told)));
  });

  it('names at each printed temperature the colour that is printed there', () => {
    expect(new Set(TEMPER_COLOURS.map(({ name }) => name))).toEqual(
      new Set(ALL.map(([, , family]) => family)),
    );
    for (const [, at, family] of ALL) {
      expect(colourSaid(Math.round(at)).split(' or ')).toContain(family);
    }
  });

  it('glows in the dark from 400 °C on (a steel maker’s table; Howe: 470, and people differ by 70)', () => {
    expect(colourSaid(399)).not.toContain('glow');
    for (const told of [400, 470 - 70, 474, 525, 581]) expect(colourSaid(told)).toContain('glow');
  });
});

describe('a bushing of hardened bearing steel', () => {
  const heated = (material: string): Job => {
    const taken = measure(round(54.95), 'radius', clocks(12, 2 * Math.PI), depthsWithin(3, 80));
    const bushing = { id: 'b', name: 'New', seat: { face: 'A' as const }, material };
    return jobOf({
      taken,
      length: 80,
      sd: 0.0002,
      feature: {
        length: mm('80'),
        boss: { outside: mm('200') },
        bushings: [{ ...bushing, outside: [mm('110')], inside: mm('90') }],
        decisions: { fit: { wall: 'measured' } },
      },
    });
  };
  const heatOf = (job: Job) => {
    const bore = evaluate(job).bores[0]!;
    return fitOfSurvey(job, bore, bore.surveys[0]!, null)!.bushings[0]!.heat;
  };

  /** 52100: tempered at 150 to 230 °C, 58 HRC and more only up to 260 (ASM International). */
  const TEMPERED = { least: 150, most: 230 };

  it('may have no more than the least that it may have been tempered at, where no colour shows yet', () => {
    const hard = heatOf(heated('hardened bearing steel'));
    expect(hard.limits.bushing).toBe(TEMPERED.least);
    expect(colourSaid(TEMPERED.least)).toBe('no colour yet');
    // Straw on it means that it may be softer: the first colours lie within what it is tempered at.
    expect(TEMPER_COLOURS[0]!.least).toBeGreaterThan(TEMPERED.least);
    expect(TEMPER_COLOURS[0]!.least).toBeLessThan(TEMPERED.most);
    const mark = temperStrip(hard, 'mm')!.marks.find(({ name }) => name === 'most for the bushing');
    expect(mark).toMatchObject({ at: TEMPERED.least, kind: 'limit' });
  });

  it('has a mark of its own on the strip, which one of plain steel has not', () => {
    const plain = temperStrip(heatOf(heated('plain steel')), 'mm')!;
    expect(plain.marks.map(({ name }) => name)).toEqual(['boss as heated', 'most for this boss']);
  });
});
