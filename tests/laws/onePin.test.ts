/** Several bores on one pin, from the job on: sizes by hand (constructed) and common practice for the bar and its feelers. */
import { describe, expect, it } from 'vitest';
import { fitOfSurvey } from '../../src/evaluate/fit.ts';
import { onePinOf } from '../../src/evaluate/onePin.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import {
  offLineWords,
  onePinMissing,
  onePinWords,
  throughWords,
} from '../../src/figures/onePinWords.ts';
import { runningWords } from '../../src/figures/runningWords.ts';
import { setBarBy, setBarReading } from '../../src/job/edits.ts';
import { placeBeside } from '../../src/job/partnerEdits.ts';
import type { Bushing, Feature, Job } from '../../src/job/schema.ts';
import { demoJobs } from '../../src/practice/demos.ts';
import { clocks, depthsWithin, jobOf, measure, type Shape } from '../fixtures/bores.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });
const memory: Memory = new Map();
const found = (job: Job) => onePinOf(job, evaluate(job, memory, 'quick'), null)!;

/** Two ears; their own readings stay, their bushings have insides and the old centre is kept. */
const demo = demoJobs().find(({ file }) => file.startsWith('orchard-lift-clevis'))!.job;
const [left, right] = demo.features as [Feature, Feature];
const bare = (one: Feature): Feature => ({
  ...one,
  place: { station: one.place!.station },
  decisions: { ...one.decisions, centre: { rule: 'by-hand' }, fit: { wall: 'measured' } },
});
const clevis: Job = { ...demo, features: [bare(left), bare(right)] };

function bushed(job: Job, ...insides: string[]): Job {
  const features = job.features.map((one, at) => ({
    ...one,
    pin: { diameters: [mm('29.95')] },
    bushings: one.bushings
      .slice(0, 1)
      .map((b) => ({ ...b, inside: mm(insides[at]!), outside: [mm('40')] })),
  }));
  return { ...job, features };
}

describe('two bushed ears', () => {
  // A bushing smaller than its bore closes in by nothing, so that its inside stays as it was typed.
  const job = bushed(clevis, '30.10', '30.20');

  it('on one line let the smaller size through', () => {
    const { largest, holes } = found(job);
    expect(largest).toBeCloseTo(30.1, 6);
    for (const { through, closesIn } of holes) {
      expect(through).toBe('bushing');
      expect(closesIn).toBeCloseTo(0, 9);
    }
  });

  it('one stated 0.3 beside the other stands so far off its line, towards where it was stated', () => {
    const off = placeBeside(job, right.id, { x: 0, y: -0.3 });
    const { holes, largest, pin } = found(off);
    const far = holes[1]!.off!;
    expect(far.perSide).toBeCloseTo(0.3, 9);
    expect(far.theta).toBeCloseTo(Math.PI, 9);
    // 0.002 x 29.95 + 0.002 in of running clearance: its half is 0.056.
    expect(far.over).toBe(true);
    expect(largest).toBeLessThan(30.1);
    expect(pin).toBeCloseTo(29.95, 9);
  });

  it('feelers put it where half of their difference says (common practice)', () => {
    const read = (one: Job, face: 'A' | 'B', at: readonly [string, string][]) =>
      at.reduce((now, [clock, gap]) => setBarReading(now, right.id, { face, clock }, mm(gap)), one);
    const four = [
      ['12', '0.10'],
      ['3', '0.25'],
      ['6', '0.50'],
      ['9', '0.15'],
    ] as [string, string][];
    // Seen at face B, 3 o'clock is 9 o'clock of face A.
    const mirrored = [
      ['12', '0.10'],
      ['9', '0.25'],
      ['6', '0.50'],
      ['3', '0.15'],
    ] as [string, string][];
    const { placed } = found(read(read(job, 'A', four), 'B', mirrored)).holes[1]!;
    expect(placed.from).toBe('bar');
    // Readings of diameters alone leave no odd lobe to take out.
    expect(placed.y).toBeCloseTo((0.1 - 0.5) / 2, 6);
    expect(placed.x).toBeCloseTo((0.25 - 0.15) / 2, 6);
    expect(Math.abs(placed.leanX) + Math.abs(placed.leanY)).toBeLessThan(1e-6);
    const needle = found(setBarBy(read(job, 'A', four), 'smaller-farther')).holes[1]!.placed;
    expect(needle.y).toBeCloseTo(0.2, 6);
    expect(needle.leanKnown).toBe(false);
  });

  it('taken over as stated places they give the same pin', () => {
    const read = ['12', '3', '6', '9'].reduce(
      (now, clock, i) =>
        setBarReading(now, right.id, { face: 'A', clock }, mm(['0.1', '0.3', '0.4', '0.1'][i]!)),
      job,
    );
    const first = found(read);
    const { x, y } = first.holes[1]!.placed;
    expect(found(placeBeside(job, right.id, { x, y })).largest).toBeCloseTo(first.largest, 4);
  });
});

describe('what is missing', () => {
  it('is said in sentences, and nothing is blank or NaN', () => {
    const none: Job = {
      ...clevis,
      features: clevis.features.map(({ place: _, ...one }) => one as Feature),
    };
    const odd = setBarReading(clevis, right.id, { face: 'A', clock: '12' }, mm('-0.2'));
    for (const job of [
      clevis,
      none,
      odd,
      demo,
      { ...demo, features: [left, { ...right, surveys: [] }] },
    ]) {
      const one = found(job);
      const lines = [
        ...onePinWords(one, 'mm'),
        ...offLineWords(one, 'in'),
        ...throughWords(one, 'mm'),
        ...onePinMissing(one),
      ];
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) expect(line).toMatch(/^[A-Z“].*\.$/);
      expect(lines.join(' ')).not.toMatch(/NaN|undefined|–/);
    }
    expect(onePinMissing(found(none)).join(' ')).toContain('station');
    expect(onePinMissing(found(odd)).join(' ')).toContain('a gap cannot be less than nothing');
  });

  it('one bore alone has no line', () => {
    expect(
      onePinOf({ ...demo, features: [left] }, evaluate({ ...demo, features: [left] }), null),
    ).toBeNull();
  });
});

/** 90/110 mm in 200 mm, steel in steel, two ears of 40 mm on one pin: the reference of Lamé's formula for 0.10 of press fit. */
function pressedIn(shapes: readonly Shape[], change: Partial<Feature> = {}): Job {
  const jobs = shapes.map((shape, at) => {
    const taken = measure(shape, 'radius', clocks(12, 2 * Math.PI), depthsWithin(3, 40));
    const bushing: Bushing = {
      id: `b${at}`,
      name: 'New',
      seat: { face: 'A' },
      outside: [mm('110')],
      inside: mm('90'),
    };
    const feature: Partial<Feature> = {
      id: `f${at}`,
      name: `Ear ${at + 1}`,
      boss: { outside: mm('200') },
      bushings: [bushing],
      place: { station: mm(String(100 * at)) },
      decisions: {
        target: mm('109.9'),
        centre: { rule: 'by-hand', x: mm('0') },
        fit: { wall: 'measured' },
      },
      ...(at === 0 ? { pin: { diameters: [mm('89.80')] } } : {}),
      ...change,
    };
    return jobOf({ taken, length: 40, sd: 0.0002, feature });
  });
  return { ...jobs[0]!, features: jobs.flatMap(({ features }) => features) };
}

const evaluated: Memory = new Map();
/** Learned once: in most of them the wall is the same. */
const onePin = (job: Job, pace: 'quick' | 'settled' = 'quick') =>
  onePinOf(job, evaluate(job, evaluated, pace), null)!;
const flat: Shape = () => 54.95;

describe('bushings that are pressed in', () => {
  it('close in by what Lamé’s formula says in a round bore, not by all of the press fit', () => {
    const { holes, largest } = onePin(pressedIn([flat, flat]));
    for (const { alone, by, closesIn } of holes) {
      expect(by).toBe('shape');
      // 0.0715588 of 0.10: computed reference for 90/110 in 200, E 207 GPa, nu 0.29.
      expect(Math.abs(closesIn - 0.0715588)).toBeLessThan(0.001);
      expect(Math.abs(alone - (90 - 0.0715588))).toBeLessThan(0.001);
    }
    expect(Math.abs(largest - (90 - 0.0715588))).toBeLessThan(0.001);
  });

  it('pass on an oval, and let through what the running clearance of each alone says', () => {
    const oval: Shape = (theta) => 54.95 + 0.02 * Math.cos(2 * theta);
    const job = pressedIn([oval, flat]);
    const { holes } = onePin(job, 'settled');
    const evaluation = evaluate(job, evaluated);
    const bore = evaluation.bores[0]!;
    const fit = fitOfSurvey(job, bore, bore.surveys[0]!, null, evaluation.parts)!.bushings[0]!;
    // The largest pin in one hole is found there by another search, of every row.
    expect(Math.abs(holes[0]!.alone - fit.running.installed!.largest.diameter)).toBeLessThan(2e-4);
    // 95.1 % of a two-lobed bore reach the bushing's own, per side on both sides.
    expect(Math.abs(holes[1]!.alone - holes[0]!.alone - 2 * 0.951 * 0.02)).toBeLessThan(0.002);
  });

  it('count about the axis on which they come to sit', () => {
    const aside: Shape = (theta) => 54.95 + 0.1 * Math.cos(theta);
    const { off } = onePin(pressedIn([flat, aside]), 'settled').holes[1]!;
    expect(Math.abs(off!.perSide - 0.1)).toBeLessThan(0.002);
    expect(Math.min(off!.theta, 2 * Math.PI - off!.theta)).toBeLessThan(0.05);
  });

  it('close in by all of the press fit where the boss’s size is missing, and the words say so', () => {
    const found = onePin(pressedIn([flat, flat], { boss: {} }));
    expect(found.holes.map(({ by }) => by)).toEqual(['whole', 'whole']);
    expect(Math.abs(found.largest - 89.9)).toBeLessThan(0.001);
    expect(throughWords(found, 'mm').join(' ')).toContain('all of the press fit, which is safe');
  });

  it('close in by the formula where no place of a seat tells their shape', () => {
    const keepouts: Feature['keepouts'] = [
      { id: 'k', kind: 'other', face: 'A', from: mm('0'), to: mm('18') },
    ];
    const half = (id: string, from: string, to: string): Bushing => ({
      id,
      name: id,
      seat: { face: 'A', from: mm(from), to: mm(to) },
      outside: [mm('110')],
      inside: mm('90'),
    });
    const bushings = [half('rim', '0', '18'), half('bottom', '20', '40')];
    const found = onePin(pressedIn([flat, flat], { keepouts, bushings }));
    expect(found.holes.map(({ by }) => by)).toEqual(['formula', 'formula']);
    // The one that is held closes in; of the other nothing says that it does.
    for (const { closesIn, alone } of found.holes) {
      expect(Math.abs(closesIn - 0.0715588)).toBeLessThan(0.001);
      expect(Math.abs(alone - (90 - 0.0715588))).toBeLessThan(0.001);
    }
    expect(throughWords(found, 'mm').join(' ')).toContain('formula for round rings');
  });
});

describe('a bore without a list of its pin', () => {
  const pinAt = (job: Job, at: number) => {
    const { bores, parts } = evaluate(job, evaluated, 'quick');
    const bore = bores[at]!;
    return fitOfSurvey(job, bore, bore.surveys[0]!, null, parts)!.bushings[0]!.running;
  };

  it('takes the only other one, and says whose it is', () => {
    const job = pressedIn([flat, flat]);
    const running = pinAt(job, 1);
    expect(running.pin).toMatchObject({ from: 'other-list', name: 'Ear 1', greatest: 89.8 });
    expect(runningWords(running, 'mm').said[0]).toContain(
      'The pin as measured for “Ear 1” is 89.8',
    );
    expect(pinAt(job, 0).pin).toMatchObject({ from: 'list', name: 'Ear 1' });
  });

  it('takes none where two others have one, or the job has two pins', () => {
    const three = pressedIn([flat, flat, flat]);
    const [first, second, third] = three.features as [Feature, Feature, Feature];
    const two = { ...three, features: [first, second, { ...third, pin: first.pin! }] };
    expect(pinAt(two, 1).pin).toBeNull();
    const pin = (id: string): Feature => ({ ...second, id, kind: 'pin', name: id, surveys: [] });
    const pins = { ...three, features: [first, second, pin('p1'), pin('p2')] };
    expect(pinAt(pins, 1).pin).toBeNull();
  });
});
