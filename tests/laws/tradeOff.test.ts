/**
 * Target size against metal off, seat held and worst gap: closed forms of a round and an oval bore (constructed), a
 * count on a fine mesh that shares nothing with the program but the surface (constructed), and what must rise or fall.
 */
import { describe, expect, it } from 'vitest';
import { freeAxes, freeAxis } from '../../src/bore/centre.ts';
import { type Share, seating, seatPlaces } from '../../src/bore/seating.ts';
import { NO_AXIS } from '../../src/bore/target.ts';
import { type TradeOffAsked, tradeOff } from '../../src/bore/tradeOff.ts';
import type { WearSurface } from '../../src/bore/types.ts';
import { tradeOffOf } from '../../src/evaluate/tradeOff.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { linearAt } from '../../src/figures/sample.ts';
import { setDecision } from '../../src/job/edits.ts';
import { quarryConveyor } from '../../src/practice/demos/quarryConveyor.ts';
import { crescent, fading, gouge, lobe, round, sum } from '../fixtures/bores.ts';
import { LENGTH, ROWS, surfaceOf } from '../fixtures/surfaces.ts';

const R = 25.4;
/** Density of plain steel, 7850 kg/m3 (common handbook value), g per mm3. */
const STEEL = 7.85e-3;
const BUSHING = 2 * R + 0.05;
const PRESS = 0.05;

function asked(surface: WearSurface, more: Partial<TradeOffAsked> = {}): TradeOffAsked {
  return {
    surface,
    sd: surface.sd,
    axis: NO_AXIS,
    seats: [{ from: 0, to: LENGTH }],
    keepouts: [],
    fit: { bushing: BUSHING, pressFit: PRESS },
    ...more,
  };
}

const sizes = (from: number, to: number, count: number) =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

describe('a perfectly round bore of diameter 2 R', () => {
  const points = tradeOff(asked(surfaceOf(round(R))), sizes(2 * R - 0.2, 2 * R + 0.2, 41));

  it('costs the ring between it and the target, pi L (D2 - 4 R2) / 4, and nothing below', () => {
    for (const { diameter, mass } of points) {
      const ring = (Math.PI / 4) * LENGTH * (diameter ** 2 - 4 * R * R);
      expect(mass).toBeCloseTo(STEEL * Math.max(0, ring), 9);
    }
  });

  it('lies over a smaller target by half the difference, everywhere', () => {
    for (const { diameter, gap, behind } of points) {
      expect(gap.over).toBeCloseTo(Math.max(0, R - diameter / 2), 12);
      // Air is left once wall or target is larger than the bushing.
      expect(behind).toBeCloseTo(Math.max(0, Math.max(R, diameter / 2) - BUSHING / 2), 12);
    }
  });

  it('holds the bushing at hand up to its own size, and one made to suit from 2 R less its press fit on', () => {
    for (const { diameter, hand, suit } of points) {
      expect(hand!.likely).toBe(diameter < BUSHING ? 1 : 0);
      // The very edge is either.
      if (Math.abs(diameter - (2 * R - PRESS)) < 1e-9) continue;
      expect(suit.likely).toBe(diameter > 2 * R - PRESS ? 1 : 0);
    }
  });
});

describe('a pure oval, R + a cos 2 theta', () => {
  const A = 0.08;
  const points = tradeOff(
    asked(surfaceOf(sum(round(R), lobe(2, A)))),
    sizes(2 * R - 0.14, 2 * R + 0.1, 49),
  );

  /**
   * Arc below a level c of cos 2 theta: a share 1 - acos(c) / pi of the turn. Drawn straight between places h apart
   * the edge moves by at most h2 / 8 |f''| over the slope, four edges a turn; near the crests, where the slope goes to
   * nothing, the arc itself is bounded by the place's width instead.
   */
  it('holds the arcs that lie nearer the target than half the press fit', () => {
    const h = (2 * Math.PI) / 120;
    for (const { diameter, suit } of points) {
      const c = (PRESS / 2 + diameter / 2 - R) / A;
      const exact = c >= 1 ? 1 : c <= -1 ? 0 : 1 - Math.acos(c) / Math.PI;
      const bent = (h * h) / 8;
      const slope = 2 * Math.sqrt(Math.max(0, 1 - c * c));
      const most = Math.min((4 * bent * 4) / slope, 4 * h) / (2 * Math.PI);
      expect(Math.abs(suit.likely - exact)).toBeLessThanOrEqual(most + 1e-12);
    }
  });

  it('costs the integral of what stands proud', () => {
    for (const { diameter, mass } of points) {
      // Midpoint sum on 20 000 places of a turn.
      let area = 0;
      for (let i = 0; i < 20_000; i++) {
        const r = R + A * Math.cos((4 * Math.PI * (i + 0.5)) / 20_000);
        const t = Math.max(0, diameter / 2 - r);
        area += t * (r + t / 2) * ((2 * Math.PI) / 20_000);
      }
      // The trapezoid on 120 places of a function with a corner: h2 / 12 times the change of slope at four corners.
      const corner = ((2 * Math.PI) / 120) ** 2 * ((4 * 2 * A) / 8) * R;
      expect(Math.abs(mass - STEEL * LENGTH * area)).toBeLessThan(STEEL * LENGTH * corner);
    }
  });

  it('has its worst gap on the long axis', () => {
    for (const { diameter, gap } of points) {
      expect(gap.over).toBeCloseTo(Math.max(0, R + A - diameter / 2), 12);
      expect(Math.abs(Math.sin(gap.theta))).toBeLessThan(1e-9);
    }
  });
});

describe('any worn bore', () => {
  const worn = surfaceOf(
    sum(
      round(R),
      crescent(0.12, 0.03, 2.8, fading(25)),
      lobe(3, 0.02, 0.3),
      gouge(0.15, 1, 12, 0.2, 3),
    ),
    ROWS,
    0.004,
  );
  const seats = [
    { from: 3, to: 17 },
    { from: 26, to: 41 },
  ];
  const keepouts = [{ from: 6, to: 12, theta: 3, width: 9 }];
  const diameters = sizes(2 * R - 0.05, 2 * R + 0.3, 36);
  const kept = tradeOff(asked(worn, { seats, keepouts }), diameters);
  const free = tradeOff(asked(worn, { seats, keepouts, axis: 'free' }), diameters);

  it('is held where a fine mesh says, straight between places of a row', () => {
    const surface = worn;
    for (const [at, diameter] of diameters.entries()) {
      if (at % 7 !== 0) continue;
      const rows = Array.from(surface.grid.z).filter((z) =>
        seats.some(({ from, to }) => z >= from && z <= to),
      );
      let held = 0;
      let all = 0;
      for (const z of rows) {
        for (let i = 0; i < 12_000; i++) {
          const theta = (2 * Math.PI * (i + 0.5)) / 12_000;
          // A stretch between two places counts where neither is to be kept off.
          const ends = [Math.floor(theta / (Math.PI / 60)), Math.ceil(theta / (Math.PI / 60))];
          const off = ends.some((end) => {
            const turn = (end * Math.PI) / 60 - 3;
            const apart = Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));
            return (
              z >= 6 && z <= 12 && apart * linearAt(surface.grid, surface.mean, turn + 3, z) <= 4.5
            );
          });
          if (off) continue;
          all++;
          const over = linearAt(surface.grid, surface.mean, theta, z) - diameter / 2;
          if (Math.max(0, over) < PRESS / 2) held++;
        }
      }
      // Each row has at most eight edges, each counted to a place of the fine mesh; deviations are exact at the places.
      expect(Math.abs(kept[at]!.suit.likely - held / all)).toBeLessThan(8 / 12_000);
    }
  });

  it('costs more metal and leaves less of a gap the larger the target is, about a kept centre', () => {
    for (let i = 1; i < kept.length; i++) {
      expect(kept[i]!.mass).toBeGreaterThanOrEqual(kept[i - 1]!.mass);
      expect(kept[i]!.gap.over).toBeLessThanOrEqual(kept[i - 1]!.gap.over);
      expect(kept[i]!.suit.likely).toBeGreaterThanOrEqual(kept[i - 1]!.suit.likely);
      // Grinding to a larger target gives the bushing at hand nothing more to sit on.
      expect(kept[i]!.hand!.likely).toBeLessThanOrEqual(kept[i - 1]!.hand!.likely + 1e-12);
    }
  });

  it('never costs more with the centre free, and still more the larger the target is', () => {
    const whole = tradeOff(asked(worn), diameters);
    const moved = tradeOff(asked(worn, { axis: 'free' }), diameters);
    moved.forEach(({ mass }, i) => {
      // The mean of the metal is made least; the volume weighs places by their radius: a hundredth of a micrometre.
      const slack = STEEL * 2 * Math.PI * R * LENGTH * 1e-5;
      expect(mass).toBeLessThanOrEqual(whole[i]!.mass + slack);
      if (i > 0) expect(mass).toBeGreaterThanOrEqual(moved[i - 1]!.mass - slack);
    });
  });

  it('bands enclose what is likely', () => {
    for (const { mass, sureMass, possibleMass, hand, suit } of [...kept, ...free]) {
      expect(sureMass).toBeLessThanOrEqual(mass);
      expect(mass).toBeLessThanOrEqual(possibleMass);
      for (const share of [hand, suit] as Share[]) {
        expect(share.least).toBeLessThanOrEqual(share.likely);
        expect(share.likely).toBeLessThanOrEqual(share.most);
      }
    }
  });

  it('the free axis found from the size before costs what the one found from afar does', () => {
    const radii = diameters.map((d) => d / 2);
    const near = freeAxes(worn, radii);
    const far = tradeOffAt(radii.map((radius) => freeAxis(worn, radius)));
    expect(far).toHaveLength(36);
    // One micrometre per side over the whole wall would be 0.055 g; this is a hundredth of that.
    for (const [i, mass] of tradeOffAt(near).entries()) {
      expect(Math.abs(mass - far[i]!)).toBeLessThan(5.5e-4);
    }
  });

  function tradeOffAt(axes: ReturnType<typeof freeAxes>): number[] {
    return axes.map((axis, i) => tradeOff(asked(worn, { axis }), [diameters[i]!])[0]!.mass);
  }

  it('nothing seated is no share, and no gap anywhere', () => {
    const wall = seatPlaces(worn, [{ from: 60, to: 70 }], []);
    const fit = { target: 50, bushing: Number.NaN, pressFit: PRESS };
    const { hand, suit, gap, behind } = seating(
      wall,
      worn.mean.map((r) => r - 25),
      worn.sd,
      fit,
    );
    expect(hand).toBeNull();
    expect(suit.likely).toBeNaN();
    expect(gap.over).toBeNaN();
    expect(behind).toBeNaN();
  });
});

describe('of a job', () => {
  const job = quarryConveyor();
  const memory: Memory = new Map();
  const [bore] = evaluate(job, memory).bores;
  const survey = bore!.surveys[0]!;
  const of = { bore: bore!.id, survey: survey.id };

  it('at the chosen size the curve is what the evaluation says', () => {
    const found = tradeOffOf(job, of, memory)!;
    const usual = found.points.find(({ diameter }) => diameter === survey.target!.diameter)!;
    expect(usual.mass).toBeCloseTo(survey.removal!.mass, 3);
    expect(usual.gap.over).toBeCloseTo(survey.seating!.gap.over, 3);
    expect(usual.hand!.likely).toBeCloseTo(survey.seating!.hand!.likely, 2);
    expect(found.points.length).toBeGreaterThan(41);
  });

  it('no size chosen by hand changes it, and none is needed', () => {
    const { points, range } = tradeOffOf(job, of, memory)!;
    const middle = ((range.least + range.greatest) / 2).toFixed(3);
    const decided = setDecision(job, of.bore, { target: { text: middle, unit: 'mm' } });
    expect(tradeOffOf(decided, of, memory)!.points).toEqual(points);
    const without = { ...job, features: job.features.map((f) => ({ ...f, bushings: [] })) };
    const bare = tradeOffOf(without, of, new Map())!;
    expect(bare.marks.map(({ kind }) => kind)).toEqual(['plug', 'average', 'clean-up']);
    expect(bare.points.every(({ hand, suit }) => hand === null && suit.likely >= 0)).toBe(true);
  });

  it('another size is settled at once, and as it would be from nothing', () => {
    const other = setDecision(job, of.bore, { target: { text: '80.1', unit: 'mm' } });
    const quick = evaluate(other, memory, 'quick').bores[0]!.surveys[0]!;
    expect(evaluate(other, memory).bores[0]!.surveys[0]).toBe(quick);
    expect(quick).toEqual(evaluate(other).bores[0]!.surveys[0]);
    const kept = setDecision(other, of.bore, { centre: { rule: 'keep' } });
    evaluate(kept, memory, 'quick');
    expect(evaluate(kept, memory)).toEqual(evaluate(kept));
  });
});
