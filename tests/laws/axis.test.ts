/**
 * How the axis runs: found where one-sided readings show centres, seldom invented, and never claimed from diameters.
 *
 * 8 clock positions with 0.004 mm (1 sd) of noise: a centre is known to 0.004 * sqrt(2 / 8) = 0.002 mm either way.
 */
import { describe, expect, it } from 'vitest';
import { boreAxis } from '../../src/bore/axis.ts';
import { depthLobes } from '../../src/bore/depthLobes.ts';
import { design } from '../../src/bore/design.ts';
import { condition } from '../../src/bore/posterior.ts';
import { usualSmoothness } from '../../src/bore/smoothness.ts';
import type { BoreAxis, SetupPrior, Sighting } from '../../src/bore/types.ts';
import { reportOf } from '../../src/cli/report.ts';
import { evaluate } from '../../src/evaluate.ts';
import { axisSentences } from '../../src/figures/axisWords.ts';
import { type Random, seededRandom } from '../../src/num/random.ts';
import {
  clocks,
  depthsWithin,
  IDEAL,
  jobOf,
  lobe,
  measure,
  round,
  type Shape,
  sum,
} from '../fixtures/bores.ts';

const LENGTH = 50;
const RADIUS = 25;
const NOISE = 0.004;
const EACH = NOISE * Math.sqrt(2 / 8);
const AROUND = clocks(8, 2 * Math.PI);
const DEPTHS = depthsWithin(5, LENGTH);
const OVAL = lobe(2, 0.03, 1);

type Told = Extract<BoreAxis, { status: 'told' }>;

/** Centre that shifts towards `at` by `by` per mm, and stands `bend` mm off at half depth, towards `to`. */
const shifting =
  (by: number, at: number, bend = 0, to = 0): Shape =>
  (theta, z) =>
    by * z * Math.cos(theta - at) + bend * Math.sin((Math.PI * z) / LENGTH) * Math.cos(theta - to);

interface Read {
  readonly instrument: Sighting['instrument'];
  readonly setups?: readonly SetupPrior[];
  readonly around?: readonly number[];
  readonly depths?: readonly number[];
}

function axisOf(truth: Shape, random: Random, read: Read): BoreAxis {
  const { instrument, setups = [], around = AROUND, depths = DEPTHS } = read;
  const sign = setups[0]?.sign ?? 1;
  const ideal = instrument === 'two-point' || instrument === 'three-leg' ? instrument : 'radius';
  const sightings = depths.flatMap((z) =>
    around.map((theta) => ({
      row: 0,
      instrument,
      theta,
      z,
      value: sign * IDEAL[ideal](truth, theta, z) + NOISE * random.normal(),
      sd: NOISE,
      sdStated: true,
      setup: setups.length > 0 ? 0 : -1,
    })),
  );
  const p = condition(design(sightings, setups, LENGTH), usualSmoothness(LENGTH), RADIUS)!;
  return boreAxis(p, depthLobes(p));
}

function told(axis: BoreAxis): Told {
  if (axis.status !== 'told') throw new Error(axis.why);
  return axis;
}

const SPINDLE: SetupPrior = {
  sign: -1,
  offset: 1,
  lean: 0.02,
  zero: Number.NaN,
  zeroSd: 2,
  resetEachDepth: true,
};
const BOSS: SetupPrior = {
  sign: -1,
  offset: 0.1,
  lean: 0.05,
  zero: 60,
  zeroSd: 0.5,
  resetEachDepth: false,
};

describe('a straight bore that does not lean', () => {
  it('is said to lean, or to bend, in at most 3 of 100 of 300 surveys', () => {
    let [leans, bends] = [0, 0];
    for (let seed = 1; seed <= 300; seed++) {
      const random = seededRandom(seed);
      const axis = told(axisOf(sum(round(RADIUS), OVAL), random, { instrument: 'radius' }));
      if (axis.lean.chance < 0.01) leans++;
      if (axis.straightness!.chance < 0.01) bends++;
    }
    // One in a hundred by what `chance` means; 3 binomial deviations of 300 make 8.2.
    expect(leans).toBeLessThanOrEqual(8);
    expect(bends).toBeLessThanOrEqual(8);
  });
});

describe('an axis that leans', () => {
  const by = 0.001;
  const at = 2.2;

  it('about a datum: how much and which way, within what it says of itself', () => {
    let square = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const truth = sum(round(RADIUS), OVAL, shifting(by, at));
      const { lean, centres } = told(axisOf(truth, seededRandom(seed), { instrument: 'radius' }));
      // Half of the depths' spread, squared, five times: sd of the slope from centres known to EACH and 0.0006.
      const spread = Math.sqrt(DEPTHS.reduce((s, z) => s + (z - LENGTH / 2) ** 2, 0));
      expect(lean.sd * spread).toBeGreaterThanOrEqual(0.999 * Math.hypot(EACH, 0.0006));
      expect(lean.chance).toBeLessThan(1e-6);
      expect(Math.abs(lean.theta - at)).toBeLessThan((5 * lean.sd) / by);
      square += ((lean.slope - by) / lean.sd) ** 2;
      expect(centres.map(({ z }) => z)).toEqual(DEPTHS);
    }
    expect(square / 100).toBeLessThan(1 + 4 * Math.sqrt(2 / 100));
    // Floor and scatter only widen it: by (1 + 0.3^2) and what scatter of 15 to spare adds, a third at most.
    expect(square / 100).toBeGreaterThan(0.4);
  });

  it('needle turned about, zero re-set at each depth: the same lean, known as well as the spindle is', () => {
    const truth = sum(round(RADIUS), OVAL, shifting(4 * by, at));
    const axis = told(axisOf(truth, seededRandom(1), { instrument: 'sweep', setups: [SPINDLE] }));
    expect(Math.abs(axis.lean.slope - 4 * by)).toBeLessThan(1e-4);
    expect(Math.abs(axis.lean.theta - at)).toBeLessThan(0.05);
    expect(axis.lean.sd).toBeGreaterThan(SPINDLE.lean / LENGTH);
    expect(axis.lean.chance).toBeLessThan(0.01);
    // What a spindle of this kind leans by itself is not taken for the bore's.
    const small = sum(round(RADIUS), shifting(SPINDLE.lean / LENGTH, at));
    const own = told(axisOf(small, seededRandom(2), { instrument: 'sweep', setups: [SPINDLE] }));
    expect(own.lean.chance).toBeGreaterThan(0.1);
  });

  it('by wall thickness: thicker where the bore shifts away', () => {
    const truth = sum(round(RADIUS), shifting(0.006, at));
    const { lean, instrument } = told(
      axisOf(truth, seededRandom(3), { instrument: 'wall', setups: [BOSS] }),
    );
    expect(instrument).toBe('wall');
    expect(Math.abs(lean.theta - at)).toBeLessThan(0.05);
    expect(Math.abs(lean.slope - 0.006)).toBeLessThan(2e-4);
  });
});

it('an axis that bends: where, how far, which way, and the zone that holds it', () => {
  for (let seed = 1; seed <= 50; seed++) {
    const truth = sum(round(RADIUS), OVAL, shifting(0.0005, 1, 0.03, 4));
    const axis = told(axisOf(truth, seededRandom(seed), { instrument: 'radius' }));
    const far = axis.straightness!;
    expect(far.chance).toBeLessThan(1e-6);
    // Heights of the bow at the five depths, less their mean: the line lies between; 5 sd of a centre off it.
    const bow = DEPTHS.map((z) => 0.03 * Math.sin((Math.PI * z) / LENGTH));
    const middle = bow.reduce((a, b) => a + b, 0) / bow.length;
    const most = Math.max(...bow.map((b) => Math.abs(b - middle)));
    expect(Math.abs(far.distance - most)).toBeLessThan(5 * EACH);
    const zone = Math.max(...bow) - Math.min(...bow);
    expect(Math.abs(far.zone - zone)).toBeLessThan(5 * EACH);
    // The middle stands off towards the bow, the ends the other way, nearly as far.
    const way = far.z === DEPTHS[2] ? 4 : 4 + Math.PI;
    expect([DEPTHS[0], DEPTHS[2], DEPTHS[4]]).toContain(far.z);
    expect(Math.abs(Math.sin((far.theta - way) / 2))).toBeLessThan((5 * EACH) / most);
  }
});

describe('is not told', () => {
  const truth = sum(round(RADIUS), OVAL, shifting(0.001, 1));
  const why = (read: Read) => {
    const axis = axisOf(truth, seededRandom(1), read);
    return axis.status === 'not-told' ? axis.why : 'told';
  };

  it('by diameters, and says why', () => {
    expect(why({ instrument: 'two-point' })).toMatch(/^Diameters show no centre/);
    expect(why({ instrument: 'three-leg' })).toMatch(/^Diameters show no centre/);
  });

  it('by three clock positions, where an oval passes for a centre', () => {
    const around = clocks(3, 2 * Math.PI);
    expect(why({ instrument: 'radius', around })).toMatch(/five clock positions or four even ones/);
    expect(why({ instrument: 'radius', around: [0, 1, 2, 3] })).toMatch(/four even ones/);
    expect(why({ instrument: 'radius', around: clocks(4, 2 * Math.PI) })).toBe('told');
    expect(why({ instrument: 'radius', around: [0, 1, 2, 3, 5] })).toBe('told');
  });

  it('at one depth; and at two nothing is said of a bend', () => {
    expect(why({ instrument: 'radius', depths: [20] })).toMatch(/two depths or more/);
    const two = told(axisOf(truth, seededRandom(1), { instrument: 'radius', depths: [5, 45] }));
    expect(two.straightness).toBeNull();
  });
});

describe('in the report and in words', () => {
  const evaluated = (truth: Shape, gauge: 'radius' | 'two-point') => {
    const taken = measure(truth, gauge, AROUND, DEPTHS, NOISE, seededRandom(5));
    return evaluate(jobOf({ taken, length: LENGTH, nominal: 2 * RADIUS, sd: NOISE }));
  };
  const sentences = (truth: Shape) => {
    const { axis } = evaluated(truth, 'radius').bores[0]!.surveys[0]!;
    return axisSentences(axis!, LENGTH, 'mm').map((s) => s.before + s.figure + s.after);
  };

  it('leans and bends', () => {
    const [lean, bend] = sentences(sum(round(RADIUS), shifting(0.002, Math.PI / 2, 0.04, Math.PI)));
    expect(lean).toMatch(
      /^Its axis leans against the axis that the radii are read from: from rim to bottom its centre shifts by 0\.(09|10)\d? mm per side towards (2:45|3:00|3:15), give or take 0\.0\d+ mm\.$/,
    );
    expect(bend).toMatch(
      /^Its axis is not straight: (25\.0 mm deep .* towards (5:45|6:00|6:15)|(2|47)\.5 mm deep .* towards (11:45|12:00|12:15)), give or take 0\.\d+ mm\.$/,
    );
    expect(bend).toMatch(
      /the centre stands 0\.0\d+ mm per side off the straight line that fits all best/,
    );
  });

  it('straight: one sentence, with what it could hide', () => {
    const all = sentences(sum(round(RADIUS), OVAL));
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(/^Its axis keeps in line with .* as far as these readings can show/);
  });

  it('diameters: nothing in words here, a reason in the report', () => {
    const evaluation = evaluated(sum(round(RADIUS), OVAL), 'two-point');
    const survey = reportOf(evaluation).bores[0]!.surveys[0]!;
    expect(survey.axis).toEqual({
      status: 'not-told',
      why: 'Diameters show no centre: how the axis runs cannot be known from them.',
      instrument: null,
      centers: [],
      lean: null,
      straightness: null,
    });
    expect(axisSentences(evaluation.bores[0]!.surveys[0]!.axis!, LENGTH, 'mm')).toEqual([]);
    expect(survey.ovalTurn!.kind).toBe('same');
    expect(survey.ovalTurn!.fromDepth).toBeNull();
    const [second] = survey.sections[0]!.lobes;
    expect(second!.n).toBe(2);
    expect(second!.amplitudeSd).toBeGreaterThan(0);
    expect(second!.clockSd).toBeGreaterThan(0);
  });

  it('three-leg gauges, and radii at one depth: said among what the readings cannot tell', () => {
    const blind = (gauge: 'three-leg' | 'radius', depths: readonly number[]) => {
      const taken = measure(round(RADIUS), gauge, AROUND, depths, NOISE, seededRandom(8));
      const evaluation = evaluate(jobOf({ taken, length: LENGTH, nominal: 2 * RADIUS }));
      return evaluation.bores[0]!.surveys[0]!.blindSpots.map(({ text }) => text).join(' ');
    };
    expect(blind('three-leg', DEPTHS)).toMatch(/Diameters show no centre/);
    expect(blind('radius', [20])).toMatch(
      /How the axis runs needs one set-up with readings round two/,
    );
    expect(blind('radius', DEPTHS)).not.toMatch(/axis runs/);
  });

  it('radii: centers and lean in the report', () => {
    const truth = sum(round(RADIUS), OVAL, shifting(0.002, Math.PI / 2));
    const { axis } = reportOf(evaluated(truth, 'radius')).bores[0]!.surveys[0]!;
    expect(axis!.status).toBe('told');
    expect(axis!.centers).toHaveLength(5);
    expect(Math.abs(axis!.lean!.clock - 90)).toBeLessThan(5);
    // 5 depths: the last centre 47.5 mm deep, 0.095 mm towards 3 o'clock.
    expect(Math.abs(axis!.centers[4]!.x - 0.095)).toBeLessThan(5 * EACH);
  });
});
