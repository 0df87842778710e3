/**
 * What each rule for the centre costs, on bores whose figures are known by construction, and where the partner wants the
 * axis: straight lines worked out by hand (constructed), the limit as common practice has it.
 */
import { describe, expect, it } from 'vitest';
import { centresOf } from '../../src/evaluate/centres.ts';
import { partnerLimit, partnerOf } from '../../src/evaluate/partner.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { centreRows, sayCentre } from '../../src/figures/centreWords.ts';
import type { Decisions, Feature, Job } from '../../src/job/schema.ts';
import {
  clocks,
  crescent,
  depthsWithin,
  jobOf,
  measure,
  round,
  sum,
  typedIn,
} from '../fixtures/bores.ts';

const INCH = 25.4;
const LENGTH = 50;
const R0 = (3.501 / 2) * INCH;
/** The trade's example: 0.018 in worn at 6 o'clock of a bore of 3.501 in. */
const W = 0.018 * INCH;
const mm = (value: number) => typedIn('mm', value);

function eggJob(decisions: Decisions, more: Partial<Feature> = {}): Job {
  return jobOf({
    taken: measure(
      sum(round(R0), crescent(W, 0, Math.PI)),
      'radius',
      clocks(36, 2 * Math.PI),
      depthsWithin(4, LENGTH, 2),
    ),
    length: LENGTH,
    nominal: 3.501 * INCH,
    sd: 0.002,
    units: 'in',
    feature: { decisions, ...more },
  });
}

/** The job with a second bore, whose readings do not matter, at a place along the pin. */
function withPartner(job: Job, own: Feature['place'], partner: Feature['place']): Job {
  const one = job.features[0]!;
  const other: Feature = { ...one, id: 'other', name: 'Far ear', surveys: [] };
  return {
    ...job,
    features: [
      { ...one, ...(own && { place: own }) },
      { ...other, ...(partner && { place: partner }) },
    ],
  };
}

const target = typedIn('in', 3.519 * INCH, 4);

function costsOf(job: Job, memory: Memory = new Map()) {
  evaluate(job, memory);
  const { id, surveys } = job.features[0]!;
  return centresOf(job, { bore: id, survey: surveys[0]!.id }, memory)!;
}

describe("a bore worn 0.018 in at 6 o'clock, to be ground to 3.519 in", () => {
  const job = withPartner(
    eggJob({ target, centre: { rule: 'by-hand', y: mm(-W / 2) } }),
    { station: mm(0) },
    { station: mm(150) },
  );
  const memory: Memory = new Map();
  const found = costsOf(job, memory);
  const of = (rule: string) => found.costs.find((one) => one.rule === rule)!;
  /*
   * The surface has 14 lobes: what it leaves of the crescent's corner at 3 and 9 o'clock is below (w / pi) / 15, at the
   * ends of the long way 2 w / (255 pi); noise of 0.002 draws the lobes in by less than that.
   */
  const CORNER = W / Math.PI / 15 + 0.002;
  const ENDS = (2 * W) / (Math.PI * 255) + 0.002;

  it('offers every rule, and by hand as it is set', () => {
    expect(found.costs.map(({ rule }) => rule)).toEqual([
      'keep',
      'free',
      'least-cut',
      'partner',
      'by-hand',
    ]);
    expect(found.chosen).toBe('by-hand');
    expect(found.diameter).toBeCloseTo(3.519 * INCH, 9);
  });

  // About a centre moved w / 2 it is R0 + (w / 2) |cos|: at a target of R0 + w / 2 that is a cut of w / 2 at 3 and 9 and
  // no gap. About the old centre the target stands w / 2 outside the unworn half and w / 2 inside the bottom of the wear.
  it('moved half of the wear it leaves no gap; at the old centre a gap of half of the wear', () => {
    for (const rule of ['free', 'by-hand']) {
      expect(Math.abs(of(rule).seating.gap.over)).toBeLessThan(ENDS);
      expect(Math.abs(of(rule).cut.depth - W / 2)).toBeLessThan(CORNER);
    }
    const partner = of('partner');
    expect(Math.abs(partner.seating.gap.over - W / 2)).toBeLessThan(ENDS);
    expect(Math.abs(partner.cut.depth - W / 2)).toBeLessThan(CORNER);
  });

  it('tells how far each moves, and to which side', () => {
    expect(of('keep').moved.by).toBe(0);
    const { moved, lean } = of('by-hand');
    // As set against the old centre, whose own first lobe the surface takes from the wear: all of it is unworn by
    // assumption here, so that the least-squares centre of the egg, w / 4 pi ... w / 2 away, counts as the old one.
    const old = of('keep').axis;
    expect(moved.by).toBeCloseTo(Math.hypot(old.x, old.y + W / 2), 12);
    expect(lean).toBe(0);
  });

  it('never has a rule of less metal than the least, nor of a shallower cut than the least greatest', () => {
    for (const one of found.costs) {
      expect(one.amounts.mass).toBeGreaterThanOrEqual(of('free').amounts.mass * (1 - 1e-4));
      expect(one.cut.depth).toBeGreaterThanOrEqual(of('least-cut').cut.depth - 1e-6);
    }
  });

  it('is the target of a job that chooses it', () => {
    for (const rule of ['keep', 'least-cut', 'free', 'partner'] as const) {
      const chosen = {
        ...job,
        features: job.features.map((f, i) =>
          i === 0 ? { ...f, decisions: { target, centre: { rule } } } : f,
        ),
      };
      const survey = evaluate(chosen, memory).bores[0]!.surveys[0]!;
      expect(survey.target!.centreRule).toBe(rule);
      for (const key of ['x', 'y', 'leanX', 'leanY'] as const) {
        expect(survey.target!.axis[key]).toBeCloseTo(of(rule).axis[key], 9);
      }
      expect(survey.removal!.mass).toBeCloseTo(of(rule).amounts.mass, 9);
    }
  });

  it('is written with the same digits in all rows', () => {
    const rows = centreRows(found, 'in');
    expect(new Set(rows.map(({ off }) => off.split('.')[1]?.length)).size).toBe(1);
    expect(rows.find(({ rule }) => rule === 'keep')!.moves).toBe('stays');
    const [own, against] = sayCentre(of('partner'), found, 'in');
    expect(own).toContain('per side');
    expect(against).toContain('off the line of “Far ear”');
  });
});

describe('the line of the partner bores', () => {
  const job = eggJob({ target });
  const placed = (own: Feature['place'], partner: Feature['place']) => {
    const two = withPartner(job, own, partner);
    return partnerOf(two, two.features[0]!);
  };

  it('runs through a single partner, along the pin', () => {
    const found = placed(
      { station: mm(0), x: mm(0.2) },
      { station: mm(150), x: mm(0.5), y: mm(-0.1) },
    );
    if (found.status !== 'known') throw new Error(found.why);
    // Both are 50 long: from middle to middle as far as from face to face.
    expect(found.distance).toBeCloseTo(150, 12);
    expect(found.axis.x).toBeCloseTo(0.3, 12);
    expect(found.axis.y).toBeCloseTo(-0.1, 12);
    expect(found.axis.leanX).toBe(0);
  });

  it('counts a run-off of either bore: half of it lies at the middle', () => {
    const found = placed(
      { station: mm(0), leanY: mm(0.1) },
      { station: mm(150), x: mm(0.5), leanX: mm(0.2) },
    );
    if (found.status !== 'known') throw new Error(found.why);
    expect(found.axis.x).toBeCloseTo(0.6, 12);
    // This bore's own datum runs off by 0.1 over 50: the line, which does not, runs back against it.
    expect(found.axis.y).toBeCloseTo(0, 12);
    expect(found.axis.leanY).toBeCloseTo(-0.1 / 50, 12);
  });

  it('runs through two partners, straight', () => {
    const two = withPartner(job, { station: mm(0) }, { station: mm(100), x: mm(0.1) });
    const third: Feature = {
      ...two.features[1]!,
      id: 'third',
      name: 'Third',
      place: { station: mm(300), x: mm(0.3) },
    };
    const three = { ...two, features: [...two.features, third] };
    const found = partnerOf(three, three.features[0]!);
    if (found.status !== 'known') throw new Error(found.why);
    // Middles at 125 and 325: x rises by 0.001 per mm; at this bore's face, station 0, it is 0.1 - 0.125.
    expect(found.axis.leanX).toBeCloseTo(0.001, 12);
    expect(found.axis.x).toBeCloseTo(-0.025, 12);
    expect(found.distance).toBeCloseTo(100, 12);
  });

  it('is not known, and says why', () => {
    expect(partnerOf(job, job.features[0]!)).toMatchObject({ status: 'unknown' });
    const own = placed(undefined, { station: mm(150) });
    const other = placed({ station: mm(0) }, undefined);
    const same = placed({ station: mm(10) }, { station: mm(10) });
    const why = [own, other, same].map((one) => (one.status === 'unknown' ? one.why : ''));
    expect(why[0]).toContain('this bore');
    expect(why[1]).toContain('other bore');
    expect(why[2]).toContain('one place');
    const chosen = eggJob({ target, centre: { rule: 'partner' } });
    const { target: where, notes } = evaluate(chosen).bores[0]!.surveys[0]!;
    expect(where!.centreRule).toBe('free');
    expect(notes.some(({ text }) => text.includes('line up with the partner'))).toBe(true);
  });

  it('allows half of the running clearance (common practice), and as much lean over the distance', () => {
    const known = placed({ station: mm(0) }, { station: mm(150) });
    const limit = partnerLimit(known, { mm: 0.3, from: 'typed' })!;
    expect(limit.aside).toBeCloseTo(0.15, 12);
    expect(limit.lean).toBeCloseTo(0.001, 12);
    expect(partnerLimit(known, { mm: Number.NaN, from: 'missing' })).toBeNull();
  });
});
