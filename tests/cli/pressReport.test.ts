/** The press fit in the report: what page and report say, from made-up bores whose every radius is known. */
import { describe, expect, it } from 'vitest';
import { fitFinder } from '../../src/cli/fitReport.ts';
import { fitParts } from '../../src/cli/fitText.ts';
import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { waysOfSurvey } from '../../src/evaluate/ways.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { fitRangesFigure } from '../../src/figures/fitRanges.ts';
import { setDecision, setFit } from '../../src/job/edits.ts';
import { setMaterialFigure } from '../../src/job/materialEdits.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';
import {
  clocks,
  depthsWithin,
  jobOf,
  lobe,
  measure,
  round,
  type Shape,
  sum,
} from '../fixtures/bores.ts';

const mm = (size: number) => ({ text: String(size), unit: 'mm' as const });
const bushing = {
  id: 'b1',
  name: 'Bushing',
  seat: { face: 'A' as const },
  outside: [mm(110)],
  inside: mm(90),
  length: mm(80),
};
const FEATURE: Partial<Feature> = {
  bushings: [bushing],
  boss: { outside: mm(200) },
  decisions: { fit: { wall: 'measured' } },
};

function bored(
  shape: Shape,
  feature: Partial<Feature> = {},
  gauge: 'radius' | 'two-point' = 'radius',
): Job {
  const turn = gauge === 'radius' ? 2 * Math.PI : Math.PI;
  const taken = measure(
    shape,
    gauge,
    clocks(gauge === 'radius' ? 24 : 12, turn),
    depthsWithin(5, 80),
  );
  return jobOf({ taken, length: 80, sd: 0.0005, feature: { ...FEATURE, ...feature } });
}

const memory: Memory = new Map();

function reported(job: Job) {
  const bore = evaluate(job, memory).bores[0]!;
  const survey = bore.surveys[0]!;
  const fit = fitFinder(job, null)(bore, survey)!;
  const lines = fitParts(job, bore, survey, null).flatMap((part) => part.lines);
  return { bore, survey, fit, press: fit.bushings[0]!.press, text: lines.join('\n') };
}

/** Steel of the computed example: 207 GPa, 0.29. */
function likeExample(job: Job): Job {
  return setMaterialFigure(
    setMaterialFigure(job, 'plain steel', 'elastic', '207'),
    'plain steel',
    'poisson',
    '0.29',
  );
}

describe('a round bore', () => {
  const job = likeExample(bored(round(54.95)));

  it('comes to the computed example of a 90/110 bushing in a boss of 200, 0.10 mm across', () => {
    const { press } = reported(
      setFit(setFit(job, 'b', 'frictionLow', '0.12'), 'b', 'frictionHigh', '0.12'),
    );
    // Lamé, computed apart: 27.2042 MPa; 50.8007 and -164.585 MPa; 0.0715588 and 0.0227985 mm; 90.3 kN; 4964 N m.
    const { mean, held, local } = press;
    // Readings to 1e-10 mm; the surface between them leaves the press fit within 1 in 500.
    const near = (value: number | null, told: number) =>
      expect(Math.abs(value! / told - 1)).toBeLessThan(2e-3);
    near(local.mean, 0.1);
    near(mean!.pressure, 27.2042);
    near(mean!.boss.hoopInside, 50.8007);
    near(mean!.bushing.hoopInside, -164.585);
    near(mean!.closesIn, 0.0715588);
    near(mean!.grows, 0.0227985);
    near(held!.low.force, 90_300);
    near(held!.high.torque, 4_963_800);
    near(press.seatLength, 80);
  });

  it('loses what roughness takes, and no more', () => {
    const { press } = reported(setFit(job, 'b', 'roughnessLoss', mm(0.02)));
    expect(press.mean!.pressFit).toBeCloseTo(press.local.mean! - 0.02, 12);
    expect(press.mean!.pressure! / reported(job).press.mean!.pressure!).toBeCloseTo(0.8, 2);
  });

  it('says what is missing, and tells the rest', () => {
    const { inside: _, ...solid } = bushing;
    const without = reported(bored(round(54.95), { bushings: [solid] }));
    expect(without.press).toMatchObject({ missing: 'inside', mean: null, held: null });
    expect(without.text).toContain('Give the bushing’s inside diameter');
    expect(without.press.local.mean).toBeCloseTo(0.1, 3);
    const bossless = reported(bored(round(54.95), { boss: {} }));
    expect(bossless.press.missing).toBe('boss-size');
    expect(bossless.text).toContain('Give the outside diameter of the boss');
    for (const { text } of [without, bossless]) {
      expect(text).toContain('ISO 286, mm across');
      expect(text).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it.each([
    [
      'bushing',
      { bushings: [{ ...bushing, inside: mm(115) }] },
      'as large inside as it is outside',
    ],
    ['boss', { boss: { outside: mm(105) } }, 'no larger outside than the bushing'],
  ] as const)('with a wrong %s says so in one sentence', (missing, feature, says) => {
    const { press, text } = reported(bored(round(54.95), feature as unknown as Partial<Feature>));
    expect(press).toMatchObject({ missing, mean: null });
    expect(text).toContain(says);
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('beyond yield, or loose, says so first', () => {
    const tight = reported(bored(round(54.5)));
    expect(tight.press.greatest!.boss.shareOfStrength).toBeGreaterThan(1);
    expect(tight.press.words[0]).toContain('more than the boss bears');
    const loose = reported(bored(round(55.1)));
    expect(loose.press.mean!.pressure).toBe(0);
    expect(loose.press.words.slice(0, 2).join(' ')).toContain('The bushing is loose');
  });

  it('in grey iron counts the pull against what breaks it', () => {
    const { press } = reported(
      bored(round(54.95), { boss: { outside: mm(200), material: 'grey iron' } }),
    );
    expect(press.boss).toBe('cast iron');
    expect(press.mean!.boss.stress).toBeCloseTo(press.mean!.boss.hoopInside!, 12);
    expect(press.words.join(' ')).toContain('tensile strength');
  });
});

describe('a three-lobed bore', () => {
  const shape = sum(round(54.97), lobe(3, 0.05));

  it('fools every diameter: tight by them, loose in three places', () => {
    const { press } = reported(bored(shape));
    expect(press.twoPoint!).toBeGreaterThan(0.03);
    // Twice 0.05 - 0.03 of a millimetre per side; the surface rounds a crest a little.
    expect(Math.abs(press.local.least! - -0.04)).toBeLessThan(0.01);
    expect(press.words[0]).toMatch(
      /^Before it is pressed in, the wall stands 0\.0\d+ mm per side off the bushing/,
    );
    expect(press.words.join(' ')).toContain('By the diameters alone it would be tight everywhere.');
    expect(press.onlyTwoPoint).toBe(false);
  });

  it('tells before and after pressing apart, and answers by what touches once it is in', () => {
    // Lobes of 0.02 per side are bent flat by a fit of 0.02 mm across: constructed, by the contact's own sum.
    const { fit } = reported(bored(sum(round(54.99), lobe(3, 0.012))));
    const { press, round: pressedIn, short } = fit.bushings[0]!;
    expect(press.local.least!).toBeLessThan(0);
    expect(pressedIn.found!.touching).toBe(1);
    const says = short.answers.find(({ asks }) => asks === 'holds')!.says;
    expect(says).toMatch(/^Yes: pressed in, it touches all of its seat; before it is pressed in, /);
    expect(press.words[0]).toContain('Pressed in, it bends and touches all of its seat.');
    expect([says, ...press.words].join(' ')).not.toContain('Not held everywhere');
  });

  it('advises the larger of both sums for the press, and holds by the lesser', () => {
    // An oval that a small press fit cannot follow, and which neither metal yields to: constructed.
    const { fit } = reported(bored(sum(round(54.999), lobe(2, 0.06))));
    const { press, insideAfter, running } = fit.bushings[0]!;
    const { held, heldEvenly, heldByShape } = press;
    // What gapes pulls nothing: the mean of the real pressures is above that of the mean press fit, which counts it so.
    expect(heldByShape!.high.force!).toBeGreaterThan(1.05 * heldEvenly!.high.force!);
    expect(held!.high.force).toBe(heldByShape!.high.force);
    expect(held!.low.force).toBe(heldEvenly!.low.force);
    const words = press.words.join(' ');
    expect(words).toMatch(/by the bore’s real shape, and .* were it to press evenly all round/);
    expect(words).toContain('as if it were so all round');
    // Grown by the shape, not by the mean: what the order of work says is what the pin meets.
    expect(insideAfter.mean).toBeCloseTo(90 - fit.bushings[0]!.round.found!.closesIn, 9);
    expect(running.installed).toBeNull();
    expect(fit.order.find(({ step }) => step === 'inside')!.words).toContain(
      `${insideAfter.mean!.toFixed(3)} mm across is expected`,
    );
  });

  it('says why nothing holds it where roughness takes all of the press fit', () => {
    const { fit, press } = reported(
      bored(round(54.975), { decisions: { fit: { wall: 'measured', roughnessLoss: mm(0.12) } } }),
    );
    const { short, round: pressedIn } = fit.bushings[0]!;
    const says = short.answers.find(({ asks }) => asks === 'holds')!.says;
    for (const words of [says, press.words.join(' ')]) {
      expect(words).toMatch(/roughness takes 0\.120 mm across of it/);
      expect(words).not.toContain('Held: 100 %');
    }
    expect(says).toMatch(/^No: /);
    expect(pressedIn.words.join(' ')).not.toContain('widest gap');
    expect(fit.order.map(({ step }) => step)).not.toContain('press');
    expect(fit.order.at(-1)!.words).toContain('do not go on');
  });

  it('is warned of where diameters alone were read', () => {
    const { press } = reported(bored(shape, {}, 'two-point'));
    expect(press.onlyTwoPoint).toBe(true);
    expect(press.local.least!).toBeGreaterThan(0);
    expect(press.words.join(' ')).toContain('a three-lobed bore reads alike across');
  });
});

describe('the demo winch', () => {
  const whole = slipwayWinch();
  const [heel] = whole.features;
  const demo: Job = { ...whole, features: [{ ...heel!, surveys: heel!.surveys.slice(0, 1) }] };

  it.each(['grind', 'squeeze', 'weld', 'shim', 'leave', 'oversize', 'sleeve'] as const)(
    'has the press fit of the table of the ways, by %s',
    (way) => {
      const job = setDecision(demo, 'f1', { way });
      const { bore, survey, press } = reported(job);
      const told = waysOfSurvey(job, bore, survey, null)!.outcomes.find(({ name }) => name === way);
      if (told === undefined) return;
      const known = (value: number) => (Number.isNaN(value) ? null : value);
      for (const key of ['least', 'mean', 'greatest', 'give'] as const) {
        const value = known(told.pressFit[key]);
        if (value === null) expect(press.local[key]).toBeNull();
        else expect(press.local[key]).toBeCloseTo(value, 9);
      }
      for (const key of ['likely', 'least', 'most'] as const) {
        const value = known(told.seated[key]);
        if (value === null) expect(press.seated[key]).toBeNull();
        else expect(press.seated[key]).toBeCloseTo(value, 9);
      }
    },
  );

  it('draws its ranges with this bore’s own', () => {
    const { bore, survey } = reported(demo);
    const part = fitOfSurvey(demo, bore, survey, null)!.bushings[0]!.press;
    const figure = fitRangesFigure(part, 'in')!;
    // Practice 2, B4.1 8, ISO 4, and the bore itself.
    expect(figure.rows).toHaveLength(15);
    expect(figure.rows.map(({ head }) => head).filter((head) => head !== '')).toEqual([
      'This bore',
      'Practice',
      'ANSI B4.1',
      'ISO 286',
    ]);
    expect(figure.wanted).toBeCloseTo(2, 6);
    for (const { least, most, shown } of figure.rows) {
      if (!shown) continue;
      expect(least).toBeGreaterThanOrEqual(figure.from);
      expect(most).toBeLessThanOrEqual(figure.to);
      expect(least).toBeLessThanOrEqual(most);
    }
  });
});
