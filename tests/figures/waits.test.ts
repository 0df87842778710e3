/** What is likely high and not sure enough to grind is told so alike by passes, ways and map. All constructed. */
import { describe, expect, it } from 'vitest';
import { type PassMatter, planPasses } from '../../src/bore/passes.ts';
import type { WearSurface } from '../../src/bore/types.ts';
import type { Passes } from '../../src/evaluate/passes.ts';
import { passesOfSurvey } from '../../src/evaluate/passes.ts';
import { waysOfSurvey } from '../../src/evaluate/ways.ts';
import { evaluate } from '../../src/evaluate.ts';
import { isFinished, leftWords, noPassWords } from '../../src/figures/passWords.ts';
import { wayRows } from '../../src/figures/wayTable.ts';
import { adviceWords } from '../../src/figures/wayWords.ts';
import { sayZone } from '../../src/figures/zoneWords.ts';
import { demoJobs } from '../../src/practice/demos.ts';

const COLUMNS = 48;
const GRID = {
  theta: Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS),
  z: Float64Array.from({ length: 11 }, (_, i) => 4 * i),
};
const RADIUS = 25;

/** Proud by so much at 3 and 9, on size at 12 and 6, one standard deviation everywhere; and a wheel of that radius. */
function matterOf(proud: number, sd: number, wheel = 15): PassMatter {
  const deviation = Float64Array.from(
    { length: COLUMNS * 11 },
    (_, k) => -proud * Math.sin(GRID.theta[k % COLUMNS]!) ** 2,
  );
  const sds = deviation.map(() => sd);
  const mean = deviation.map((e) => RADIUS + e);
  const surface = { grid: GRID, mean, sd: sds, sdSeen: sds };
  return {
    surface: surface as Partial<WearSurface> as WearSurface,
    removal: { deviation, sd: sds },
    places: new Uint8Array(deviation.length).fill(1),
    bare: new Uint8Array(deviation.length),
    radius: RADIUS,
    tool: { rigid: true, radius: wheel, width: 12, bite: 0.2 },
    slope: 0.05,
  };
}

function planned(matter: PassMatter): Passes {
  const plan = planPasses(matter);
  const tool = { rigid: true, name: 'drum', kind: 'drum', diameter: { mm: 30 } };
  return { plan, tool, done: 0 } as unknown as Passes;
}

const said = (passes: Passes) => passes.plan.left.map((left) => leftWords(left, passes, 'mm'));

describe('a wall that is likely high', () => {
  it('between one and two give-or-takes is not told to lie within it', () => {
    // Give-or-take 0.016: 0.0005 more is all that is sure, on a narrow top.
    const passes = planned(matterOf(0.0165, 0.008));
    expect(passes.plan.passes).toEqual([]);
    expect(passes.plan.waits).toMatchObject({ most: 0.0165, give: 0.016 });
    expect(passes.plan.left.map(({ why }) => why)).toEqual(['doubt', 'doubt']);
    expect(noPassWords(passes.plan)).toContain('No pass until it is measured better');
    for (const line of said(passes)) {
      expect(line).toContain('give or take 0.016: not sure enough for a pass');
      expect(line).not.toMatch(/within the give-or-take|nothing at all/);
    }
  });

  it('by less than its give-or-take may be nothing', () => {
    const passes = planned(matterOf(0.01, 0.008));
    expect(passes.plan.waits).not.toBeNull();
    for (const line of said(passes)) expect(line).toContain('it may be nothing at all');
  });

  it('waits for nothing where the doubt is not what forbids a pass', () => {
    // However well it is known, a wheel that is larger than the bore takes nothing.
    for (const sd of [0, 0.008]) {
      const { plan } = planned(matterOf(0.0165, sd, 40));
      expect([plan.passes.length, plan.waits]).toEqual([0, null]);
      expect(plan.left.length).toBeGreaterThan(0);
      expect(plan.left.every(({ why }) => why !== 'doubt')).toBe(true);
    }
    expect(planned(matterOf(0.0165, 0)).plan.waits).toBeNull();
    expect(planned(matterOf(0, 0.008)).plan.waits).toBeNull();
  });

  it('is not finished with strip before it is measured better', () => {
    expect(isFinished({ ...planned(matterOf(0.0165, 0.008)), done: 2 })).toBe(false);
    expect(isFinished({ ...planned(matterOf(0, 0.008)), done: 2 })).toBe(true);
    expect(isFinished(planned(matterOf(0.1, 0.001)))).toBe(true);
  });
});

describe('what is planned of the demo jobs', () => {
  const cases = demoJobs().flatMap(({ job }) => {
    const { bores, units } = evaluate(job);
    return bores.flatMap((bore) =>
      bore.surveys.flatMap((survey) => {
        const passes = passesOfSurvey(job, bore, survey, null);
        const ways = waysOfSurvey(job, bore, survey, null);
        return passes && ways ? [{ bore, survey, passes, ways, units }] : [];
      }),
    );
  });

  it('waits, or does not, in passes, row, advice and zones alike', () => {
    const waiting = cases.filter(({ passes }) => passes.plan.waits !== null);
    expect(waiting.length).toBeGreaterThan(0);
    for (const { bore, survey, passes, ways, units } of cases) {
      const waits = passes.plan.waits !== null;
      const grind = wayRows(ways, units).find(({ name }) => name === 'grind')!;
      expect(grind.work.includes('no pass until it is measured better')).toBe(waits);
      expect(grind.work).not.toMatch(/Work: none; at most/);
      if (grind.verdict === 'advised') {
        expect(grind.says.includes('once it is measured better')).toBe(waits);
        expect(adviceWords(ways).includes('No pass until')).toBe(waits);
      }
      for (const zone of survey.zones.filter(({ kind }) => kind === 'high')) {
        const line = sayZone(zone, bore.facts.length.mm, units, survey, waits);
        expect(line.includes('take off')).toBe(!waits);
      }
    }
  });
});
