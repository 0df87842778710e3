/**
 * The wear surface against bores of known shape, none of them made by the surface's own model; and what must stay
 * the same, whatever the bore. Everything goes through `evaluate(job)`, readings as typed.
 */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { WearSurface } from '../../src/bore/types.ts';
import { evaluate, type Memory, type SurveyEvaluation } from '../../src/evaluate.ts';
import { Job } from '../../src/job/schema.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import {
  bell,
  clocks,
  crescent,
  depthsWithin,
  evenPart,
  fading,
  fromB,
  gouge,
  type JobParts,
  jobOf,
  lobe,
  MOUTHS,
  measure,
  round,
  type Shape,
  sum,
  type Taken,
} from '../fixtures/bores.ts';

const LENGTH = 50;
const RADIUS = 32.5;
/** One standard deviation of a diameter, mm. */
const NOISE = 0.005;
/** An oval that is 0.30 mm out of round across: four times the lobe's amplitude. */
const OVAL = 0.075;
const PAIRS = clocks(6);
const EVEN_DEPTHS = depthsWithin(5, LENGTH);
/** As someone reads who knows that mouths open: closer near the rim. */
const MOUTH_DEPTHS = [0.05, 0.15, 0.3, 0.6, 0.95].map((share) => share * LENGTH);

const survey = (parts: JobParts, memory?: Memory, pace?: 'quick' | 'settled'): SurveyEvaluation =>
  evaluate(jobOf(parts), memory, pace).bores[0]!.surveys[0]!;
const surfaceOf = (parts: JobParts, memory?: Memory, pace?: 'quick' | 'settled'): WearSurface => {
  const found = survey(parts, memory, pace).surface;
  if (found === null) throw new Error('no surface');
  return found;
};

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}
const greatestApart = (a: Float64Array, b: Float64Array) =>
  a.reduce((most, value, k) => Math.max(most, Math.abs(value - b[k]!)), 0);

/** Half the surface's diameter at every place: what diameters show of it. */
function evenMean(s: WearSurface): Float64Array {
  const n = s.grid.theta.length;
  return s.mean.map((value, k) => (value + s.mean[k - (k % n) + ((k + n / 2) % n)]!) / 2);
}

interface Judged {
  /** Share of the grid where the truth lies within 2 standard deviations. */
  readonly within: number;
  /** Root mean square of the error, per side, mm. */
  readonly rms: number;
}

function judge(s: WearSurface, found: Float64Array, sd: Float64Array, truth: Shape): Judged {
  const n = s.grid.theta.length;
  let within = 0;
  let squares = 0;
  for (let k = 0; k < found.length; k++) {
    const error = found[k]! - truth(s.grid.theta[k % n]!, s.grid.z[Math.floor(k / n)]!);
    if (Math.abs(error) <= 2 * sd[k]!) within++;
    squares += error * error;
  }
  return { within: within / found.length, rms: Math.sqrt(squares / found.length) };
}

const judgeEven = (s: WearSurface, truth: Shape) =>
  judge(s, evenMean(s), s.sdSeen, evenPart(truth));

/**
 * Ovals 0.30 mm out of round at the rim, turned anyhow, of the whole depth, fading, or worn by a part 0.2 mm
 * smaller (a crescent whose diameters vary by about as much), with a mouth open 0.05 to 0.15 mm per side at the face
 * that is read more closely, if either is.
 */
function wornBore(i: number, random: Random, reach: readonly [number, number]): Shape {
  const at = 2 * Math.PI * random.uniform();
  const oval = [
    lobe(2, OVAL, at),
    lobe(2, OVAL, at, fading(LENGTH)),
    crescent(0.35, 0.1, at, fading(LENGTH)),
  ][Math.floor(i / MOUTHS.length) % 3]!;
  const opening = 0.05 + 0.1 * random.uniform();
  const deep = reach[0] + (reach[1] - reach[0]) * random.uniform();
  const mouth = bell(MOUTHS[i % MOUTHS.length]!, opening, deep);
  return sum(round(RADIUS), oval, atB(i) ? fromB(mouth, LENGTH) : mouth);
}

const atB = (i: number) => i % 8 > 3;
const depthsOf = (i: number, depths: readonly number[]) =>
  atB(i) ? depths.map((z) => LENGTH - z) : depths;

const twoPoint = (R: Shape, depths: readonly number[], random: Random, noise = NOISE) =>
  measure(R, 'two-point', PAIRS, depths, noise, random);

/** 24 bores of four mouths by three ovals, each judged by what diameters can show. */
function judgeBores(
  reach: readonly [number, number],
  depths: readonly number[],
  sd: number | undefined,
) {
  return Array.from({ length: 24 }, (_, i) => {
    const random = seededRandom(1000 + i);
    const truth = wornBore(i, random, reach);
    const taken = twoPoint(truth, depthsOf(i, depths), random);
    const s = surfaceOf({ taken, length: LENGTH, ...(sd === undefined ? {} : { sd }) });
    return { ...judgeEven(s, truth), sdSeen: mean([...s.sdSeen]) };
  });
}

function told(judged: readonly Judged[]): string {
  const held = judged.map((one) => one.within);
  return (
    `within 2 sdSeen: mean ${mean(held).toFixed(3)}, least ${Math.min(...held).toFixed(3)}, ` +
    `bores >= 0.9: ${held.filter((h) => h >= 0.9).length} of ${held.length}; ` +
    `rms median ${median(judged.map((one) => one.rms)).toFixed(5)} mm`
  );
}

describe('a survey of 6 clock pairs by 5 depths, oval 0.30 mm and bell-mouth, noise 0.005 mm', () => {
  it.each([1, 2, 3, 4, 5])('exponential mouth, seed %i: nine tenths within 2 sdSeen', (seed) => {
    const random = seededRandom(seed);
    const truth = sum(round(RADIUS), lobe(2, OVAL, Math.PI / 5), bell('exponential', 0.1, 18));
    const taken = twoPoint(truth, EVEN_DEPTHS, random);
    const { within, rms } = judgeEven(surfaceOf({ taken, length: LENGTH, sd: NOISE }), truth);
    expect(within).toBeGreaterThanOrEqual(0.9);
    expect(rms).toBeLessThan(0.004);
  });

  describe.each([
    { name: 'sd stated', sd: NOISE },
    // The typical figure of a telescoping gauge is twice the noise here: the readings must correct it.
    { name: 'the typical figure of the gauge', sd: undefined },
  ])('24 bores, seeds 1000 to 1023, $name', ({ sd }) => {
    // Mouths that reach past the second of the depths, a quarter to a half of the length.
    const judged = judgeBores([LENGTH / 4, LENGTH / 2], EVEN_DEPTHS, sd);

    it('holds the truth bore by bore and errs by less than 0.004 mm at the median', () => {
      const held = judged.map((one) => one.within);
      expect(mean(held), told(judged)).toBeGreaterThanOrEqual(0.95);
      expect(held.filter((h) => h >= 0.9).length, told(judged)).toBeGreaterThanOrEqual(22);
      expect(median(judged.map((one) => one.rms)), told(judged)).toBeLessThan(0.004);
    });

    it('does so with bands of use: at the median less than three times as wide as the error', () => {
      // A calibrated band has sdSeen = rms; three times that would hold everything and say nothing.
      expect(median(judged.map((one) => one.sdSeen / one.rms))).toBeLessThan(3);
    });
  });

  // Mouths of 6 to 13 mm (1/4 to 1/2 in) close between the first two even depths: no reading tells how, so that the
  // error may be larger, but the bands must say so.
  it('holds the truth of short mouths too, and errs a fifth less where depths are closer near the face', () => {
    const even = judgeBores([6, 13], EVEN_DEPTHS, NOISE);
    const closer = judgeBores([6, 13], MOUTH_DEPTHS, NOISE);
    expect(mean(even.map((one) => one.within)), told(even)).toBeGreaterThanOrEqual(0.93);
    expect(even.filter((one) => one.within >= 0.8).length, told(even)).toBe(24);
    expect(closer.filter((one) => one.within >= 0.9).length, told(closer)).toBeGreaterThanOrEqual(
      22,
    );
    expect(median(closer.map((one) => one.rms))).toBeLessThan(
      0.8 * median(even.map((one) => one.rms)),
    );
  });

  it('holds the truth of irregular surveys, seeds 1 to 12', () => {
    // Any clock positions, 3 to 8 a depth, a fifth of them missing; a depth anywhere in each seventh of the length.
    const held = Array.from({ length: 12 }, (_, i) => {
      const random = seededRandom(i + 1);
      const truth = sum(
        round(RADIUS),
        lobe(2, OVAL, 1.1, fading(60)),
        bell('quadratic', 0.1, 20),
        gouge(0.03, 2, 25, 0.4, 6),
      );
      const depths = Array.from({ length: 7 }, (_, k) => (LENGTH * (k + random.uniform())) / 7);
      const taken = depths
        .flatMap((z) => {
          const count = 3 + Math.floor(6 * random.uniform());
          const places = Array.from({ length: count }, () => 2 * Math.PI * random.uniform());
          return measure(truth, 'two-point', places, [z], NOISE, random);
        })
        .filter(() => random.uniform() > 0.2);
      return judgeEven(surfaceOf({ taken, length: LENGTH, sd: NOISE }), truth).within;
    });
    expect(mean(held), String(held)).toBeGreaterThanOrEqual(0.95);
    expect(held.filter((h) => h >= 0.9).length, String(held)).toBeGreaterThanOrEqual(11);
  });

  it('reproduces a noise-free survey within 0.002 mm at the readings, sd stated or typical', () => {
    for (let i = 0; i < 24; i++) {
      const truth = wornBore(i, seededRandom(2000 + i), [6, 25]);
      const taken = measure(truth, 'two-point', PAIRS, depthsOf(i, EVEN_DEPTHS));
      for (const sd of i % 2 === 0 ? [NOISE] : [NOISE, undefined]) {
        const s = surfaceOf({ taken, length: LENGTH, ...(sd === undefined ? {} : { sd }) });
        // Per side, as the surface is; the prediction is of the diameter.
        const worst =
          greatestApart(
            s.predicted,
            Float64Array.from(taken, (t) => t.value),
          ) / 2;
        expect(worst, `bore ${i}, seed ${2000 + i}, sd ${sd}`).toBeLessThan(0.002);
      }
    }
  });
});

/**
 * Rounding in the surface: solving for n readings errs by about n eps cond(K) times the readings' departures (Higham,
 * Accuracy and Stability of Numerical Algorithms, 2nd ed., theorem 10.4). Here n = 30, cond(K) is at most 30 * 4 * 2
 * mm2 of prior (size and slope) over (0.7 * 0.005)^2 mm2 of noise = 2e7, departures 0.5 mm, eps 1.1e-16: 3e-8 mm.
 * The search for the smoothness compares values and keeps places: it walks the very same way unless two values agree
 * to rounding, and then differs visibly.
 */
const ROUNDING = 3e-8;

const WORN = sum(
  round(RADIUS),
  lobe(2, OVAL, 0.4, fading(60)),
  lobe(4, 0.01, 1),
  bell('lorentzian', 0.1, 16),
  gouge(0.04, 2, 20, 0.3, 4),
);
const takenOf = (seed: number) => twoPoint(WORN, EVEN_DEPTHS, seededRandom(seed));
const STATED = { length: LENGTH, sd: NOISE };

function shuffled<T>(items: readonly T[], random: Random): T[] {
  const keyed = items.map((item) => ({ item, key: random.uniform() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ item }) => item);
}

function expectSame(found: WearSurface, wanted: WearSurface, within: number): void {
  expect(greatestApart(found.mean, wanted.mean)).toBeLessThan(within);
  expect(greatestApart(found.sd, wanted.sd)).toBeLessThan(within);
  expect(greatestApart(found.sdSeen, wanted.sdSeen)).toBeLessThan(within);
}

/** A field with its clock turned on by some columns. */
const turned = (field: Float64Array, columns: number, by: number) =>
  field.map((_, k) => field[k - (k % columns) + (((k % columns) - by + columns) % columns)]!);

describe('the surface keeps to what it must not depend on', () => {
  const plain = surfaceOf({ taken: takenOf(7), ...STATED });

  it('is typed as a job that the schema accepts', () => {
    expect(v.is(Job, jobOf({ taken: takenOf(7), ...STATED, nominal: 65 }))).toBe(true);
  });

  it.each([11, 12, 13])('order of the readings, seed %i', (seed) => {
    const other = surfaceOf({ taken: shuffled(takenOf(7), seededRandom(seed)), ...STATED });
    expectSame(other, plain, ROUNDING);
  });

  it.each([1, 17, 60, 119])('clocks turned by %i steps of the grid turn the surface', (by) => {
    const columns = plain.grid.theta.length;
    const taken = takenOf(7).map((t) => ({ ...t, theta: t.theta + (2 * Math.PI * by) / columns }));
    const other = surfaceOf({ taken, ...STATED });
    const back = {
      ...other,
      mean: turned(other.mean, columns, -by + columns),
      sd: turned(other.sd, columns, -by + columns),
      sdSeen: turned(other.sdSeen, columns, -by + columns),
    };
    // A clock is typed to 1e-10 degrees, 2e-12 radians: at 0.3 mm per radian that is nothing beside rounding.
    expectSame(back, plain, ROUNDING);
  });

  it('inches and millimetres', () => {
    const inches = surfaceOf({ taken: takenOf(7), ...STATED, units: 'in' });
    // 1e-10 in of typing moves a place by less than the sum of the gains, below 30: 30 * 25.4e-10 / 2 = 4e-8 mm.
    expectSame(inches, plain, ROUNDING + 4e-8);
  });

  it('inches typed to 0.0001 and the same sizes typed in millimetres to 0.00254', () => {
    const snapped = takenOf(7).map((t) => ({
      ...t,
      z: 2.54 * Math.round(t.z / 2.54),
      value: 25.4e-4 * Math.round(t.value / 25.4e-4),
    }));
    const inches = surfaceOf({
      taken: snapped,
      length: 50.8,
      sd: 0.00508,
      units: 'in',
      decimals: 4,
    });
    const metric = surfaceOf({ taken: snapped, length: 50.8, sd: 0.00508, decimals: 5 });
    expectSame(inches, metric, ROUNDING);
  });

  it.each([-0.5, 0.0625, 3])('%f mm more on every diameter is half of it on the radius', (more) => {
    const taken = takenOf(7).map((t) => ({ ...t, value: t.value + more }));
    const other = surfaceOf({ taken, ...STATED });
    expectSame({ ...other, mean: other.mean.map((r) => r - more / 2) }, plain, ROUNDING);
  });

  it('readings typed from face B are the mirrored ones of face A', () => {
    const nominal = 65;
    const sided = measure(
      WORN,
      'radius',
      clocks(12, 2 * Math.PI),
      EVEN_DEPTHS,
      0.003,
      seededRandom(3),
    );
    for (const taken of [takenOf(7), sided]) {
      const a = surfaceOf({ taken, ...STATED, nominal });
      const b = surfaceOf({ taken, ...STATED, nominal, face: 'B' });
      // Depths from B are 50 - z to 1e-10 mm, and radii add up to 60 readings: the same rounding, twice as many.
      expectSame(b, a, 4 * ROUNDING);
    }
  });

  it('readings left out, as if they were never typed', () => {
    const job = jobOf({ taken: takenOf(7), ...STATED });
    const first = job.features[0]!.surveys[0]!;
    const readings = first.readings.map((r, i) => (i % 7 === 3 ? { ...r, leftOut: true } : r));
    const feature = { ...job.features[0]!, surveys: [{ ...first, readings }] };
    const without = evaluate({ ...job, features: [feature] }).bores[0]!.surveys[0]!.surface!;
    const kept = takenOf(7).filter((_, i) => i % 7 !== 3);
    expectSame(without, surfaceOf({ taken: kept, ...STATED }), ROUNDING);
  });
});

describe('what diameters cannot see', () => {
  const lobed = sum(WORN, lobe(3, 0.0254, 0.2), lobe(5, 0.008, 1));
  const across = surfaceOf({ taken: twoPoint(lobed, EVEN_DEPTHS, seededRandom(5)), ...STATED });

  it('is not in the mean, and is in the sd beyond sdSeen at every place', () => {
    expect(across.seenLobes).toEqual([2, 4, 6, 8, 10, 12, 14]);
    expect(greatestApart(across.mean, evenMean(across))).toBeLessThan(ROUNDING);
    expect(across.sd.every((sd, k) => sd > across.sdSeen[k]!)).toBe(true);
  });

  it('leaves the readings as they are: the same surface with and without odd lobes', () => {
    const bare = surfaceOf({ taken: twoPoint(WORN, EVEN_DEPTHS, seededRandom(5)), ...STATED });
    // cos 3t + cos 3(t + pi) is 0 to rounding; typed to 1e-10 mm.
    expectSame(across, bare, ROUNDING);
  });

  it('radii see', () => {
    const around = clocks(24, 2 * Math.PI);
    const taken = measure(lobed, 'radius', around, EVEN_DEPTHS, NOISE, seededRandom(6));
    const found = survey({ taken, ...STATED });
    expect(found.surface!.seenLobes).toEqual(Array.from({ length: 14 }, (_, i) => i + 1));
    expect(greatestApart(found.surface!.sd, found.surface!.sdSeen)).toBe(0);
    for (const section of found.sections) {
      const third = section.lobes.find((one) => one.n === 3)!;
      // 24 readings of 0.005 mm tell an amplitude to 0.005 sqrt(2 / 24) = 0.0015 mm at one depth; 3 of that.
      expect(Math.abs(third.amplitude - 0.0254)).toBeLessThan(0.0045);
      // And its turn to 0.0015 / (3 * 0.0254) = 0.02 radians. A lobe repeats after a third of a turn.
      expect(Math.abs(third.theta - 0.2)).toBeLessThan(0.06);
    }
    expect(
      judge(found.surface!, found.surface!.mean, found.surface!.sd, lobed).within,
    ).toBeGreaterThan(0.9);
  });

  it.each([21, 22, 23, 24])('stays within 2 sd: a side worn at the mouth, seed %i', (seed) => {
    const random = seededRandom(seed);
    const at = 2 * Math.PI * random.uniform();
    const worn = crescent(0.1 + 0.3 * random.uniform(), 0.1, at, fading(15));
    const truth = sum(round(RADIUS), worn, bell('lorentzian', 0.1, 15));
    const s = surfaceOf({ taken: twoPoint(truth, EVEN_DEPTHS, random), ...STATED });
    expect(judge(s, s.mean, s.sd, truth).within).toBeGreaterThanOrEqual(0.9);
  });
});

describe('more readings', () => {
  /** The quick pace keeps the smoothness that was learned, so that only the readings differ. */
  function grown(first: readonly Taken[], more: readonly Taken[]) {
    const memory: Memory = new Map();
    const few = survey({ taken: first, ...STATED }, memory);
    return { few, many: survey({ taken: [...first, ...more], ...STATED }, memory, 'quick') };
  }
  // Two surfaces' rounding in the variance, over the least sd here (0.002 mm), is far below it.
  const notAbove = (a: Float64Array, b: Float64Array) => a.every((sd, k) => sd <= b[k]! + ROUNDING);

  it('repeats lower the sd at every place, and most at the depths that they repeat', () => {
    const { few, many } = grown(takenOf(7), takenOf(8));
    expect(notAbove(many.surface!.sd, few.surface!.sd)).toBe(true);
    expect(notAbove(many.surface!.sdSeen, few.surface!.sdSeen)).toBe(true);
    // Twice the readings leave sqrt(1 / 2) = 0.71 of what noise alone makes of a depth's mean diameter; what does not
    // fall is the twelfth lobe, which six pairs 30 degrees apart cannot tell from size.
    many.sections.forEach((section, i) => {
      const ratio = section.give / few.sections[i]!.give;
      expect(ratio).toBeGreaterThan(0.7);
      expect(ratio).toBeLessThan(0.9);
    });
  });

  it.each([31, 32, 33])('any readings more never raise the sd, seed %i', (seed) => {
    const random = seededRandom(seed);
    const places = [0, 1, 2, 3].map(() => 2 * Math.PI * random.uniform());
    const gauge = seed === 32 ? 'three-leg' : 'two-point';
    const more = measure(WORN, gauge, places, [LENGTH * random.uniform()], NOISE, random);
    const { few, many } = grown(takenOf(7), more);
    expect(notAbove(many.surface!.sd, few.surface!.sd)).toBe(true);
  });

  it('a thousand points are drawn together and still give the surface', () => {
    const around = clocks(200, 2 * Math.PI);
    const taken = measure(WORN, 'radius', around, EVEN_DEPTHS, 0.02, seededRandom(41));
    const found = survey({ taken, length: LENGTH, sd: 0.02 });
    // 72 cells of 5 degrees at each of the five depths.
    expect(found.sightings).toHaveLength(360);
    // What they tell together is kept: the sum of 1 / sd^2.
    const told = found.sightings.reduce((total, s) => total + 1 / s.sd ** 2, 0);
    expect(told * 0.02 ** 2).toBeCloseTo(1000, 6);
    const { within, rms } = judge(found.surface!, found.surface!.mean, found.surface!.sd, WORN);
    expect(within).toBeGreaterThanOrEqual(0.9);
    // 200 readings of 0.02 mm tell each of a depth's 29 figures (size, 14 lobes) to sqrt(29 / 200) 0.02 = 0.0076 mm
    // together; smoothness knows better, and must not do worse.
    expect(rms).toBeLessThan(0.0076);
  });

  it('a quick answer is followed by the very one that a fresh start gives', () => {
    const memory: Memory = new Map();
    survey({ taken: takenOf(7), ...STATED }, memory);
    survey({ taken: takenOf(8), ...STATED }, memory, 'quick');
    const settled = survey({ taken: takenOf(8), ...STATED }, memory);
    expect(settled).toEqual(survey({ taken: takenOf(8), ...STATED }));
  });
});

describe('few readings still give what can be given, and say what is missing', () => {
  const all = takenOf(7);
  const cases = [
    {
      name: 'one reading',
      keep: (_: Taken, i: number) => i === 0,
      says: [/^One reading is a size/, /One depth/, /One clock/],
    },
    { name: 'one depth', keep: (_: Taken, i: number) => i < 6, says: [/One depth only/] },
    {
      name: 'two clock positions',
      keep: (t: Taken) => t.theta < 0.1 || Math.abs(t.theta - Math.PI / 2) < 0.1,
      says: [/Two clock positions only/],
    },
    {
      name: 'two depths',
      keep: (_: Taken, i: number) => i < 12,
      says: [/Two depths only/, /Nothing is measured between 13\.8 mm and 50\.0 mm/],
    },
    { name: 'all at one place', keep: () => true, says: [/All readings are at one place/] },
  ];

  it.each(cases)('$name', ({ name, keep, says }) => {
    const kept =
      name === 'all at one place' ? all.map((t) => ({ ...t, theta: 0, z: 10 })) : all.filter(keep);
    const found = survey({ taken: kept, ...STATED, nominal: 65 });
    expect(found.status).toBe('ok');
    const { surface } = found;
    expect(surface!.mean.every(Number.isFinite)).toBe(true);
    expect(surface!.sd.every((sd) => sd > 0 && Number.isFinite(sd))).toBe(true);
    expect(surface!.sdSeen.every((sd) => sd > 0 && Number.isFinite(sd))).toBe(true);
    // Every sum of readings is about the size of the bore, whatever is missing.
    expect(Math.abs(mean([...surface!.mean]) - RADIUS)).toBeLessThan(0.2);
    const remarks = [...found.notes, ...found.blindSpots].map((remark) => remark.text);
    for (const pattern of says)
      expect(
        remarks.some((text) => pattern.test(text)),
        String(pattern),
      ).toBe(true);
  });

  it('a full survey says only that diameters cannot tell the sides, and what lies between the clocks', () => {
    const found = survey({ taken: all, ...STATED });
    expect(found.blindSpots).toHaveLength(2);
    expect(found.blindSpots[0]!.text).toMatch(/^Diameters cannot show which side is worn/);
    expect(found.blindSpots[1]!.text).toMatch(/^A dent between the clock positions/);
  });

  it('no reading, and no length, are said and give no surface', () => {
    expect(survey({ taken: [], ...STATED })).toMatchObject({
      status: 'no-readings',
      surface: null,
    });
    // One depth at the very rim and no nominal size: nothing says how long the bore is.
    const rim = measure(WORN, 'two-point', PAIRS, [0]);
    expect(survey({ taken: rim })).toMatchObject({ status: 'no-length', surface: null });
  });

  it('a depth outside the bore is refused by row, and the others stand', () => {
    const taken = all.map((t, i) => (i === 4 ? { ...t, z: LENGTH + 1 } : t));
    const found = survey({ taken, ...STATED });
    expect(found.checks).toHaveLength(1);
    expect(found.checks[0]).toMatchObject({ row: 4, suspect: true });
    expectSame(
      found.surface!,
      surfaceOf({ taken: all.filter((_, i) => i !== 4), ...STATED }),
      ROUNDING,
    );
  });
});
