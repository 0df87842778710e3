/** Slips that move many readings at once, two slips in one survey, and the arithmetic of leaving one out. */
import { describe, expect, it } from 'vitest';
import { design } from '../../src/bore/design.ts';
import { leftOutStandOffs, ownInformation, standOffs } from '../../src/bore/leaveOneOut.ts';
import { condition, predicted } from '../../src/bore/posterior.ts';
import { usualSmoothness } from '../../src/bore/smoothness.ts';
import type { Sighting } from '../../src/bore/types.ts';
import type { Memory } from '../../src/evaluate.ts';
import { setLeftOut, setReading } from '../../src/job/readingEdits.ts';
import { read } from '../../src/practice/simulate.ts';
import { oval, wornBore } from '../../src/practice/wear.ts';
import { checksOf, jobWith, judged, type Survey, surveyOf, typed } from '../fixtures/slips.ts';

/** Six pairs by five depths of a bore 0.3 mm out of round across, long way at 1:00; 50 mm long, 65 mm wide. */
function plain(seed: number, extra: Partial<Survey> = {}): Survey {
  const base = surveyOf(seed);
  const truth = wornBore(32.5, [oval(0.3, Math.PI / 6)]);
  const thetas = Array.from({ length: 6 }, (_, k) => (Math.PI * k) / 6);
  const depths = [4, 14, 25, 36, 46];
  const places = depths.flatMap((z) => thetas.map((theta) => ({ theta, z })));
  const taking = { noise: 0.005, resolution: 0.001, seed: 1000 + seed };
  const values = read(truth, 'two-point', places, taking);
  return {
    ...base,
    truth,
    radius: 32.5,
    length: 50,
    noise: 0.005,
    gauge: 'telescoping',
    units: 'mm',
    thetas,
    depths,
    places,
    values,
    ...extra,
  };
}

const SEEDS = Array.from({ length: 8 }, (_, i) => 300 + i);
const rowsOf = (depth: number) => [0, 1, 2, 3, 4, 5].map((k) => 6 * depth + k);
const turnedBy = (clock: string, degrees: number) =>
  `${(((Number.parseFloat(clock) + degrees) % 360) + 360) % 360}d`;

describe('a clock that was not kept', () => {
  it.each(SEEDS)('one row called out two hours on is named, row by row, seed %i', (seed) => {
    const job = jobWith(plain(seed), new Map(), (r, row) =>
      rowsOf(2).includes(row) ? { ...r, clock: turnedBy(r.clock, 60) } : r,
    );
    const checks = checksOf(job);
    expect(checks.map(({ row }) => row).sort((a, b) => a - b)).toEqual(rowsOf(2));
    expect(new Set(checks.map(({ slip }) => slip)).size).toBe(1);
    expect(checks[0]!.slip).toMatch(/^the clock turned by 2 hours clockwise/);
    expect(checks[0]!.suggested).toBeNull();
  });

  it.each(SEEDS)('the two deepest rows an hour and a half back, seed %i', (seed) => {
    const deep = [...rowsOf(3), ...rowsOf(4)];
    const job = jobWith(plain(seed), new Map(), (r, row) =>
      deep.includes(row) ? { ...r, clock: turnedBy(r.clock, -45) } : r,
    );
    const checks = checksOf(job);
    expect(checks.map(({ row }) => row).sort((a, b) => a - b)).toEqual(deep);
    expect(checks[0]!.slip).toMatch(/^the clock turned by 1.5 hours anticlockwise/);
  });

  it.each(SEEDS)('rows seen from face B with the clock of face A, seed %i', (seed) => {
    const deep = [...rowsOf(3), ...rowsOf(4)];
    const job = jobWith(plain(seed), new Map(), (r, row) =>
      deep.includes(row) ? { ...r, clock: turnedBy(`-${r.clock}`, 0) } : r,
    );
    const checks = checksOf(job);
    expect(checks.map(({ row }) => row).sort((a, b) => a - b)).toEqual(deep);
    expect(checks[0]!.slip).toMatch(/read from face B with the clock of face A$/);
  });

  it.each(SEEDS)('depths and clock from face B typed as from face A, seed %i', (seed) => {
    const s = plain(seed);
    const deep = [...rowsOf(3), ...rowsOf(4)];
    const job = jobWith(s, new Map(), (r, row) =>
      deep.includes(row)
        ? {
            ...r,
            clock: turnedBy(`-${r.clock}`, 0),
            depth: { text: String(s.length - s.places[row]!.z), unit: 'mm' },
          }
        : r,
    );
    const checks = checksOf(job);
    expect(checks.map(({ row }) => row).sort((a, b) => a - b)).toEqual(deep);
    expect(checks[0]!.slip).toMatch(/^face B typed as face A/);
  });
});

describe('the first reading repeated at the end', () => {
  const repeated = (seed: number, drift: number): Survey => {
    const s = plain(seed);
    const places = [...s.places, s.places[0]!];
    const taking = { noise: 0.005, resolution: 0, seed: 2000 + seed };
    const values = read(s.truth, 'two-point', places, taking).map(
      (v, k) => v + (drift * k) / (places.length - 1),
    );
    return { ...s, places, values };
  };
  // 0.05 mm across is ten standard deviations of one reading and seven of the difference of two.
  it.each(SEEDS)('a drift of 0.05 mm across shows at the repeat, seed %i', (seed) => {
    const checks = checksOf(jobWith(repeated(seed, seed % 2 === 0 ? 0.05 : -0.05)));
    expect(checks).toHaveLength(1);
    expect(checks[0]).toMatchObject({ row: 30, slip: 'a drift through the set' });
  });

  it.each(SEEDS)('without one nothing is said, seed %i', (seed) => {
    expect(checksOf(jobWith(repeated(seed, 0)))).toEqual([]);
  });
});

describe('several slips in one survey', () => {
  it.each(SEEDS)('the worst is named first and the other beside it, seed %i', (seed) => {
    const s = plain(seed);
    const texts = new Map([
      [9, typed(s, s.values[9]! + 0.5)],
      [20, typed(s, s.values[20]! - 0.25)],
    ]);
    const checks = checksOf(jobWith(s, texts));
    expect(checks.map(({ row }) => row)).toEqual([9, 20]);
    expect(checks[0]!.slip).toBe('one micrometer turn, 0.50 mm');
    expect(checks[0]!.suggested).toBe(typed(s, s.values[9]!));
    expect(checks[1]!.slip).toMatch(/^a burr/);
  });

  it('two neighbours that stand off alike are a hollow of the bore and in no doubt; far from each other they are', () => {
    const s = plain(304);
    const high = (rows: readonly number[]) =>
      checksOf(jobWith(s, new Map(rows.map((row) => [row, typed(s, s.values[row]! + 0.12)]))));
    expect(high([13, 14])).toEqual([]);
    expect(
      high([7, 28])
        .map(({ row }) => row)
        .sort((a, b) => a - b),
    ).toEqual([7, 28]);
  });

  it('a reading that nothing explains is called unexplained', () => {
    const s = plain(300);
    const checks = checksOf(jobWith(s, new Map([[13, typed(s, s.values[13]! + 3.37)]])));
    expect(checks).toHaveLength(1);
    expect(checks[0]).toMatchObject({ row: 13, slip: 'unexplained', suggested: null });
    expect(Math.abs(checks[0]!.expected - s.values[13]!)).toBeLessThan(checks[0]!.give);
  });

  it('depths past the reach of the gauge are told: 16 mm for the jaws of a caliper, a quarter more unasked', () => {
    const { checks } = judged(jobWith(plain(301, { gauge: 'caliper' })));
    expect(checks.map(({ row }) => row)).toEqual([2, 3, 4].flatMap(rowsOf));
    expect(checks[0]!.slip).toMatch(/^deeper than its gauge reaches: 16.0 mm from the face/);
  });
});

describe('while someone types', () => {
  it('a slip shows at once, goes with its fix at once, and all is as if settled from the start', () => {
    const s = plain(302);
    const memory: Memory = new Map();
    const sound = jobWith(s);
    expect(judged(sound, memory).checks).toEqual([]);
    const put = (text: string) =>
      setReading(sound, 'b', 's', 'r9', { value: { text, unit: 'mm' } });
    const slipped = put(typed(s, s.values[9]! - 0.5));
    const quick = judged(slipped, memory, 'quick').checks;
    expect(quick).toMatchObject([{ row: 9, slip: 'one micrometer turn, 0.50 mm' }]);
    expect(judged(slipped, memory).checks).toEqual(judged(slipped).checks);
    const { suggested } = quick[0]!;
    expect(judged(put(suggested!), memory, 'quick').checks).toEqual([]);
    expect(judged(setLeftOut(slipped, 'b', 's', 'r9', true), memory, 'quick').checks).toEqual([]);
  });
});

describe('leaving one out', () => {
  const s = plain(303);
  const sightings = s.places.map(
    (place, row): Sighting => ({
      ...place,
      row,
      instrument: 'two-point',
      value: s.values[row]!,
      sd: 0.005,
      sdStated: true,
      setup: -1,
    }),
  );
  const figures = { ...usualSmoothness(50), noise: 1.3 };
  // A stated worn side adds an unknown of its own to the surface.
  const posteriorOf = (all: readonly Sighting[]) =>
    condition(design(all, [], 50, Math.PI), figures, 32.5)!;
  const with9 = (sd: number) =>
    posteriorOf(sightings.map((one) => (one.row === 9 ? { ...one, sd } : one)));
  const all = posteriorOf(sightings);

  // A reading of standard deviation s pulls its own place by v0 / (v0 + s^2) of what it is off the others' prediction,
  // v0 the variance of that: a reading as good as none gives the prediction, one of 0.05 mm then gives v0.
  it('is what the others predict, by weighing the reading less instead of taking it out', () => {
    const value = s.values[9]!;
    const off = value - predicted(with9(1e4))[9]!;
    const share = (value - predicted(with9(0.05))[9]!) / off;
    const weak = (0.05 * 1.3) ** 2;
    const v0 = weak / share - weak;
    const found = standOffs(all, ownInformation(all)).find(({ at }) => at === 9)!;
    // v0 is below 1e-3 mm2 and 1e4 mm squared 1e8: 1e-11 of `off`; rounding as in tests/laws/surface, 3e-8 mm.
    expect(Math.abs(found.residual - off)).toBeLessThan(6e-8);
    // `share` is about 0.9 and errs by two roundings over `off`, `weak / share` by as much of 0.004 mm2.
    const error = (weak * 2 * 6e-8) / Math.abs(off);
    expect(Math.abs(found.sd ** 2 - (v0 + (0.005 * 1.3) ** 2))).toBeLessThan(error);
  });

  it('several at once: as one after the other', () => {
    const together = leftOutStandOffs(all, [9, 20]);
    const rest = sightings.filter(({ row }) => row !== 20);
    const without = posteriorOf(rest);
    const one = standOffs(without, ownInformation(without)).find(({ at }) => rest[at]!.row === 9)!;
    const swept = standOffs(all, ownInformation(all), [20]).find(({ at }) => at === 9)!;
    expect(swept.residual).toBeCloseTo(together[0]!.residual, 9);
    expect(swept.sd).toBeCloseTo(together[0]!.sd, 9);
    // Without one reading the middle size, from which sizes are counted, moves by less than 0.01 mm, against 1 mm of
    // prior: the prediction by less than 0.01 * (0.01 mm)^2 / (1 mm)^2 of the noise's weight, below 1e-6 mm.
    expect(Math.abs(one.residual - together[0]!.residual)).toBeLessThan(1e-6);
    expect(one.sd).toBeCloseTo(together[0]!.sd, 9);
  });
});
