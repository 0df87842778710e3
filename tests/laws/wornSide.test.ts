/** "Worn on one side, at ...": what the statement adds to diameters, and what is said where there is none. */
import { describe, expect, it } from 'vitest';
import { design } from '../../src/bore/design.ts';
import { condition } from '../../src/bore/posterior.ts';
import { learnSmoothness } from '../../src/bore/smoothness.ts';
import { gridSpread, makeGrid, wearSurface } from '../../src/bore/surface.ts';
import { keptAxis } from '../../src/bore/target.ts';
import { evaluate } from '../../src/evaluate.ts';
import { seededRandom } from '../../src/num/random.ts';
import {
  clocks,
  crescent,
  depthsWithin,
  fading,
  jobOf,
  measure,
  round,
  sum,
  typedIn,
} from '../fixtures/bores.ts';
import { diametersOf, oneSided } from '../fixtures/simulated.ts';

const SEEDS = Array.from({ length: 24 }, (_, i) => 401 + i);
const HALF_AN_HOUR = Math.PI / 12;

/** A bore worn on one side, fading along the depth; the side said to the nearest half hour or so. */
function sample(seed: number) {
  const r = seededRandom(seed);
  const radius = 20 + 40 * r.uniform();
  const bore = oneSided(r, radius, 2 * radius * (0.6 + 0.6 * r.uniform()));
  const said = bore.worn!.theta + HALF_AN_HOUR * (2 * r.uniform() - 1);
  const read = diametersOf(bore, [0.025, 0.01, 0.004][seed % 3]!, 6, 5, seed);
  const grid = makeGrid(bore.length);
  const columns = grid.theta.length;
  const of = (side: number) => {
    const d = design(read, [], bore.length, side);
    const p = condition(d, learnSmoothness(d, radius), radius)!;
    const s = wearSurface(p, grid, gridSpread(p, grid));
    const off = s.mean.map(
      (m, k) => bore.truth(grid.theta[k % columns]!, grid.z[Math.floor(k / columns)]!) - m,
    );
    const within = (sd: Float64Array) =>
      off.filter((e, k) => Math.abs(e) <= 1.96 * sd[k]!).length / off.length;
    const rms = Math.sqrt(off.reduce((a, e) => a + e * e, 0) / off.length);
    return { p, rms, sd: within(s.sd), sdSeen: within(s.sdSeen) };
  };
  return { bore, said, alike: of(Number.NaN), stated: of(said), wrong: of(said + Math.PI) };
}

describe('diameters of bores worn on one side, about the old centre', () => {
  const samples = SEEDS.map(sample);
  const mean = (of: (s: (typeof samples)[number]) => number) =>
    samples.reduce((total, s) => total + of(s), 0) / samples.length;

  it('the statement takes most of the error away: it is at most 0.4 of what it was', () => {
    // Half the crescent is odd and told by the statement alone; a side said 15 degrees off leaves a quarter of that.
    expect(mean((s) => s.stated.rms / s.alike.rms)).toBeLessThan(0.4);
  });

  it('its bands hold the truth', () => {
    expect(mean((s) => s.stated.sd)).toBeGreaterThan(0.9);
    expect(mean((s) => s.stated.sdSeen)).toBeGreaterThan(0.8);
  });

  it('the wrong side is worse than none', () => {
    expect(mean((s) => s.wrong.rms / s.alike.rms)).toBeGreaterThan(1.3);
  });

  it('diameters do not contradict either side: both explain them about alike', () => {
    // A statement of the opposite side has the same even lobes; only the few minutes off change what it explains.
    for (const s of samples) {
      expect(Math.abs(s.stated.p.surprise - s.wrong.p.surprise)).toBeLessThan(1e-6);
    }
  });

  it('the old centre stays where it was: the stated wear does not pull it along', () => {
    for (const s of samples) {
      const { length } = s.bore;
      const at = keptAxis(s.stated.p, { from: 0.75 * length, to: length });
      // Nothing but the statement tells the centre: the first lobe's own part has no reading to move it.
      expect(Math.hypot(at.x, at.y)).toBeLessThan(1e-9);
    }
  });
});

describe('what is said', () => {
  const truth = sum(round(32.5), crescent(0.2, 0, Math.PI, fading(80)));
  const taken = measure(truth, 'two-point', clocks(6), depthsWithin(5, 50));
  const survey = (wornSide?: string, sd = 0.005) => {
    const job = jobOf({
      taken,
      length: 50,
      nominal: 65,
      sd,
      feature: { decisions: { target: typedIn('mm', 65.2) } },
    });
    const bore = job.features[0]!;
    const stated = wornSide === undefined ? {} : { wornSide };
    return evaluate({
      ...job,
      features: [{ ...bore, surveys: [{ ...bore.surveys[0]!, ...stated }] }],
    }).bores[0]!.surveys[0]!;
  };
  const text = (s: ReturnType<typeof survey>, kind: string) =>
    s.notes.filter((n) => n.kind === kind).map((n) => n.text);

  it('without a statement: both sides alike, and what the same numbers would be on one side', () => {
    const s = survey();
    expect(s.target!.assumed).toBe('both sides alike');
    // 0.2 mm, less what fades over the first 2.5 mm: 0.1938 across, so half of it per side on both.
    expect(text(s, 'assumed')).toEqual([
      expect.stringMatching(
        /^Assumed: both sides alike\. .*out of round by 0\.19\d mm across \(give or take 0\.01\d mm\) at 2\.5 mm may be 0\.09\d mm per side gone at .*alike, as the map has it, or 0\.19\d mm per side gone at one of them only\.$/,
      ),
    ]);
  });

  it('read with a coarse gauge it has a digit less, that of its give-or-take', () => {
    // Readings good to 0.05 mm leave hundredths at most.
    expect(text(survey(undefined, 0.05), 'assumed')).toEqual([
      expect.stringMatching(
        /by 0\.\d\d mm across \(give or take 0\.\d\d mm\) at .* 0\.\d\d mm per side gone at .* 0\.\d\d mm per side/,
      ),
    ]);
  });

  it('with it: the side as said, on the map too', () => {
    const s = survey('6');
    expect(s.target!.assumed).toBe('worn at 6:00, as you said');
    expect(text(s, 'assumed')[0]).toContain('Assumed: worn at 6:00, as you said.');
    expect(text(s, 'warning')).toEqual([]);
    // At the rim the wall stands farther out at 6 than at 12 by most of the wear.
    const { mean, grid } = s.surface!;
    expect(mean[grid.theta.length / 2]! - mean[0]!).toBeGreaterThan(0.15);
  });

  it('a side across the long way of the oval is doubted', () => {
    expect(text(survey('3'), 'warning')[0]).toContain('You said that it wore at 3:00, but');
    expect(text(survey('7'), 'warning')).toEqual([]);
  });
});
