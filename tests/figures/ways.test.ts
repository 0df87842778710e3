/** The ways of mending on the page: every figure is the report's, words and advice follow the rules, and an edit takes it. */
import { describe, expect, it } from 'vitest';
import { advise, type WayRules } from '../../src/bore/advice.ts';
import type { WayOutcome } from '../../src/bore/wayTypes.ts';
import { waysReport } from '../../src/cli/waysReport.ts';
import { waysOfSurvey } from '../../src/evaluate/ways.ts';
import { evaluate } from '../../src/evaluate.ts';
import { wallOf } from '../../src/figures/wall.ts';
import { drawnWay } from '../../src/figures/wayDrawn.ts';
import { type WayColumn, wayRows } from '../../src/figures/wayTable.ts';
import { adviceWords, workWords } from '../../src/figures/wayWords.ts';
import {
  chooseWay,
  setDecision,
  setSafety,
  setWayFigure,
  setWayShare,
} from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { wayShare } from '../../src/job/wayFigures.ts';
import { orchardLiftClevis } from '../../src/practice/demos/orchardLiftClevis.ts';
import { demoJobs } from '../../src/practice/demos.ts';

const found = (job: Job, bore = 0, survey = 0) => {
  const of = evaluate(job).bores[bore]!;
  return waysOfSurvey(job, of, of.surveys[survey]!, null)!;
};

describe.each(demoJobs().map(({ file, job }) => ({ file, job })))('$file', ({ job }) => {
  it('every figure of every row is in the report, equal, and nothing is worked out twice', () => {
    for (const bore of evaluate(job).bores) {
      for (const survey of bore.surveys) {
        const ways = waysOfSurvey(job, bore, survey, null);
        if (ways === null) continue;
        const report = waysReport(ways, null, job.units);
        const rows = wayRows(ways, job.units);
        expect(rows.map(({ name }) => name)).toEqual(report.ways.map(({ name }) => name));
        rows.forEach(({ cells, why, done }, i) => {
          const told = report.ways[i]!;
          const figures: Record<WayColumn, number | null> = {
            target: told.target,
            off: told.massOff,
            on: told.massOn,
            pressFit: told.pressFit.least,
            seated: told.seated.likely,
            gap: told.worstGap.behindBushing,
            wall: told.wallLeft,
          };
          for (const column of Object.keys(figures) as WayColumn[]) {
            expect(figures[column] ?? Number.NaN).toBe(cells[column].value);
          }
          expect([told.why, told.words]).toEqual([why, done]);
        });
        expect(report.ways.filter(({ advised }) => advised).length).toBeLessThanOrEqual(1);
        for (const row of rows) expect(JSON.stringify(row)).not.toMatch(/NaN|undefined|Infinity/);
      }
    }
  });
});

/** A ground bore with so much low across, on such a share; the other ways as they would be. */
function outcomes(low: number, share: number, off = 0.05, wallLeft = 20): WayOutcome[] {
  const metal = (greatest: number) => ({ volume: 100 * greatest, mass: greatest, greatest });
  const one = (name: WayOutcome['name'], over: number, on = 0): WayOutcome => ({
    name,
    target: 50,
    axis: { x: 0, y: 0, leanX: 0, leanY: 0 },
    bushing: 50.05,
    outside: 50.05,
    off: metal(name === 'leave' ? 0 : off),
    on: metal(on),
    pressFit: { least: 0.05 - 2 * over, mean: 0.05, greatest: 0.05, theta: 0, z: 0, give: 0.01 },
    seated: { likely: 1, least: 1, most: 1 },
    lowShare: share,
    gap: { over, behind: Math.max(0, over - 0.025), theta: 0, z: 0 },
    waits: null,
    wallLeft,
    passes: name === 'weld' ? Number.NaN : 3,
    fewest: name === 'weld' ? 64 : Number.NaN,
    stays: 0,
    layers: name === 'shim' ? [0.3] : [],
    squeeze:
      name === 'squeeze'
        ? {
            closing: low,
            upset: 0,
            bentOver: 0,
            heatsLeast: 1,
            heatsMost: 2,
            drawnIn: { passes: 5, off: metal(2 * off) },
          }
        : null,
    deviation: new Float64Array(0),
  });
  return [
    one('grind', low / 2),
    one('squeeze', 0),
    one('shim', 0, 0.3),
    one('oversize', 0),
    one('sleeve', 0, 3),
    one('weld', 0, low),
    one('leave', low / 2),
  ];
}

const RULES: WayRules = {
  leastPress: 0.025,
  acceptLow: 0.05,
  acceptShare: 0.33,
  squeezeLow: 0.15,
  oversizeLow: 0.5,
  wallShare: 0.2,
  offShare: 0.5,
};
const OPEN = { heat: false, all: false };

describe('the work of each way in words', () => {
  const { job } = demoJobs()[0]!;
  const [bore] = evaluate(job).bores;
  const found = waysOfSurvey(job, bore!, bore!.surveys[0]!, null)!;
  const ways = { ...found, outcomes: outcomes(0.1, 0.5) };
  const said = (name: WayOutcome['name']) =>
    workWords(ways.outcomes.find((one) => one.name === name)!, ways, 'mm');

  it('after a squeeze between the two limits, after a thick weld by machine', () => {
    expect(said('grind')).toBe('Work: 3 passes; at most 0.050 mm per side off.');
    expect(said('squeeze')).toBe(
      'Work: 1 to 2 heats, then 3 to 5 passes; at most 0.050 to 0.100 mm per side off.',
    );
    expect(said('weld')).toMatch(
      /^Work: welding, then bored by machine: by hand it would be 64 passes or more; at most /,
    );
  });
});

describe('the advice follows the rules', () => {
  // Rows of the trade's route table as the rules have it (common practice and judgement), low spots across in mm.
  it.each([
    [0.02, 0.9, 0.05, 'high-spots', 'grind'],
    [0.02, 0.9, 0.001, 'nothing', 'leave'],
    [0.045, 0.2, 0.05, 'low-stays', 'grind'],
    [0.045, 0.4, 0.05, 'low-closes', 'squeeze'],
    [0.15, 0.4, 0.05, 'low-closes', 'squeeze'],
    [0.4, 0.4, 0.05, 'low-larger', 'oversize'],
    [0.6, 0.4, 0.05, 'low-far', 'weld'],
  ] as const)('low %d on %d of the seat, proud %d: %s, %s', (low, share, off, call, way) => {
    const { advised, call: called, ways } = advise(outcomes(low, share, off), RULES, OPEN);
    expect([called, advised]).toEqual([call, way]);
    expect(ways.filter(({ verdict }) => verdict === 'advised')).toHaveLength(1);
  });

  it('a bore off the line of the others by more than half of the clearance wants all of them bored on one line', () => {
    // Route table of the trade: two or more bores off one axis by more than half of the running clearance.
    const at = (off: number) => advise(outcomes(0.02, 0.9), RULES, OPEN, off);
    expect([at(0.51).call, at(0.51).advised]).toEqual(['off-line', 'sleeve']);
    expect([at(0.5).call, at(0.5).advised]).toEqual(['high-spots', 'grind']);
    expect(at(0.5).checks[0]).toMatchObject({ rule: 'offShare', figure: 0.5, met: true });
    expect(at(Number.NaN).checks.map(({ rule }) => rule)).not.toContain('offShare');
    expect(at(0.51).ways.find(({ name }) => name === 'grind')!.verdict).toBe('off-line');
  });

  it('what is closed is not advised, and the next that answers is', () => {
    const at = (low: number, gates = { heat: true, all: false }) =>
      advise(outcomes(low, 0.5), RULES, gates);
    expect([at(0.1).first, at(0.1).advised]).toEqual(['squeeze', 'oversize']);
    expect([at(0.6).first, at(0.6).advised]).toEqual(['weld', 'sleeve']);
    expect(at(0.1, { heat: true, all: true }).advised).toBeNull();
    expect(adviceWords({ advice: at(0.1), outcomes: outcomes(0.1, 0.5) })).toContain(
      'Squeeze with heat, then grind would come first',
    );
  });

  it('a wall too thin is not advised; one that is not known is no reason against it', () => {
    const at = (wall: number) => advise(outcomes(0.4, 0.5, 0.05, wall), RULES, OPEN);
    expect(at(9.9).advised).toBeNull();
    expect(at(9.9).ways.every(({ verdict }) => verdict === 'thin-wall')).toBe(true);
    expect(at(10).advised).toBe('oversize');
    expect(at(Number.NaN).advised).toBe('oversize');
  });

  it('what is too little, too far or more than needed is said so', () => {
    const verdicts = (low: number) =>
      Object.fromEntries(
        advise(outcomes(low, 0.5), RULES, OPEN).ways.map(({ name, verdict }) => [name, verdict]),
      );
    expect(verdicts(0.4)).toMatchObject({
      grind: 'too-little',
      squeeze: 'too-far',
      weld: 'second',
      sleeve: 'more-than-needed',
    });
    expect(verdicts(0.1)).toMatchObject({ oversize: 'second', weld: 'more-than-needed' });
  });
});

describe('of a job', () => {
  const job = orchardLiftClevis();
  const id = job.features.find(({ kind }) => kind === 'bore')!.id;

  it('a limit that is changed changes the advice; a share that is none does not count', () => {
    expect(found(job).advice.call).toBe('low-closes');
    const wide = setWayShare(
      setWayFigure(job, id, 'acceptLow', { text: '0.2', unit: 'mm' }),
      id,
      'acceptShare',
      '90 %',
    );
    expect(found(wide).advice).toMatchObject({ call: 'low-stays', advised: 'grind' });
    const back = setWayShare(setWayFigure(wide, id, 'acceptLow', undefined), id, 'acceptShare', '');
    expect(back).toEqual(job);
    const wrong = setWayShare(job, id, 'acceptShare', '140');
    expect(wayShare(wrong.features.find((one) => one.id === id)!.decisions, 'acceptShare')).toBe(
      0.33,
    );
  });

  it('iron closes what needs heat, a crack all of it', () => {
    const iron = found(setSafety(job, 'metal', 'iron'));
    expect(iron.stops[0]).toMatchObject({ closes: 'heat' });
    expect(iron.advice.ways.find(({ name }) => name === 'weld')!.verdict).toBe('closed');
    const crack = found(setDecision(job, id, { crack: 'seen' }));
    expect(crack.advice.advised).toBeNull();
    expect(crack.stops[0]).toMatchObject({ closes: 'all' });
  });

  it('a way with a size of its own brings it as the target, and takes it away with it', () => {
    const size = { text: '45.110', unit: 'mm' } as const;
    const oversize = chooseWay(job, id, 'oversize', size);
    const decisions = (of: Job) => of.features.find((one) => one.id === id)!.decisions;
    expect(decisions(oversize)).toMatchObject({ way: 'oversize', target: size });
    // What the other ways come to does not hang on which one is chosen.
    const before = found(job).outcomes.map(({ target, off }) => [target, off.volume]);
    const after = found(oversize).outcomes.map(({ target, off }) => [target, off.volume]);
    for (const [i, value] of after.flat().entries()) {
      expect(value).toBeCloseTo(before.flat()[i]!, 3);
    }
    expect(decisions(chooseWay(oversize, id, 'grind', null)).target).toBeUndefined();
    const byHand = setDecision(job, id, { target: size });
    expect(decisions(chooseWay(byHand, id, 'grind', null)).target).toEqual(size);
  });

  it('the drawing of a way is its outcome, in the colours of the bore as it is', () => {
    const survey = evaluate(job).bores[0]!.surveys[0]!;
    const { outcomes: all } = found(job);
    for (const outcome of all) {
      const wall = wallOf(drawnWay(survey, outcome)!)!;
      expect(wall.deviation).toBe(outcome.deviation);
      expect(2 * wall.radius).toBe(outcome.target);
      expect(wall.scaledBy).toEqual([wallOf(survey)]);
    }
  });
});
