/**
 * The shape along the depth bears its right name, or none: 1,200 made-up profiles of every shape, drawn at random in
 * form, size, reach and place, at 4 to 12 uneven depths, each mean known to 0.0024 mm across (1 sd).
 *
 * None of the forms is one that is looked for, but for the taper, one belly in three and steps without a ramp.
 */
import { describe, expect, it } from 'vitest';
import { type DepthMean, profileOf } from '../../src/bore/profile.ts';
import type { ProfileShape } from '../../src/bore/types.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';

const LENGTH = 50;
const SD = 0.0024;
const DEPTHS = [4, 5, 6, 7, 9, 12];
const SEEDS = 200;

type Along = (z: number) => number;
const pick = <T>(random: Random, of: readonly T[]): T =>
  of[Math.floor(random.uniform() * of.length)]!;
const between = (random: Random, low: number, high: number) =>
  low + (high - low) * random.uniform();

/** Reaches in by up to 24 of 50 mm; two that leave no straight part between them are a waist as well. */
function mouth(random: Random, most = 24): Along {
  const a = between(random, 0.08, 0.28);
  const d = between(random, 10, most);
  return pick<Along>(random, [
    (z) => a * Math.max(0, 1 - z / d) ** 2,
    (z) => a * Math.max(0, 1 - z / d),
    (z) => a / (1 + ((3 * z) / d) ** 2),
  ]);
}

function belly(random: Random): Along {
  const a = between(random, 0.06, 0.26);
  return pick<Along>(random, [
    (z) => a * Math.sin((Math.PI * z) / LENGTH),
    (z) => a * (1 - ((2 * z) / LENGTH - 1) ** 2),
    (z) => a * Math.sin((Math.PI * z) / LENGTH) ** 2,
  ]);
}

const MADE: Readonly<Record<Exclude<ProfileShape, 'not-told'>, (random: Random) => Along>> = {
  straight: () => () => 0,
  taper: (random) => {
    const a = between(random, 0.05, 0.25) * pick(random, [1, -1]);
    return (z) => (a * z) / LENGTH;
  },
  'bell-at-A': (random) => mouth(random),
  'bell-at-B': (random) => {
    const a = mouth(random);
    return (z) => a(LENGTH - z);
  },
  'bell-both': (random) => {
    const [a, b] = [mouth(random, 20), mouth(random, 20)];
    return (z) => a(z) + b(LENGTH - z);
  },
  barrel: belly,
  waist: (random) => {
    const a = belly(random);
    return (z) => -a(z);
  },
  step: (random) => {
    const a = between(random, 0.06, 0.21) * pick(random, [1, -1]);
    const [at, ramp] = [between(random, 12, 38), between(random, 0, 0.6)];
    return (z) => a / (1 + Math.exp((z - at) / ramp));
  },
};

function told(name: keyof typeof MADE, depths: number, seed: number): ProfileShape {
  const random = seededRandom(1000 * depths + seed);
  const along = MADE[name](random);
  const means: DepthMean[] = Array.from({ length: depths }, (_, i) => {
    const inner = i > 0 && i < depths - 1 ? between(random, -1.5, 1.5) : 0;
    const z = 2.5 + (45 * i) / (depths - 1) + inner;
    return { z, diameter: 65 + along(z) + SD * random.normal(), sd: SD };
  });
  return profileOf(means, LENGTH)!.shape;
}

function tally(name: keyof typeof MADE, depths: readonly number[]) {
  const count = new Map<ProfileShape, number>();
  for (const n of depths) {
    for (let seed = 1; seed <= SEEDS; seed++) {
      const shape = told(name, n, seed);
      count.set(shape, (count.get(shape) ?? 0) + 1);
    }
  }
  const right = count.get(name) ?? 0;
  const all = SEEDS * depths.length;
  return {
    right,
    wrong: all - right - (count.get('not-told') ?? 0),
    all,
    said: JSON.stringify([...count]),
  };
}

/** The shares of wrong names that profile.ts states. */
const WRONG_STRAIGHT = 1 / 25;
const WRONG = 1 / 16;

describe('a wrong name', () => {
  it.each(Object.keys(MADE) as (keyof typeof MADE)[])('%s is hardly ever given one', (name) => {
    const { wrong, all, said } = tally(name, DEPTHS);
    expect(wrong, said).toBeLessThan(all * (name === 'straight' ? WRONG_STRAIGHT : WRONG));
  });
});

describe('the right name', () => {
  it.each(Object.keys(MADE) as (keyof typeof MADE)[])('%s at seven depths or more', (name) => {
    const { right, all, said } = tally(name, [7, 9, 12]);
    expect(right, said).toBeGreaterThanOrEqual(0.93 * all);
  });
});
