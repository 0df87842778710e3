/** What every plan of passes keeps to, on random bores, tools and doubts. */
import { describe, expect, it } from 'vitest';
import { course, ON_SIZE, type PassMatter, planPasses } from '../../src/bore/passes.ts';
import { reach } from '../../src/bore/reach.ts';
import { wallPlaces } from '../../src/bore/removal.ts';
import { deviationFrom } from '../../src/bore/target.ts';
import type { Field, Grid, WearSurface } from '../../src/bore/types.ts';
import { seededRandom } from '../../src/num/random.ts';
import { anyBore } from '../fixtures/simulated.ts';

const COLUMNS = 40;
const ROWS = 15;
/** Rounding of sums of figures below 1 mm. */
const ROUNDING = 1e-12;

/** A worn bore of the simulator with a tool, a slope, a doubt, seats and keepouts drawn at random. */
function drawn(seed: number): PassMatter {
  const bore = anyBore(seed);
  const r = seededRandom(seed + 40_000_000);
  const between = (low: number, high: number) => low + (high - low) * r.uniform();
  const grid: Grid = {
    theta: Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS),
    z: Float64Array.from({ length: ROWS }, (_, i) => (bore.length * i) / (ROWS - 1)),
  };
  const mean = new Float64Array(COLUMNS * ROWS);
  mean.forEach((_, k) => {
    mean[k] = bore.truth(grid.theta[k % COLUMNS]!, grid.z[Math.floor(k / COLUMNS)]!);
  });
  const surface = { grid, mean } as WearSurface;
  const sorted = mean.slice().sort();
  const radius = sorted[Math.floor(between(0.2, 0.95) * sorted.length)]!;
  const axis = { x: 0, y: 0, leanX: 0, leanY: 0 };
  const deviation = deviationFrom(surface, radius, axis);
  const doubt = between(0, 0.02);
  const sd = deviation.map(() => doubt * between(0.5, 1));
  const split = between(0.3, 0.7) * bore.length;
  const seats =
    r.uniform() < 0.5
      ? [{ from: 0, to: bore.length }]
      : [
          { from: 0, to: split * 0.9 },
          { from: split, to: bore.length * between(0.8, 1) },
        ];
  const hole = {
    from: 0.4 * bore.length,
    to: 0.55 * bore.length,
    theta: between(0, 6),
    width: 0.4 * radius,
  };
  const land = { from: 0.9 * bore.length, to: bore.length, theta: Number.NaN, width: 0 };
  const chance = r.uniform();
  const keepouts = chance < 0.3 ? [hole] : chance < 0.5 ? [hole, land] : [];
  const bare = wallPlaces(surface, [], keepouts.includes(hole) ? [hole] : []);
  return {
    surface,
    removal: { deviation, sd },
    places: wallPlaces(surface, seats, keepouts),
    bare: bare.map((place) => (place === 2 ? 1 : 0)),
    radius,
    tool: {
      rigid: r.uniform() < 0.8,
      radius: radius * between(0.1, 0.95),
      width: bore.length * between(0.05, 1.2),
      bite: between(0.01, 0.2),
    },
    slope: between(0.002, 0.06),
  };
}

const SEEDS = Array.from({ length: 500 }, (_, i) => i + 1);

describe('every pass of 500 random bores and tools', () => {
  it('ends above the target, and the first by the give-or-take; takes no more than its bite, or half of what is left', () => {
    let passes = 0;
    for (const seed of SEEDS) {
      const matter = drawn(seed);
      const { removals } = course(matter);
      passes += removals.length;
      let now = matter.removal.deviation;
      const faults: string[] = [];
      removals.forEach((removal, at) => {
        const sure = at === 0 ? 2 : 0;
        removal.forEach((g, k) => {
          if (matter.places[k] === 2) {
            if (!Number.isNaN(g)) faults.push(`${seed}: kept-off place ${k} is ground`);
            return;
          }
          const left = Math.max(0, -now[k]!);
          const allowed = Math.min(matter.tool.bite, left / 2, left - sure * matter.removal.sd[k]!);
          if (!(g >= 0 && g <= Math.max(0, allowed) + ROUNDING)) {
            faults.push(`${seed}: pass ${at + 1}, place ${k}: ${g} of ${allowed}`);
          }
        });
        now = now.map((e, k) => (removal[k]! > 0 ? e + removal[k]! : e));
      });
      expect(faults.slice(0, 3)).toEqual([]);
    }
    // The draw is no empty one: bores of four passes on average at least.
    expect(passes).toBeGreaterThan(4 * SEEDS.length);
  });

  it('is nowhere steeper than the slope', () => {
    let pairs = 0;
    for (const seed of SEEDS) {
      const matter = drawn(seed);
      const { surface, radius, slope } = matter;
      const { theta, z } = surface.grid;
      // Distances go by the two rows and the columns between.
      const allowed = Float64Array.from({ length: ROWS * ROWS * COLUMNS }, (_, i) => {
        const [a, b] = [Math.floor(i / (ROWS * COLUMNS)), Math.floor(i / COLUMNS) % ROWS];
        return slope * apart(theta, z, radius, a * COLUMNS, b * COLUMNS + (i % COLUMNS));
      });
      for (const removal of course(matter).removals) {
        const worst = steepestOver(removal, allowed);
        pairs += worst.pairs;
        expect(worst.over).toBeLessThan(ROUNDING);
      }
    }
    // Nearly every pair of places of every pass was looked at.
    expect(pairs).toBeGreaterThan(4 * SEEDS.length * 0.4 * (COLUMNS * ROWS) ** 2);
  });

  it('leaves on the seats under 0.0025 mm, or what tool or slope do not reach, and lists it', () => {
    let listed = 0;
    for (const seed of SEEDS) {
      const matter = drawn(seed);
      const plan = planPasses(matter);
      const { deviation } = course(matter);
      const most = Math.max(...deviation.map((e, k) => (matter.places[k] === 1 && e < 0 ? -e : 0)));
      expect(plan.leftMost).toBe(most);
      expect(plan.left.length > 0).toBe(most >= ON_SIZE);
      if (most >= ON_SIZE) expect(plan.left[0]!.most).toBe(most);
      for (const place of plan.left) {
        listed++;
        expect(whyLeft(matter, deviation, place, plan.passes.length === 0)).toBe(place.why);
      }
    }
    expect(listed).toBeGreaterThan(0);
  });

  it('asks nothing off beyond the seats but what blends a seat out', () => {
    for (const seed of SEEDS.slice(0, 200)) {
      const matter = drawn(seed);
      const { theta, z } = matter.surface.grid;
      for (const removal of course(matter).removals) {
        removal.forEach((g, k) => {
          if (matter.places[k] !== 0 || !(g > 0)) return;
          // Some seat place is worked so deep that the slope leads down to here.
          const reason = removal.some((other, q) => {
            if (matter.places[q] !== 1) return false;
            return (
              other > g && other - matter.slope * apart(theta, z, matter.radius, k, q) > g - 1e-9
            );
          });
          expect(reason).toBe(true);
        });
      }
    }
  });
});

describe('passes whose answer is known', () => {
  it('a round bore 0.1 mm per side too small takes half of what is left each time', () => {
    const matter = evenly(-0.1, 0, { rigid: true, radius: 12, width: 10, bite: 1 });
    const { removals } = course(matter);
    // 0.1 / 2^k first falls under 0.0025 at k = 6.
    expect(removals.map((g) => g[7]!)).toEqual([0.05, 0.025, 0.0125, 0.00625, 0.003125, 0.0015625]);
  });

  it('the first pass stays off the target by twice the standard deviation', () => {
    const matter = evenly(-0.1, 0.04, { rigid: true, radius: 12, width: 10, bite: 1 });
    expect(course(matter).removals[0]![3]).toBeCloseTo(0.02, 12);
    const doubtful = evenly(-0.1, 0.06, { rigid: true, radius: 12, width: 10, bite: 1 });
    const plan = planPasses(doubtful);
    expect(plan.passes).toEqual([]);
    expect(plan.left[0]).toMatchObject({ why: 'doubt', most: 0.1 });
  });

  it('the bite bounds a pass before the half does', () => {
    const matter = evenly(-0.3, 0, { rigid: true, radius: 12, width: 10, bite: 0.1 });
    expect(
      course(matter)
        .removals.slice(0, 3)
        .map((g) => +g[0]!.toFixed(9)),
    ).toEqual([0.1, 0.1, 0.05]);
  });

  it('a drum too large for the bore leaves all of it, and says that it is the tool', () => {
    const matter = evenly(-0.1, 0, { rigid: true, radius: 26, width: 10, bite: 1 });
    const plan = planPasses(matter);
    expect(plan.passes).toEqual([]);
    expect(plan.left[0]).toMatchObject({ why: 'tool', most: 0.1 });
  });
});

/** A round bore 25 mm in radius that stands off its target by `e` everywhere. Constructed. */
function evenly(e: number, sd: number, tool: PassMatter['tool']): PassMatter {
  const grid: Grid = {
    theta: Float64Array.from({ length: 24 }, (_, i) => (2 * Math.PI * i) / 24),
    z: Float64Array.from({ length: 9 }, (_, i) => 5 * i),
  };
  const deviation = new Float64Array(24 * 9).fill(e);
  return {
    surface: { grid, mean: deviation.map((d) => 25 + d) } as WearSurface,
    removal: { deviation, sd: deviation.map(() => sd) },
    places: new Uint8Array(24 * 9).fill(1),
    bare: new Uint8Array(24 * 9),
    radius: 25,
    tool,
    slope: 0.02,
  };
}

function apart(theta: Field, z: Field, radius: number, a: number, b: number): number {
  const turn = Math.abs(theta[a % theta.length]! - theta[b % theta.length]!);
  const dz = z[Math.floor(a / theta.length)]! - z[Math.floor(b / theta.length)]!;
  return Math.hypot(radius * Math.min(turn, 2 * Math.PI - turn), dz);
}

/**
 * How far the rise between any two places that may be ground is over what is allowed, at most; and how many pairs that were.
 *
 * @param allowed by the rows of both and the columns from one to the other
 */
function steepestOver(removal: Field, allowed: Float64Array): { over: number; pairs: number } {
  let over = Number.NEGATIVE_INFINITY;
  let pairs = 0;
  for (let a = 0; a < removal.length; a++) {
    const here = removal[a]!;
    if (Number.isNaN(here)) continue;
    const [row, column] = [Math.floor(a / COLUMNS), a % COLUMNS];
    for (let b = 0; b < a; b++) {
      const rise = Math.abs(here - removal[b]!);
      if (Number.isNaN(rise)) continue;
      pairs++;
      const turned = (b % COLUMNS) - column;
      const between = turned < 0 ? turned + COLUMNS : turned;
      const most = allowed[(row * ROWS + Math.floor(b / COLUMNS)) * COLUMNS + between]!;
      if (rise - most > over) over = rise - most;
    }
  }
  return { over, pairs };
}

/** In doubt is what a pass would take of the same wall, were it known exactly, where today's give-or-take allows none. */
function whyLeft(
  matter: PassMatter,
  deviation: Field,
  { theta, z, most }: { theta: number; z: number; most: number },
  none: boolean,
): string {
  const { surface, removal, places, bare, radius, tool } = matter;
  const { grid } = surface;
  const k = grid.z.indexOf(z) * grid.theta.length + grid.theta.indexOf(theta);
  const exact = { ...matter, removal: { ...removal, sd: removal.sd.map(() => 0) } };
  // Under 0.0005 mm is no pass.
  const [first] = none ? course(exact).removals : [];
  if (first !== undefined && first[k]! >= 0.0005) return 'doubt';
  const all = deviation.map((e, i) =>
    bare[i] === 1 ? Number.POSITIVE_INFINITY : places[i] !== 2 && e < 0 ? -e : 0,
  );
  return reach(deviation, all, grid, radius, tool)[k]! < most / 2 ? 'tool' : 'slope';
}
