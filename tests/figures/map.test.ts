import { describe, expect, it } from 'vitest';
import { exaggerations, factorFor } from '../../src/figures/exaggeration.ts';
import { placeLabels } from '../../src/figures/labels.ts';
import { legendFigure } from '../../src/figures/legend.ts';
import { describeMap, mapFigure } from '../../src/figures/map.ts';
import { marksOf, thinned } from '../../src/figures/marks.ts';
import { profileFigure } from '../../src/figures/profileFigure.ts';
import { sectionFigure } from '../../src/figures/sectionFigure.ts';
import { chooseSteps } from '../../src/figures/steps.ts';
import { FACTS, LENGTH, madeDeviation, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

const RADIUS = TARGET / 2;
const map = mapFigure(madeSurvey(), FACTS, 'in')!;

describe('the flat map', () => {
  it('is the circumference wide and the bore deep, at true size', () => {
    expect(map.width).toBeCloseTo(Math.PI * TARGET, 9);
    expect(map.height).toBeCloseTo(LENGTH, 9);
  });

  it('runs 6 ... 12 ... 6 to the right', () => {
    expect(map.clockTicks.map((tick) => tick.text)).toEqual(
      '6 7 8 9 10 11 12 1 2 3 4 5 6'.split(' '),
    );
    expect(map.clockTicks[9]!.x).toBeCloseTo(0.75 * map.width, 9);
    const cutAt9 = mapFigure(madeSurvey(), FACTS, 'in', (3 * Math.PI) / 2)!;
    expect(cutAt9.clockTicks[0]!.text).toBe('9');
    expect(cutAt9.clockTicks[12]!.text).toBe('9');
  });

  it('has its contours where the deviation has their value', () => {
    for (const { level, lines } of map.lines) {
      expect(lines.length).toBeGreaterThan(0);
      for (const { points } of lines) {
        for (const [x, z] of points) {
          const e = madeDeviation(Math.PI + x / RADIUS, z);
          // Contours are straight within cells of 2.5 degrees by 0.74 mm. The gouge, 6.2 thou deep and 3.2 mm
          // wide (e-fold), bends by at most 2 x 6.2 / 3.2^2 thou a mm2: 0.74^2 / 8 of that is 0.08 thou, and as
          // much again round the clock, (1.1 mm / 5.1 mm)^2 / 8 x 12.4.
          expect(Math.abs(e - level)).toBeLessThan(0.18 * 0.0254);
        }
      }
    }
  });

  it('signs its figures by the action, per side, in thou or 0.01 mm', () => {
    expect(map.zones.map((zone) => zone.text)).toEqual(['−4.5', '−4.5', '+3.9', '+3.9', '+4.8']);
    const metric = mapFigure(madeSurvey(), FACTS, 'mm')!;
    // 0.0254 mm x 4.5 = 0.114 mm; the give-or-take of 0.0102 mm allows no decimal of 0.01 mm.
    expect(metric.zones[0]!.text).toBe('−11');
    expect(describeMap(map)).toContain('−4.5 at 3');
  });

  it('hatches where the give-or-take outgrows figure and step, and leaves the rest alone', () => {
    const all = map.doubtful.flat();
    expect(all.length).toBeGreaterThan(0);
    // Readings end at 36 mm; below 40 mm two standard deviations pass 2.4 thou, and no step is above 1.
    const shallowest = Math.min(...all.map(([, z]) => z));
    expect(shallowest).toBeGreaterThan(36);
    expect(shallowest).toBeLessThan(41);
    expect(mapFigure(madeSurvey({ sd: () => 0.001 }), FACTS, 'in')!.doubtful).toEqual([]);
  });

  it('leaves blank and hatched what is not known', () => {
    const holed = (theta: number, z: number) => (z > 38 ? Number.NaN : madeDeviation(theta, z));
    const { unknown, doubtful } = mapFigure(madeSurvey({ deviation: holed }), FACTS, 'in')!;
    const depths = unknown.flat().map(([, z]) => z);
    expect(Math.min(...depths)).toBeGreaterThan(36.5);
    expect(Math.max(...depths)).toBeCloseTo(LENGTH, 6);
    expect(doubtful.length).toBeGreaterThan(0);
  });

  it('marks both ends of a diameter, the grease hole and the load', () => {
    expect(map.marks).toHaveLength(48);
    const ends = map.marks.filter((mark) => mark.row === 0).map((mark) => mark.x);
    expect(ends.sort((a, b) => a - b)).toEqual([0, Math.PI * RADIUS]);
    expect(map.marks.filter((mark) => mark.suspect).map((mark) => mark.row)).toEqual([3, 3]);
    expect(map.load).toBeCloseTo(Math.PI * RADIUS, 9);
    const [hole] = map.keepouts;
    expect(hole!.boxes).toHaveLength(1);
    expect(hole!.boxes[0]!.x + 3).toBeCloseTo(RADIUS * (Math.PI * (11 / 6 - 1)), 6);
  });

  it('draws a keep-out that crosses the cut on both sides of it', () => {
    const keepouts = [{ ...FACTS.keepouts[0]!, theta: Math.PI }];
    const { boxes } = mapFigure(madeSurvey(), { ...FACTS, keepouts }, 'in')!.keepouts[0]!;
    expect(boxes.map((box) => box.x)).toEqual([-3, map.width - 3]);
  });

  it('shows the shape about its average before a bushing is named', () => {
    const bare = mapFigure(madeSurvey({ target: false }), FACTS, 'in')!;
    expect(bare.about).toBe('average');
    expect(bare.zones).toEqual([]);
    expect(bare.steps.levels.length).toBeGreaterThan(2);
    expect(mapFigure({ ...madeSurvey(), surface: null }, FACTS, 'in')).toBeNull();
  });
});

describe('labels', () => {
  const label = (x: number, y: number, weight: number, reach = 40) => ({
    x,
    y,
    weight,
    reach,
    text: '−4.5',
  });
  const frame = { width: 400, height: 150 };

  it('never overlap, nor cover a spot, and the heaviest stands right beside its own', () => {
    const crowd = Array.from({ length: 8 }, (_, i) => label(200 + 3 * i, 75, 8 - i));
    const placed = placeLabels(crowd, frame, 8.4, 16);
    expect(placed.length).toBeGreaterThan(3);
    const [width, height] = [4 * 8.4 + 6, 18];
    expect(placed[0]!.label.weight).toBe(8);
    expect(Math.hypot(placed[0]!.x - 200, placed[0]!.y - 75)).toBeLessThan(width);
    for (const { x, y } of placed) {
      for (const spot of crowd) {
        const clear = Math.abs(x - spot.x) >= width / 2 || Math.abs(y - spot.y) >= height / 2;
        expect(clear).toBe(true);
      }
    }
    placed.forEach((a, i) => {
      for (const b of placed.slice(i + 1)) {
        const clear = Math.abs(a.x - b.x) >= width - 1e-9 || Math.abs(a.y - b.y) >= height - 1e-9;
        expect(clear).toBe(true);
      }
    });
  });

  it('stay inside the map, and off what is taken', () => {
    const [one] = placeLabels([label(399, 149, 1)], frame, 8.4, 16);
    expect(one!.x).toBeLessThanOrEqual(400 - (4 * 8.4 + 6) / 2);
    expect(one!.y).toBeLessThanOrEqual(150 - 9);
    const taken = [{ x: 200, y: 75, width: 30, height: 20 }];
    const [two] = placeLabels([label(200, 75, 1)], frame, 8.4, 16, taken);
    const beside = Math.abs(two!.x - 200) >= (30 + 4 * 8.4 + 6) / 2;
    expect(beside || Math.abs(two!.y - 75) >= (20 + 18) / 2).toBe(true);
  });

  it('stand beside what is too small to write on', () => {
    const [one] = placeLabels([label(200, 75, 1, 6)], frame, 8.4, 16);
    expect(Math.abs(one!.y - 75)).toBeGreaterThanOrEqual(6 + 9);
  });
});

describe('the key', () => {
  it('has a figure at each edge, signed by the action', () => {
    const { edges, unit } = legendFigure(map.steps, 'light', 'target');
    expect(edges.map(({ text }) => text)).toEqual(['−4', '−3', '−2', '−1', '+1', '+2', '+3', '+4']);
    // Ten steps in all, a step beyond the outermost contours on both sides.
    expect(edges.map(({ share }) => share)).toEqual(
      [1, 2, 3, 4, 6, 7, 8, 9].map((n) => expect.closeTo(n / 10, 9)),
    );
    expect(unit).toBe('thou per side');
  });

  it('does not speak of metal to take off where there is none', () => {
    const low = legendFigure(chooseSteps(0.05, 0.12, 'mm'), 'light', 'target');
    expect(low.high).toBeNull();
    expect(low.low?.short).toBe('short');
    const high = legendFigure(chooseSteps(-0.12, -0.05, 'mm'), 'light', 'target');
    expect(high.low).toBeNull();
  });
});

describe('exaggeration', () => {
  it('is a round factor that draws the deepest wear at no more than a third of the radius or so', () => {
    const { chosen, factors } = exaggerations(-0.11, 0.12, 25, 19);
    expect(chosen).toBe(60);
    expect(chosen * 0.12).toBeLessThanOrEqual(0.34 * 25);
    expect(factors[0]).toBe(1);
    expect(Math.max(...factors) * 0.12).toBeLessThanOrEqual(0.45 * 25);
  });

  it('never lets the wall break through a thin boss', () => {
    const { factors } = exaggerations(-0.01, 0.12, 25, 3);
    expect(Math.max(...factors) * 0.12).toBeLessThanOrEqual(0.85 * 3);
  });

  it('is one where there is nothing to exaggerate, and keeps to what can be drawn', () => {
    expect(exaggerations(0, 0, 25, 19)).toEqual({ factors: [1], chosen: 1 });
    expect(exaggerations(Number.NaN, Number.NaN, 25, 19)).toEqual({ factors: [1], chosen: 1 });
    const of = exaggerations(-0.11, 0.12, 25, 19);
    expect(factorFor(null, of)).toBe(60);
    expect(factorFor(1000, of)).toBe(Math.max(...of.factors));
    expect(factorFor(7, of)).toBe(5);
  });
});

describe('marks', () => {
  it('touch at two ends, three legs or one point', () => {
    const sighting = { ...madeSurvey().sightings[0]!, theta: 1 };
    const touched = (instrument: 'two-point' | 'three-leg' | 'radius') =>
      marksOf({ ...madeSurvey(), sightings: [{ ...sighting, instrument }] }).map((m) => m.theta);
    expect(touched('two-point')).toEqual([1, 1 + Math.PI]);
    expect(touched('three-leg')).toEqual([
      1,
      1 + (2 * Math.PI) / 3,
      expect.closeTo(1 + (4 * Math.PI) / 3, 9),
    ]);
    expect(touched('radius')).toEqual([1]);
  });

  it('thinned out still hold every suspect', () => {
    const few = thinned(marksOf(madeSurvey()), 10);
    expect(few.length).toBeLessThanOrEqual(12);
    expect(few.filter((mark) => mark.suspect)).toHaveLength(2);
  });
});

describe('the cut across', () => {
  it('draws the section about the target, exaggerated, with its average round', () => {
    const survey = madeSurvey({ deviation: (theta) => 0.05 + 0.1 * Math.cos(theta) });
    const section = sectionFigure(survey, 10, 20)!;
    const [x, y] = section.outline[0]!;
    expect(x).toBeCloseTo(0, 9);
    expect(y).toBeCloseTo(RADIUS + 20 * 0.15, 6);
    expect(section.circles[0]).toMatchObject({
      kind: 'average',
      x: expect.closeTo(0, 6),
      // the grid's straight lines fall short by (3 degrees)^2 / 12
      y: expect.closeTo(2, 2),
      radius: expect.closeTo(RADIUS + 1, 6),
    });
    expect(sectionFigure(survey, LENGTH + 5, 20)!.outline).toEqual([]);
  });
});

describe('size along the depth', () => {
  it('is across, in the units of the job', () => {
    const { points, target, range } = profileFigure(madeSurvey(), FACTS, 'in')!;
    expect(target).toBeCloseTo(1.998, 6);
    // At the rim: 3.9 thou short and 4.5 thou proud per side, at 12-6 and 3-9.
    expect(points[0]!.greatest).toBeCloseTo(1.998 + 0.0078, 5);
    expect(points[0]!.least).toBeCloseTo(1.998 - 0.009, 5);
    expect(range.greatest).toBeCloseTo(1.998 + 0.0078, 5);
    const metric = profileFigure(madeSurvey(), FACTS, 'mm')!;
    expect(metric.points[0]!.mean).toBeCloseTo(points[0]!.mean * 25.4, 6);
  });
});
