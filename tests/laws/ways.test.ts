/**
 * The ways of mending on bores whose figures are known from calculus (constructed): a true oval, a crescent, a round
 * bore; the smallest clean-up against the published kind of cylinder, found by other code; and what holds for any bore.
 */
import { describe, expect, it } from 'vitest';
import { stackOf } from '../../src/assembly/shims.ts';
import { needOf, planSqueeze } from '../../src/assembly/squeeze.ts';
import { cleanUp } from '../../src/bore/cleanUp.ts';
import { course } from '../../src/bore/passes.ts';
import { wallPlaces } from '../../src/bore/removal.ts';
import { deviationFrom, NO_AXIS } from '../../src/bore/target.ts';
import type { WearSurface } from '../../src/bore/types.ts';
import { holeFor, type SqueezeAim, toFill, type WaysAsked, waysOf } from '../../src/bore/ways.ts';
import type { WayFigures, WayName } from '../../src/bore/wayTypes.ts';
import { heatsOf } from '../../src/evaluate/squeeze.ts';
import {
  minimumCircumscribedCylinder,
  minimumZoneCylinder,
} from '../../src/geometry/minimaxCylinder.ts';
import { seededRandom } from '../../src/num/random.ts';
import { crescent, fading, gouge, lobe, round, sum } from '../fixtures/bores.ts';
import { COLUMNS, LENGTH, surfaceOf } from '../fixtures/surfaces.ts';

const R = 25.4;
const PRESS = 0.05;
/** Density of plain steel, 7850 kg/m3 (common handbook value), g per mm3. */
const STEEL = 7.85e-3;
const SEAT = [{ from: 0, to: LENGTH }];

const FIGURES: WayFigures = {
  oversizeStep: 0.02,
  sleeveWall: 3,
  weldAllowance: 1,
  weldOver: 'low',
  squeezeUnder: 0.05,
  heatLeast: 0.05,
  heatMost: 0.25,
  shimLayers: 3,
  shimLeast: 0.05,
  // DIN 988.
  stock: [0.1, 0.15, 0.2, 0.3, 0.5, 1],
};

/** The most that the mean draws in with one heat, across. Constructed. */
const UPSET = 0.25;

/** A drum that is small against the bore. Constructed. */
const GRINDER = { tool: { rigid: true, radius: 12, width: 20, bite: 0.05 }, slope: 0.02 };

type Said = Partial<WaysAsked> & { readonly rule?: 'free' | 'least-cut' | 'kept' };

function asked(surface: WearSurface, { rule = 'free', ...more }: Said = {}): WaysAsked {
  const plain = {
    seats: SEAT,
    keepouts: [],
    target: 2 * R,
    axis: NO_AXIS,
    bushing: 2 * R + PRESS,
    pressFit: PRESS,
    figures: FIGURES,
    ...more,
  };
  const places = wallPlaces(surface, plain.seats, plain.keepouts);
  const clean = cleanUp(surface, places, rule === 'kept' ? plain.axis : rule);
  if (clean === null) throw new Error('no seat');
  const fill = toFill({ ...plain, cleanUp: clean });
  const stack = stackOf({ thickness: fill, under: 0, over: 0, must: 'reach' }, FIGURES.stock);
  return {
    surface,
    sd: surface.sd,
    bossOutside: 90,
    standing: null,
    bare: new Uint8Array(places.length),
    grinder: () => GRINDER,
    cleanUp: clean,
    squeeze: squeezeOf(surface, plain.target - FIGURES.squeezeUnder),
    shims: stack && {
      round: holeFor(plain) + 2 * stack.thickness,
      layers: stack.layers,
    },
    ...plain,
  };
}

function squeezeOf(surface: WearSurface, goal: number): SqueezeAim | null {
  const plan = planSqueeze({
    grid: surface.grid,
    radius: surface.mean,
    seated: [...surface.grid.z].map(() => true),
    goal,
    upset: UPSET,
  });
  return (
    plan && {
      jaws: plan.jaws,
      rows: plan.rows,
      bent: Math.max(...plan.rows.map(({ bent }) => bent.largest)),
      heats: heatsOf(needOf(plan.most), { least: FIGURES.heatLeast, most: FIGURES.heatMost }),
      upset: UPSET,
    }
  );
}

function ways(surface: WearSurface, more: Said = {}) {
  const matter = asked(surface, more);
  const found = waysOf(matter);
  return {
    ...found,
    matter,
    cleanUp: matter.cleanUp,
    by: (name: WayName) => found.outcomes.find((one) => one.name === name)!,
  };
}

describe('a true oval, R + a cos 2 theta, target 2 R', () => {
  const A = 0.08;
  const { by, cleanUp: clean } = ways(surfaceOf(sum(round(R), lobe(2, A))));
  /** Area inside the oval: half the integral of r2, pi (R2 + a2 / 2). */
  const hole = Math.PI * (R * R + (A * A) / 2);
  const ring = (target: number) => LENGTH * ((Math.PI / 4) * target ** 2 - hole);

  it('ground: full press fit where it stood proud, less by twice the low where it did not', () => {
    const { pressFit, gap, off, seated, lowShare } = by('grind');
    expect(pressFit.greatest).toBeCloseTo(PRESS, 12);
    expect(pressFit.least).toBeCloseTo(PRESS - 2 * A, 12);
    expect(Math.abs(Math.sin(pressFit.theta))).toBeLessThan(1e-9);
    // Mean of max(0, cos 2 theta): 1 / pi, and at 120 places with the corners among them 2 cot(h) / 120.
    const h = (2 * Math.PI) / COLUMNS;
    const half = 2 / (COLUMNS * Math.tan(h));
    expect(Math.abs(half - 1 / Math.PI)).toBeLessThan(3e-4);
    expect(pressFit.mean).toBeCloseTo(PRESS - 2 * A * half, 12);
    expect(gap.over).toBeCloseTo(A, 12);
    expect(gap.behind).toBeCloseTo(A - PRESS / 2, 12);
    expect(off.greatest).toBeCloseTo(A, 12);
    // Integral of t (r + t / 2) over the low half, t = -a cos 2 theta, r = R - t: 2 pi (R a / pi - a2 / 8).
    expect(off.volume).toBeCloseTo(LENGTH * 2 * Math.PI * (R * A * half - (A * A) / 8), 6);
    expect(off.mass).toBeCloseTo(off.volume * STEEL, 12);
    // Below half the press fit: all but two arcs of 2 acos(c) / 2 each.
    const c = PRESS / 2 / A;
    expect(Math.abs(seated.likely - (1 - Math.acos(c) / Math.PI))).toBeLessThan(h / 4);
    // Every second place but those on the edges, which are on the target.
    expect(Math.abs(lowShare - 0.5)).toBeLessThanOrEqual(4 / COLUMNS);
  });

  it('left: tightest where it stands proud', () => {
    const { pressFit, off, seated, passes } = by('leave');
    expect(pressFit.greatest).toBeCloseTo(PRESS + 2 * A, 12);
    expect(pressFit.mean).toBeCloseTo(PRESS, 12);
    expect(pressFit.least).toBeCloseTo(PRESS - 2 * A, 12);
    expect([off.volume, passes]).toEqual([0, 0]);
    expect(seated.likely).toBe(by('grind').seated.likely);
  });

  it('oversize: round at the clean-up, 2 (R + a), the bushing on the next step, pressed alike everywhere', () => {
    expect(clean.diameter).toBeCloseTo(2 * (R + A), 9);
    const { target, bushing, pressFit, off, seated, gap, wallLeft } = by('oversize');
    // 50.8 + 0.16 + 0.05 = 51.01, and so 51.02.
    expect(bushing).toBeCloseTo(51.02, 9);
    expect(target).toBeCloseTo(51.02 - PRESS, 9);
    for (const fit of [pressFit.least, pressFit.mean, pressFit.greatest]) {
      expect(fit).toBeCloseTo(PRESS, 9);
    }
    expect(off.volume).toBeCloseTo(ring(target), 3);
    expect(off.greatest).toBeCloseTo(target / 2 - (R - A), 9);
    expect([seated.likely, gap.over, gap.behind]).toEqual([1, 0, 0]);
    expect(wallLeft).toBeCloseTo((90 - target) / 2, 9);
  });

  it('shims: the fewest that fill it, and the bore made to suit them', () => {
    const { layers, target, outside, bushing, pressFit, on, off } = by('shim');
    // 0.08 per side is to be filled: one of 0.1.
    expect(layers).toEqual([0.1]);
    expect(target).toBeCloseTo(2 * R + 0.2, 9);
    expect([bushing, outside]).toEqual([2 * R + PRESS, target + PRESS]);
    expect(pressFit.least).toBeCloseTo(PRESS, 9);
    expect(on.volume).toBeCloseTo((Math.PI / 4) * LENGTH * (target ** 2 - (2 * R) ** 2), 6);
    expect(off.volume).toBeCloseTo(ring(target), 3);
  });

  it('sleeve: bored for the wall that is asked for, and what is left of the boss', () => {
    const { layers, target, on, off, wallLeft, passes, pressFit } = by('sleeve');
    expect(target).toBeCloseTo(2 * R + 6, 9);
    expect(layers[0]).toBeCloseTo(3, 9);
    expect(on.volume).toBeCloseTo((Math.PI / 4) * LENGTH * (target ** 2 - (2 * R) ** 2), 6);
    expect(off.volume).toBeCloseTo(ring(target), 3);
    expect(wallLeft).toBeCloseTo((90 - target) / 2, 9);
    expect(passes).toBeNaN();
    expect(pressFit.mean).toBeCloseTo(PRESS, 9);
  });

  it('weld: what is low and the allowance on it, and that off again with the high spots', () => {
    const { on, off, pressFit, gap, seated } = by('weld');
    const a = FIGURES.weldAllowance;
    expect(on.greatest).toBeCloseTo(A + a, 9);
    expect(off.greatest).toBeCloseTo(a, 9);
    expect([pressFit.least, gap.over, seated.likely]).toEqual(
      [PRESS, 0, 1].map((x) => expect.closeTo(x, 9)),
    );
    // All of it ends at the target: what was put on less what came off is what the hole was too large.
    expect(on.volume - off.volume).toBeCloseTo(LENGTH * (hole - Math.PI * R * R), 3);
    // Nothing is known of a bore that was not measured since.
    expect([seated.least, pressFit.give]).toEqual([Number.NaN, Number.NaN]);
  });

  it('weld over the whole seat: a layer down to the target less the allowance, and that layer off again', () => {
    const figures = { ...FIGURES, weldOver: 'seat' } as const;
    const { on, off } = ways(surfaceOf(sum(round(R), lobe(2, A))), { figures }).by('weld');
    const a = FIGURES.weldAllowance;
    const inner = Math.PI * (R - a) ** 2;
    expect(on.volume).toBeCloseTo(LENGTH * (hole - inner), 3);
    expect(off.volume).toBeCloseTo(LENGTH * (Math.PI * R * R - inner), 3);
  });

  it('squeeze: the oval bent out closes 2 a across, and shortening takes it under the target', () => {
    const { squeeze, off, pressFit, seated } = by('squeeze');
    const under = FIGURES.squeezeUnder;
    expect(squeeze!.bentOver).toBeCloseTo(0, 9);
    expect(squeeze!.upset).toBeCloseTo(under, 9);
    expect(squeeze!.closing).toBeCloseTo(2 * A + under, 9);
    // 0.21 across: one heat at 0.25, five at 0.05.
    expect([squeeze!.heatsLeast, squeeze!.heatsMost]).toEqual([1, 5]);
    const ground = (Math.PI / 4) * LENGTH * ((2 * R) ** 2 - (2 * R - under) ** 2);
    expect(off.volume).toBeCloseTo(ground, 6);
    expect([pressFit.least, seated.likely]).toEqual([expect.closeTo(PRESS, 9), 1]);
  });

  it('squeeze: hot metal that draws in more than the jaws move keeps the oval, smaller by what it draws in; passes for both ends', () => {
    const { squeeze, passes, target } = by('squeeze');
    const { drawnIn } = squeeze!;
    // 2 a and the margin, across, are less than what a heat may draw in: nothing is left to bend, and the mean is less by that.
    expect(FIGURES.heatMost).toBeGreaterThan(2 * A + FIGURES.squeezeUnder);
    const small = FIGURES.heatMost / 2;
    expect(drawnIn.off.greatest).toBeCloseTo(A + small, 9);
    const planned = (surface: WearSurface) =>
      course({
        surface,
        removal: { deviation: deviationFrom(surface, target / 2, NO_AXIS), sd: surface.sd },
        places: wallPlaces(surface, SEAT, []),
        bare: new Uint8Array(surface.mean.length),
        radius: target / 2,
        ...GRINDER,
      }).removals.length;
    expect(passes).toBe(planned(surfaceOf(round(R - FIGURES.squeezeUnder / 2))));
    expect(drawnIn.passes).toBe(planned(surfaceOf(sum(round(R - small), lobe(2, A)))));
    expect(passes).toBeGreaterThan(1);
    expect(drawnIn.passes).toBeGreaterThan(passes);
  });

  it('weld: 1 mm of allowance is bored, 0.2 mm is ground in as many passes as the plan takes of it', () => {
    // Bites of 0.05 down to 0.1, then half each time down to less than 0.0025: 18 and 6.
    const thick = by('weld');
    expect([thick.passes, thick.fewest]).toEqual([Number.NaN, 24]);
    const figures = { ...FIGURES, weldAllowance: 0.2, weldOver: 'seat' } as const;
    const { passes, fewest } = ways(surfaceOf(sum(round(R), lobe(2, A))), { figures }).by('weld');
    // 0.05 twice, then half of 0.1 and on: 2 and 6; the wall is round, so that tool and slope hold nothing back.
    expect([passes, fewest]).toEqual([8, Number.NaN]);
  });

  it('a target over its mean size by half of the oval and the margin: bending alone, and only half of it', () => {
    const under = FIGURES.squeezeUnder;
    const { by: larger } = ways(surfaceOf(sum(round(R), lobe(2, A))), {
      target: 2 * R + A + under,
      bushing: 2 * R + A + under + PRESS,
    });
    const { squeeze } = larger('squeeze');
    // Largest place R + (1 - s) a = R + a / 2 where it ends: s = 1 / 2.
    expect(squeeze!.upset).toBe(0);
    expect(squeeze!.closing).toBeCloseTo(A, 9);
    expect(squeeze!.bentOver).toBeCloseTo(-under / 2, 9);
  });
});

describe('a crescent, R + w max(0, cos theta)', () => {
  const W = 0.4572;
  const surface = surfaceOf(sum(round(R), (t) => W * Math.max(0, Math.cos(t))));

  it('about the old centre cleaning up costs 2 w across, with the centre free w', () => {
    const kept = ways(surface, { rule: 'kept' }).cleanUp;
    expect(kept.diameter).toBeCloseTo(2 * (R + W), 12);
    const free = ways(surface).cleanUp;
    // Common practice: keeping the old centre costs 2 w of diameter, letting it move costs w; beyond first order w2 / R.
    expect(Math.abs(free.diameter - (2 * R + W))).toBeLessThan((W * W) / R);
    expect(free.axis.y).toBeCloseTo(W / 2, 2);
  });

  it('0.018 in on one side of 3.501: clean-up 3.537 against 3.519, as the trade reckons', () => {
    const radius = (3.501 * 25.4) / 2;
    const worn = surfaceOf(sum(round(radius), (t) => 0.018 * 25.4 * Math.max(0, -Math.cos(t))));
    const inches = (rule: Said['rule'] & string) => ways(worn, { rule }).cleanUp.diameter / 25.4;
    expect(inches('kept').toFixed(3)).toBe('3.537');
    expect(inches('free').toFixed(3)).toBe('3.519');
  });
});

describe('any worn bore', () => {
  const worn = (seed: number) => {
    const random = seededRandom(seed);
    const amount = (most: number) => most * random.uniform();
    return surfaceOf(
      sum(
        round(R),
        crescent(amount(0.3), amount(0.05), amount(6), fading(20 + amount(40))),
        lobe(2, amount(0.1), amount(3)),
        lobe(3, amount(0.03), amount(2)),
        gouge(amount(0.2), amount(6), amount(LENGTH), 0.2, 3),
      ),
      33,
      0.004,
    );
  };

  it('the smallest clean-up is the minimum circumscribed cylinder of the seat, the least cut its minimum zone (ISO 12180-1), found by other code', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const surface = worn(seed);
      const { theta, z } = surface.grid;
      const seats = [{ from: 4, to: 30 }];
      const places = wallPlaces(surface, seats, []);
      const found = cleanUp(surface, places, 'free')!;
      const [xs, ys, zs]: [number[], number[], number[]] = [[], [], []];
      for (let k = 0; k < places.length; k++) {
        if (places[k] !== 1) continue;
        const angle = theta[k % COLUMNS]!;
        xs.push(surface.mean[k]! * Math.sin(angle));
        ys.push(surface.mean[k]! * Math.cos(angle));
        zs.push(z[Math.floor(k / COLUMNS)]!);
      }
      const other = minimumCircumscribedCylinder(xs, ys, zs);
      if (other.status !== 'ok') throw new Error(other.status);
      const zone = minimumZoneCylinder(xs, ys, zs);
      if (zone.status !== 'ok') throw new Error(zone.status);
      const { axis } = cleanUp(surface, places, 'least-cut')!;
      const about = deviationFrom(surface, 0, axis).filter((_, k) => places[k] === 1);
      const spread = Math.max(...about) - Math.min(...about);
      // The narrowest of all, but for what leaning does to a distance, as below.
      expect(Math.abs(spread - zone.deviation.range)).toBeLessThan((R * (0.3 / 26) ** 2) / 2);
      // Distances square to a leaning axis are shorter by half the lean squared: (0.3 / 26)2 / 2 of R at most.
      expect(Math.abs(found.diameter - other.diameter)).toBeLessThan((2 * R * (0.3 / 26) ** 2) / 2);
    }
  });

  it('press fits lie between the least and the greatest, seat shares within 0 and 1, and ways keep their word', () => {
    for (let seed = 20; seed < 32; seed++) {
      const surface = worn(seed);
      const { outcomes, cleanUp: clean } = ways(surface, {
        keepouts: [{ from: 10, to: 16, theta: 2, width: 8 }],
        target: 2 * R + 0.05,
        bushing: seed % 2 === 0 ? 2 * R + 0.1 : Number.NaN,
        bossOutside: seed % 3 === 0 ? Number.NaN : 80,
      });
      for (const one of outcomes) {
        const { least, mean, greatest } = one.pressFit;
        expect(least).toBeLessThanOrEqual(mean + 1e-12);
        expect(mean).toBeLessThanOrEqual(greatest + 1e-12);
        expect(one.seated.likely).toBeGreaterThanOrEqual(0);
        expect(one.seated.likely).toBeLessThanOrEqual(1);
        expect(Number.isNaN(one.wallLeft)).toBe(seed % 3 === 0);
        if (['shim', 'oversize', 'sleeve'].includes(one.name)) {
          expect(one.target).toBeGreaterThanOrEqual(clean.diameter - 1e-9);
          expect(least).toBeCloseTo(PRESS, 9);
        }
        // Nothing is ground below its target: what is left about it is never below 0 on the seat.
        if (one.name !== 'leave') expect(greatest).toBeCloseTo(one.outside - one.target, 9);
      }
    }
  });

  it('a squeeze takes the largest place of each depth down to where it is to end, and moves no depth that is under it', () => {
    for (let seed = 40; seed < 46; seed++) {
      const surface = worn(seed);
      const target = 2 * (R + 0.06);
      const { by, matter } = ways(surface, { target, bushing: target + PRESS });
      const before = deviationFrom(surface, R + 0.06, NO_AXIS);
      const mean = by('squeeze').deviation;
      const rows = matter.squeeze?.rows ?? [];
      rows.forEach((row, iz) => {
        const across = (field: Float64Array) =>
          Array.from(
            { length: COLUMNS / 2 },
            (_, it) => field[iz * COLUMNS + it]! + field[iz * COLUMNS + it + COLUMNS / 2]!,
          );
        if (Math.max(...across(before)) <= -0.05) expect(row.close).toBe(0);
        // The largest size across, which is ground to the target at least.
        const largest = Math.max(...across(before)) - row.close - row.short;
        expect(largest).toBeLessThanOrEqual(Math.max(-0.05, largest) + 1e-9);
      });
      expect(Math.min(...mean)).toBeGreaterThanOrEqual(0);
    }
  });

  it('passes are those of the plan on the same wall', () => {
    for (let seed = 50; seed < 56; seed++) {
      const surface = worn(seed);
      const { by, matter } = ways(surface, { target: 2 * R + 0.05, bushing: 2 * R + 0.05 + PRESS });
      for (const name of ['grind', 'oversize'] as const) {
        const { target, axis, passes } = by(name);
        const { removals } = course({
          surface,
          removal: { deviation: deviationFrom(surface, target / 2, axis), sd: surface.sd },
          places: wallPlaces(surface, SEAT, []),
          bare: matter.bare,
          radius: target / 2,
          ...GRINDER,
        });
        expect(passes).toBe(removals.length);
        expect(passes).toBeGreaterThan(1);
      }
    }
  });

  it('nothing seated cleans up nowhere', () => {
    const surface = worn(1);
    const places = wallPlaces(surface, [{ from: 60, to: 70 }], []);
    expect(cleanUp(surface, places, 'free')).toBeNull();
  });
});
