/**
 * Hills of a field on the unrolled wall, and the zones said of them: against a flood worked out from its definition on
 * small random grids, and against fields whose hills are known by formula.
 */
import { describe, expect, it } from 'vitest';
import { basins } from '../../src/bore/basins.ts';
import { removalMap } from '../../src/bore/removal.ts';
import { makeGrid } from '../../src/bore/surface.ts';
import type { Field, WearSurface, Zone } from '../../src/bore/types.ts';
import { findZones } from '../../src/bore/zones.ts';
import { zoneWords } from '../../src/figures/zoneWords.ts';
import { seededRandom } from '../../src/num/random.ts';
import { gouge, type Shape, sum } from '../fixtures/bores.ts';

const nobody = () => 0;

/** Places beside one another on a wall that closes round and ends at the faces. */
function beside(k: number, columns: number, size: number): number[] {
  const rows = size / columns;
  const [row, column] = [Math.floor(k / columns), k % columns];
  const around = [
    [row, (column + 1) % columns],
    [row, (column + columns - 1) % columns],
    [row - 1, column],
    [row + 1, column],
  ] as const;
  return around.filter(([r]) => r >= 0 && r < rows).map(([r, c]) => r * columns + c);
}

/** Every place that can be reached from `start` without going where `open` does not hold. */
function flood(
  start: number,
  columns: number,
  size: number,
  open: (k: number) => boolean,
): Set<number> {
  const reached = new Set([start]);
  const edge = [start];
  for (let k = edge.pop(); k !== undefined; k = edge.pop()) {
    for (const j of beside(k, columns, size)) {
      if (open(j) && !reached.has(j)) {
        reached.add(j);
        edge.push(j);
      }
    }
  }
  return reached;
}

/**
 * Topographic prominence, by its definition: how far one must go down from a summit before any higher ground can be
 * reached; infinite where none can be without going below the floor.
 */
function prominenceOf(field: Field, columns: number, floor: number, summit: number): number {
  const levels = [...field].filter((h) => h > floor && h <= field[summit]!).sort((a, b) => b - a);
  for (const level of levels) {
    const reached = flood(summit, columns, field.length, (k) => field[k]! >= level);
    if ([...reached].some((k) => field[k]! > field[summit]!)) return field[summit]! - level;
  }
  return Number.POSITIVE_INFINITY;
}

function summitsByDefinition(
  field: Field,
  columns: number,
  floor: number,
  least: (h: number) => number,
) {
  const above = Array.from(field.keys()).filter((k) => field[k]! > floor);
  return above
    .filter((k) => beside(k, columns, field.length).every((j) => !(field[j]! > field[k]!)))
    .filter((k) => prominenceOf(field, columns, floor, k) >= least(field[k]!))
    .sort((a, b) => field[b]! - field[a]!);
}

/** Heights that are all different, rough or rolling; a few of them unknown. */
function randomField(seed: number, columns: number, rows: number): Field {
  const random = seededRandom(seed);
  const waves = Array.from({ length: 4 }, () => ({
    n: Math.floor(4 * random.uniform()),
    m: 3 * random.uniform(),
    at: 2 * Math.PI * random.uniform(),
  }));
  const roughness = random.uniform();
  return Float64Array.from({ length: columns * rows }, (_, k) => {
    if (random.uniform() < 0.03) return Number.NaN;
    const theta = (2 * Math.PI * (k % columns)) / columns;
    const z = Math.floor(k / columns) / rows;
    const rolling = waves.reduce(
      (total, w) => total + Math.cos(w.n * theta + w.m * z * 3 + w.at),
      0,
    );
    return rolling + roughness * random.normal();
  });
}

describe('basins', () => {
  const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

  it.each(seeds)('summits and their hills on a random grid, seed %i', (seed) => {
    const random = seededRandom(1000 + seed);
    const columns = 5 + Math.floor(6 * random.uniform());
    const rows = 1 + Math.floor(8 * random.uniform());
    const field = randomField(seed, columns, rows);
    const floor = random.uniform() - 0.5;
    const share = 0.6 * random.uniform();
    const least = (h: number) => Math.max(share * h, 0.2);
    const { label, summits } = basins(field, columns, floor, least);
    expect(summits).toEqual(summitsByDefinition(field, columns, floor, least));
    for (let k = 0; k < field.length; k++) {
      const above = field[k]! > floor;
      expect(label[k]! >= 0).toBe(above);
      if (!above) continue;
      // Its summit can be reached by going down at most as far as a hill may rise from a pass and still join: its
      // own summit and those of the hills joined on the way are no lower than here, and each pass lies less than
      // least(h) under one of them.
      const summit = summits[label[k]!]!;
      const lowest = field[k]! - least(field[summit]!);
      const climb = flood(k, columns, field.length, (j) => field[j]! >= lowest);
      expect(climb.has(summit)).toBe(true);
    }
    summits.forEach((summit, hill) => {
      // A hill is of one piece.
      const piece = flood(summit, columns, field.length, (k) => label[k] === hill);
      expect(piece.size).toBe(label.filter((l) => l === hill).length);
    });
  });

  it.each(seeds)('each place climbs to its summit where no hills join, seed %i', (seed) => {
    const field = randomField(seed, 9, 7);
    const { label, summits } = basins(field, 9, -0.5, nobody);
    label.forEach((hill, k) => {
      if (hill < 0) return;
      const climb = flood(k, 9, field.length, (j) => field[j]! >= field[k]!);
      expect(climb.has(summits[hill]!)).toBe(true);
    });
  });

  it('takes the higher of two hills on from a pass that is not low enough', () => {
    //                            pass
    const field = Float64Array.of(1, 5, 4, 3, 4.5, 1);
    const of = (least: number) => basins(field, 6, 0, () => least).summits;
    expect(of(1.5)).toEqual([1, 4]);
    expect(of(1.6)).toEqual([1]);
  });

  it('knows that the clock closes: one hill across 12', () => {
    const field = Float64Array.of(5, 3, 0, 0, 0, 4);
    const { label, summits } = basins(field, 6, 0.5, nobody);
    expect(summits).toEqual([0]);
    expect([...label]).toEqual([0, 0, -1, -1, -1, 0]);
  });

  it('knows that the faces do not: rim and bottom are apart', () => {
    const field = Float64Array.of(5, 5.5, 5, 0, 0, 0, 4, 4.5, 4);
    expect(basins(field, 3, 0.5, nobody).summits).toEqual([1, 7]);
  });

  it('finds nothing where nothing is above the floor, or known', () => {
    expect(basins(new Float64Array(12), 4, 0, nobody).summits).toEqual([]);
    expect(basins(new Float64Array(12).fill(Number.NaN), 4, 0, nobody).summits).toEqual([]);
  });
});

const LENGTH = 50;
const RADIUS = 30;
const GRID = makeGrid(LENGTH);
const COLUMNS = GRID.theta.length;
const STEP = (2 * Math.PI) / COLUMNS;
const ROW = LENGTH / (GRID.z.length - 1);

/** Zones of a wall that deviates from its target by `e` per side, known to 0.002 mm. */
function zonesOf(e: Shape, seats = [{ from: 0, to: LENGTH }]): Zone[] {
  const deviation = Float64Array.from({ length: COLUMNS * GRID.z.length }, (_, k) =>
    e(GRID.theta[k % COLUMNS]!, GRID.z[Math.floor(k / COLUMNS)]!),
  );
  const sd = deviation.map(() => 0.002);
  const surface: WearSurface = {
    grid: GRID,
    mean: deviation.map((d) => RADIUS + d),
    sd,
    sdSeen: sd,
    smoothness: { lobe: 0.03, size: 0.03, length: 25, local: 0.004, noise: 1, fixed: true },
    seenLobes: [],
    predicted: new Float64Array(0),
  };
  return findZones(surface, removalMap(surface, deviation, sd, seats, []));
}

/** How far b lies clockwise of a, in (-pi, pi]. */
const onward = (a: number, b: number) => Math.atan2(Math.sin(b - a), Math.cos(b - a));
const minus =
  (shape: Shape): Shape =>
  (theta, z) =>
    -shape(theta, z);
/** Half-width of a bump of standard width 1 where half of it stands. */
const HALF = Math.sqrt(2 * Math.LN2);

describe('zones', () => {
  const bump = { height: 0.06, theta: 2, z: 20, angle: 0.3, along: 5 };
  const shapeOf = (b: typeof bump) => gouge(b.height, b.theta, b.z, b.angle, b.along);

  function expectBump(zone: Zone, b: typeof bump, kind: Zone['kind']): void {
    expect(zone.kind).toBe(kind);
    // Summits are found on the grid: at most half a step and half a row away, 0.3 % of the height lower.
    expect(Math.abs(onward(b.theta, zone.theta))).toBeLessThanOrEqual(STEP / 2 + 1e-9);
    expect(Math.abs(zone.z - b.z)).toBeLessThanOrEqual(ROW / 2 + 1e-9);
    const signed = kind === 'high' ? -zone.peak : zone.peak;
    expect(Math.abs(signed - b.height)).toBeLessThan(0.01 * b.height);
    expect(zone.give).toBeCloseTo(0.004, 12);
    // The core ends on the last place where half of the peak stands: within a step (a row) inside the true place.
    for (const [found, wanted] of [
      [onward(zone.from, b.theta), b.angle * HALF],
      [onward(b.theta, zone.to), b.angle * HALF],
    ] as const) {
      expect(found).toBeLessThanOrEqual(wanted + 0.01);
      expect(found).toBeGreaterThan(wanted - STEP - 0.01);
    }
    for (const [found, wanted] of [
      [b.z - zone.top, b.along * HALF],
      [zone.bottom - b.z, b.along * HALF],
    ] as const) {
      expect(found).toBeLessThanOrEqual(wanted + 0.05);
      expect(found).toBeGreaterThan(wanted - ROW - 0.05);
    }
  }

  it.each(['high', 'low'] as const)('one %s bump: where, how much, how far', (kind) => {
    const shape = shapeOf(bump);
    const zones = zonesOf(kind === 'high' ? minus(shape) : shape);
    expect(zones).toHaveLength(1);
    expectBump(zones[0]!, bump, kind);
    expect(zones[0]!.allRound).toBe(false);
    // It feathers out where less than 0.0025 mm stands.
    const feather = bump.angle * Math.sqrt(2 * Math.log(bump.height / 0.0025));
    for (const found of [
      onward(zones[0]!.outerFrom, bump.theta),
      onward(bump.theta, zones[0]!.outerTo),
    ]) {
      expect(found).toBeLessThanOrEqual(feather + 0.01);
      expect(found).toBeGreaterThan(feather - STEP - 0.01);
    }
    // Metal: 2 pi h (sigma_theta R) sigma_z, less the skirt below 0.0025, which holds that share of the height.
    const whole = 2 * Math.PI * bump.height * bump.angle * RADIUS * bump.along;
    expect(zones[0]!.volume / whole).toBeGreaterThan(1 - 0.0025 / bump.height - 0.005);
    expect(zones[0]!.volume / whole).toBeLessThan(1 - 0.0025 / bump.height + 0.005);
    // Wall: the ellipse on which more than that stands.
    const ellipse =
      Math.PI * feather * RADIUS * bump.along * Math.sqrt(2 * Math.log(bump.height / 0.0025));
    // Its edge is 100 or so cells long, of which half is miscounted at random: 2 % of 1000 cells.
    expect(Math.abs(zones[0]!.area / ellipse - 1)).toBeLessThan(0.02);
  });

  it('two hills with a low pass are two, largest first; with a high pass one', () => {
    const other = { ...bump, height: 0.045, theta: 2 + 4 * bump.angle };
    const apart = zonesOf(minus(sum(shapeOf(bump), shapeOf(other))));
    expect(apart).toHaveLength(2);
    expectBump(apart[0]!, bump, 'high');
    expectBump(apart[1]!, other, 'high');
    // Midway 2 sigma from each: the pass stands at (0.06 + 0.045) exp(-2) = 0.014. At 2.2 sigma apart it is at 0.057.
    const near = { ...other, theta: 2 + 2.2 * bump.angle };
    const joined = zonesOf(minus(sum(shapeOf(bump), shapeOf(near))));
    expect(joined).toHaveLength(1);
    expect(joined[0]!.theta).toBeLessThan(2 + 1.1 * bump.angle);
  });

  it("a hill across 12 o'clock is one, from before 12 to after", () => {
    const across = { ...bump, theta: 0.02 };
    const zones = zonesOf(minus(shapeOf(across)));
    expect(zones).toHaveLength(1);
    expectBump(zones[0]!, across, 'high');
    expect(zones[0]!.from).toBeGreaterThan(Math.PI);
    expect(zones[0]!.to).toBeLessThan(Math.PI);
  });

  it('a ring is one zone all round, and a mouth with a high side still is', () => {
    const ring: Shape = (_theta, z) => 0.05 * Math.exp(-0.5 * ((z - 8) / 4) ** 2);
    const sided: Shape = (theta, z) => ring(theta, z) * (1 + 0.2 * Math.cos(theta - 1));
    for (const shape of [ring, sided]) {
      const zones = zonesOf(minus(shape));
      expect(zones).toHaveLength(1);
      expect(zones[0]!.allRound).toBe(true);
      expect(Math.abs(zones[0]!.z - 8)).toBeLessThanOrEqual(ROW / 2);
    }
    const [zone] = zonesOf(minus(sided));
    expect(Math.abs(zone!.theta - 1)).toBeLessThanOrEqual(STEP / 2 + 1e-9);
    // sqrt(2 pi) 4 mm of ring, 2 pi R round, less the skirt below 0.0025 in 0.05.
    const whole = Math.sqrt(2 * Math.PI) * 4 * 0.05 * 2 * Math.PI * RADIUS;
    const [even] = zonesOf(minus(ring));
    // The face cuts off what lies above it: Phi(-2) = 2.3 %; the skirt holds less than 5 %.
    expect(even!.volume / whole).toBeGreaterThan(0.92);
    expect(even!.volume / whole).toBeLessThan(0.98);
  });

  it('a ring open over 3 hours is not all round', () => {
    const open: Shape = (theta, z) =>
      0.05 *
      Math.exp(-0.5 * ((z - 25) / 4) ** 2) *
      (Math.abs(onward(Math.PI, theta)) < Math.PI / 4 ? 0 : 1);
    const [zone] = zonesOf(minus(open));
    expect(zone!.allRound).toBe(false);
    // From 7:30 through 12 to 4:30.
    expect(Math.abs(zone!.from - (5 * Math.PI) / 4)).toBeLessThan(2 * STEP);
    expect(Math.abs(zone!.to - (3 * Math.PI) / 4)).toBeLessThan(2 * STEP);
  });

  it('a mirrored wall has mirrored zones', () => {
    const worn = sum(
      minus(shapeOf(bump)),
      minus(shapeOf({ ...bump, height: 0.04, theta: 4.5, z: 35 })),
      shapeOf({ ...bump, height: 0.05, theta: 0.1, z: 30 }),
    );
    const mirrored = zonesOf((theta, z) => worn(-theta, z));
    const plain = zonesOf(worn);
    expect(plain.map((zone) => zone.kind)).toEqual(['high', 'low', 'high']);
    const back = (theta: number) => (theta === 0 ? 0 : 2 * Math.PI - theta);
    plain.forEach((zone, i) => {
      const other = mirrored[i]!;
      // Columns of the grid mirror onto one another, so that only cos and sin of 2 pi - theta round differently.
      expect(other.peak).toBeCloseTo(zone.peak, 12);
      expect(other.z).toBe(zone.z);
      expect(other.theta).toBeCloseTo(back(zone.theta), 9);
      expect(other.from).toBeCloseTo(back(zone.to), 9);
      expect(other.to).toBeCloseTo(back(zone.from), 9);
      expect(other.outerFrom).toBeCloseTo(back(zone.outerTo), 9);
      expect(other.outerTo).toBeCloseTo(back(zone.outerFrom), 9);
      expect(other.area).toBeCloseTo(zone.area, 6);
      expect(other.volume).toBeCloseTo(zone.volume, 6);
    });
  });

  it('turned walls have turned zones', () => {
    const by = 37 * STEP;
    const worn = minus(sum(shapeOf(bump), shapeOf({ ...bump, height: 0.03, theta: 5, z: 40 })));
    const plain = zonesOf(worn);
    const turned = zonesOf((theta, z) => worn(theta - by, z));
    expect(turned).toHaveLength(2);
    plain.forEach((zone, i) => {
      for (const key of ['theta', 'from', 'to', 'outerFrom', 'outerTo'] as const) {
        expect(Math.abs(onward(zone[key] + by, turned[i]![key]))).toBeLessThan(1e-9);
      }
      expect(turned[i]!.volume).toBeCloseTo(zone.volume, 6);
    });
  });

  it('a hollow in a high stretch is told as left out, and where most stands is not in it', () => {
    // A plateau from 10 to 4 all along but for a hollow at 1, 20 deep; highest at 3, 45 deep.
    const hollow = gouge(0.1, Math.PI / 6, 20, 0.25, 4);
    const plateau: Shape = (theta, z) =>
      0.05 / (1 + Math.exp((Math.abs(onward(Math.PI / 6, theta)) - 1.5) / 0.05)) +
      gouge(0.02, Math.PI / 2, 45, 0.3, 5)(theta, z);
    const [zone] = zonesOf((theta, z) => hollow(theta, z) - plateau(theta, z));
    expect(zone!.gaps).toHaveLength(1);
    const [gap] = zone!.gaps;
    // On size or lower, to 0.0025 mm, where the hollow is 0.0475 deep and more.
    const wide = Math.sqrt(2 * Math.log(0.1 / 0.0475));
    expect(Math.abs(onward(gap!.from, Math.PI / 6) - 0.25 * wide)).toBeLessThan(STEP);
    expect(Math.abs(onward(Math.PI / 6, gap!.to) - 0.25 * wide)).toBeLessThan(STEP);
    expect(Math.abs(20 - gap!.top - 4 * wide)).toBeLessThan(ROW);
    expect(Math.abs(gap!.bottom - 20 - 4 * wide)).toBeLessThan(ROW);
    expect(zone!.patchy).toBe(false);
    // Half of the 0.07 stands 1.458 rad from 1, on rows and columns of the grid.
    const said = zoneWords(zone!, LENGTH, 'mm');
    expect(said.where).toBe(
      '10:15 to 3:45, the whole depth, except 12:30 to 1:30, 15.6 mm to 24.2 mm deep',
    );
    expect(said.rest).toMatch(/^ at 3:00, 45\.\d mm deep, where most stands, give or take/);
  });

  it('a slanting ridge is not told as if all of its stretch stood', () => {
    const ridge: Shape = (theta, z) => 0.05 * Math.exp(-0.5 * ((theta - 0.5 - z / 10) / 0.2) ** 2);
    const [zone] = zonesOf(minus(ridge));
    expect(zone!.patchy || zone!.gaps.length > 0).toBe(true);
  });

  it('nothing is said of a wall on size, nor of metal outside the seat', () => {
    expect(zonesOf(() => 0)).toEqual([]);
    expect(zonesOf(() => -0.002)).toEqual([]);
    const deep = { ...bump, z: 40 };
    expect(zonesOf(minus(shapeOf(deep)), [{ from: 0, to: 15 }])).toEqual([]);
  });

  it('what is under a tenth of the highest is left unsaid', () => {
    const faint = { ...bump, height: 0.0055, theta: 5 };
    expect(zonesOf(minus(sum(shapeOf(bump), shapeOf(faint))))).toHaveLength(1);
    const fair = { ...faint, height: 0.0065 };
    expect(zonesOf(minus(sum(shapeOf(bump), shapeOf(fair))))).toHaveLength(2);
  });
});

/** Waves and bumps of the wall, rough here and there: seldom round, often with hollows. */
function randomWall(seed: number): Shape {
  const random = seededRandom(seed);
  const parts: Shape[] = Array.from({ length: 2 + Math.floor(4 * random.uniform()) }, () => {
    const height = 0.12 * (random.uniform() - 0.6);
    const [theta, z] = [2 * Math.PI * random.uniform(), LENGTH * random.uniform()];
    return gouge(height, theta, z, 0.15 + 1.2 * random.uniform(), 3 + 30 * random.uniform());
  });
  const [n, slant, at] = [
    Math.floor(5 * random.uniform()),
    0.1 * random.uniform(),
    random.uniform(),
  ];
  const wave: Shape = (theta, z) => -0.03 * Math.cos(n * theta + slant * z + 6 * at);
  return sum(...parts, wave);
}

describe('what is said of a zone of any wall', () => {
  /** True where a lies clockwise from..to. */
  const within = (a: number, from: number, to: number) => {
    const turn = (x: number) => ((x % (2 * Math.PI)) + 2 * Math.PI + 1e-9) % (2 * Math.PI);
    return turn(a - from) <= turn(to - from) + 2e-9;
  };
  const quarters = (clock: string) => {
    const [hour, minute] = clock.split(':').map(Number);
    return (4 * (hour! % 12) + minute! / 15) % 48;
  };

  it.each(Array.from({ length: 60 }, (_, i) => i + 1))('seed %i', (seed) => {
    const wall = randomWall(seed);
    const seats =
      seed % 3 === 0
        ? [
            { from: 0, to: 18 },
            { from: 26, to: LENGTH },
          ]
        : undefined;
    for (const zone of zonesOf(wall, seats)) {
      const { from, to, outerFrom, outerTo, top, bottom, gaps } = zone;
      const stretch = { from, to, top, bottom, allRound: zone.allRound };
      const inside = (theta: number, z: number, of: typeof stretch) =>
        z >= of.top && z <= of.bottom && (of.allRound || within(theta, of.from, of.to));
      // Where most stands is in the stretch and not left out of it.
      expect(inside(zone.theta, zone.z, stretch)).toBe(true);
      for (const gap of gaps) expect(inside(zone.theta, zone.z, gap)).toBe(false);
      // Most of the stretch that is said has metal of that kind to it, or words say that it has not.
      let [all, none] = [0, 0];
      for (const z of GRID.z) {
        const seated = seats?.some((s) => z >= s.from && z <= s.to) ?? true;
        for (const theta of GRID.theta) {
          if (!inside(theta, z, stretch) || gaps.some((gap) => inside(theta, z, gap))) continue;
          const e = wall(theta, z);
          all++;
          // Metal is missing outside of the seats as well.
          if (zone.kind === 'low' ? !(e > 0.0025) : !seated || !(-e > 0.0025)) none++;
        }
      }
      // What is left out is no more than a tenth of all of it, gaps included: of what is left, not much more.
      if (!zone.patchy && gaps.length === 0) expect(none).toBeLessThanOrEqual(0.11 * all);
      // It feathers out outside of it, on paper too.
      if (zone.allRound || outerFrom === outerTo) continue;
      expect(within(from, outerFrom, outerTo) && within(to, outerFrom, outerTo)).toBe(true);
      expect(within(outerFrom, from, to) && outerFrom !== from).toBe(false);
      expect(within(outerTo, from, to) && outerTo !== to).toBe(false);
      const words =
        /^(?:At )?(\S+?)(?: to (\S+))?, .*feather to nothing by (\S+?) and (\d+:\d+)\.$/.exec(
          Object.values(zoneWords(zone, LENGTH, 'mm')).join(', '),
        );
      if (words === null) continue;
      const [begin, end, before, after] = [
        words[1]!,
        words[2] ?? words[1]!,
        words[3]!,
        words[4]!,
      ].map(quarters) as [number, number, number, number];
      const onwards = (a: number, b: number) => (b - a + 48) % 48;
      expect(onwards(before, begin)).toBeGreaterThan(0);
      expect(onwards(end, after)).toBeGreaterThan(0);
      expect(onwards(before, begin) + onwards(begin, end) + onwards(end, after)).toBeLessThan(48);
    }
  });
});
