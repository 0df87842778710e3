/** Passes in words, from surfaces whose figures are known. All constructed. */
import { describe, expect, it } from 'vitest';
import { gateOf, marksOf, type Readers } from '../../src/bore/gate.ts';
import { type PassMatter, planPasses } from '../../src/bore/passes.ts';
import type { Sighting, WearSurface } from '../../src/bore/types.ts';
import { pastTarget, workedOff } from '../../src/bore/worked.ts';
import type { Passes } from '../../src/evaluate/passes.ts';
import type { BoreFacts } from '../../src/evaluate.ts';
import { gateLines, passConditions } from '../../src/figures/passWords.ts';
import { pastWords, workedWords } from '../../src/figures/workedWords.ts';

const COLUMNS = 48;
const GRID = {
  theta: Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS),
  z: Float64Array.from({ length: 11 }, (_, i) => 4 * i),
};
const TARGET = 25;

/** A wall that stands off 25 mm by `e` at each place. */
function wall(e: (theta: number, z: number) => number, sd = 0): WearSurface {
  const mean = Float64Array.from(
    { length: COLUMNS * 11 },
    (_, k) => TARGET + e(GRID.theta[k % COLUMNS]!, GRID.z[Math.floor(k / COLUMNS)]!),
  );
  const same = mean.map(() => sd);
  return { grid: GRID, mean, sd: same, sdSeen: same } as Partial<WearSurface> as WearSurface;
}

function matterOf(surface: WearSurface): PassMatter {
  const deviation = surface.mean.map((r) => r - TARGET);
  return {
    surface,
    removal: { deviation, sd: surface.sd },
    places: new Uint8Array(deviation.length).fill(1),
    bare: new Uint8Array(deviation.length),
    radius: TARGET,
    tool: { rigid: true, radius: 15, width: 12, bite: 0.2 },
    slope: 0.05,
  };
}

const sighting = (theta: number, z: number): Sighting =>
  ({ row: 0, instrument: 'two-point', theta, z }) as Sighting;
const PAIRS = [0, 1, 2, 3, 4, 5].map((i) => (i * Math.PI) / 6);
const READ = [8, 20, 32].flatMap((z) => PAIRS.map((theta) => sighting(theta, z)));
/** Tight by 0.1 mm per side at 3 and at 9, on size at 12 and 6. */
const oval = (theta: number) => -0.1 * Math.sin(theta) ** 2;

describe('the gate', () => {
  const known: Readers = { sign: () => 1, sd: () => 0 };
  const surface = wall(oval);
  const matter = matterOf(surface);
  const [first] = planPasses(matter).passes;
  const step = {
    deviation: matter.removal.deviation,
    removal: first!.removal,
    sds: 2,
    wall: surface.mean,
  };

  it('asks for the tightest pair, what it should read, and where to stop; and for one that is not worked', () => {
    const gate = gateOf(matter, step, marksOf(READ), known);
    const [most] = gate;
    expect(most).toMatchObject({ why: 'most' });
    expect(most!.theta).toBeCloseTo(Math.PI / 2, 6);
    const [says] = most!.expected;
    // 50 less 0.2 across; half of what is left comes off on both sides; all of it is sure.
    expect(says!.before).toBeCloseTo(49.8, 9);
    expect(says!.after).toBeCloseTo(49.9, 9);
    expect(says!.stop).toBeCloseTo(50, 9);
    const control = gate.find(({ why }) => why === 'control');
    expect(control!.theta).toBeCloseTo(0, 6);
    expect(control!.expected[0]!.after).toBeCloseTo(50, 3);
    const lines = gateLines({ gate }, 'mm');
    expect(lines[0]).toMatch(
      /^3–9, .* reads 49\.800 mm across now, should read 49\.900 mm across; from 50\.000 mm across on, stop/,
    );
    expect(lines.at(-1)).toMatch(/^12–6, .*should still read 50\.000 mm across/);
  });

  it('tells a needle and a wall by how they change', () => {
    const swept = READ.flatMap((one) =>
      (['sweep', 'wall'] as const).map((instrument) => ({ ...one, instrument })),
    );
    const [most] = gateOf(matter, step, marksOf(swept), { ...known, sign: () => -1 });
    expect(most!.expected[0]).toMatchObject({ before: 0 });
    expect(most!.expected[0]!.after).toBeCloseTo(-0.05, 9);
    const [needle, thickness] = gateLines({ gate: [most!] }, 'mm');
    expect(needle).toContain('the needle should read 0.050 mm per side lower than before');
    expect(thickness).toContain('the wall should read 0.050 mm per side thinner than before');
  });

  it('says where to feel between the marks before the first pass, and of no other', () => {
    const pass = { ...first!, beyondDoubt: false, byStrip: false, gate: [] };
    const at = (z: number, halfway: 'clock' | 'depth' | 'face') => ({
      theta: 1,
      z,
      takes: 0.03,
      halfway,
    });
    const words = (...between: ReturnType<typeof at>[]) =>
      passConditions({ ...pass, between }, 'mm')[0];
    expect(words(at(5, 'clock'), at(12.5, 'depth'), at(12.5, 'depth'), at(20, 'depth'))).toMatch(
      /between your marks too, and round at 12\.50? mm, 20\.?0* mm deep, half-way between the depths that were read\. A hollow/,
    );
    expect(words(at(2.5, 'face'), at(12.5, 'depth'), at(37.5, 'face'))).toMatch(
      /too, and round at 12\.5 mm deep, half-way between the depths that were read, and at 2\.5 mm, 37\.5 mm deep, half-way from the outermost depth that was read to the face\. A hollow/,
    );
    expect(words(at(2.5, 'face'))).toMatch(
      /too, and round at 2\.5 mm deep, half-way from the outermost depth that was read to the face\. A hollow/,
    );
    expect(words(at(5, 'clock'))).toMatch(
      /^Before this pass, .* between your marks too\. A hollow/,
    );
    expect(passConditions({ ...pass, between: [] }, 'mm')).toEqual([]);
  });

  it('has no place without a reading on a seat', () => {
    expect(gateOf(matter, step, marksOf([]), known)).toEqual([]);
    const off = { ...matter, places: matter.places.map(() => 0) };
    expect(gateOf(off, step, marksOf(READ), known)).toEqual([]);
  });
});

describe('what came off', () => {
  const before = wall(oval, 0.001);
  const asked = before.mean.map((r) => Math.max(0, TARGET - r) / 2);

  it('is told as a share of what was asked, with its give-or-take', () => {
    const after = { ...before, mean: before.mean.map((r, k) => r + 0.6 * asked[k]!) };
    const off = workedOff(before, after, asked, READ);
    expect(off.share).toBeCloseTo(0.6, 9);
    expect(off.perPass).toBeCloseTo(0.6 * 0.05, 9);
    const [line] = workedWords({ worked: { off, since: 'As found', given: null } } as Passes, 'mm');
    expect(line).toContain('60 % came off');
    expect(line).toContain('about 1.7 times as long');
    expect(off.less).not.toBeNull();
    expect(off.more).toBeNull();
  });

  it('nothing asked tells nothing of a hand', () => {
    const off = workedOff(before, before, new Float64Array(asked.length), READ);
    expect(off.share).toBeNaN();
    expect(
      workedWords({ worked: { off, since: 'As found', given: null } } as Passes, 'mm'),
    ).toEqual(['Nothing was asked off after “As found”.']);
  });
});

describe('past the target', () => {
  const facts = { pressFit: { mm: 0.05, from: 'default' } } as BoreFacts;
  const places = new Uint8Array(COLUMNS * 11).fill(1);
  const before = wall(oval).mean.map((r) => r - TARGET);

  it('is found where metal stood before, not where the wall was low as found', () => {
    const low = wall((theta) => 0.05 * Math.cos(theta)).mean.map((r) => r - TARGET);
    const sd = low.map(() => 0.002);
    expect(
      pastTarget(
        low,
        { deviation: low, sd },
        places,
        wall(() => 0),
        50,
      ),
    ).toBeNull();
    // 0.02 mm per side through at 3 o'clock, 20 mm deep.
    const now = before.map((e, k) => (k === 5 * COLUMNS + 12 ? 0.02 : e));
    const past = pastTarget(
      before,
      { deviation: now, sd },
      places,
      wall(() => 0),
      50,
    )!;
    expect(past).toMatchObject({ over: 0.02, z: 20 });
    expect(past.theta).toBeCloseTo(Math.PI / 2, 9);
    expect(past.cleanUp).toBeCloseTo(50.04, 9);
    const { head, ways } = pastWords(past, facts, 'mm');
    expect(head).toContain(
      'At 3:00, 20.0 mm deep, the wall lies 0.020 mm per side outside the target',
    );
    // A press fit of 0.05 across less twice 0.02.
    expect(ways[0]).toContain('0.010 mm across of press fit instead of 0.050 mm across');
    expect(ways.join(' ')).toContain(
      'clean at 50.040 mm across, so the bushing is 50.090 mm across',
    );
  });

  it('a gap too wide for the bushing at hand is not called tight', () => {
    const sd = before.map(() => 0.002);
    const now = before.map((e, k) => (k === 17 ? 0.2 : e));
    const past = pastTarget(
      before,
      { deviation: now, sd },
      places,
      wall(() => 0),
      50,
    )!;
    const { ways } = pastWords(past, facts, 'mm');
    expect(ways.some((text) => text.includes('still holds'))).toBe(false);
    expect(ways.some((text) => text.includes('bushing made to suit'))).toBe(true);
  });
});
