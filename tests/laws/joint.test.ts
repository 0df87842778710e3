/**
 * The joint side by side: sizes, play and walls against figures worked by hand, and the pin's mirror. That a pin held
 * fast wears on the side that faces the hole's, and a turning one all round, is common practice of the trade; so is the
 * catalogue that these patterns are of (no published source).
 */
import { describe, expect, it } from 'vitest';
import { listSize, type PartSize } from '../../src/bore/partSize.ts';
import { type Measured, playNow, wallLeft } from '../../src/bore/play.ts';
import { evaluate } from '../../src/evaluate.ts';
import { jointSentences, sizeRows, wearRows } from '../../src/figures/jointWords.ts';
import { addFeature } from '../../src/job/edits.ts';
import { addMeasured } from '../../src/job/partEdits.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { seededRandom } from '../../src/num/random.ts';
import { clocks, jobOf, measure, type Shape, typedIn } from '../fixtures/bores.ts';

const LENGTH = 60;
const NOISE = 0.004;
const DEPTHS = [5, 20, 40, 55];

/** A part of known wall, read across at six clock pairs. */
function part(kind: Feature['kind'], truth: Shape, seed: number, nominal?: number): Feature {
  const taken = measure(truth, 'two-point', clocks(6), DEPTHS, NOISE, seededRandom(seed));
  const feature: Partial<Feature> = { kind, id: `${kind}${seed}`, name: kind };
  const job = jobOf({
    taken,
    length: LENGTH,
    sd: NOISE,
    feature,
    ...(nominal === undefined ? {} : { nominal }),
  });
  return job.features[0]!;
}

function jointOf(features: readonly Feature[]) {
  const job: Job = { ...jobOf({ taken: [] }), features: [...features] };
  return evaluate(job).joint;
}

/** Worn w deep on one side towards `at`: a hole loses metal outward, a pin inward. */
const hole =
  (radius: number, w: number, at: number): Shape =>
  (theta) =>
    radius + w * Math.max(0, Math.cos(theta - at));
const shaft =
  (radius: number, w: number, at: number): Shape =>
  (theta, z) =>
    radius - (z > 10 && z < 50 ? w : 0) * Math.max(0, Math.cos(theta - at));

const FIVE = (5 * Math.PI) / 6;

it('a taper says which end is larger, without a sign', () => {
  // 0.3 per side over 60 mm is 0.60 across, growing from face A or towards it.
  const towards =
    (sign: number): Shape =>
    (_, z) =>
      20 + sign * 0.3 * (z / LENGTH);
  const cellOf = (sign: number) =>
    wearRows(jointOf([part('bore', towards(sign), 7)]), 'mm')[0]!.cells[2]!;
  for (const [sign, where] of [
    [1, 'larger at B'],
    [-1, 'larger at A'],
  ] as const) {
    const { figure, where: said } = cellOf(sign);
    expect(Math.abs(Number(figure) - 0.6)).toBeLessThan(4 * NOISE);
    expect(said).toEqual([where]);
  }
});

describe('a pin that was measured', () => {
  // New 40.00; worn 0.20 on one side from 10 to 50 mm: least 40.00 - 0.20 = 39.80 across 5-11, at both ends 40.00.
  const joint = jointOf([part('pin', shaft(20, 0.2, FIVE), 1, 40)]);
  const pin = joint.parts[0]!;

  it('has no map to grind by', () => {
    const job: Job = {
      ...jobOf({ taken: [] }),
      features: [part('pin', shaft(20, 0.2, FIVE), 1, 40)],
    };
    const survey = evaluate(job).parts[0]!.surveys[0]!;
    expect([survey.target, survey.removal, survey.zones.length]).toEqual([null, null, 0]);
    expect(survey.notes.map(({ text }) => text).join(' ')).not.toContain('bushing');
    expect(evaluate(job).bores).toEqual([]);
  });

  it('its least and greatest sizes are the true ones within their give-or-take', () => {
    expect(Math.abs(pin.size.least.mm - 39.8)).toBeLessThan(pin.size.least.give);
    expect(Math.abs(pin.size.greatest.mm - 40)).toBeLessThan(pin.size.greatest.give);
    expect(pin.size.least.give).toBeLessThan(0.02);
  });

  it('is worn by the difference to new: half on each side, since diameters know no side', () => {
    expect(pin.worn!.oneSided).toBe(false);
    expect(pin.worn!.across.mm).toBeCloseTo(40 - pin.size.least.mm, 12);
    expect(pin.worn!.perSide.mm).toBeCloseTo(pin.worn!.across.mm / 2, 12);
    expect(Math.abs(Math.sin(pin.worn!.theta - FIVE))).toBeLessThan(Math.sin(Math.PI / 12));
  });

  it('where its new size is not stated its own largest stands for it, and is called so', () => {
    const bare = jointOf([part('pin', shaft(20, 0.2, FIVE), 1)]).parts[0]!;
    expect(bare.newFrom).toBe('unworn-end');
    expect(bare.newSize).toBe(bare.size.greatest.mm);
    const [row] = sizeRows(jointOf([part('pin', shaft(20, 0.2, FIVE), 1)]), 'mm');
    expect(row!.cells[0]!.where.join(' ')).toBe('its own largest');
  });
});

describe('play now', () => {
  const flat = (diameters: readonly number[], give: number): Measured => ({
    size: listSize(diameters, give)!,
    surface: null,
    sections: [],
  });

  it('from sizes without places: greatest less least, and least less greatest', () => {
    // Hole 40.10 to 40.30, pin 39.90 to 39.98: 0.40 at the loosest, 0.12 at the tightest; 0.03 and 0.04 give 0.05.
    const play = playNow(flat([40.1, 40.3], 0.03), flat([39.9, 39.98], 0.04));
    expect(play.by).toBe('extremes');
    expect(play.loosest.mm).toBeCloseTo(0.4, 12);
    expect(play.tightest.mm).toBeCloseTo(0.12, 12);
    expect(play.loosest.give).toBeCloseTo(0.05, 12);
  });

  it('clock by clock where both are known: hole and pin worn along one line add up there', () => {
    // Hole 40.10 and 0.30 gone towards 5; pin 40.00 and 0.20 gone there: 0.10 + 0.30 + 0.20 along 5-11, 0.10 square to it.
    const joint = jointOf([
      part('bushing-inside', hole(20.05, 0.3, FIVE), 2, 40.1),
      part('pin', shaft(20, 0.2, FIVE), 3, 40),
    ]);
    const [play] = joint.plays;
    expect(play!.by).toBe('clock');
    expect(Math.abs(play!.loosest.mm - 0.6)).toBeLessThan(play!.loosest.give);
    expect(Math.abs(play!.tightest.mm - 0.1)).toBeLessThan(play!.tightest.give + 0.01);
    expect(Math.abs(Math.sin(play!.loosest.theta - FIVE))).toBeLessThan(Math.sin(Math.PI / 12));
  });

  it('a bore that holds a bushing nobody read has no play to tell, and that is said', () => {
    const bore = part('bore', hole(30, 0, 0), 4, 60);
    const outside = [typedIn('mm', 60.05)];
    const bushing = { id: 'n', name: 'New', seat: { face: 'A' as const }, outside };
    const joint = jointOf([{ ...bore, bushings: [bushing] }, part('pin', shaft(20, 0, 0), 5, 40)]);
    expect(joint.plays).toEqual([]);
    expect(jointSentences(joint, 'mm').join(' ')).toContain('The play now of “bore” is not known');
  });

  it('a list of pin sizes counts until the pin is measured', () => {
    const bore: Feature = {
      ...part('bore', hole(20.05, 0, 0), 6, 40.1),
      pin: { diameters: [typedIn('mm', 39.96), typedIn('mm', 40)] },
    };
    const listed = jointOf([bore]);
    expect(listed.plays[0]!.by).toBe('extremes');
    expect(listed.plays[0]!.loosest.mm).toBeCloseTo(listed.parts[0]!.size.greatest.mm - 39.96, 9);
    const measured = jointOf([bore, part('pin', shaft(19.9, 0, 0), 7, 40)]);
    expect(measured.plays.map(({ pin }) => pin)).toEqual(['pin']);
    expect(measured.plays[0]!.by).toBe('clock');
  });
});

describe('the wall of an old bushing', () => {
  /** Inside 40.00 where unworn, 40.60 at the worst place; outside 50.00. */
  const inside: Measured = {
    size: {
      ...(listSize([40, 40.6], 0.02) as PartSize),
      greatest: { mm: 40.6, give: 0.06, theta: FIVE, z: 20 },
    },
    surface: null,
    sections: [],
  };
  const outside = listSize([50], 0.08)!;

  it('both sides alike: half of what is gone across off each', () => {
    // (50 - 40.6) / 2 = 4.7 at the thinnest; new (50 - 40) / 2 = 5: 6 % gone. Give-or-take hypot(0.06, 0.08) / 2 = 0.05.
    const wall = wallLeft(inside, outside, 5, Number.NaN);
    expect(wall.least.mm).toBeCloseTo(4.7, 12);
    expect(wall.leastOneSide).toBeCloseTo(4.4, 12);
    expect(wall.lost).toBeCloseTo(0.06, 12);
    expect(wall.least.give).toBeCloseTo(0.05, 12);
  });

  it('one side known: that side bears all of it', () => {
    // 5.0 - 0.6 = 4.4: 12 % gone.
    const wall = wallLeft(inside, outside, 5, FIVE);
    expect(wall.least.mm).toBeCloseTo(4.4, 12);
    expect(wall.lost).toBeCloseTo(0.12, 12);
    expect(wall.least.theta).toBe(FIVE);
  });

  it('without a new wall no share is told', () => {
    expect(wallLeft(inside, outside, Number.NaN, FIVE).lost).toBeNaN();
  });
});

describe('does the pin mirror the hole', () => {
  const mirror = (holeAt: number, w: number, pinTruth: Shape, nominal: number | undefined = 40) =>
    jointOf([
      part('bushing-inside', hole(20.05, w, holeAt), 8, 40.1),
      part('pin', pinTruth, 9, nominal),
    ]).mirrors[0]!;

  it('worn along one line: it agrees, as a pin that is held fast', () => {
    expect(mirror(FIVE, 0.3, shaft(20, 0.2, FIVE))).toMatchObject({
      verdict: 'agrees',
      why: 'one-side',
    });
  });

  it('the hole one way and the pin all round: it agrees, as a pin that turns', () => {
    expect(mirror(FIVE, 0.3, () => 19.9)).toMatchObject({ verdict: 'agrees', why: 'turned' });
  });

  it('the other line as in a looking-glass: it contradicts, and the face is asked', () => {
    // 2 o'clock from face A is 10 o'clock from face B.
    const two = Math.PI / 3;
    expect(mirror(two, 0.3, shaft(20, 0.2, -two))).toMatchObject({
      verdict: 'contradicts',
      why: 'mirrored',
    });
  });

  it('square to it: it contradicts', () => {
    expect(mirror(0, 0.3, shaft(20, 0.2, Math.PI / 2))).toMatchObject({
      verdict: 'contradicts',
      why: 'crossed',
    });
  });

  it('the pin as new: it contradicts; with no new size given it cannot be told', () => {
    expect(mirror(FIVE, 0.3, () => 20)).toMatchObject({
      verdict: 'contradicts',
      why: 'pin-unworn',
    });
    const joint = jointOf([
      part('bushing-inside', hole(20.05, 0.3, FIVE), 8, 40.1),
      part('pin', () => 20, 9),
    ]);
    expect(joint.mirrors[0]).toMatchObject({ verdict: 'cannot-tell', why: 'no-new-size' });
  });

  it('no pin: what to measure is said', () => {
    const joint = jointOf([part('bushing-inside', hole(20.05, 0.3, FIVE), 8, 40.1)]);
    expect(joint.mirrors[0]).toMatchObject({ verdict: 'not-measured', why: 'no-pin' });
    expect(jointSentences(joint, 'mm').join(' ')).toContain('six clock pairs at three depths');
  });
});

describe('a part that is added to a job', () => {
  const job = { ...jobOf({ taken: [], length: 50 }) };

  it('a pin comes with a survey and an outside micrometer', () => {
    const added = addMeasured(job, 'pin');
    expect(added.ok).toBe(true);
    if (!added.ok) return;
    const pin = added.job.features.at(-1)!;
    const gauge = added.job.gauges.find(({ id }) => id === pin.surveys[0]!.plan.gauge);
    expect([pin.kind, gauge!.type]).toEqual(['pin', 'outside-micrometer']);
    const again = addMeasured(added.job, 'bushing-outside');
    expect(again.ok && again.job.gauges.length).toBe(added.job.gauges.length);
  });

  it('a bushing is as long as the bore until it is said otherwise', () => {
    const added = addMeasured(job, 'bushing-inside');
    expect(added.ok && added.job.features.at(-1)!.length).toEqual(job.features[0]!.length);
  });

  it('is refused where the job is full, with the reason', () => {
    let full = job;
    for (let i = 0; i < 39; i++) {
      const more = addFeature(full, 'bore');
      if (more.ok) full = more.job;
    }
    expect(addMeasured(full, 'pin')).toMatchObject({ ok: false });
  });
});
