/**
 * The centres on the page: each figure is the report's, the one set by hand follows what is evaluated, and what is typed or
 * dragged comes back as it was said. Hours and shifts by plain trigonometry (constructed).
 */
import { describe, expect, it } from 'vitest';
import { centresReport } from '../../src/cli/centresReport.ts';
import { centreCost } from '../../src/evaluate/centreCost.ts';
import { centresOf } from '../../src/evaluate/centres.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { centreOffers, centreRows } from '../../src/figures/centreWords.ts';
import { sectionFigure } from '../../src/figures/sectionFigure.ts';
import { sayToward, towardClock } from '../../src/figures/towardWords.ts';
import { chooseCentre, setHand } from '../../src/job/edits.ts';
import { openJob } from '../../src/job/parse.ts';
import { placeBeside, placeStation, shareThePin } from '../../src/job/partnerEdits.ts';
import type { Job } from '../../src/job/schema.ts';
import { lengthMm } from '../../src/job/units.ts';
import { quarryConveyor } from '../../src/practice/demos/quarryConveyor.ts';

const memory: Memory = new Map();
const demo = quarryConveyor();
const bore = demo.features[0]!.id;
const survey = demo.features[0]!.surveys[0]!.id;

function seen(job: Job) {
  const of = evaluate(job, memory).bores.find(({ id }) => id === bore)!;
  const one = of.surveys.find(({ id }) => id === survey)!;
  return { of, one, found: centresOf(job, { bore, survey }, memory)! };
}

const hand = setHand(chooseCentre(demo, bore, 'by-hand', null, Number.NaN), bore, {
  x: 0.02,
  y: -0.01,
});

describe('the table of centres', () => {
  const { found } = seen(demo);

  it('has a line for each rule that can be used, and one reason for each that cannot', () => {
    const offers = centreOffers(found, demo.units);
    expect(offers.map(({ rule }) => rule)).toEqual([
      'keep',
      'free',
      'least-cut',
      'partner',
      'by-hand',
    ]);
    for (const { row, missing } of offers) expect(row === null).toBe(missing !== '');
    const { centresMissing } = centresReport(found, demo.units);
    expect(centresMissing.map(({ rule }) => rule)).toEqual(
      offers.filter(({ row }) => row === null).map(({ rule }) => rule),
    );
  });

  it('writes the figures of the report', () => {
    const rows = centreRows(found, demo.units);
    const { centres } = centresReport(found, demo.units);
    expect(rows.map(({ rule }) => rule)).toEqual(centres.map(({ rule }) => rule));
    rows.forEach(({ off, cut, held }, i) => {
      const told = centres[i]!;
      // A figure is rounded by no more than half of its last digit.
      const half = (text: string) => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0) + 1e-9;
      const grams = off.replace(' g', '');
      expect(Math.abs(Number(grams) - told.mass)).toBeLessThanOrEqual(half(grams));
      const mm = demo.units === 'in' ? 25.4 : 1;
      expect(Math.abs(Number(cut) - told.greatestCut.depth! / mm)).toBeLessThanOrEqual(half(cut));
      const share = (told.seated.atHand ?? told.seated.madeToSuit).likely;
      expect(Math.abs(Number.parseFloat(held) - 100 * share!)).toBeLessThanOrEqual(10);
    });
  });

  it('tells the lean as a share of what the partner allows', () => {
    const shared = shareThePin(hand, bore);
    if (!shared.ok) throw new Error(shared.why);
    const other = shared.job.features.at(-1)!.id;
    const placed = placeStation(shared.job, bore, other, { text: '200', unit: 'mm' });
    const leaning = setHand(placed, bore, { leanX: 0.03 });
    const { found: told, of } = seen(leaning);
    // Half of the clearance over the distance from middle to middle: both bores are as long, so as far as the faces.
    const limit = of.facts.clearance.mm / 2 / 200;
    expect(told.limit!.lean).toBeCloseTo(limit, 12);
    const report = centresReport(told, demo.units).centres.find(({ rule }) => rule === 'by-hand')!;
    expect(report.leanShare).toBeCloseTo(0.03 / of.facts.length.mm / limit, 6);
  });
});

describe('the centre set by hand', () => {
  it('costs the same read off the evaluation as asked for', () => {
    const { of, one, found } = seen(hand);
    const { surface, target, removal, seating } = one;
    const ground = { surface: surface!, target: target!, removal: removal!, seating: seating! };
    const live = centreCost(ground, of.facts, found);
    expect(live).toEqual(found.costs.find(({ rule }) => rule === 'by-hand'));
  });

  it('begins where the target stands, and is one edit', () => {
    const { axis } = seen(demo).one.target!;
    const length = seen(demo).of.facts.length.mm;
    const begun = chooseCentre(demo, bore, 'by-hand', axis, length);
    const now = seen(begun).one.target!.axis;
    // Kept to 0.0001 mm or 0.00001 in, half of which is the most it can be off.
    for (const key of ['x', 'y'] as const)
      expect(Math.abs(now[key] - axis[key])).toBeLessThanOrEqual(0.5 * 0.000254 + 1e-12);
    expect(chooseCentre(begun, bore, 'keep', axis, length).features[0]!.decisions.centre).toEqual({
      ...begun.features[0]!.decisions.centre,
      rule: 'keep',
    });
  });

  it('keeps the wall where it is in the picture while the wanted circle moves', () => {
    const at = (job: Job) => sectionFigure(seen(job).one, 10, 20, true)!;
    const [before, after] = [at(hand), at(setHand(hand, bore, { x: 0.05, y: 0.03 }))];
    expect(after.wanted.x - before.wanted.x).toBeCloseTo(20 * 0.03, 2);
    expect(after.wanted.y - before.wanted.y).toBeCloseTo(20 * 0.04, 2);
    // To first order: the rest is the square of the move, 0.05, over the diameter, drawn 20 times.
    const rest = (20 * 0.06 ** 2) / before.radius;
    before.outline.forEach(([x, y], i) => {
      const [nextX, nextY] = after.outline[i]!;
      expect(Math.hypot(nextX - x, nextY - y)).toBeLessThan(rest);
    });
  });
});

describe('a shift as it is said', () => {
  it('goes toward an hour: x to 3, y to 12', () => {
    expect(towardClock(1, 0)).toBe('3:00');
    expect(towardClock(0, 1)).toBe('12:00');
    expect(towardClock(1, -1)).toBe('4:30');
    expect(sayToward(0, -0.0508, 'in')).toBe('0.0020 in toward 6:00');
    expect(sayToward(0, 0, 'mm')).toBe('not at all');
  });

  it('places a partner beside the line, counted from this bore, and the file holds it', () => {
    const shared = shareThePin(demo, bore);
    if (!shared.ok) throw new Error(shared.why);
    const other = shared.job.features.at(-1)!.id;
    const placed = placeBeside(
      placeStation(shared.job, bore, other, { text: '150', unit: 'mm' }),
      other,
      { x: 0.3, y: -0.3 },
    );
    const place = placed.features.at(-1)!.place!;
    expect(placed.features[0]!.place!.station.text).toBe('0');
    expect(lengthMm(place.x)).toBeCloseTo(0.3, 3);
    expect(lengthMm(place.y)).toBeCloseTo(-0.3, 3);
    expect(openJob(JSON.stringify(placed), 'job').ok).toBe(true);
  });
});
