/** A pin's plan: constructed shafts with closed forms, linear programmes by highs, and a shaft taken through its stages. */
import { describe, expect, it } from 'vitest';
import { depositOf, ELECTRODES } from '../../src/assembly/weld.ts';
import { landPlaces } from '../../src/bore/lands.ts';
import {
  bestAxis,
  cleansUp,
  outsideAbout,
  shortOf,
  volumeBetween,
} from '../../src/bore/outside.ts';
import { NO_PATTERNS } from '../../src/bore/patterns.ts';
import { pinAdvice, pinWays, turnedRound } from '../../src/bore/pinWays.ts';
import { SEATED } from '../../src/bore/removal.ts';
import { makeGrid } from '../../src/bore/surface.ts';
import type { Axis, WearSurface } from '../../src/bore/types.ts';
import { asOutside } from '../../src/evaluate/part.ts';
import { pinPlanOf } from '../../src/evaluate/pinPlan.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { addSurvey, setDimension, setMending, setPin, setSafety } from '../../src/job/edits.ts';
import { seededRandom } from '../../src/num/random.ts';
import { sawmillRockerShaft } from '../../src/practice/demos/sawmillRockerShaft.ts';
import { greatestCut, leastGreatest, spotsOf } from './centreLinear.ts';

const LENGTH = 120;
const ORIGIN: Axis = { x: 0, y: 0, leanX: 0, leanY: 0 };

/** A surface by a formula of its radius about the reference axis. */
function shaft(radius: (theta: number, z: number) => number, length = LENGTH): WearSurface {
  const grid = makeGrid(length);
  const columns = grid.theta.length;
  const mean = Float64Array.from({ length: columns * grid.z.length }, (_, k) =>
    radius(grid.theta[k % columns]!, grid.z[Math.floor(k / columns)]!),
  );
  return { grid, mean } as unknown as WearSurface;
}

/** A round shaft of radius r that stands and leans off the reference axis: exact. */
const offCentre = (r: number, { x, y, leanX, leanY }: Axis) =>
  shaft((theta, z) => {
    const [cx, cy] = [x + leanX * z, y + leanY * z];
    const along = cx * Math.sin(theta) + cy * Math.cos(theta);
    return along + Math.sqrt(r * r - (cx * cx + cy * cy - along * along));
  });

describe('an eccentric shaft (constructed)', () => {
  const r = 24.6;
  const off: Axis = { x: 0.21, y: -0.12, leanX: 0.001, leanY: 0.0005 };
  const surface = offCentre(r, off);
  const sd = surface.mean.map(() => 0.005);
  // Ends of the stretches lie between the rows of the surface.
  const lands = [
    { from: 10.3, to: 41.7 },
    { from: 77.7, to: 110.1 },
  ];
  const on = landPlaces(surface, lands, []);

  it('cleans up at its own size about its own axis, and at less by twice the offset on the old centres', () => {
    const axis = bestAxis(surface, on);
    const own = cleansUp(surface, outsideAbout(surface, axis).far, sd, on, axis);
    // The section across a leaning cylinder is an ellipse: longer by half the square of the lean, 8e-6 mm here.
    expect(Math.abs(own.diameter - 2 * r)).toBeLessThan(4e-5);
    expect(own.sure).toBeCloseTo(own.diameter - 0.02, 9);
    expect(Math.hypot(axis.x - off.x, axis.y - off.y)).toBeLessThan(1e-4);
    const { z } = surface.grid;
    const last = z.findLast((depth) => depth <= 110.1)!;
    const far = Math.hypot(off.x + off.leanX * last, off.y + off.leanY * last);
    const old = cleansUp(surface, outsideAbout(surface, ORIGIN).far, sd, on, ORIGIN);
    // Opposite to the offset, within what 3 degrees of clock cost: offset (1 - cos 1.5 degrees).
    const step = 2 * far * (1 - Math.cos(Math.PI / 120));
    expect(old.diameter).toBeGreaterThan(2 * (r - far) - 1e-9);
    expect(old.diameter).toBeLessThan(2 * (r - far) + step + 1e-9);
  });

  it('takes the ring between it and the finished size, wherever it stands: pi (R² - r²) L', () => {
    const R = 25.4 + 3.175;
    const { far, turn } = outsideAbout(surface, ORIGIN);
    const length = 41.7 - 10.3 + 110.1 - 77.7;
    const ring = Math.PI * (R * R - r * r) * length;
    const volume = volumeBetween(
      turn,
      on.share,
      (k) => far[k]!,
      () => R,
    );
    expect(Math.abs(volume / ring - 1)).toBeLessThan(1e-9);
    const deposit = depositOf({
      thickness: shortOf(far, R),
      radius: far,
      share: on.share.map((one, k) => one * turn[k]!),
      run: length,
      bead: { height: 2.5, width: 8, overlap: 0.375 },
      electrode: ELECTRODES[1]!,
      outside: true,
    });
    expect(Math.abs(deposit.volume / ring - 1)).toBeLessThan(1e-9);
    // Density 0.283 lb/in3 as published for steel filler (453.592 g a pound, 16387.064 mm3 a cubic inch).
    expect(Math.abs(deposit.mass / ((ring * 0.283 * 453.592) / 16387.064) - 1)).toBeLessThan(0.003);
    // 21.2 g from an E7018 electrode of 3.2 x 350 mm: core and length at 112 % recovery.
    expect(deposit.electrodes).toBe(Math.ceil((ring * 7.85e-3) / 21.2));
  });

  it('counts stretches whole: 2 pi times their length, also one that lies between two rows', () => {
    const sum = (spans: { from: number; to: number }[]) =>
      landPlaces(surface, spans, []).share.reduce((a, b) => a + b, 0);
    expect(sum(lands)).toBeCloseTo(2 * Math.PI * (31.4 + 32.4), 9);
    expect(sum([{ from: 50.1, to: 50.6 }])).toBeCloseTo(2 * Math.PI * 0.5, 9);
  });
});

describe('the largest size that cleans up', () => {
  it('is the optimum of the linear programme, on 12 worn shafts off their axes (constructed)', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const random = seededRandom(seed);
      const u = (most: number) => most * (2 * random.uniform() - 1);
      const [x, y, leanX, leanY, flat, oval, three] = [
        u(0.2),
        u(0.2),
        u(0.002),
        u(0.002),
        u(0.4),
        u(0.2),
        u(0.1),
      ];
      const [at, phase] = [u(Math.PI), u(Math.PI)];
      const surface = shaft(
        (theta, z) =>
          25 +
          (x + leanX * z) * Math.sin(theta) +
          (y + leanY * z) * Math.cos(theta) -
          Math.abs(flat) * Math.max(0, Math.cos(theta - at)) * (1 + z / LENGTH) +
          oval * Math.cos(2 * (theta - phase)) +
          three * Math.cos(3 * theta + z / 40),
      );
      const on = landPlaces(surface, [{ from: 12, to: 108 }], []);
      const axis = bestAxis(surface, on);
      const beyond = 27;
      const spots = spotsOf(surface, beyond, axis, (k) => on.places[k] === SEATED);
      const above = greatestCut(spots) - leastGreatest(spots);
      expect(Math.abs(above), `seed ${seed}`).toBeLessThan(1e-6);
    }
  });
});

describe('what is advised', () => {
  const clearance = 0.15;
  /** Worn by `wear` at 6 o'clock from 20 to 60 of 120; new 50 across. */
  function advised(wear: number, rules: Partial<Parameters<typeof pinAdvice>[2]> = {}) {
    const surface = shaft(
      (theta, z) => 25 - (z >= 20 && z <= 60 ? wear * Math.max(0, -Math.cos(theta)) : 0),
    );
    const on = landPlaces(surface, [{ from: 22, to: 58 }], []);
    const about = outsideAbout(surface, ORIGIN);
    const short = shortOf(about.far, 25);
    const ways = pinWays({
      about,
      on,
      short,
      turned: turnedRound(surface.grid, short, on, true),
      finished: 50,
      clearance,
      leastDiameter: 50 - wear,
      smaller: Math.floor((50 - 2 * wear) * 10 + 1e-9) / 10,
      length: LENGTH,
      overEnd: false,
      deposit: { volume: 0, thickness: short.map(() => 0) },
    });
    const usual = {
      acceptLow: 0.05,
      turnDownMost: 0.75,
      skin: 'plain',
      crackSeen: false,
      weldable: true,
    } as const;
    return pinAdvice(ways, { clearance, finished: 50 }, { ...usual, ...rules });
  }

  it('follows the rules in their order (stated rules, judgement)', () => {
    expect(advised(0.04)).toEqual({ way: 'leave', reason: 'good-enough' });
    // Half a turn brings unworn metal under the load, and the play of 0.15 + 0.2 stays under three times 0.15.
    expect(advised(0.2)).toEqual({ way: 'turn-round', reason: 'other-side' });
    expect(advised(0.34)).toEqual({ way: 'turn-down', reason: 'little-to-turn' });
    expect(advised(0.6)).toEqual({ way: 'weld', reason: 'weldable' });
    expect(advised(0.6, { weldable: false })).toEqual({ way: 'replace', reason: 'not-weldable' });
    expect(advised(0.6, { skin: 'hardened' })).toEqual({ way: 'replace', reason: 'skin' });
    expect(advised(0.6, { skin: 'plated' })).toEqual({ way: 'replace', reason: 'skin' });
    expect(advised(0.6, { skin: null })).toEqual({ way: null, reason: 'skin-unknown' });
    expect(advised(0.04, { crackSeen: true })).toEqual({ way: 'replace', reason: 'crack' });
  });
});

describe('metal sprayed on', () => {
  const FINISHED = 50;
  /** Worn evenly to that radius between 20 and 60 of 120; nothing is welded. */
  function sprayed(radius: number, overEnd = false) {
    const surface = shaft(() => radius);
    const on = landPlaces(surface, [{ from: 20, to: 60 }], []);
    const about = outsideAbout(surface, ORIGIN);
    const short = shortOf(about.far, FINISHED / 2);
    const ways = pinWays({
      about,
      on,
      short,
      turned: turnedRound(surface.grid, short, on, true),
      finished: FINISHED,
      clearance: 0.15,
      leastDiameter: 2 * radius,
      smaller: 2 * radius,
      length: LENGTH,
      overEnd,
      deposit: { volume: 0, thickness: short.map(() => 0) },
    });
    return ways.find(({ name }) => name === 'spray')!;
  }
  const ring = (outer: number, inner: number) => Math.PI * (outer ** 2 - inner ** 2) * 40;

  it('fills a pocket at least 0.015 in deep (published for spraying powders on steel shafts); rings by their areas', () => {
    // 0.2 short per side: the pocket is 0.381 deep. Ground 0.25 above the size (judgement).
    const shallow = sprayed(24.8);
    expect(shallow.possible).toBe(true);
    expect(shallow.coat).toBeCloseTo(0.015 * 25.4, 9);
    expect(shallow.core).toBeCloseTo(FINISHED - 2 * 0.381, 9);
    expect(shallow.volumeOn).toBeCloseTo(ring(25.25, 25 - 0.381), 6);
    expect(shallow.volumeOff).toBeCloseTo(ring(24.8, 25 - 0.381) + ring(25.25, 25), 6);
    // Sprayed metal adds no strength: the cube of the core's diameter counts.
    expect(shallow.strength).toBeCloseTo((24.619 / 25) ** 3, 9);
    // Worn deeper than that, the wear itself is the pocket.
    const deep = sprayed(24);
    expect(deep.coat).toBeCloseTo(1, 9);
    expect(deep.volumeOff).toBeCloseTo(ring(25.25, 25), 6);
  });

  it('is not for a stretch that goes out over an end, nor for more than 1.5 mm per side (judgement); never advised', () => {
    expect(sprayed(24.8, true).possible).toBe(false);
    expect(sprayed(23.4).possible).toBe(false);
    expect(sprayed(23.6).possible).toBe(true);
  });
});

type Done = Parameters<typeof asOutside>[0];
const NOTHING = { plugs: null, patterns: NO_PATTERNS, blindSpots: [] };

describe('a rocker shaft through its stages (constructed: worn 42 thou at 6; welded with two low places)', () => {
  const job = sawmillRockerShaft();
  const memory: Memory = new Map();
  evaluate(job, memory);
  const pin = job.features.find(({ kind }) => kind === 'pin')!;
  const plan = (of = job, survey = 's2') => pinPlanOf(of, { bore: pin.id, survey }, memory)!;
  const [found, welded] = pin.surveys.map(({ id }) => id) as [string, string];
  const thou = 0.0254;

  it('is short by half of the wear on both sides as diameters tell it, and is welded to finished size and allowance', () => {
    const worn = plan(job, found);
    expect(worn.finished).toEqual({ mm: 2.25 * 25.4, from: 'new-size' });
    expect(worn.sideSeen).toBe(false);
    const { short, give } = worn.lands[0]!.worst;
    expect(Math.abs(short - 21 * thou)).toBeLessThan(give);
    // 1/8 in per side: common practice for a weld that is machined again.
    expect(worn.deposit.greatest).toBeCloseTo(worn.shifted.worst.short + 0.125 * 25.4, 9);
    expect(worn.advice).toEqual({ way: 'weld', reason: 'weldable' });
    expect(worn.preheat).toEqual({ least: 100, most: 100, slowCool: false });
    // What is put on is what is short and what is turned off again.
    const { volume } = worn.deposit;
    const wear = worn.turnOff.volume;
    expect(volume).toBeGreaterThan(wear);
  });

  it('welded up, both places that are too low are named, the one at the edge included', () => {
    const built = plan(job, welded);
    expect(built.stage).toBe('built-up');
    expect(built.chosen).toBe('kept');
    const truth = [
      { theta: (4 * Math.PI) / 6, z: 0.75 * 25.4, land: 0 },
      { theta: (9 * Math.PI) / 6, z: 6.25 * 25.4, land: 1 },
    ];
    for (const { theta, z, land } of truth) {
      const { worst } = built.lands[land]!;
      expect(Math.abs(worst.theta - theta)).toBeLessThan(Math.PI / 24);
      expect(Math.abs(worst.z - z)).toBeLessThan(0.1 * 25.4);
      expect(worst.short).toBeGreaterThan(0);
    }
    expect(built.low).toHaveLength(2);
    const [edge] = built.lands[0]!.edges;
    expect(edge.short).toBeCloseTo(built.lands[0]!.worst.short, 9);
    expect(edge.measured).toBe(true);
    // The other edge of it stands proud: minus is to come off.
    expect(built.lands[0]!.edges[1].short).toBeLessThan(0);
    expect(built.kept.low).toBeGreaterThan(0);
    expect(built.shifted.diameter).toBeGreaterThan(built.kept.diameter);
    expect(built.ways).toEqual([]);
    // More weld only where it is low.
    expect(built.deposit.volume).toBeLessThan(0.6 * plan(job, found).deposit.volume);
  });

  it('doubts the two low places of the weld alone, and says what they are likely to be', () => {
    const { surveys } = evaluate(job, memory).parts.find(({ id }) => id === pin.id)!;
    const doubted = (at: number) =>
      surveys[at]!.checks.filter(({ suspect }) => suspect).map(({ row, slip }) => {
        const { theta, z } = surveys[at]!.sightings.find((one) => one.row === row)!;
        return { hour: Math.round((theta * 6) / Math.PI), z: z / 25.4, slip };
      });
    const low = 'a place that the weld left low';
    expect(doubted(1).sort((a, b) => a.z - b.z)).toEqual([
      { hour: 4, z: expect.closeTo(0.8, 9), slip: low },
      { hour: 9, z: expect.closeTo(6.25, 9), slip: low },
    ]);
    // A reading beyond the end of a stretch is judged by no reading of the worn stretch.
    expect(doubted(0)).toEqual([]);
  });

  it('of weld names a slip of typing and a low place together; a slip of many readings stays what it is', () => {
    const sightings = [1, 3, 5].map((z, row) => ({
      row,
      instrument: 'radius',
      theta: 0,
      z,
      value: 25,
    }));
    const check = { suspect: true, slip: 'two digits swapped', give: 0.1, row: 1 };
    const told = (one: object, stage: 'after-build-up' | 'as-found', steps: number[] = []) =>
      asOutside({ ...NOTHING, sightings, checks: [{ ...check, ...one }] } as unknown as Done, {
        stage,
        steps,
      }).checks.map(({ slip, suggested }) => ({ slip, suggested }));
    const typed = { suggested: '25.5', expected: 25.5 };
    const low = 'a place that the weld left low';
    expect(told(typed, 'after-build-up')).toEqual([
      { slip: `two digits swapped, or ${low}`, suggested: '25.5' },
    ]);
    expect(told(typed, 'as-found')).toEqual([{ slip: 'two digits swapped', suggested: '25.5' }]);
    // It reads larger than the others lead one to expect: that is no low place.
    const proud = { suggested: '24.5', expected: 24.5 };
    expect(told(proud, 'after-build-up')[0]!.slip).toBe('two digits swapped');
    const wall = { suggested: null, expected: 25.5, slip: 'a burr' };
    expect(told(wall, 'after-build-up')).toEqual([{ slip: low, suggested: null }]);
    expect(told(wall, 'as-found')).toEqual([{ slip: 'unexplained', suggested: null }]);
    // Alone between two steps it is not judged by what lies beyond them.
    expect(told(wall, 'as-found', [2, 4])).toEqual([]);
    const many = { suggested: null, expected: Number.NaN, slip: 'the clock turned' };
    expect(told(many, 'after-build-up', [2, 4])[0]!.slip).toBe('the clock turned');
  });

  it('follows what is typed: finished size, clearance, allowance, centres, no stretches stated', () => {
    const inch = (text: string) => ({ text, unit: 'in' as const });
    const typed = plan(setDimension(job, pin.id, 'target', inch('2.2400')), found);
    expect(typed.finished).toEqual({ mm: 2.24 * 25.4, from: 'typed' });
    const unsized = setDimension(
      setDimension(job, pin.id, 'nominal', undefined),
      pin.id,
      'clearance',
      inch('0.010'),
    );
    expect(plan(unsized, found).finished.from).toBe('bore');
    expect(plan(unsized, found).finished.mm).toBeCloseTo(2.247 * 25.4, 9);
    const low = plan(setMending(job, pin.id, 'weld', 'over', 'low'), found);
    expect(low.deposit.volume).toBeLessThanOrEqual(plan(job, found).deposit.volume);
    expect(plan(setPin(job, pin.id, 'centres', 'shifted'), welded).chosen).toBe('shifted');
    const whole = {
      ...job,
      features: job.features.map((one) => (one.id === pin.id ? { ...one, lands: [] } : one)),
    };
    expect(plan(whole, found).lands).toHaveLength(1);
    const iron = plan(setSafety(job, 'metal', 'iron'), found);
    expect(iron.advice).toEqual({ way: 'replace', reason: 'not-weldable' });
    const empty = addSurvey(job, pin.id, 'as-found');
    expect(
      pinPlanOf(empty, { bore: pin.id, survey: empty.features.at(-1)!.surveys.at(-1)!.id }, memory),
    ).toBeNull();
  });
});
