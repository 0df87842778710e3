/**
 * Whole repairs, simulated (tests/fixtures/repaired.ts): following passes and gates, hardly anything is cut below the target,
 * in about the passes that were planned.
 *
 * Rules and thresholds were chosen while looking at seeds 1 to 200 and 1001 to 1070; those asserted here were not looked at. So
 * that the tests stay quick a few of the repairs run by default; ROUNDHAND_REPAIRS=200 runs as many as that.
 */
import { describe, expect, it } from 'vitest';
import { type HowRead, type Repair, repair } from '../fixtures/repaired.ts';

const ASKED = Number(process.env.ROUNDHAND_REPAIRS ?? Number.NaN);
/**
 * One repair in so many may miss the bar that holds over all of them: where a gouge or a step lies between the marks of the
 * first survey the first pass cannot know of it.
 */
const ONE_IN = 20;
const FIRST = 2001;

function repairs(few: number, how: HowRead, uneven = 0): Repair[] {
  const length = ASKED > 0 ? ASKED : few;
  return Array.from({ length }, (_, i) => repair(FIRST + i, how, uneven));
}

function told(name: string, done: readonly Repair[]) {
  const mean = (of: (one: Repair) => number) =>
    done.reduce((sum, one) => sum + of(one), 0) / done.length;
  const all = {
    deep: mean((one) => one.deep),
    proud: mean((one) => one.proud),
    passes: mean((one) => one.passes),
    plan: mean((one) => one.plan),
    overDeep: done.filter((one) => one.deep > 0.01).length,
    overLong: done.filter((one) => one.passes > 1.5 * one.plan).length,
  };
  console.log(
    `${name}: ${done.length} repairs; cut too deep ${(100 * all.deep).toFixed(3)} % of the wall, more than 1 % in ${all.overDeep}; ` +
      `left proud ${(100 * all.proud).toFixed(1)} %; ${all.passes.toFixed(1)} passes for ${all.plan.toFixed(1)} planned, ` +
      `more than 1.5 times in ${all.overLong}`,
  );
  return all;
}

function holds(name: string, done: readonly Repair[]): number {
  const { deep, passes, plan, overDeep, overLong, proud } = told(name, done);
  expect(deep).toBeLessThan(0.01);
  // The repairs drawn are no empty ones, and are not given up at once.
  expect(passes).toBeGreaterThan(plan / 3);
  expect(passes).toBeLessThan(1.5 * plan);
  expect(overDeep).toBeLessThanOrEqual(Math.ceil(done.length / ONE_IN));
  expect(overLong).toBeLessThanOrEqual(Math.floor(done.length / 100));
  return proud;
}

describe('whole repairs', () => {
  it('read about a pin, 12 hours at 5 depths', () => {
    // Nothing is gained by stopping early: of 200 repairs that went by each survey alone 0.28 of the wall was left proud.
    expect(holds('radii', repairs(12, 'radii'))).toBeLessThan(0.28);
  }, 600_000);

  it('read across, the worn side stated', () => {
    holds('across', repairs(20, 'across'));
  }, 600_000);

  it('by a hand that takes more in one place than in another', () => {
    expect(holds('uneven', repairs(6, 'radii', 0.15))).toBeLessThan(0.28);
  }, 600_000);
});
