/** What the clock positions cannot tell apart is said, in lobes; where they tell all that bores wear to, nothing is. */
import { describe, expect, it } from 'vitest';
import { blindSpots } from '../../src/bore/remarks.ts';
import type { OvalTurn, Sighting } from '../../src/bore/types.ts';
import { shapeSentences } from '../../src/figures/shapeWords.ts';
import type { AtHand } from '../../src/job/atHand.ts';
import { clocks } from '../fixtures/bores.ts';
import { madeSurvey } from '../fixtures/evaluation.ts';

const LENGTH = 50;

function taken(instrument: Sighting['instrument'], thetas: readonly number[]): Sighting[] {
  return [5, 15, 25, 35, 45].flatMap((z) =>
    thetas.map((theta) => ({
      row: 0,
      instrument,
      theta,
      z,
      value: 50,
      sd: 0.005,
      sdStated: true,
      setup: -1,
    })),
  );
}

/** Sentences about lobes taken for others. */
function aliases(...sightings: Sighting[][]): string[] {
  return blindSpots(sightings.flat(), LENGTH, String)
    .map(({ text }) => text)
    .filter((text) => /cannot tell \d|take \d/.test(text));
}

// The sampling theorem: N even places cannot tell n lobes from N - n, and take k N +- 1 for a shift of the centre.
describe('lobes that pass for others', () => {
  const turn = 2 * Math.PI;

  it('one-sided, six places', () => {
    expect(aliases(taken('radius', clocks(6, turn)))).toEqual([
      '6 clock positions cannot tell 2 lobes from 4, and take 5 lobes for a shift of the centre, and take 6 lobes ' +
        'for size: positions between them would.',
    ]);
  });

  it('one-sided, four and eight places, on a set-up or not', () => {
    expect(aliases(taken('sweep', clocks(4, turn)))).toEqual([
      '4 clock positions take 3 or 5 lobes for a shift of the centre, and take 4 lobes for size: positions between ' +
        'them would.',
    ]);
    expect(aliases(taken('wall', clocks(8, turn)))).toEqual([
      '8 clock positions cannot tell 2 lobes from 6, and cannot tell 3 lobes from 5: positions between them would.',
    ]);
  });

  it('pairs: three and four', () => {
    expect(aliases(taken('two-point', clocks(3)))).toEqual([
      '3 pairs of clock positions cannot tell 2 lobes from 4, and take 6 lobes for size: pairs between them would.',
    ]);
    expect(aliases(taken('two-point', clocks(4)))).toEqual([
      '4 pairs of clock positions cannot tell 2 lobes from 6: pairs between them would.',
    ]);
  });

  it('nothing where there are places enough: six pairs, twelve places, or one pair read from both ends', () => {
    expect(aliases(taken('two-point', clocks(6)))).toEqual([]);
    expect(aliases(taken('two-point', clocks(12, turn)))).toEqual([]);
    expect(aliases(taken('radius', clocks(13, turn)))).toEqual([]);
    expect(aliases(taken('three-leg', clocks(6)))).toEqual([]);
    expect(aliases(taken('two-point', clocks(2)))).toEqual([]);
  });

  it('nothing by itself where diameters and one-sided readings help each other', () => {
    expect(aliases(taken('radius', clocks(6, turn)), taken('two-point', clocks(6)))).toEqual([]);
  });
});

describe('which way the oval runs', () => {
  const turn: OvalTurn = {
    kind: 'same',
    evidence: 4,
    criterion: 'BIC',
    candidates: [],
    first: Math.PI / 4,
    firstSd: 0.02,
    last: Math.PI / 2,
    lastSd: 0.02,
    turn: Math.PI / 4,
    turnSd: 0.03,
    from: 25.4,
    rows: [],
    depths: [],
  };
  const sentence = (kind: OvalTurn['kind']) => {
    const survey = { ...madeSurvey(), ovalTurn: { ...turn, kind } };
    return shapeSentences(survey, 38.1, 'mm')
      .map((s) => s.before)
      .find((text) => /long way/.test(text));
  };

  it.each([
    ['same', 'Its long way lies along 1:30–7:30 all the way down.'],
    [
      'steady',
      'Its long way turns steadily with the depth: along 1:30–7:30 near the rim, along 3–9 near the bottom.',
    ],
    [
      'at-once',
      'Its long way turns all at once: along 1:30–7:30 near the rim, along 3–9 from 25.4 mm deep on.',
    ],
    [
      'not-told',
      'Its long way turns with the depth: along 1:30–7:30 near the rim, along 3–9 near the bottom; whether steadily ' +
        'or all at once, readings at more depths would tell.',
    ],
  ] as const)('%s', (kind, words) => {
    expect(sentence(kind)).toBe(words);
  });
});

describe('what the instruments of a survey cannot see is always said', () => {
  const turn = 2 * Math.PI;
  const two = taken('two-point', clocks(6));
  const three = taken('three-leg', clocks(4));
  const swept = taken('sweep', clocks(24, turn));
  const wall = taken('wall', clocks(12, turn));
  const radius = taken('radius', clocks(24, turn));
  const once = swept.filter(({ z }) => z === 25);
  const said = (...lists: Sighting[][]) =>
    blindSpots(lists.flat(), LENGTH, String).map(({ text }) => text);
  const SIDE = /which side is worn/;
  const AXIS = /how the axis runs/;
  const ODD = /five-lobed/;
  const OVAL = /may be oval/;
  const SIZE = /not size/;
  const DENT = /dent between the clock positions/;
  const BOSS = /as the boss is round/;
  it.each([
    ['diameters', [two], [SIDE, AXIS, ODD, DENT], [OVAL, SIZE, BOSS]],
    ['three legs', [three], [SIDE, AXIS, OVAL, DENT], [SIZE, BOSS]],
    ['diameters and three legs', [two, three], [SIDE, AXIS, ODD], [OVAL, SIZE, BOSS]],
    ['sweeps', [swept], [SIZE], [SIDE, ODD, OVAL, DENT, BOSS]],
    ['one sweep', [once], [SIZE, SIDE, AXIS], [ODD, OVAL, BOSS]],
    ['wall', [wall], [SIZE, BOSS, DENT], [SIDE, ODD, OVAL]],
    ['diameters and one sweep', [two, once], [SIDE, AXIS], [SIZE, ODD, OVAL, BOSS]],
    ['diameters and sweeps', [two, swept], [], [SIDE, AXIS, SIZE, ODD, OVAL, DENT, BOSS]],
    ['diameters and wall', [two, wall], [BOSS, DENT], [SIDE, SIZE, ODD, OVAL]],
    ['radii', [radius], [], [SIDE, AXIS, SIZE, ODD, OVAL, DENT, BOSS]],
  ] as const)('%s', (_, lists, there, absent) => {
    const texts = said(...lists.map((list) => [...list]));
    for (const pattern of there) expect(texts.filter((text) => pattern.test(text))).toHaveLength(1);
    for (const pattern of absent) expect(texts.join(' ')).not.toMatch(pattern);
  });

  const caliper: AtHand = {
    gauge: 'g',
    name: 'Caliper, inside jaws',
    instrument: 'two-point',
    sd: 0.025,
    from: 0,
    to: 16,
    setup: -1,
    fresh: null,
  };
  const deep = (hand: readonly AtHand[]) =>
    blindSpots(
      two.filter(({ z }) => z <= 15),
      LENGTH,
      String,
      hand,
    ).find(({ text }) => text.startsWith('Nothing is measured'))!.text;

  it('below a caliper’s reach: the gauge that gets there, or that none does', () => {
    expect(deep([caliper])).toContain(
      'No gauge at hand gets there: readings at 32.5 deep from the other face, or with a longer gauge, would tell.',
    );
    const longer = { ...caliper, gauge: 'h', name: 'Telescoping gauge', to: 120 };
    expect(deep([caliper, longer])).toContain('with a gauge that gets there (Telescoping gauge)');
    expect(deep([longer])).toMatch(/Readings at 32.5 deep would tell\.$/);
  });
});

describe('a blind spot', () => {
  const two = (thetas: readonly number[], depths: readonly number[]) =>
    taken('two-point', thetas)
      .slice(0, thetas.length)
      .flatMap((s) => depths.map((z) => ({ ...s, z })));
  it.each([
    ['diameters alone', taken('two-point', clocks(6))],
    ['three legs alone', taken('three-leg', clocks(4))],
    ['a sweep alone', taken('sweep', clocks(8, 2 * Math.PI))],
    ['one clock position', two([0], [5, 25, 45])],
    ['two clock positions', two([0, 1.57], [5, 25, 45])],
    ['one depth', two(clocks(6), [5])],
    ['two depths', two(clocks(6), [5, 45])],
    ['a stretch not measured', two(clocks(6), [2, 5, 8])],
    ['pairs that take lobes for others', taken('two-point', clocks(4))],
  ])('%s: says which reading would tell', (_, sightings) => {
    const said = blindSpots(sightings, LENGTH, String);
    expect(said.length).toBeGreaterThan(0);
    for (const { text } of said)
      expect(text).toMatch(/would( show| give| tell|\.)|Read (at|across|the)|Measure (near|in) /);
  });
});
