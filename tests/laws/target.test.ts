/**
 * The target and the removal map: what keeping or moving the centre costs, that no axis asks for less metal than the
 * free one, and that nothing is asked off where nothing may be.
 */
import { describe, expect, it } from 'vitest';
import { freeAxis } from '../../src/bore/centre.ts';
import { metalVolume, removalMap } from '../../src/bore/removal.ts';
import { makeGrid } from '../../src/bore/surface.ts';
import { deviationFrom, NO_AXIS } from '../../src/bore/target.ts';
import type { Axis, Field, WearSurface } from '../../src/bore/types.ts';
import { evaluate, type SurveyEvaluation } from '../../src/evaluate.ts';
import type { Decisions, Feature } from '../../src/job/schema.ts';
import { nelderMead } from '../../src/num/minimise.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  bell,
  clocks,
  crescent,
  depthsWithin,
  endingAt,
  evenPart,
  fading,
  gouge,
  type JobParts,
  jobOf,
  lobe,
  measure,
  round,
  type Shape,
  step,
  sum,
  taper,
  typedIn,
} from '../fixtures/bores.ts';

const INCH = 25.4;
const LENGTH = 50;
const GRID = makeGrid(LENGTH);
const COLUMNS = GRID.theta.length;
const CELLS = COLUMNS * GRID.z.length;
const ALL_ROUND = clocks(36, 2 * Math.PI);
const DEPTHS = depthsWithin(6, LENGTH, 2);

const fieldOf = (shape: Shape): Field =>
  Float64Array.from({ length: CELLS }, (_, k) =>
    shape(GRID.theta[k % COLUMNS]!, GRID.z[Math.floor(k / COLUMNS)]!),
  );

/** A surface by formula, known everywhere to `sd`. */
function surfaceBy(shape: Shape, sd = 0.001): WearSurface {
  const mean = fieldOf(shape);
  return {
    grid: GRID,
    mean,
    sd: mean.map(() => sd),
    sdSeen: mean.map(() => sd),
    smoothness: { lobe: 0.03, size: 0.03, length: 25, local: 0.004, noise: 1, fixed: true },
    seenLobes: [],
    predicted: new Float64Array(0),
  };
}

const survey = (parts: JobParts): SurveyEvaluation => evaluate(jobOf(parts)).bores[0]!.surveys[0]!;
const least = (field: Field) => field.reduce((m, v) => Math.min(m, v), Number.POSITIVE_INFINITY);
const greatest = (field: Field) => field.reduce((m, v) => Math.max(m, v), Number.NEGATIVE_INFINITY);
const farthest = (a: Field, b: Field) =>
  a.reduce((most, v, k) => Math.max(most, Math.abs(v - b[k]!)), 0);
const placesWhere = (is: (k: number) => boolean) =>
  Array.from({ length: CELLS }, (_, k) => k).filter(is);
const metalTo = (s: WearSurface, radius: number, axis: Axis) =>
  metalVolume(
    s,
    deviationFrom(s, radius, axis).map((e) => Math.max(0, -e)),
  );

describe('the deviation from a target', () => {
  it('of a circle about its own centre is nothing, however far off the reference axis stands', () => {
    const [x, y, leanX, leanY, r] = [0.4, -0.3, 0.004, 0.002, 30];
    // Distance from the reference axis to a circle about (cx, cy), along theta: exact, by the cosine rule.
    const off = surfaceBy((theta, z) => {
      const [cx, cy] = [x + leanX * z, y + leanY * z];
      const along = cx * Math.sin(theta) + cy * Math.cos(theta);
      const aside = cx * Math.cos(theta) - cy * Math.sin(theta);
      return along + Math.sqrt(r * r - aside * aside);
    });
    const e = deviationFrom(off, r, { x, y, leanX, leanY });
    // A handful of roundings of numbers of 30 mm.
    expect(Math.max(greatest(e), -least(e))).toBeLessThan(30 * 10 * 2 ** -52);
  });

  it('is negative where metal stands proud', () => {
    const e = deviationFrom(surfaceBy(sum(round(30), lobe(2, 0.1))), 30, NO_AXIS);
    // 12 o'clock is wide, 3 o'clock (a quarter of the columns on) is narrow.
    expect(e[0]!).toBeCloseTo(0.1, 12);
    expect(e[COLUMNS / 4]!).toBeCloseTo(-0.1, 12);
  });
});

/*
 * One-sided wear. A bore of radius R0 worn w by a part of its own size is R0 + w max(0, cos). About a centre moved w / 2
 * towards the wear it is R0 + (w / 2) |cos|: no wider than R0 + w / 2 anywhere. So moving costs w of diameter and
 * leaves nothing low; keeping the centre costs 2 w. The trade's example: 0.018 in worn in a bore of 3.501 in cleans up
 * at 3.537 with the old centre and at 3.519 with a free one (computed figures).
 */
describe("a bore of 3.501 in worn 0.018 at 6 o'clock", () => {
  const w = 0.018 * INCH;
  const R0 = (3.501 / 2) * INCH;
  const egg = surfaceBy(sum(round(R0), crescent(w, 0, Math.PI)));
  /** Circles about moved centres differ from cosines by (w / 2)^2 / 2R at most: 0.0006 mm. */
  const SECOND_ORDER = w ** 2 / (8 * R0);

  it('cleans up at 3.519 with a free centre, which moves half of the wear towards it', () => {
    const radius = (3.519 / 2) * INCH;
    const axis = freeAxis(egg, radius);
    expect(Math.abs(axis.y + w / 2)).toBeLessThan(SECOND_ORDER);
    expect(Math.abs(axis.x)).toBeLessThan(SECOND_ORDER);
    expect(Math.hypot(axis.leanX, axis.leanY) * LENGTH).toBeLessThan(SECOND_ORDER);
    const e = deviationFrom(egg, radius, axis);
    expect(greatest(e)).toBeLessThan(SECOND_ORDER);
    // 3 and 9 o'clock stand proud by w / 2: that is the metal that it costs.
    expect(Math.abs(e[COLUMNS / 4]! + w / 2)).toBeLessThan(SECOND_ORDER);
  });

  it('does not clean up at a thou less', () => {
    const radius = (3.518 / 2) * INCH;
    // 0.001 across is 0.0005 per side that no shift can hide: both ends of the long way are too wide by it.
    const e = deviationFrom(egg, radius, freeAxis(egg, radius));
    expect(greatest(e)).toBeGreaterThan(0.0005 * INCH - SECOND_ORDER);
  });

  it('keeps a low spot of w / 2 at 3.519 about the old centre, and cleans up at 3.537', () => {
    const at = (diameter: number) => deviationFrom(egg, (diameter / 2) * INCH, NO_AXIS);
    const low = at(3.519);
    expect(greatest(low)).toBeCloseTo(w / 2, 9);
    expect(low.indexOf(greatest(low))).toBe(COLUMNS / 2);
    expect(greatest(at(3.537))).toBeLessThan(1e-9);
    expect(greatest(at(3.536))).toBeCloseTo(0.0005 * INCH, 9);
  });

  describe('read as radii from the old centre, typed in inches', () => {
    const parts = (decisions: Decisions): JobParts => ({
      taken: measure(sum(round(R0), crescent(w, 0, Math.PI)), 'radius', ALL_ROUND, DEPTHS),
      length: LENGTH,
      nominal: 3.501 * INCH,
      sd: 0.002,
      units: 'in',
      feature: { decisions },
    });
    /*
     * The surface cannot follow the crescent's corner at 3 and 9 o'clock with 14 lobes: those left out, 16, 18, ...,
     * are 2 w / (pi (n^2 - 1)) and add up to (w / pi) / 15 = 0.0097 mm at the corner; at the long way's ends they
     * alternate and are below the first, 0.0011 mm. Noise of 0.002 draws the lobes in by less than that.
     */
    const CORNER = w / Math.PI / 15 + 0.002;
    const ENDS = (2 * w) / (Math.PI * 255) + 0.002;

    it("free: the centre goes w / 2 towards 6 o'clock and nothing is low", () => {
      const { target, removal, zones } = survey(parts({ target: typedIn('in', 3.519 * INCH, 4) }));
      expect(target).toMatchObject({ centreRule: 'free', assumed: null });
      expect(target!.diameter).toBeCloseTo(3.519 * INCH, 9);
      const middle = target!.axis.y + (target!.axis.leanY * LENGTH) / 2;
      expect(Math.abs(middle + w / 2)).toBeLessThan(ENDS);
      expect(greatest(removal!.deviation)).toBeLessThan(SECOND_ORDER + ENDS);
      expect(Math.abs(least(removal!.deviation) + w / 2)).toBeLessThan(SECOND_ORDER + CORNER);
      // Two high zones along the bore, at 3 and 9 o'clock, and no low one.
      expect(zones.map((zone) => zone.kind)).toEqual(['high', 'high']);
      const clocksOf = zones
        .map((zone) => Math.round((zone.theta * 6) / Math.PI))
        .sort((a, b) => a - b);
      expect(clocksOf).toEqual([3, 9]);
    });

    it("about the old centre: a low spot of w / 2 at 6 o'clock", () => {
      const nothing = typedIn('in', 0, 1);
      const { target, removal, zones } = survey(
        parts({
          target: typedIn('in', 3.519 * INCH, 4),
          centre: { rule: 'by-hand', x: nothing, y: nothing, leanX: nothing, leanY: nothing },
        }),
      );
      expect(target!.axis).toEqual(NO_AXIS);
      expect(Math.abs(greatest(removal!.deviation) - w / 2)).toBeLessThan(ENDS);
      const low = zones.filter((zone) => zone.kind === 'low');
      expect(low).toHaveLength(1);
      expect(Math.abs(low[0]!.theta - Math.PI)).toBeLessThan(0.06);
    });
  });

  it('worn above, unworn below: keep finds the old centre in the unworn metal, wherever radii are taken from', () => {
    // Radii about an axis 0.2 mm off, exactly: the wall is at R about the old centre.
    const [dx, dy] = [0.16, -0.12];
    const old = sum(round(R0), crescent(w, 0, Math.PI, endingAt(0.4 * LENGTH, 4)));
    const off: Shape = (theta, z) => {
      let r = R0;
      for (let k = 0; k < 50; k++) {
        const x = r * Math.sin(theta) - dx;
        const y = r * Math.cos(theta) - dy;
        r += old(Math.atan2(x, y), z) - Math.hypot(x, y);
      }
      return r;
    };
    const { target, removal, surface } = survey({
      taken: measure(off, 'radius', ALL_ROUND, depthsWithin(12, LENGTH, 2)),
      length: LENGTH,
      nominal: 2 * R0,
      sd: 0.002,
      feature: {
        decisions: {
          target: typedIn('mm', 2 * R0 + w),
          centre: {
            rule: 'keep',
            unwornFrom: typedIn('mm', 0.7 * LENGTH),
            unwornTo: typedIn('mm', LENGTH),
          },
        },
      },
    });
    expect(target!.centreRule).toBe('keep');
    // Wear left below 0.7 of the length is w exp(-(z - 20) / 4), half of it in the first lobe: 0.0017 mm on average
    // over the depths that are looked at. 36 radii of 0.002 mm at each of 4 depths tell a centre to
    // 0.002 sqrt(2 / 144) = 0.0003 mm, and smoothness draws it by a few times that.
    expect(Math.abs(target!.axis.x - dx)).toBeLessThan(0.001);
    expect(Math.abs(target!.axis.y - dy)).toBeLessThan(0.003);
    // Full wear at the rim: w / 2 low, at 6 o'clock, as far as the surface itself claims to know.
    const rim = removal!.deviation.subarray(0, COLUMNS);
    const at = rim.indexOf(greatest(rim));
    expect(Math.abs(rim[at]! - w / 2)).toBeLessThan(2 * surface!.sd[at]!);
    expect(Math.abs(GRID.theta[at]! - Math.PI)).toBeLessThan(0.2);
  });
});

/** Anything that wears a bore, at random. */
function anyBore(seed: number) {
  const random = seededRandom(seed);
  const u = (most: number) => most * random.uniform();
  const turn = () => u(2 * Math.PI);
  const shape = sum(
    round(32.5),
    lobe(1, u(0.2), turn()),
    lobe(1, u(0.15), turn(), fading(20)),
    lobe(2, u(0.1), turn(), fading(30)),
    lobe(3, u(0.03), turn()),
    crescent(u(0.3), u(0.1), turn(), fading(25)),
    bell('quadratic', u(0.15), 20),
    gouge(u(0.1), turn(), u(LENGTH), 0.3, 4),
  );
  return { shape, radius: 32.5 + u(0.25) };
}

describe('the free axis', () => {
  /** The best of several runs of a search that knows nothing of the wall: 4 unknowns, volume as it is worked out. */
  function bySearch(s: WearSurface, radius: number, start: Axis): number {
    const axis = (x: readonly number[]): Axis => ({
      x: x[0]!,
      y: x[1]!,
      leanX: x[2]! / LENGTH,
      leanY: x[3]! / LENGTH,
    });
    const cost = (x: readonly number[]) => metalTo(s, radius, axis(x));
    const starts = [
      [0, 0, 0, 0],
      [start.x, start.y, start.leanX * LENGTH, start.leanY * LENGTH],
    ];
    return Math.min(
      ...starts.map((from) => {
        let at: readonly number[] = from;
        for (const size of [0.05, 0.01, 0.002]) {
          at = nelderMead(cost, at, size, { maxIterations: 80, tolerance: 1e-8 }).x;
        }
        return cost(at);
      }),
    );
  }

  /*
   * It minimises the mean of the metal over the wall, the volume but for the wall's own radius, which weighs places that
   * stand proud by d / R less: between two axes a hundredth of a mm apart that is below a ten-thousandth of the metal.
   */
  it.each([1, 2, 3, 4])('asks for no more metal than a direct search finds, seed %i', (seed) => {
    const { shape, radius } = anyBore(seed);
    const s = surfaceBy(shape);
    const axis = freeAxis(s, radius);
    const found = metalTo(s, radius, axis);
    expect(found).toBeLessThan(bySearch(s, radius, axis) * (1 + 1e-4));
    // And it was worth the search: the reference axis itself is no answer to these.
    expect(found).toBeLessThan(metalTo(s, radius, NO_AXIS));
  });

  it('of a round bore larger than the target is its own centre: nothing to take off, nothing to choose', () => {
    const off = surfaceBy(sum(round(33), lobe(1, 0.1, 1)));
    const axis = freeAxis(off, 32);
    expect(axis.x).toBeCloseTo(0.1 * Math.sin(1), 6);
    expect(axis.y).toBeCloseTo(0.1 * Math.cos(1), 6);
  });

  it('follows a lean', () => {
    const leaning = surfaceBy((theta, z) => 32 + (0.05 + 0.002 * z) * Math.cos(theta - 2));
    const axis = freeAxis(leaning, 32.1);
    expect(axis.x).toBeCloseTo(0.05 * Math.sin(2), 5);
    expect(axis.y).toBeCloseTo(0.05 * Math.cos(2), 5);
    expect(axis.leanX).toBeCloseTo(0.002 * Math.sin(2), 6);
    expect(axis.leanY).toBeCloseTo(0.002 * Math.cos(2), 6);
  });

  it.each([1, 2, 3])('turns with the bore, seed %i', (seed) => {
    const { shape, radius } = anyBore(seed);
    const by = (2 * Math.PI * 14) / COLUMNS;
    const a = freeAxis(surfaceBy(shape), radius);
    const b = freeAxis(
      surfaceBy((theta, z) => shape(theta - by, z)),
      radius,
    );
    // Clockwise from 12, x to 3: a turn by `by` takes 12 towards 3. Newton ends within 1e-7 mm a step.
    expect(b.x).toBeCloseTo(a.x * Math.cos(by) + a.y * Math.sin(by), 5);
    expect(b.y).toBeCloseTo(a.y * Math.cos(by) - a.x * Math.sin(by), 5);
  });
});

describe('the removal map', () => {
  const everything = [{ from: 0, to: LENGTH }];
  const removalOf = (shape: Shape, radius: number, seats = everything, sd = 0.001) => {
    const s = surfaceBy(shape, sd);
    return removalMap(s, deviationFrom(s, radius, NO_AXIS), s.sd, seats, []);
  };

  it('of an even ring has the volume of an annulus, and its steel', () => {
    const { volume, mass } = removalOf(round(30), 30.2);
    const annulus = Math.PI * (30.2 ** 2 - 30 ** 2) * LENGTH;
    // Sums of 7800 equal terms.
    expect(Math.abs(volume / annulus - 1)).toBeLessThan(1e-12);
    // Plain steel, 7.85 g to the cubic centimetre.
    expect(mass).toBeCloseTo((annulus / 1000) * 7.85, 9);
  });

  it('of a taper has the volume of a cylinder less a frustum', () => {
    const { volume } = removalOf(sum(round(30), taper(0.2, LENGTH)), 30.4);
    const frustum = (Math.PI * LENGTH * (30 ** 2 + 30 * 30.2 + 30.2 ** 2)) / 3;
    const exact = Math.PI * 30.4 ** 2 * LENGTH - frustum;
    // Trapezoids over steps h of a parabola: pi L h^2 / 6 times the slope squared, at most.
    const h = LENGTH / (GRID.z.length - 1);
    expect(Math.abs(volume - exact)).toBeLessThan(
      (Math.PI * LENGTH * h * h * (0.2 / LENGTH) ** 2) / 6 + 1e-9 * exact,
    );
  });

  it('of an oval is what its narrow sides hold', () => {
    // e = a cos 2t: the negative half, integral of a |cos 2t| over half a turn = 2 a, times R and L, to first order.
    const { volume } = removalOf(sum(round(30), lobe(2, 0.05)), 30);
    // 120 angles across four corners: second order in the step, 2 a R L (pi / 60)^2 / 3; and the bend t^2 / 2.
    expect(Math.abs(volume / (2 * 0.05 * 30 * LENGTH) - 1)).toBeLessThan(
      (Math.PI / 60) ** 2 / 3 + 0.05 / 30,
    );
  });

  it('sure, likely and possible metal stand two standard deviations apart, and a keepout has none of them', () => {
    const s = surfaceBy(sum(round(30), lobe(2, 0.05)), 0.004);
    const hole = { from: 10, to: 20, theta: Math.PI, width: 8 };
    const map = removalMap(s, deviationFrom(s, 30, NO_AXIS), s.sd, everything, [hole]);
    const kept = fieldOf((theta, z) => {
      const turn = Math.abs(Math.atan2(Math.sin(theta - Math.PI), Math.cos(theta - Math.PI)));
      return z >= 10 && z <= 20 && turn * 30.05 <= 4 ? 1 : 0;
    });
    const at = (larger: number) =>
      fieldOf((theta) => Math.max(0, -0.05 * Math.cos(2 * theta) - larger * 0.004));
    for (const [field, exact] of [
      [map.sure, at(2)],
      [map.likely, at(0)],
      [map.possible, at(-2)],
    ] as const) {
      field.forEach((t, k) => {
        if (kept[k] === 1) expect(t).toBeNaN();
        else expect(Math.abs(t - exact[k]!)).toBeLessThan(1e-12);
      });
    }
    expect(kept.includes(1)).toBe(true);
    expect(map.possibleMass).toBeGreaterThan(map.mass);
    expect(map.mass).toBeGreaterThan(map.sureMass);
    expect(map.sureMass).toBeGreaterThan(0);
  });

  it('is nothing outside a seat, and deviation stands there all the same', () => {
    const seats = [{ from: 10, to: 20 }];
    const { likely, sure, deviation, volume } = removalOf(round(30), 30.2, seats);
    const asked = fieldOf((_theta, z) => (z >= 10 && z <= 20 ? 0.2 : 0));
    const sureOf = asked.map((t) => Math.max(0, t - 0.002));
    expect(farthest(likely, asked)).toBeLessThan(1e-12);
    expect(farthest(sure, sureOf)).toBeLessThan(1e-12);
    expect(
      farthest(
        deviation,
        asked.map(() => -0.2),
      ),
    ).toBeLessThan(1e-12);
    // 10 mm of it, give or take half a row (0.78 mm) at each end.
    expect(Math.abs(volume / (Math.PI * (30.2 ** 2 - 30 ** 2)) - 10)).toBeLessThan(0.79);
  });
});

describe('the map of a measured bore', () => {
  const bushing = (from: number, to: number, face: 'A' | 'B'): Feature['bushings'][number] => ({
    id: 'u',
    name: 'bushing',
    seat: { face, from: typedIn('mm', from), to: typedIn('mm', to) },
    outside: [typedIn('mm', 65.3)],
  });
  const hole = (face: 'A' | 'B', clock: string, from: number): Feature['keepouts'][number] => ({
    id: 'k',
    kind: 'grease-hole',
    face,
    clock,
    from: typedIn('mm', from),
    to: typedIn('mm', from + 8),
    width: typedIn('mm', 8),
  });
  const truthOf = (seed: number) => evenPart(anyBore(seed).shape);
  const bored = (seed: number, feature: Partial<Feature>) =>
    survey({
      taken: measure(
        truthOf(seed),
        'two-point',
        clocks(6),
        depthsWithin(5, LENGTH),
        0.005,
        seededRandom(seed),
      ),
      length: LENGTH,
      nominal: 65,
      sd: 0.005,
      feature,
    });
  const target = { target: typedIn('mm', 65.3) };

  it.each([1, 2, 3, 4])(
    'likely >= sure >= 0, and likely is -e where metal stands proud, seed %i',
    (seed) => {
      const { removal } = bored(seed, { decisions: target });
      const { likely, sure, deviation, sd } = removal!;
      const wrong = placesWhere(
        (k) =>
          !(sure[k]! >= 0) ||
          !(likely[k]! >= sure[k]!) ||
          likely[k]! !== Math.max(0, -deviation[k]!) ||
          sure[k]! !== Math.max(0, -deviation[k]! - 2 * sd[k]!),
      );
      expect(wrong).toEqual([]);
      // Metal is asked off somewhere, or nothing would have been looked at.
      expect(greatest(sure)).toBeGreaterThan(0);
    },
  );

  it('the target is the bushing less the press fit, wanted or usual; decided by hand it is that', () => {
    const fitted = { bushings: [bushing(0, LENGTH, 'A')] };
    expect(bored(1, fitted).target!.diameter).toBeCloseTo(65.3 - 0.05, 9);
    const wanted = { ...fitted, wanted: { pressFit: typedIn('mm', 0.08) } };
    expect(bored(1, wanted).target!.diameter).toBeCloseTo(65.3 - 0.08, 9);
    expect(bored(1, { ...fitted, decisions: target }).target!.diameter).toBeCloseTo(65.3, 9);
    expect(bored(1, {})).toMatchObject({ target: null, removal: null, zones: [] });
  });

  it('a seat from face B lies as deep from the other end', () => {
    const a = bored(1, { bushings: [bushing(LENGTH - 30, LENGTH, 'A')] }).removal!;
    const b = bored(1, { bushings: [bushing(0, 30, 'B')] }).removal!;
    expect(b.likely).toEqual(a.likely);
    const outside = Math.floor((20 / LENGTH) * (GRID.z.length - 1)) * COLUMNS;
    expect(greatest(a.likely.subarray(0, outside))).toBe(0);
    expect(greatest(a.likely.subarray(outside + 2 * COLUMNS))).toBeGreaterThan(0);
  });

  it("a grease hole at 3 o'clock from face A is NaN there and nowhere else; 9 o'clock from face B is the same hole", () => {
    const { removal } = bored(1, { decisions: target, keepouts: [hole('A', '3', 20)] });
    const surface = bored(1, { decisions: target }).surface!;
    const { likely, sure, deviation } = removal!;
    const inHole = (k: number) => {
      const z = GRID.z[Math.floor(k / COLUMNS)]!;
      const aside = Math.abs(GRID.theta[k % COLUMNS]! - Math.PI / 2) * surface.mean[k]!;
      return z >= 20 && z <= 28 && aside <= 4;
    };
    expect(placesWhere((k) => Number.isNaN(likely[k]!))).toEqual(placesWhere(inHole));
    expect(placesWhere((k) => Number.isNaN(sure[k]!))).toEqual(placesWhere(inHole));
    expect(placesWhere(inHole).length).toBeGreaterThan(20);
    expect(deviation.every(Number.isFinite)).toBe(true);
    const fromB = bored(1, { decisions: target, keepouts: [hole('B', '9', LENGTH - 28)] });
    expect(fromB.removal!.likely).toEqual(removal!.likely);
    const whole = bored(1, { decisions: target }).removal!;
    expect(removal!.volume).toBeLessThan(whole.volume);
    expect(Number.isFinite(removal!.volume)).toBe(true);
  });

  it('diameters alone cannot place the centre: the map says what it assumes; radii do', () => {
    const across = bored(1, { decisions: target });
    expect(across.target!.assumed).toBe('both sides alike');
    expect(across.notes.some((note) => note.kind === 'assumed')).toBe(true);
    // Even, so the free axis is the reference axis: nothing pulls it to one side.
    const { x, y, leanX, leanY } = across.target!.axis;
    expect(Math.hypot(x, y) + LENGTH * Math.hypot(leanX, leanY)).toBeLessThan(1e-6);
  });

  it('with a free centre the give-or-take leaves out where the bore stands; with a kept one it does not', () => {
    const free = bored(1, { decisions: target });
    const kept = bored(1, { decisions: { ...target, centre: { rule: 'keep' } } });
    expect(kept.target!.centreRule).toBe('keep');
    expect(kept.removal!.sd).toEqual(kept.surface!.sd);
    expect(free.removal!.sd.every((sd, k) => sd < kept.removal!.sd[k]!)).toBe(true);
    const metal = (field: Field) => field.reduce((total, t) => total + t, 0);
    expect(metal(free.removal!.sure)).toBeGreaterThan(metal(kept.removal!.sure));
  });

  it('a sharp step is ground on the narrow side of it only', () => {
    const truth = sum(round(32.5), step(0.15, 25));
    const { removal } = survey({
      taken: measure(
        truth,
        'two-point',
        clocks(6),
        depthsWithin(9, LENGTH),
        0.003,
        seededRandom(1),
      ),
      length: LENGTH,
      nominal: 65,
      sd: 0.003,
      feature: { decisions: { target: typedIn('mm', 65.2) } },
    });
    // 0.1 mm per side below the step, none above. A smooth surface over a jump swings by up to a fifth of it next to
    // it (readings are 5.6 mm apart), and at the far face where nothing is read.
    GRID.z.forEach((z, iz) => {
      const row = removal!.likely.subarray(iz * COLUMNS, (iz + 1) * COLUMNS);
      if (z < 25 - 5.6) expect(greatest(row)).toBeLessThan(0.03);
      if (z > 25 + 5.6) expect(Math.abs(greatest(row) - 0.1)).toBeLessThan(0.03);
    });
  });
});
