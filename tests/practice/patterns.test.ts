/**
 * The wear patterns of the gallery: what each gauge reads in them follows closed forms, the blind gauges are blind, and
 * what the readings show is named as the catalogue names it.
 *
 * The response of two and of three contacts to lobes is that of ISO 4292:1985 (two-point: 1 + cos 180 n; three legs on
 * the mean diameter: lobes 3, 6, 9 alone); the shapes and their usual sizes are common practice of the trade.
 */
import { describe, expect, it } from 'vitest';
import type { PatternName } from '../../src/bore/patternTypes.ts';
import { GALLERY } from '../../src/figures/gallery.ts';
import { entryOf } from '../../src/figures/galleryMatch.ts';
import { gaugeTable } from '../../src/figures/gaugeTable.ts';
import { PATTERN_FACTS } from '../../src/figures/patternTable.ts';
import { madeBore } from '../../src/practice/madeBore.ts';
import { patternReadings, type Shown, toBeSeen } from '../../src/practice/patternReadings.ts';
import { MADE_PATTERNS } from '../../src/practice/patterns.ts';
import { patternsOf, type Take } from '../fixtures/patterned.ts';

const RADIUS = 25;
const LENGTH = 60;
const SIZE = 0.2;
const scale = { radius: RADIUS, length: LENGTH, size: SIZE };
/** Formulas of lobes are first order: what they leave out is of this size, mm. */
const SECOND_ORDER = (SIZE * SIZE) / RADIUS;

const pattern = (name: string) => MADE_PATTERNS.find((one) => one.name === name)!;
const rows = (name: string, instrument: Shown) =>
  patternReadings(pattern(name), scale).find((one) => one.instrument === instrument)!;
const tells = (name: string, instrument: Shown) => {
  const made = pattern(name);
  const depths = made.depths.map((share) => share * LENGTH);
  const there = toBeSeen(made.truth(scale), RADIUS, depths);
  return gaugeTable(rows(name, instrument), there, 'mm').tells;
};

describe('the catalogue', () => {
  it('has its eighteen entries, each made up and each explained, in one order', () => {
    expect(GALLERY).toHaveLength(18);
    expect(MADE_PATTERNS.map(({ name }) => name)).toEqual(GALLERY.map(({ name }) => name));
    for (const { causes, remedy, alike } of GALLERY) {
      expect(causes.length).toBeGreaterThan(0);
      expect(remedy).toMatch(/^[A-Z].*\.$/);
      expect(alike).toMatch(/^[A-Z].*\.$/);
    }
  });

  it('holds an entry for every name that readings are given', () => {
    const entries = GALLERY.map(({ name }) => name);
    for (const name of Object.keys(PATTERN_FACTS) as PatternName[]) {
      expect(entries).toContain(entryOf(name));
    }
  });

  it('departs from new by the size that is asked, and no further', () => {
    for (const made of MADE_PATTERNS.filter(({ usual }) => usual > 0)) {
      const { survey } = madeBore(made.truth(scale), RADIUS, LENGTH);
      const most = Math.max(...survey.removal!.deviation.map(Math.abs));
      expect(most, made.name).toBeLessThan(SIZE + 1e-9);
      // The grid may step over the very deepest point of a narrow hollow.
      expect(most, made.name).toBeGreaterThan(0.8 * SIZE);
    }
  });
});

describe('what the gauges read', () => {
  it('pure oval: across size (1 + cos 2 theta), and three legs the mean of it at every turn', () => {
    const { thetas, values } = rows('oval', 'two-point');
    for (const row of values) {
      row.forEach((mm, i) => {
        expect(mm).toBeCloseTo(SIZE * (1 + Math.cos(2 * thetas[i]!)), 12);
      });
    }
    for (const mm of rows('oval', 'three-leg').values.flat()) {
      expect(Math.abs(mm - SIZE)).toBeLessThan(4 * SECOND_ORDER);
    }
    expect(tells('oval', 'three-leg')).toContain('cannot see that it is out of round');
  });

  it('egg: across the same as an oval half as deep on both sides, to the clearance of the worn-in part', () => {
    const egg = rows('egg', 'two-point').values[0]!;
    const half = patternReadings(pattern('oval'), { ...scale, size: SIZE / 2 });
    const oval = half.find(({ instrument }) => instrument === 'two-point')!.values[0]!;
    expect(egg[0]).toBeCloseTo(SIZE, 12);
    expect(oval[0]).toBeCloseTo(SIZE, 12);
    expect(egg[3]).toBeCloseTo(0, 12);
    expect(oval[3]).toBeCloseTo(0, 12);
    // A crescent is w |cos|, the oval w cos² across; nowhere do these part by more than a quarter of w.
    egg.forEach((mm, i) => {
      expect(Math.abs(mm - oval[i]!)).toBeLessThan(SIZE / 4 + RADIUS / 1000);
    });
    expect(tells('egg', 'two-point')).toContain('Which side it is, it cannot tell');
    expect(tells('egg', 'wall')).not.toContain('cannot');
    const wall = rows('egg', 'wall');
    const at = (hour: number) =>
      wall.values[0]![wall.thetas.findIndex((t) => Math.abs(t - (hour * Math.PI) / 6) < 1e-9)]!;
    expect(at(6)).toBeCloseTo(-SIZE, 12);
    expect(at(0)).toBeCloseTo(0, 12);
  });

  it('oval at half past one: 12–6 and 3–9 read the same, 1–7 and 2–8 high, 4–10 and 5–11 low', () => {
    const [twelve, one, two, three, four, five] = rows('off-the-clock', 'two-point').values[0]!;
    expect(twelve).toBeCloseTo(three!, 12);
    expect(one).toBeCloseTo(SIZE * (1 + Math.cos(Math.PI / 6)), 12);
    expect(two).toBeCloseTo(one!, 12);
    expect(four).toBeCloseTo(SIZE * (1 - Math.cos(Math.PI / 6)), 12);
    expect(five).toBeCloseTo(four!, 12);
  });

  it('three lobes: across the same everywhere; three legs twice the lobe, up and down', () => {
    for (const mm of rows('three-lobed', 'two-point').values.flat()) expect(mm).toBeCloseTo(0, 12);
    const [up, level, down] = rows('three-lobed', 'three-leg').values[0]!;
    expect(up).toBeCloseTo(2 * SIZE, 9);
    expect(Math.abs(level!)).toBeLessThan(4 * SECOND_ORDER);
    expect(down).toBeCloseTo(-2 * SIZE, 9);
    expect(tells('three-lobed', 'two-point')).toContain('All the same round the clock');
    expect(tells('three-lobed', 'sweep')).toContain('It shows round the clock');
  });

  it('taper: from rim to bottom in even steps, from all of it to two ninths', () => {
    const at = rows('taper', 'two-point');
    at.values.forEach((row, i) => {
      const share = 1 - (7 / 9) * (at.depths[i]! / LENGTH);
      for (const mm of row) expect(mm).toBeCloseTo(2 * SIZE * share, 12);
    });
  });

  it('crossed: an oval at both ends across; the wall is thin on opposite sides', () => {
    const across = rows('crossed', 'two-point').values;
    expect(across[0]![0]).toBeCloseTo(across[2]![0]!, 9);
    expect(Math.max(...across[1]!.map(Math.abs))).toBeLessThan(1e-9);
    const wall = rows('crossed', 'wall').values;
    expect(wall[0]![0]).toBeLessThan(-0.8 * SIZE);
    expect(wall[0]![4]).toBeCloseTo(0, 9);
    expect(wall[2]![4]).toBeLessThan(-0.8 * SIZE);
    expect(wall[2]![0]).toBeCloseTo(0, 9);
  });

  it('round but big: a needle stands still, and diameters show it against new alone', () => {
    for (const mm of rows('round-but-big', 'sweep').values.flat()) expect(mm).toBeCloseTo(0, 12);
    for (const mm of rows('round-but-big', 'two-point').values.flat()) {
      expect(mm).toBeCloseTo(2 * SIZE, 12);
    }
    expect(tells('round-but-big', 'sweep')).toContain('stands still');
  });

  it('two ears out of line: no gauge sees anything in either', () => {
    for (const { instrument } of patternReadings(pattern('two-ear-skew'), scale)) {
      expect(tells('two-ear-skew', instrument)).toContain('All as new');
    }
  });
});

describe('read and worked out, a made-up pattern bears its name', () => {
  const PAIRS: Take = { instrument: 'two-point', clocks: 6, noise: 0.004 };
  const WALL: Take = { instrument: 'wall', clocks: 8, noise: 0.01 };
  const SWEEP: Take = { instrument: 'sweep', clocks: 12, noise: 0.004 };
  const NINE = [3, 8, 14, 22, 30, 38, 46, 52, 57];

  it.each([
    ['egg', [PAIRS, WALL], 'egg'],
    ['oval', [PAIRS, WALL], 'oval'],
    ['oval', [PAIRS], 'egg-or-oval'],
    ['off-the-clock', [PAIRS], 'off-the-clock'],
    ['taper', [PAIRS], 'taper'],
    ['bell-one', [PAIRS], 'bell-one'],
    ['bell-both', [PAIRS], 'bell-both'],
    ['barrel', [PAIRS], 'barrel'],
    ['waist', [PAIRS], 'waist'],
    ['crossed', [PAIRS, SWEEP], 'crossed'],
    ['three-lobed', [PAIRS, SWEEP], 'three-lobed'],
    ['dent', [PAIRS], 'dent'],
    ['step', [PAIRS], 'step'],
    ['round-but-big', [PAIRS], 'round-but-big'],
  ] as const)('%s', (name, takes, expected) => {
    const truth = pattern(name).truth({ ...scale, size: pattern(name).usual });
    const found = patternsOf(truth, LENGTH, NINE, takes, 7, {
      radius: RADIUS,
      nominal: 2 * RADIUS,
    });
    expect(found.named.map((one) => one.name)).toContain(expected);
  });
});
