/** Shims and washers: lengths and sums against published rows and common practice, stacks against brute force. */
import { describe, expect, it } from 'vitest';
import { rimOf } from '../../src/assembly/rim.ts';
import { partRound, stackOf, stripsOf } from '../../src/assembly/shims.ts';
import { seededRandom } from '../../src/num/random.ts';

const THOU = 0.0254;
/** Sheet stock as sold in sets, in. */
const INCH_SET = [0.001, 0.002, 0.003, 0.004, 0.005, 0.01, 0.015, 0.02, 0.025].map((t) => t * 25.4);
/** DIN 988:1990, thicknesses of shim rings. */
const DIN_988 = [0.1, 0.15, 0.2, 0.3, 0.5, 1];
const exact = { under: 0, over: 0 };
const plain = { gap: 0, butt: 0, reliefs: [], clear: 0 };

describe('a strip', () => {
  // Butt strips of neutral length pi (D - t): the middle of the thickness keeps its length.
  it.each([
    [110, 0.5, 344.004],
    [101.6, 0.254, 12.535 * 25.4],
  ])('lining %f with %f is cut to its tabulated length', (bore, thickness, length) => {
    const [strip] = stripsOf({ bore, layers: [thickness], ...plain });
    // Half of the last digit told, which is 0.001 in in the second row.
    expect(Math.abs(strip!.length - length)).toBeLessThan(0.0127);
  });

  it('of equal layers is pi (D - (2k - 1) t) less the gap, layer by layer', () => {
    const strips = stripsOf({ bore: 80, layers: [0.2, 0.2, 0.2], ...plain, gap: 0.25 });
    strips.forEach(({ length, bore }, i) => {
      expect(length).toBeCloseTo(Math.PI * (80 - (2 * (i + 1) - 1) * 0.2) - 0.25, 12);
      expect(bore).toBeCloseTo(80 - 2 * i * 0.2, 12);
    });
  });

  it('of unequal layers lines what those outside it leave', () => {
    const [, second] = stripsOf({ bore: 50, layers: [0.5, 0.1], ...plain });
    expect(second!.length).toBeCloseTo(Math.PI * (50 - 2 * 0.5 - 0.1), 12);
  });

  it('butts away from its neighbours, and its hole lies where the grease hole is', () => {
    const relief = { theta: Math.PI / 2, from: 10, to: 14, width: 4 };
    const strips = stripsOf({
      bore: 50,
      layers: [0.3, 0.2],
      gap: 0.2,
      butt: 0,
      reliefs: [relief],
      clear: 1,
    });
    expect(strips[1]!.butt).toBeCloseTo(Math.PI / 6, 12);
    // A quarter of the way round from a butt at 12, in the strip's middle, less half the gap.
    expect(strips[0]!.holes[0]).toMatchObject({ from: 9, to: 15, along: 6 });
    expect(strips[0]!.holes[0]!.at).toBeCloseTo((Math.PI * 49.7) / 4 - 0.1, 12);
    expect(strips[1]!.holes[0]!.at).toBeCloseTo(((Math.PI / 3) * (49.4 - 0.2)) / 2 - 0.1, 12);
  });
});

describe('a stack', () => {
  it('common practice: 4.5 thou in two layers fill 18 thou across', () => {
    const stack = stackOf({ thickness: (18 / 2) * THOU, ...exact }, [4.5 * THOU])!;
    expect(stack.layers).toEqual([4.5 * THOU, 4.5 * THOU]);
    expect(2 * stack.thickness).toBeCloseTo(18 * THOU, 12);
  });

  it('common practice: 12 thou across is 6 per side, 0.300 across 0.150 per side', () => {
    const six = stackOf({ thickness: (12 / 2) * THOU, ...exact }, INCH_SET)!;
    expect(six.layers.map((t) => t / THOU)).toEqual([5, 1].map((t) => expect.closeTo(t, 9)));
    const much = stackOf(
      { thickness: 0.15 * 25.4, ...exact },
      [0.1, 0.05].map((t) => t * 25.4),
    )!;
    expect(much.thickness / 25.4).toBeCloseTo(0.15, 12);
    expect(much.layers).toHaveLength(2);
  });

  it('the thickest lies outermost; no fewer layers would do', () => {
    const stack = stackOf({ thickness: 0.65, ...exact }, DIN_988)!;
    expect(stack.layers).toEqual([0.5, 0.15]);
  });

  it('a tolerance saves layers; what it must be it is', () => {
    const asked = { thickness: 0.42, under: 0.03, over: 0.1 };
    expect(stackOf(asked, DIN_988)!.layers).toEqual([0.5]);
    expect(stackOf({ ...asked, must: 'within' }, DIN_988)!.layers).toEqual([0.3, 0.1]);
    expect(stackOf({ ...asked, must: 'reach' }, DIN_988)!.over).toBeGreaterThanOrEqual(0);
    expect(stackOf({ ...asked, thickness: 0.05, must: 'within' }, DIN_988)).toBeNull();
    expect(stackOf({ ...asked, thickness: 9, must: 'reach' }, DIN_988)).toBeNull();
    expect(stackOf({ ...asked, thickness: Number.NaN }, DIN_988)).toBeNull();
    expect(stackOf(asked, [])).toBeNull();
  });

  it('is the best of all stacks, by brute force', () => {
    const { uniform } = seededRandom(3);
    for (let run = 0; run < 100; run++) {
      const stock = Array.from({ length: 1 + Math.floor(5 * uniform()) }, () => 0.05 + uniform());
      const asked = { thickness: 3 * uniform() + 0.01, under: 0.1 * uniform(), over: 0.05 };
      const all = everyStack(stock, 4).map((layers) => ({
        layers,
        over: layers.reduce((a, b) => a + b, 0) - asked.thickness,
      }));
      const within = all.filter(({ over }) => over >= -asked.under && over <= asked.over);
      const found = stackOf(asked, stock)!;
      if (within.length > 0) {
        const fewest = Math.min(...within.map(({ layers }) => layers.length));
        expect(found.layers).toHaveLength(fewest);
        const nearest = Math.min(
          ...within.filter((s) => s.layers.length === fewest).map(({ over }) => Math.abs(over)),
        );
        expect(Math.abs(found.over)).toBeCloseTo(nearest, 9);
      } else {
        const nearest = Math.min(...all.map(({ over }) => Math.abs(over)));
        expect(Math.abs(found.over)).toBeCloseTo(nearest, 8);
      }
      expect([...found.layers].sort((a, b) => b - a)).toEqual(found.layers);
    }
  });
});

/** Every way to lay one to four sheets on each other, in any order. */
function everyStack(stock: readonly number[], most: number): number[][] {
  const one = stock.map((t) => [t]);
  if (most === 1) return one;
  return [...one, ...everyStack(stock, most - 1).flatMap((s) => stock.map((t) => [...s, t]))];
}

describe('a part-round shim', () => {
  it('is tapered to nothing where nothing is missing', () => {
    const low = [0, 0, 0, 0, 0.02, 0.08, 0.1, 0.08, 0.02, 0, 0, 0];
    expect(partRound(low)).toEqual({ hours: low, thickest: 0.1, at: 6 });
  });

  it('is none where nothing is missing, or where all is', () => {
    expect(partRound(Array.from({ length: 12 }, () => 0))).toBeNull();
    expect(partRound(Array.from({ length: 12 }, () => 0.1))).toBeNull();
  });
});

describe('a rim face', () => {
  /** Constructed: 1 mm below flush and leaning by 0.4 across towards 6 o'clock. */
  const face = (hour: number) => {
    const theta = (hour * Math.PI) / 6;
    return { theta, below: 1 - 0.2 * Math.cos(theta) };
  };
  const stock = [0.5, 0.8, 1, 1.5];

  it('its lean is that of the plane through it', () => {
    const rim = rimOf([0, 3, 6, 9].map(face), stock, 0)!;
    expect(rim.lean!.across).toBeCloseTo(0.4, 12);
    expect(rim.lean!.theta).toBeCloseTo(Math.PI, 12);
    expect(rimOf([0, 6].map(face), stock, 0)!.lean).toBeNull();
  });

  it('washers rest where it is worn least, and the bushing stands out by what they do not fill', () => {
    const rim = rimOf([0, 3, 6, 9].map(face), stock, 0.1)!;
    expect(rim.asItIs.stack!.layers).toEqual([0.8]);
    expect(rim.asItIs.gap).toBeCloseTo(0.4, 12);
    expect(rim.asItIs.standsOut).toBeCloseTo(0.1, 12);
    // Dressed down to 1.2 below flush: 1.0 fills all but 0.2 of it.
    expect(rim.dressed.stack!.layers).toEqual([1]);
    expect(rim.dressed.standsOut).toBeCloseTo(0.1 + 0.2, 12);
  });

  it('without a washer thin enough the bushing stands out by all that is worn', () => {
    const rim = rimOf([{ theta: 0, below: 0.3 }], stock, 0)!;
    expect(rim.asItIs.stack).toBeNull();
    expect(rim.asItIs.standsOut).toBeCloseTo(0.3, 12);
    expect(rimOf([], stock, 0)).toBeNull();
    expect(rimOf([{ theta: Number.NaN, below: 1 }], stock, 0)).toBeNull();
  });
});
