/**
 * Where a wall stands after passes, by all surveys together. Bores and cuts are constructed: plain formulas of wear, a cut
 * with corners that no smooth surface follows, a hand that takes a known share of it.
 */
import { describe, expect, it } from 'vitest';
import { design } from '../../src/bore/design.ts';
import { fieldAt } from '../../src/bore/gate.ts';
import { condition } from '../../src/bore/posterior.ts';
import { usualSmoothness } from '../../src/bore/smoothness.ts';
import { type Stage, type Standing, standing } from '../../src/bore/standing.ts';
import { gridSpread, makeGrid, wearSurface } from '../../src/bore/surface.ts';
import type { Field } from '../../src/bore/types.ts';
import type { Instrument } from '../../src/job/schema.ts';
import { evenDepths, hours, readingsOf } from '../fixtures/simulated.ts';

const R = 30;
const LENGTH = 60;
const NOISE = 0.002;
const GRID = makeGrid(LENGTH);
const COLUMNS = GRID.theta.length;
const FOUND = { radius: R, length: LENGTH, wornSide: Number.NaN };
const SMOOTHNESS = usualSmoothness(LENGTH);

const fieldOf = (f: (theta: number, z: number) => number): Field =>
  Float64Array.from({ length: COLUMNS * GRID.z.length }, (_, k) =>
    f(GRID.theta[k % COLUMNS]!, GRID.z[Math.floor(k / COLUMNS)]!),
  );

/** An oval that fades along the depth. */
const WORN = fieldOf((theta, z) => R + 0.04 * Math.cos(2 * theta) * (1 - z / (2 * LENGTH)));
/** 0.05 mm off a block of the wall from 1:30 to 4:30 and its opposite, corners and all; nothing may be ground at the bottom. */
const BLOCKS = fieldOf((theta, z) => {
  if (z > 0.9 * LENGTH) return Number.NaN;
  return Math.abs(Math.sin(theta)) > Math.SQRT1_2 && z > 0.2 * LENGTH && z < 0.6 * LENGTH
    ? 0.05
    : 0;
});

interface Read {
  readonly instrument?: Instrument;
  readonly thetas?: readonly number[];
  readonly depths?: readonly number[];
  /** Where the axis stands that radii are taken from: to 3 o'clock, mm. */
  readonly aside?: number;
}

function stage(wall: Field, asked: Field, seed: number, read: Read = {}): Stage {
  const { instrument = 'radius', thetas = hours(12), depths = evenDepths(5, LENGTH) } = read;
  const { aside = 0 } = read;
  const truth = (theta: number, z: number) =>
    fieldAt(GRID, wall, theta, z) - aside * Math.sin(theta);
  const reader = { noise: NOISE, resolution: 0, seed };
  return {
    sightings: readingsOf(truth, { instrument, thetas, depths, reader, setup: -1 }),
    setups: [],
    asked,
  };
}

const cut = (wall: Field, share: (theta: number) => number): Field =>
  wall.map((r, k) => (BLOCKS[k]! > 0 ? r + share(GRID.theta[k % COLUMNS]!) * BLOCKS[k]! : r));

function after(stages: readonly Stage[]): Standing {
  const found = standing(stages, { ...FOUND, smoothness: [SMOOTHNESS] }, GRID);
  if (found === null) throw new Error('no surface');
  return found;
}

/** Root mean square of the surface less the wall, mm. */
function off(mean: Field, wall: Field): number {
  return Math.sqrt(mean.reduce((sum, r, k) => sum + (r - wall[k]!) ** 2, 0) / wall.length);
}

/** Share of the wall that lies within two standard deviations. */
function within({ surface: { mean, sd } }: Standing, wall: Field): number {
  return mean.filter((r, k) => Math.abs(r - wall[k]!) < 2 * sd[k]!).length / wall.length;
}

describe('a wall after passes', () => {
  it('is the wall as found and the share of each pass that the hand took: corners between the readings too', () => {
    const once = cut(WORN, () => 0.7);
    const twice = cut(once, () => 1.3);
    const nothing = new Float64Array(WORN.length);
    const last = stage(twice, nothing, 3);
    const found = after([stage(WORN, BLOCKS, 1), stage(once, BLOCKS, 2), last]);
    for (const [pass, share] of [0.7, 1.3].entries()) {
      expect(Math.abs(found.shares[pass]! - share)).toBeLessThan(3 * found.shareSds[pass]!);
      // A hand uneven by 0.1 and the noise of both surveys over the 12 readings where something came off: 0.033. Twice
      // that, as the surface is learned from the same readings.
      const least = Math.hypot(0.1, (NOISE * Math.SQRT2) / 0.05) / Math.sqrt(12);
      expect(found.shareSds[pass]).toBeLessThan(2 * least);
    }
    // The last survey alone draws the corners round.
    const d = design(last.sightings, [], LENGTH);
    const p = condition(d, SMOOTHNESS, R)!;
    const alone = wearSurface(p, GRID, gridSpread(p, GRID));
    expect(off(found.surface.mean, twice)).toBeLessThan(NOISE);
    expect(off(alone.mean, twice)).toBeGreaterThan(5 * NOISE);
    expect(within(found, twice)).toBeGreaterThan(0.95);
  });

  it('needs only a few readings at a gate', () => {
    const once = cut(WORN, () => 1.3);
    const few = { thetas: [Math.PI / 2, Math.PI], depths: [0.4 * LENGTH] };
    const found = after([
      stage(WORN, BLOCKS, 1),
      stage(once, new Float64Array(WORN.length), 2, few),
    ]);
    expect(Math.abs(found.shares[0]! - 1.3)).toBeLessThan(3 * found.shareSds[0]!);
    expect(within(found, once)).toBeGreaterThan(0.95);
  });

  it('allows for an axis that is set anew', () => {
    const once = cut(WORN, () => 0.7);
    const found = after([
      stage(WORN, BLOCKS, 1, { aside: 0.03 }),
      stage(once, new Float64Array(WORN.length), 2),
    ]);
    expect(Math.abs(found.shares[0]! - 0.7)).toBeLessThan(3 * found.shareSds[0]!);
    // In the frame of the last survey.
    expect(off(found.surface.mean, once)).toBeLessThan(NOISE);
  });

  it('follows the readings where the hand has taken three times as much on one side as on the other', () => {
    const once = cut(WORN, (theta) => (theta < Math.PI ? 1.5 : 0.5));
    const found = after([stage(WORN, BLOCKS, 1), stage(once, new Float64Array(WORN.length), 2)]);
    expect(Math.abs(found.shares[0]! - 1)).toBeLessThan(0.25);
    for (const theta of [Math.PI / 2, (3 * Math.PI) / 2]) {
      const z = evenDepths(5, LENGTH)[1]!;
      const [told, true_] = [found.surface.mean, once].map((of) => fieldAt(GRID, of, theta, z));
      expect(Math.abs(told! - true_!)).toBeLessThan(3 * fieldAt(GRID, found.surface.sd, theta, z));
      expect(Math.abs(told! - true_!)).toBeLessThan(3 * NOISE);
    }
  });

  it('from diameters: what both sides together grew', () => {
    const once = cut(WORN, () => 0.7);
    const across: Read = { instrument: 'two-point', thetas: hours(12).slice(0, 6) };
    const found = after([
      stage(WORN, BLOCKS, 1, across),
      stage(once, new Float64Array(WORN.length), 2, across),
    ]);
    expect(Math.abs(found.shares[0]! - 0.7)).toBeLessThan(3 * found.shareSds[0]!);
    expect(off(found.surface.mean, once)).toBeLessThan(NOISE);
  });
});
