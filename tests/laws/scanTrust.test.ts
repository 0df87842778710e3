/** Bands of scanned bores: simulated wear (made another way than the surface's prior), noise of 0.01 mm a point. */
import { describe, expect, it } from 'vitest';
import { jobFromScan } from '../../src/evaluate/scanJob.ts';
import { evaluate } from '../../src/evaluate.ts';
import { scanOf } from '../fixtures/scans.ts';
import { anyBore } from '../fixtures/simulated.ts';

const SEEDS = [101, 102, 103, 104, 105, 106, 107, 108];
const COUNT = 30_000;
const NOISE = 0.01;

function judged(seed: number) {
  const { truth, radius, length, made } = anyBore(seed);
  const columns = scanOf(truth, { count: COUNT, length, noise: NOISE, seed });
  const sizes = { units: 'mm', nominal: `${2 * radius}`, length: `${length}` } as const;
  const found = jobFromScan({ name: 'scan.csv', columns }, sizes);
  if (!found.ok) throw new Error(found.why);
  const survey = evaluate(found.job).bores[0]!.surveys[0]!;
  const { grid, mean, sdSeen } = survey.surface!;
  const off = Array.from(mean, (r, k) => {
    const it = k % grid.theta.length;
    const error = r - truth(grid.theta[it]!, grid.z[(k - it) / grid.theta.length]!);
    return { error, sd: sdSeen[k]! };
  });
  const within = off.filter(({ error, sd }) => Math.abs(error) <= 2 * sd).length / off.length;
  const rms = Math.sqrt(off.reduce((sum, { error }) => sum + error * error, 0) / off.length);
  return { made, within, rms, checks: survey.checks.length, left: found.scan.left };
}

describe('scanned bores', () => {
  const all = SEEDS.map(judged);

  it('the band holds the truth at 90 to 99 % of places on average, at 80 % in every bore', () => {
    for (const { made, within, rms } of all)
      console.log(`${made}: ${(100 * within).toFixed(1)} % within, rms ${rms.toFixed(4)} mm`);
    const average = all.reduce((sum, { within }) => sum + within, 0) / all.length;
    expect(average).toBeGreaterThan(0.9);
    expect(average).toBeLessThan(0.99);
    expect(Math.min(...all.map(({ within }) => within))).toBeGreaterThan(0.8);
  });

  it('bores without an edge are read to a seventh of one point’s noise', () => {
    const smooth = all.filter(({ made }) => !/step|gouge|crescent/.test(made));
    expect(smooth.length).toBeGreaterThan(2);
    // A curve of 29 terms round and, with likeness over a third of the length, some ten along the depth takes up 290 of
    // 30 000 points' noise at most: 0.01 x sqrt(290 / 30000) = 0.001 mm; drawn together they weigh a quadratic's 1.5 of that.
    expect(Math.max(...smooth.map(({ rms }) => rms))).toBeLessThan(0.0015);
  });

  it('no sound bin is doubted, and hardly a point of the wall is left out', () => {
    for (const { checks, left } of all) {
      expect(checks).toBe(0);
      expect(left.far + left.beyond + left.ends + left.lone).toBe(0);
      expect(left.astray).toBeLessThan(COUNT / 1000);
    }
  });
});
