/** Two stages compared: ends of the sweep, the map of the change, the words. All bores are constructed. */
import { describe, expect, it } from 'vitest';
import type { SurveyEvaluation } from '../../src/evaluate.ts';
import { blended } from '../../src/figures/blend.ts';
import { legendFigure } from '../../src/figures/legend.ts';
import { mapFigure } from '../../src/figures/map.ts';
import { sayPlace } from '../../src/figures/place.ts';
import { drawnChange, notComparable, stageChange } from '../../src/figures/stageChange.ts';
import { metalBetween, stageSentences } from '../../src/figures/stageWords.ts';
import { stepsOf, wallOf } from '../../src/figures/wall.ts';
import { leastChange } from '../../src/geometry/leastChange.ts';
import {
  FACTS,
  LENGTH,
  type Made,
  madeDeviation,
  madeSurvey,
  TARGET,
} from '../fixtures/evaluation.ts';

const THOU = 0.0254;
const STEEL = 7.85e-3;
const small = { columns: 72, rows: 33 };

/** Metal ground off round 3 o'clock, 0.30 in deep, `depth` thou per side at its middle; nothing beyond an hour and a half. */
const ground = (depth: number) => (theta: number, z: number) => {
  const turn = Math.atan2(Math.sin(theta - Math.PI / 2), Math.cos(theta - Math.PI / 2));
  const away = (turn / (Math.PI / 4)) ** 2 + ((z - 7.62) / 8) ** 2;
  return depth * THOU * Math.max(0, 1 - away) ** 2;
};

function stage(name: string, made: Made, more: Partial<SurveyEvaluation> = {}): SurveyEvaluation {
  return { ...madeSurvey({ ...small, ...made }), id: name, name, ...more };
}

const sd = () => 0.1 * THOU;
const before = stage('As found', { sd });
const after = stage('Pass 1', { sd, deviation: (t, z) => madeDeviation(t, z) + ground(2.3)(t, z) });

describe('the sweep', () => {
  it('at either end is the stage itself: wall, give-or-take and metal', () => {
    for (const [share, end] of [
      [0, before],
      [1, after],
    ] as const) {
      const drawn = blended(before, after, share, FACTS);
      expect(drawn.surface).toBe(end.surface);
      expect(drawn.removal).toBe(end.removal);
      expect(drawn.zones).toBe(end.zones);
      expect(wallOf(drawn)!.deviation).toBe(wallOf(end)!.deviation);
      expect(wallOf(drawn)!.give).toBe(wallOf(end)!.give);
    }
  });

  it('half-way lies in the middle, and metal is what stands proud there', () => {
    const drawn = blended(before, after, 0.5, FACTS);
    const [a, b, half] = [before, after, drawn].map((one) => wallOf(one)!.deviation);
    half!.forEach((e, k) => {
      expect(e).toBeCloseTo((a![k]! + b![k]!) / 2, 12);
    });
    expect(drawn.removal!.likely).toEqual(half!.map((e) => Math.max(0, -e)));
    expect(drawn.sightings).toEqual([]);
    expect(drawn.zones).toEqual([]);
  });

  it('keeps its colours all the way', () => {
    const steps = [0, 0.3, 1].map((share) =>
      stepsOf(wallOf(blended(before, after, share, FACTS))!, 'in'),
    );
    expect(steps[1]).toEqual(steps[0]);
    expect(steps[2]).toEqual(steps[0]);
  });

  it('of stages without a target goes between their own average rounds', () => {
    const [a, b] = [
      stage('a', { sd, target: false }),
      stage('b', { sd, target: false, deviation: () => 0.1 }),
    ];
    const drawn = blended(a, b, 0.25, FACTS);
    expect(wallOf(drawn)!.about).toBe('average');
    expect(wallOf(drawn)!.radius).toBeCloseTo(
      0.75 * wallOf(a)!.radius + 0.25 * wallOf(b)!.radius,
      12,
    );
    expect(drawn.removal).toBeNull();
  });
});

describe('the map of the change', () => {
  const found = stageChange(before, after);

  it('is the metal that was ground off, on its one side, and nothing elsewhere', () => {
    const columns = found.grid.theta.length;
    found.change.forEach((change, k) => {
      const truth = ground(2.3)(
        found.grid.theta[k % columns]!,
        found.grid.z[Math.floor(k / columns)]!,
      );
      // The corner of the search is 1e-5 mm wide.
      expect(Math.abs(change - truth)).toBeLessThan(1e-5);
    });
  });

  it('is so too where the second stage was measured about another axis', () => {
    const [x, y, lean] = [0.05, -0.03, 0.001];
    const shifted = stage('Pass 1', {
      sd,
      deviation: (t, z) => {
        const r = TARGET / 2 + madeDeviation(t, z) + ground(2.3)(t, z);
        return Math.hypot(r * Math.sin(t) - x - lean * z, r * Math.cos(t) - y) - TARGET / 2;
      },
    });
    const columns = found.grid.theta.length;
    // The shifted wall is given at angles about the new axis: off by x / R = 0.004 rad, over which it rises by 0.1 mm a
    // radian at most.
    const slack = ((Math.hypot(x, y) + lean * LENGTH) / (TARGET / 2)) * 0.35;
    stageChange(before, shifted).change.forEach((change, k) => {
      const truth = ground(2.3)(
        found.grid.theta[k % columns]!,
        found.grid.z[Math.floor(k / columns)]!,
      );
      expect(Math.abs(change - truth)).toBeLessThan(slack);
    });
  });

  it('about a kept centre counts a shift as what it is', () => {
    const kept = (one: SurveyEvaluation) => ({
      ...one,
      target: { ...one.target!, centreRule: 'keep' as const },
    });
    const moved = stage('b', { sd, deviation: (t, z) => madeDeviation(t, z) + 0.02 * Math.cos(t) });
    const { change, tied } = stageChange(kept(before), kept(moved));
    expect(tied).toBe(true);
    const columns = found.grid.theta.length;
    change.forEach((c, k) => {
      expect(c).toBeCloseTo(0.02 * Math.cos(found.grid.theta[k % columns]!), 12);
    });
    const free = stageChange(before, moved);
    expect(free.tied).toBe(false);
    expect(Math.max(...free.change.map(Math.abs))).toBeLessThan(1e-4);
  });

  it('adds the variances of both stages', () => {
    // Two standard deviations of 0.1 thou each.
    for (const give of found.give) expect(give).toBeCloseTo(2 * Math.SQRT2 * 0.1 * THOU, 12);
    // Both ends of a diameter move together where diameters alone are read: twice that.
    for (const give of found.giveAcross) expect(give).toBeCloseTo(4 * Math.SQRT2 * 0.1 * THOU, 12);
  });

  it('weighs the metal: the layer between the walls', () => {
    let grams = 0;
    // Midpoint sum over a finer mesh.
    for (let i = 0; i < 720; i++) {
      for (let j = 0; j < 400; j++) {
        const t = ground(2.3)((2 * Math.PI * (i + 0.5)) / 720, (LENGTH * (j + 0.5)) / 400);
        grams += STEEL * t * (TARGET / 2 + t / 2) * ((2 * Math.PI) / 720) * (LENGTH / 400);
      }
    }
    // The patch is smooth to its edge: sums on the two meshes agree to the square of the coarser step, 1 % here.
    expect(metalBetween(found, 1).likely / grams).toBeCloseTo(1, 1.7);
    expect(metalBetween(found, -1).likely).toBeLessThan(0.01 * grams);
  });

  it('has its own words in the key, on the map and at a place', () => {
    const drawn = drawnChange(found);
    const map = mapFigure(drawn, FACTS, 'in')!;
    expect(map.about).toBe('change');
    expect(map.zones.map(({ text }) => text)).toEqual(['+2.3']);
    const key = legendFigure(map.steps, 'light', map.about);
    expect(key.low).toEqual({ words: '+ metal gone', short: '+ gone' });
    const place = { theta: Math.PI / 2, z: 7.62 };
    expect(sayPlace({ survey: drawn, facts: FACTS }, place, 'in')).toBe(
      '3:00, 0.30 in deep: 0.0023 in per side of metal gone, give or take 0.0003',
    );
  });
});

describe('in words', () => {
  const say = (
    a: SurveyEvaluation,
    b: SurveyEvaluation,
    kind: 'pass' | 'after-squeezing' | 'as-found' = 'pass',
  ) =>
    stageSentences(
      stageChange(a, b),
      kind,
      stepsOf(wallOf(drawnChange(stageChange(a, b)))!, 'in').step,
      'in',
    ).map((one) => one.before + one.figure + one.after);

  it('a squeeze that closes one way and opens the other', () => {
    const squeezed = stage('After squeezing', {
      sd,
      deviation: (t, z) => madeDeviation(t, z) - THOU * (1.2 + 1.8 * Math.cos(2 * t)),
    });
    const words = say(before, squeezed, 'after-squeezing');
    // Across: closed by 2 (1.2 + 1.8) thou along 12-6, opened by 2 (1.8 - 1.2) along 3-9; 4 sqrt 2 0.1 thou doubt.
    expect(words[0]).toBe(
      '0.10 in deep: 12–6 closed by 0.0060 in across, give or take 0.0006; 3–9 opened by 0.0012 in across, give or take 0.0006.',
    );
    expect(words.join(' ')).toContain('Squeezing takes no metal away');
    expect(words.join(' ')).toContain('Diameters do not tell on which of two opposite sides');
  });

  it('a bore that opened alike all round', () => {
    const wider = stage('Pass 1', { sd, deviation: (t, z) => madeDeviation(t, z) + 2 * THOU });
    expect(say(before, wider)[0]).toBe(
      '0.10 in deep: all round it opened by 0.0040 in across, give or take 0.0006.',
    );
  });

  it('two surveys of one stage are no work done', () => {
    const words = say(before, after, 'as-found').join(' ');
    expect(words).toContain('Nothing was done between these two');
    expect(words).not.toContain('came off');
  });

  it('says so where nothing can be shown', () => {
    const same = stage('Pass 1', { sd, deviation: (t, z) => madeDeviation(t, z) + 0.02 * THOU });
    const words = say(before, same);
    expect(words[0]).toBe('At every depth read: no change of size that these readings can show.');
    expect(words[1]).toMatch(/^No metal is sure to have been taken off: likely /);
    expect(words[2]).toBe('Nowhere on the wall is the change larger than its give-or-take.');
    expect(words[3]).toMatch(
      /^Where it is hatched, on \d+ % of the wall, the amount on the map cannot be trusted/,
    );
  });

  it('refuses a stage without a shape, and one of another length', () => {
    const bare = { ...before, name: 'Fitted', surface: null };
    expect(notComparable(before, bare)).toContain('“Fitted” has no shape yet');
    expect(notComparable(bare, before)).toContain('“Fitted” has no shape yet');
    const other = stage('b', { rows: 35 });
    expect(notComparable(before, other)).toContain('different length');
    expect(notComparable(before, after)).toBeNull();
  });
});

describe('the move that changes least', () => {
  it('finds a shift and a lean under a patch that changed for good', () => {
    const theta = Float64Array.from({ length: 60 }, (_, i) => (2 * Math.PI * i) / 60);
    const z = Float64Array.from({ length: 21 }, (_, i) => 2 * i);
    const beforeWall = new Float64Array(60 * 21).fill(25);
    const move = { x: 0.02, y: -0.01, leanX: 0.001, leanY: 0.0005 };
    const afterWall = beforeWall.map((r, k) => {
      const [t, deep] = [theta[k % 60]!, z[Math.floor(k / 60)]!];
      const patch = k % 60 < 15 ? 0.1 : 0;
      const at =
        (move.x + move.leanX * deep) * Math.sin(t) + (move.y + move.leanY * deep) * Math.cos(t);
      return r + patch + at;
    });
    const found = leastChange({ theta, z, before: beforeWall, after: afterWall });
    for (const key of ['x', 'y', 'leanX', 'leanY'] as const) {
      expect(found[key]).toBeCloseTo(move[key], 4);
    }
  });
});
