/** Set-ups: what readings share, which set-up is in hand, and give-or-takes said as two standard deviations. */
import { describe, expect, it } from 'vitest';
import { goAllRound, opposites } from '../../src/job/allRound.ts';
import {
  addGauge,
  addReading,
  chooseSetup,
  newSetup,
  removeSetup,
  setCell,
  setDimension,
  setGauge,
  setPlanGauge,
  setSetup,
  withSetup,
} from '../../src/job/edits.ts';
import { surveyFacts } from '../../src/job/facts.ts';
import { readingSd } from '../../src/job/gauges.ts';
import { doubled, giveOf, halved } from '../../src/job/give.ts';
import type { GaugeType, Job } from '../../src/job/schema.ts';
import { setupInHand } from '../../src/job/setups.ts';
import { readingTable } from '../../src/job/table.ts';
import { smallJob } from './jobs.ts';

const IDS = ['f1', 's1'] as const;
const bore = (job: Job) => job.features[0]!;
const survey = (job: Job) => bore(job).surveys[0]!;
const facts = (job: Job) => surveyFacts(job, bore(job), survey(job));
const inch = (text: string) => ({ text, unit: 'in' as const });

/** The small job with one more gauge, which is in hand. */
function readWith(type: GaugeType): Job {
  const job = addGauge(smallJob(), type);
  return setPlanGauge(job, ...IDS, job.gauges.at(-1)!.id);
}

const typed = (job: Job, clock: string, values: string) =>
  setCell(job, ...IDS, { depth: 0, clock, values });

describe('set-ups in hand', () => {
  it('readings typed before there was one join the first that is made', () => {
    let job = typed(readWith('indicator'), '12', '+3');
    expect(facts(job).readings.at(-1)).toMatchObject({ instrument: 'sweep', setup: 0 });
    job = withSetup(job, ...IDS);
    expect(survey(job).setups).toMatchObject([{ id: 'u1', name: 'Spindle 1', face: 'A' }]);
    expect(survey(job).readings.at(-1)!.setup).toBe('u1');
    expect(withSetup(job, ...IDS)).toBe(job);
  });

  it('set up anew keeps what was typed apart, and takes what is typed next', () => {
    let job = newSetup(typed(readWith('indicator'), '12', '+3'), ...IDS);
    expect(survey(job).setups.map(({ name }) => name)).toEqual(['Spindle 1', 'Spindle 2']);
    job = typed(job, '12', '+5');
    expect(
      survey(job)
        .readings.slice(-2)
        .map(({ setup }) => setup),
    ).toEqual(['u1', 'u2']);
    const first = chooseSetup(job, ...IDS, 'u1');
    const shown = (one: Job) =>
      readingTable(bore(one), survey(one), one).rows[0]!.cells.map(({ text }) => text);
    expect(shown(job).filter(Boolean)).toEqual(['+5']);
    expect(shown(first).filter(Boolean)).toEqual(['+3']);
  });

  it('without readings one set-up is made, not two', () => {
    const job = newSetup(readWith('wall-caliper'), ...IDS);
    expect(survey(job).setups.map(({ name }) => name)).toEqual(['Boss 1']);
  });

  it('one that holds readings stays; an empty one that was chosen goes, and the last is in hand', () => {
    const job = newSetup(typed(readWith('indicator'), '12', '+3'), ...IDS);
    expect(removeSetup(job, ...IDS, 'u1')).toMatchObject({ ok: false });
    const gone = removeSetup(job, ...IDS, 'u2');
    if (!gone.ok) throw new Error(gone.why);
    expect(survey(gone.job).plan.setup).toBeUndefined();
    expect(setupInHand(survey(gone.job), survey(job).plan.gauge)?.id).toBe('u1');
  });

  it('a gauge without set-ups gets none', () => {
    const job = smallJob();
    expect(newSetup(job, ...IDS)).toBe(job);
    expect(withSetup(job, ...IDS)).toBe(job);
  });
});

describe('a table for one-sided readings', () => {
  it('goes all round where pairs went half round, once', () => {
    const job = readWith('indicator');
    expect(opposites(job, bore(job), survey(job))).toEqual(['6', '7', '8', '9', '10', '11']);
    const round = goAllRound(job, ...IDS);
    if (!round.ok) throw new Error(round.why);
    const table = readingTable(bore(round.job), survey(round.job), round.job);
    expect(table.clocks).toHaveLength(12);
    expect(opposites(round.job, bore(round.job), survey(round.job))).toEqual([]);
  });

  it('has no opposites to offer for a gauge that reads across', () => {
    const job = smallJob();
    expect(opposites(job, bore(job), survey(job))).toEqual([]);
  });
});

describe('what set-ups say', () => {
  it('readings that name none share one for each gauge, sweeps apart from walls', () => {
    let job = typed(readWith('indicator'), '12', '+3');
    job = addGauge(job, 'wall-caliper');
    const wall = { face: 'A' as const, depth: inch('0.5'), clock: '3', gauge: 'g3' };
    job = addReading(job, ...IDS, { ...wall, value: inch('0.75') });
    const { readings, setups } = facts(job);
    expect(readings.slice(-2).map(({ instrument, setup }) => [instrument, setup])).toEqual([
      ['sweep', 0],
      ['wall', 1],
    ]);
    expect(setups.map(({ sign }) => sign)).toEqual([1, -1]);
  });

  it('the needle turned about, the stylus set anew and the lean that was stated count', () => {
    let job = withSetup(typed(readWith('indicator'), '12', '+3'), ...IDS);
    job = setGauge(job, 'g2', { needle: 'smaller' });
    job = setSetup(job, ...IDS, 'u1', { resetEachDepth: true, lean: inch('0.001') });
    expect(facts(job).setups[0]).toMatchObject({ sign: -1, resetEachDepth: true, lean: 0.0254 });
  });

  it('a boss of which nothing is said is out of round by 0.03 mm (1 sd); not known, much more', () => {
    // 0.03 mm and 0.25 mm: judgement, no published source.
    const usual = typed(readWith('wall-caliper'), '12', '0.75');
    const own = readingSd(usual.gauges[1]!).mm;
    const sd = (job: Job) => facts(job).readings.at(-1)!.sd;
    expect(sd(usual)).toBeCloseTo(Math.hypot(own, 0.03), 12);
    const named = withSetup(usual, ...IDS);
    const unknown = setSetup(named, ...IDS, 'u1', { notKnown: true });
    expect(sd(unknown)).toBeCloseTo(Math.hypot(own, 0.25), 12);
    expect(facts(unknown).setups[0]!.offset).toBeGreaterThan(facts(named).setups[0]!.offset);
    const stated = setSetup(unknown, ...IDS, 'u1', { roundness: inch('0.0005') });
    expect(sd(stated)).toBeCloseTo(Math.hypot(own, 0.0127), 12);
  });

  it('a boss outside that is known is the likely value of the zero', () => {
    const job = setDimension(
      typed(readWith('wall-caliper'), '12', '0.75'),
      'f1',
      'bossOutside',
      inch('4'),
    );
    expect(facts(job).setups[0]!.zero).toBeCloseTo(2 * 25.4, 12);
  });
});

describe('a reading’s standard deviation', () => {
  it('is the repeatability and the step: a step q is q / sqrt(12), as JCGM 100:2008, 4.3.7 has it', () => {
    const job = setGauge(smallJob(), 'g1', {
      repeatability: { text: '0.003', unit: 'mm' },
      resolution: { text: '0.01', unit: 'mm' },
    });
    // 0.01 / sqrt(12) = 0.0028868; with 0.003: 0.0041633, worked by hand.
    expect(readingSd(job.gauges[0]!).mm).toBeCloseTo(0.0041633, 7);
    expect(facts(job).readings[0]!.sd).toBeCloseTo(0.0041633, 7);
  });

  it('is its own where it states one', () => {
    const gauge = smallJob().gauges[0]!;
    expect(readingSd(gauge, { sd: { text: '0.02', unit: 'mm' } })).toEqual({
      mm: 0.02,
      stated: true,
    });
  });
});

describe('a give-or-take', () => {
  it('is said as two standard deviations and stored as one', () => {
    expect(halved(inch('0.0015'), 'in')).toEqual(inch('0.00075'));
    expect(doubled(inch('0.00075'), 'in')).toEqual(inch('0.0015'));
    expect(halved({ text: '1/16', unit: 'in' }, 'in')).toEqual(inch('0.03125'));
    expect(giveOf(0.03, 'mm')).toEqual({ text: '0.06', unit: 'mm' });
    // 2 x 0.02 mm is 0.00157 in.
    expect(giveOf(0.02, 'in')).toEqual(inch('0.0016'));
  });

  it('that is no length stays as it was typed', () => {
    expect(halved(inch('about nothing'), 'in')).toEqual(inch('about nothing'));
  });
});
