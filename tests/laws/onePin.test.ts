/** Several bores on one pin, from the job on: sizes by hand (constructed) and common practice for the bar and its feelers. */
import { describe, expect, it } from 'vitest';
import { onePinOf } from '../../src/evaluate/onePin.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import {
  offLineWords,
  onePinMissing,
  onePinWords,
  throughWords,
} from '../../src/figures/onePinWords.ts';
import { setBarBy, setBarReading } from '../../src/job/edits.ts';
import { placeBeside } from '../../src/job/partnerEdits.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { demoJobs } from '../../src/practice/demos.ts';

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
    expect(holes.map(({ through, closesIn }) => [through, closesIn])).toEqual([
      ['bushing', 0],
      ['bushing', 0],
    ]);
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
