/**
 * Mean and standard deviation of the surface against the textbook's dense solve.
 *
 * Here the surface is a Gaussian process on places: cov(R(t, z), R(t', z')) = sum over n of shape_n(z, z') cos n(t - t'),
 * every instrument is a weighted sum of a few radii plus the unknowns of its set-up, written out one by one, and the
 * posterior is K_* K^-1 y and K_** - K_* K^-1 K_*' (Rasmussen and Williams 2006, equations 2.25 and 2.26) by the LU
 * solver of ml-matrix. The product never forms any of these: it works on lobes' coefficients with its own Cholesky.
 */
import { EigenvalueDecomposition, LuDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { crescentShapes, type KnownShape } from '../../src/bore/crescent.ts';
import { depthTables, mixed } from '../../src/bore/depth.ts';
import { design } from '../../src/bore/design.ts';
import { freeSpread } from '../../src/bore/frame.ts';
import { LOBES } from '../../src/bore/instruments.ts';
import { toldSd } from '../../src/bore/leaveOneOut.ts';
import { condition, type Posterior } from '../../src/bore/posterior.ts';
import { depthShape, knownShapeAlong } from '../../src/bore/prior.ts';
import { sections } from '../../src/bore/sections.ts';
import { spotShapes } from '../../src/bore/spotShapes.ts';
import { gridSpread, wearSurface } from '../../src/bore/surface.ts';
import type { Grid, SetupPrior, Sighting, Smoothness, Spot } from '../../src/bore/types.ts';
import type { Instrument } from '../../src/job/schema.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';

const LENGTH = 44;
const NOMINAL = 30;
const EPS = 2 ** -52;

interface Place {
  readonly theta: number;
  readonly z: number;
}

/** A quantity as a weighted sum of radii. */
type Weighted = readonly (Place & { readonly weight: number })[];

function touched(s: Sighting, setups: readonly SetupPrior[]): Weighted {
  const legs = (turns: readonly number[], weight: number) =>
    turns.map((turn) => ({ theta: s.theta + 2 * Math.PI * turn, z: s.z, weight }));
  switch (s.instrument) {
    case 'two-point':
      return legs([0, 1 / 2], 1);
    case 'three-leg':
      return legs([0, 1 / 3, 2 / 3], 2 / 3);
    case 'radius':
      return legs([0], 1);
    case 'sweep':
    case 'wall':
      return legs([0], setups[s.setup]!.sign);
  }
}

/** How a reading answers each unknown of its set-up, times that unknown's standard deviation. */
function setupAnswers(all: readonly Sighting[], setups: readonly SetupPrior[]): Matrix {
  const zeros = new Map<string, number>();
  const column = (key: string): number => {
    if (!zeros.has(key)) zeros.set(key, zeros.size);
    return zeros.get(key)!;
  };
  const entries: { row: number; column: number; value: number }[] = [];
  all.forEach((s, row) => {
    const setup = setups[s.setup];
    if (setup === undefined) return;
    const put = (key: string, value: number) =>
      entries.push({ row, column: column(`${s.setup} ${key}`), value });
    put('u', setup.offset * Math.sin(s.theta));
    put('v', setup.offset * Math.cos(s.theta));
    // The lean is over the whole length.
    put("u'", (setup.lean / LENGTH) * s.z * Math.sin(s.theta));
    put("v'", (setup.lean / LENGTH) * s.z * Math.cos(s.theta));
    put(setup.resetEachDepth ? `zero at ${s.z}` : 'zero', setup.zeroSd);
  });
  const out = Matrix.zeros(all.length, Math.max(1, zeros.size));
  for (const e of entries) out.set(e.row, e.column, e.value);
  return out;
}

interface Answer {
  /** Posterior mean, mm, the base radius included. */
  readonly mean: number[];
  readonly covariance: Matrix;
  /** Bound on the rounding of a mean, mm, one for each. */
  readonly meanRounding: number[];
  /** Square roots g: rounding of a covariance of i and j is at most `EPS` times `steps` times g_i g_j. */
  readonly reach: number[];
}

interface Dense {
  /** Posterior of some weighted sums of radii. */
  of(wanted: readonly Weighted[], lobes?: readonly number[]): Answer;
  /** Posterior mean of the readings themselves, without their noise, and a bound on its rounding. */
  readonly predicted: number[];
  readonly predictedRounding: number[];
  /** Posterior variance of the readings themselves, without their noise, mm2, and a bound on its rounding. */
  readonly readingVariance: number[];
  readonly readingRounding: number[];
  /** How many roundings a figure goes through in both ways together. */
  readonly steps: number;
}

const EVERY_LOBE = Array.from({ length: LOBES + 1 }, (_, n) => n);

function denseOf(
  all: readonly Sighting[],
  setups: readonly SetupPrior[],
  s: Smoothness,
  base: number,
  wornSide: number,
): Dense {
  const datum = all.some((one) => one.instrument === 'radius');
  const shapes = EVERY_LOBE.map((n) => depthShape(n, s, datum));
  // Places share few depths: what each pair of depths has in common is worked out once, lobe by lobe.
  const alike = new Map<string, number[]>();
  const shapesAt = (a: number, b: number): number[] => {
    const key = `${a} ${b}`;
    const known =
      alike.get(key) ?? shapes.map((one) => mixed(one, depthTables([a], [b], LENGTH, s), 0));
    alike.set(key, known);
    return known;
  };
  const worn = crescentShapes(wornSide);
  // The first few lobes of each known shape, as the product states it; how it spreads over depth is the lobes' own way.
  const amount = ({ profile }: KnownShape, theta: number, lobes: readonly number[] = EVERY_LOBE) =>
    profile.reduce((sum, a, c) => {
      const n = (c + 1) >> 1;
      if (!lobes.includes(n)) return sum;
      return sum + a * (c % 2 === 1 || c === 0 ? Math.cos(n * theta) : Math.sin(n * theta));
    }, 0);
  // A spot's humps one by one, each with its own unknown height; of a spot on either side there are two, apart.
  const places = s.spots?.places ?? [];
  const humps = places.map((spot) =>
    (spot.across ? [0, Math.PI] : [0]).flatMap((turn) =>
      spotShapes({ ...spot, theta: spot.theta + turn, across: false }),
    ),
  );
  const alongSpots = new Map<string, number[]>();
  const spotted = (a: Place, b: Place, lobes: readonly number[]) => {
    const key = `${a.z} ${b.z}`;
    const along =
      alongSpots.get(key) ?? depthTables([a.z], [b.z], LENGTH, s).spots.map(([value]) => value!);
    alongSpots.set(key, along);
    return humps.reduce(
      (total, shapes, nth) =>
        total +
        along[nth]! *
          shapes.reduce(
            (sum, one) => sum + amount(one, a.theta, lobes) * amount(one, b.theta, lobes),
            0,
          ),
      0,
    );
  };
  const kernel = (a: Place, b: Place, lobes: readonly number[]) => {
    const at = shapesAt(a.z, b.z);
    const apart = a.theta - b.theta;
    const known = worn.reduce((sum, one) => {
      const along = knownShapeAlong(one.share, s.worn!);
      const likeness = mixed(along, depthTables([a.z], [b.z], LENGTH, s), 0);
      return sum + likeness * amount(one, a.theta) * amount(one, b.theta);
    }, 0);
    return lobes.reduce(
      (sum, n) => sum + at[n]! * Math.cos(n * apart),
      known + spotted(a, b, lobes),
    );
  };
  const between = (
    rows: readonly Weighted[],
    columns: readonly Weighted[],
    lobes: readonly number[],
  ) => {
    const out = Matrix.zeros(rows.length, columns.length);
    rows.forEach((row, i) => {
      columns.forEach((column, j) => {
        let sum = 0;
        for (const p of row)
          for (const q of column) sum += p.weight * q.weight * kernel(p, q, lobes);
        out.set(i, j, sum);
      });
    });
    return out;
  };
  const readings = all.map((one) => touched(one, setups));
  const answers = setupAnswers(all, setups);
  const clean = between(readings, readings, EVERY_LOBE).add(answers.mmul(answers.transpose()));
  const noisy = clean.clone();
  all.forEach((one, i) => {
    noisy.set(i, i, noisy.get(i, i) + (one.sd * s.noise) ** 2);
  });
  const expected = all.map((one, i) => {
    const size = readings[i]!.reduce((sum, leg) => sum + leg.weight, 0) * base;
    const setup = setups[one.setup];
    if (setup === undefined) return size;
    // An unknown zero is taken to lie about where its readings put it.
    const own = all.filter((other) => other.setup === one.setup);
    const usual = own.reduce((sum, other) => sum + other.value - setup.sign * base, 0) / own.length;
    return size + (Number.isNaN(setup.zero) ? usual : setup.zero);
  });
  const departures = Matrix.columnVector(all.map((one, i) => one.value - expected[i]!));
  const lu = new LuDecomposition(noisy);
  const solved = lu.solve(departures);
  /*
   * Rounding. Either way solves a system whose K is off by at most 3 n eps in each entry, as a share of
   * sqrt(K_ii K_jj) (Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., theorems 9.3 and 10.3; entries
   * of K themselves are sums that cancel to no worse). To first order that moves a mean by w' dK a and a variance by
   * w' dK w, with w = K^-1 k_* and a = K^-1 y: bounded by (sum of |w_i| sqrt K_ii) (sum of |a_j| sqrt K_jj). Two ways
   * are compared: 6 n.
   */
  const steps = 6 * all.length;
  const scale = noisy.diagonal().map(Math.sqrt);
  const sized = (row: readonly number[]) =>
    row.reduce((sum, v, i) => sum + Math.abs(v) * scale[i]!, 0);
  const pull = sized(solved.to1DArray());
  // Sizes of up to 2 * 30 mm are taken off the values before anything is solved.
  const valueRounding = (row: readonly number[]) =>
    4 * EPS * 2 * NOMINAL * (1 + row.reduce((sum, v) => sum + Math.abs(v), 0));
  const readingShares = lu.solve(clean);
  const cleared = Matrix.sub(clean, clean.mmul(readingShares));
  return {
    of: (wanted, lobes = EVERY_LOBE) => {
      const cross = between(wanted, readings, lobes);
      const size = wanted.map((one) => one.reduce((sum, leg) => sum + leg.weight, 0) * base);
      const shares = lu.solve(cross.transpose()).transpose();
      const own = between(wanted, wanted, lobes);
      const reach = wanted.map((_, i) => Math.sqrt(own.get(i, i)) + sized(shares.getRow(i)));
      return {
        mean: cross
          .mmul(solved)
          .to1DArray()
          .map((value, i) => size[i]! + value),
        covariance: Matrix.sub(own, cross.mmul(shares.transpose())),
        meanRounding: reach.map((g, i) => steps * EPS * g * pull + valueRounding(shares.getRow(i))),
        reach,
      };
    },
    readingVariance: cleared.diagonal(),
    readingRounding: scale.map(
      (own, i) => steps * EPS * (own + sized(readingShares.getColumn(i))) ** 2,
    ),
    predicted: clean
      .mmul(solved)
      .to1DArray()
      .map((value, i) => expected[i]! + value),
    // A reading without its noise is itself less noise^2 a_i: only a's own error counts, by noise^2 K^-1 dK a, and
    // noise^2 K^-1 has no row longer than 1.
    predictedRounding: scale.map(
      () => steps * EPS * Math.hypot(...scale) * pull + valueRounding([1]),
    ),
    steps,
  };
}

/** Lobes that answer at all, found by trying: a pure lobe under each instrument. */
function answeringLobes(all: readonly Sighting[], setups: readonly SetupPrior[]): number[] {
  return EVERY_LOBE.filter((n) =>
    all.some((one) =>
      [0, Math.PI / 2].some((phase) => {
        const legs = touched(one, setups);
        return (
          Math.abs(
            legs.reduce((sum, leg) => sum + leg.weight * Math.cos(n * leg.theta - phase), 0),
          ) > 1e-9
        );
      }),
    ),
  );
}

const SETUPS: readonly SetupPrior[] = [
  { sign: 1, offset: 0.6, lean: 0.03, zero: Number.NaN, zeroSd: 1.5, resetEachDepth: false },
  { sign: -1, offset: 0.8, lean: 0.05, zero: Number.NaN, zeroSd: 1, resetEachDepth: true },
  { sign: -1, offset: 0.1, lean: 0.05, zero: 45, zeroSd: 0.5, resetEachDepth: false },
];

interface Mix {
  readonly name: string;
  /** Instrument, set-up, how many. */
  readonly readings: readonly (readonly [Instrument, number, number])[];
  /** At two depths: more readings than there are unknowns, which the product draws together first. */
  readonly crowded?: boolean;
  /** Side stated to be worn, radians. */
  readonly worn?: number;
  readonly spots?: readonly Spot[];
}

const HERE: Spot = { theta: 1.2, z: 9, sd: 0.08, across: false };
const EITHER: Spot = { theta: 4.4, z: 30, sd: 0.05, across: true };

const MIXES: readonly Mix[] = [
  { name: 'two-point', readings: [['two-point', -1, 30]] },
  { name: 'three-leg', readings: [['three-leg', -1, 20]] },
  { name: 'radius', readings: [['radius', -1, 30]] },
  {
    name: 'two-point and three-leg',
    readings: [
      ['two-point', -1, 18],
      ['three-leg', -1, 9],
    ],
  },
  { name: 'a lone sweep', readings: [['sweep', 0, 24]] },
  {
    name: 'two-point and a sweep',
    readings: [
      ['two-point', -1, 18],
      ['sweep', 0, 18],
    ],
  },
  {
    name: 'two-point, a sweep set anew at each depth, a wall',
    readings: [
      ['two-point', -1, 12],
      ['sweep', 1, 12],
      ['wall', 2, 12],
    ],
  },
  {
    name: 'all of them',
    readings: [
      ['two-point', -1, 8],
      ['three-leg', -1, 8],
      ['radius', -1, 8],
      ['sweep', 0, 8],
      ['sweep', 1, 8],
      ['wall', 2, 8],
    ],
  },
  { name: 'many two-point at a depth', crowded: true, readings: [['two-point', -1, 34]] },
  {
    name: 'many two-point and swept at a depth',
    crowded: true,
    readings: [
      ['two-point', -1, 28],
      ['sweep', 0, 40],
    ],
  },
  { name: 'two-point, worn side stated', worn: 2.2, readings: [['two-point', -1, 24]] },
  {
    name: 'two-point and a wall, worn side stated',
    worn: 5.1,
    readings: [
      ['two-point', -1, 14],
      ['wall', 2, 14],
    ],
  },
  {
    name: 'two-point, two spots',
    spots: [EITHER, { ...EITHER, z: 12 }],
    readings: [['two-point', -1, 24]],
  },
  {
    name: 'two-point and a sweep, two spots',
    spots: [HERE, EITHER],
    readings: [
      ['two-point', -1, 18],
      ['sweep', 0, 18],
    ],
  },
  {
    name: 'many two-point at a depth, a spot',
    crowded: true,
    spots: [EITHER],
    readings: [['two-point', -1, 34]],
  },
  {
    name: 'two-point and a wall, worn side stated, a spot',
    worn: 5.1,
    spots: [HERE],
    readings: [
      ['two-point', -1, 14],
      ['wall', 2, 14],
    ],
  },
];

/** Readings anywhere, of a bore that the prior did not make: values need only be some numbers near what is expected. */
function randomSightings(mix: Mix, random: Random): Sighting[] {
  const depths = Array.from({ length: 4 }, () => LENGTH * random.uniform());
  const size: Record<Instrument, number> = {
    'two-point': 2,
    'three-leg': 2,
    radius: 1,
    sweep: 1,
    wall: -1,
  };
  return mix.readings.flatMap(([instrument, setup, count]) =>
    Array.from({ length: count }, (_, i): Sighting => {
      const about = setup < 0 ? size[instrument] * NOMINAL : setup === 2 ? 45 - NOMINAL : 1.2;
      return {
        row: i,
        instrument,
        theta: 2 * Math.PI * random.uniform(),
        // Some depths shared, some of their own.
        z: mix.crowded
          ? depths[i % 2]!
          : random.uniform() < 0.7
            ? depths[i % 4]!
            : LENGTH * random.uniform(),
        value: about + 0.08 * (2 * random.uniform() - 1),
        sd: 0.004 + 0.01 * random.uniform(),
        sdStated: true,
        setup,
      };
    }),
  );
}

function randomSmoothness(random: Random, places: readonly Spot[] = []): Smoothness {
  const about = (median: number, spread: number) => median * Math.exp(spread * random.normal());
  const even: Smoothness = {
    lobe: about(0.03, 0.7),
    size: about(0.05, 0.7),
    length: about(0.6 * LENGTH, 0.4),
    local: about(0.006, 0.5),
    noise: about(1, 0.2),
    worn: 0.1,
    fixed: false,
  };
  return places.length > 0 ? { ...even, spots: { places, without: even } } : even;
}

function gridOf(columns: number, rows: number): Grid {
  return {
    theta: Float64Array.from({ length: columns }, (_, i) => (2 * Math.PI * i) / columns),
    z: Float64Array.from({ length: rows }, (_, i) => (LENGTH * i) / (rows - 1)),
  };
}

const placesOf = (grid: Grid, everyRow = 1): Weighted[] =>
  Array.from(grid.z)
    .filter((_, i) => i % everyRow === 0)
    .flatMap((z) => Array.from(grid.theta, (theta) => [{ theta, z, weight: 1 }]));

function made(mix: Mix, seed: number) {
  const random = seededRandom(seed);
  const all = randomSightings(mix, random);
  const smoothness = randomSmoothness(random, mix.spots);
  const wornSide = mix.worn ?? Number.NaN;
  const p = condition(design(all, SETUPS, LENGTH, wornSide), smoothness, NOMINAL);
  if (p === null) throw new Error(`seed ${seed}: no posterior`);
  return { all, p, dense: denseOf(all, SETUPS, smoothness, p.base, wornSide) };
}

/** A variance's rounding as one of its square root: |a - b| = |a^2 - b^2| / (a + b), b not below 0. */
const sdRounding = (dense: Dense, reach: number, sd: number) =>
  (dense.steps * EPS * reach * reach) / sd;

/** A shop gauge shows 1e-3 mm; a tolerance must be far below that to mean anything. */
const USEFUL = 1e-7;

function expectSds(found: ArrayLike<number>, dense: Dense, wanted: Answer): void {
  wanted.reach.forEach((reach, k) => {
    const sd = found[k]!;
    const within = sdRounding(dense, reach, sd);
    expect(within).toBeLessThan(USEFUL);
    expect(Math.abs(sd - Math.sqrt(wanted.covariance.get(k, k)))).toBeLessThan(within);
  });
}

/** The rows of a field on which the spread is worked out; between them it is drawn out. */
const everySecondRow = (field: Float64Array, columns: number) =>
  field.filter((_, k) => Math.floor(k / columns) % 2 === 0);

const cases = MIXES.flatMap((mix, m) =>
  [1, 2].map((k) => ({ name: mix.name, mix, seed: 100 * (m + 1) + k })),
);

describe('the surface is the exact posterior', () => {
  const grid = gridOf(10, 5);

  it.each(cases)('$name, seed $seed', ({ mix, seed }) => {
    const { all, p, dense } = made(mix, seed);
    const s = wearSurface(p, grid, gridSpread(p, grid));
    const everywhere = dense.of(placesOf(grid));
    everywhere.mean.forEach((mean, k) => {
      expect(everywhere.meanRounding[k]!).toBeLessThan(USEFUL);
      expect(Math.abs(s.mean[k]! - mean)).toBeLessThan(everywhere.meanRounding[k]!);
    });
    dense.predicted.forEach((value, i) => {
      expect(dense.predictedRounding[i]!).toBeLessThan(USEFUL);
      expect(Math.abs(s.predicted[i]! - value)).toBeLessThan(dense.predictedRounding[i]!);
    });
    dense.readingVariance.forEach((variance, i) => {
      const sd = toldSd(p, i);
      const within = dense.readingRounding[i]! / sd;
      expect(within).toBeLessThan(USEFUL);
      expect(Math.abs(sd - Math.sqrt(variance))).toBeLessThan(within);
    });
    const seen = answeringLobes(all, SETUPS);
    expect(s.seenLobes).toEqual(seen.filter((n) => n > 0));
    expectSds(everySecondRow(s.sd, 10), dense, dense.of(placesOf(grid, 2)));
    expectSds(everySecondRow(s.sdSeen, 10), dense, dense.of(placesOf(grid, 2), seen));
  });

  it.each([801, 802])(
    'mean diameter of a depth and its give-or-take, all of them, seed %i',
    (seed) => {
      const { p, dense } = made(MIXES[7]!, seed);
      const found = sections(p);
      expect(found.length).toBeGreaterThan(4);
      // The mean of 32 radii evenly round has no lobe up to 31: it is c0, exactly.
      const round = found.map(({ z }) =>
        Array.from({ length: 32 }, (_, i) => ({
          theta: (2 * Math.PI * i) / 32,
          z,
          weight: 1 / 32,
        })),
      );
      const wanted = dense.of(round);
      found.forEach((section, i) => {
        const within = 2 * wanted.meanRounding[i]!;
        expect(within).toBeLessThan(USEFUL);
        expect(Math.abs(section.meanDiameter - 2 * wanted.mean[i]!)).toBeLessThan(within);
      });
      expectSds(
        found.map((section) => section.give / 4),
        dense,
        wanted,
      );
    },
  );
});

/** A matrix that takes the straight run (constant and slope over the rows) of the first lobe out of a field. */
function withoutFirstLine(grid: Grid): Matrix {
  const depths = Array.from(grid.z).filter((_, i) => i % 2 === 0);
  const columns = grid.theta.length;
  const size = depths.length * columns;
  const along = depths.map((z) => z - depths.reduce((a, b) => a + b, 0) / depths.length);
  // Four fields: cos and sin, each constant and sloping. They are orthogonal on an even clock and evenly spaced rows.
  const fields = [Math.cos, Math.sin].flatMap((wave) =>
    [depths.map(() => 1), along].map((run) =>
      Array.from(
        { length: size },
        (_, k) => run[Math.floor(k / columns)]! * wave(grid.theta[k % columns]!),
      ),
    ),
  );
  const out = Matrix.eye(size);
  for (const field of fields) {
    const unit = Matrix.columnVector(field).div(Math.hypot(...field));
    out.sub(unit.mmul(unit.transpose()));
  }
  return out;
}

describe("the sd in a free target's frame is that of the posterior with shift and lean taken out", () => {
  // Above twice 14 places on the clock, so that no lobe is mistaken for the first.
  const grid = gridOf(30, 9);
  const frameCases = cases.filter(({ seed }) => seed % 100 === 1);

  it.each(frameCases)('$name, seed $seed', ({ mix, seed }) => {
    const { p, dense } = made(mix, seed);
    const found = everySecondRow(freeSpread(p, grid, gridSpread(p, grid)), 30);
    const project = withoutFirstLine(grid);
    const wanted = dense.of(placesOf(grid, 2));
    expectSds(found, dense, {
      ...wanted,
      covariance: project.mmul(wanted.covariance).mmul(project.transpose()),
      // Taking the line out weighs each place's rounding by its share.
      reach: wanted.reach.map((_, k) =>
        project.getRow(k).reduce((sum, share, j) => sum + Math.abs(share) * wanted.reach[j]!, 0),
      ),
    });
  });

  it.each(frameCases)('never adds up to more than with a kept centre: $name', ({ mix, seed }) => {
    // Taking a direction out of a covariance cannot raise its trace; at one place it may, where that place is known
    // better than the line through all.
    const { p } = made(mix, seed + 10);
    const spread = gridSpread(p, grid);
    const trace = (field: Float64Array) =>
      everySecondRow(field, 30).reduce((total, sd) => total + sd * sd, 0);
    const kept = trace(wearSurface(p, grid, spread).sd);
    expect(trace(freeSpread(p, grid, spread))).toBeLessThan(kept);
  });
});

describe('between the rows where it is worked out', () => {
  it('the sd drawn out differs from the exact one by less than 5 % of itself on the usual grid', () => {
    const { p, dense } = made(MIXES[0]!, 102);
    // The grid of the product has 65 rows; a few angles are enough to look at.
    const grid = gridOf(5, 65);
    const s = wearSurface(p, grid, gridSpread(p, grid));
    const exact = dense.of(placesOf(grid)).covariance.diagonal();
    s.sd.forEach((sd, k) => {
      expect(Math.abs(sd / Math.sqrt(exact[k]!) - 1)).toBeLessThan(0.05);
    });
  });
});

describe('the depth kernels', () => {
  const tablesOf = (length: number) => {
    const depths = Array.from({ length: 12 }, (_, i) => (LENGTH * i) / 11);
    return depthTables(depths, depths, LENGTH, { length });
  };

  it.each([2, 10, 44, 300])('are covariances: no negative eigenvalue, length %f mm', (length) => {
    const tables = tablesOf(length);
    for (const kernel of [tables.slope, tables.smooth, tables.local]) {
      const matrix = new Matrix(
        Array.from({ length: 12 }, (_, i) => [...kernel.subarray(12 * i, 12 * i + 12)]),
      );
      const values = new EigenvalueDecomposition(matrix, { assumeSymmetric: true }).realEigenvalues;
      // Rounding of eigenvalues: 12 eps times the largest, which is at most 12.
      expect(Math.min(...values)).toBeGreaterThan(-144 * EPS);
    }
  });

  it('are 1 of a depth with itself, and less the farther apart in the stretched depth', () => {
    const tables = tablesOf(20);
    for (let i = 0; i < 12; i++) {
      expect(tables.smooth[13 * i]).toBeCloseTo(1, 12);
      expect(tables.local[13 * i]).toBeCloseTo(1, 12);
      for (let j = i + 1; j < 12; j++) {
        expect(tables.smooth[12 * i + j]!).toBeLessThan(tables.smooth[12 * i + j - 1]!);
      }
    }
  });

  it('see the ends of the bore as mirrored, so that face A and face B are alike', () => {
    const tables = tablesOf(20);
    for (let i = 0; i < 12; i++) {
      for (let j = 0; j < 12; j++) {
        const mirrored = 12 * (11 - i) + (11 - j);
        expect(tables.smooth[12 * i + j]!).toBeCloseTo(tables.smooth[mirrored]!, 10);
        expect(tables.slope[12 * i + j]!).toBeCloseTo(tables.slope[mirrored]!, 12);
      }
    }
  });
});

it('a posterior that does not exist is null, not nonsense', () => {
  const one: Sighting = {
    row: 0,
    instrument: 'two-point',
    theta: 0,
    z: 1,
    value: 60,
    sd: 0.005,
    sdStated: true,
    setup: -1,
  };
  const smoothness = randomSmoothness(seededRandom(1));
  const of = (s: Sighting[]): Posterior | null =>
    condition(design(s, [], LENGTH), smoothness, NOMINAL);
  expect(of([one])).not.toBeNull();
  expect(of([{ ...one, theta: Number.NaN }])).toBeNull();
});
