import { describe, expect, it } from 'vitest';
import * as edit from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { smallJob } from './jobs.ts';

const survey = (job: Job) => job.features[0]!.surveys[0]!;
const values = (job: Job) => survey(job).readings.map((one) => one.value.text);
const why = (result: edit.Tried) => (result.ok ? '' : result.why);

describe('a new job', () => {
  it('needs gauge, length and bushing only, and offers the places worth measuring', () => {
    const job = edit.newJob({
      units: 'in',
      gauge: 'telescoping',
      length: '3',
      bushingOutside: '2.5',
    });
    expect(survey(job).plan.clocks).toEqual(['12', '1', '2', '3', '4', '5']);
    // no longer than 1.5 diameters: three depths, 0.15 in from each end
    expect(survey(job).plan.depths.map((one) => one.text)).toEqual(['0.15', '1.5', '2.85']);
    expect(job.features[0]!.bushings[0]!.outside).toEqual([{ text: '2.5', unit: 'in' }]);
    expect(job.features[0]!.wanted).toEqual({});
  });

  it('of a long bore offers five depths; of an unknown length, none', () => {
    const depths = (length: string) =>
      survey(edit.newJob({ units: 'mm', gauge: 'dial-bore', length, bushingOutside: '40' })).plan
        .depths;
    expect(depths('100').map((one) => one.text)).toEqual(['4', '27', '50', '73', '96']);
    expect(depths('60').map((one) => one.text)).toEqual(['4', '30', '56']);
    expect(depths('10').map((one) => one.text)).toEqual(['5']);
    expect(depths('')).toEqual([]);
  });

  it('is the same job each time', () => {
    expect(smallJob()).toEqual(smallJob());
  });
});

describe('typing into a cell', () => {
  it('adds, changes and removes readings, and shares everything else', () => {
    const job = smallJob();
    const next = edit.setCell(job, 'f1', 's1', { depth: 0, clock: 1, values: '2.502; 2.503' });
    expect(values(next)).toEqual(['2.5030', '2.5010', '2.5005', '2.502', '2.503']);
    expect(survey(next).readings.map((one) => one.id)).toEqual(['r1', 'r2', 'r3', 'r4', 'r5']);
    expect(survey(next).readings[0]).toBe(survey(job).readings[0]);
    expect(next.gauges).toBe(job.gauges);
    expect(survey(next).plan).toBe(survey(job).plan);
    const emptied = edit.setCell(next, 'f1', 's1', { depth: 0, clock: 1, values: ' ' });
    expect(values(emptied)).toEqual(values(job));
  });

  it('that holds the same already changes nothing', () => {
    const job = smallJob();
    expect(edit.setCell(job, 'f1', 's1', { depth: 0, clock: 0, values: ' 2.5030 ' })).toBe(job);
    expect(edit.setCell(job, 'f1', 's1', { depth: 9, clock: 0, values: '1' })).toBe(job);
    expect(edit.setCell(job, 'none', 's1', { depth: 0, clock: 0, values: '1' })).toBe(job);
  });

  it('keeps the readings whose value stays, with their notes and left-out marks', () => {
    let job = edit.setCell(smallJob(), 'f1', 's1', {
      depth: 0,
      clock: 0,
      values: '2.5030; 2.51; 2.504',
    });
    job = edit.setLeftOut(job, 'f1', 's1', 'r4', true);
    const next = edit.setCell(job, 'f1', 's1', { depth: 0, clock: 0, values: '2.51; 2.504' });
    expect(survey(next).readings.find((one) => one.id === 'r4')).toMatchObject({ leftOut: true });
    expect(values(next)).toEqual(['2.5010', '2.5005', '2.51', '2.504']);
  });

  it('anew makes the reading count again', () => {
    const job = edit.setLeftOut(smallJob(), 'f1', 's1', 'r1', true);
    const next = edit.setCell(job, 'f1', 's1', { depth: 0, clock: 0, values: '2.5031' });
    expect(survey(next).readings[0]).not.toHaveProperty('leftOut');
    expect(survey(next).readings[0]).toMatchObject({ id: 'r1', value: { text: '2.5031' } });
  });

  it('keeps what cannot be understood as typed', () => {
    const next = edit.setCell(smallJob(), 'f1', 's1', { depth: 0, clock: 2, values: '2.5o3' });
    expect(values(next).at(-1)).toBe('2.5o3');
  });

  it('at a place that is not in the table makes the place', () => {
    const next = edit.setCell(smallJob(), 'f1', 's1', {
      depth: '2',
      clock: '1:30',
      values: '+3',
      unit: 'thou',
    });
    expect(survey(next).readings.at(-1)).toEqual({
      id: 'r4',
      face: 'A',
      depth: { text: '2', unit: 'in' },
      clock: '1:30',
      gauge: 'g1',
      value: { text: '+3', unit: 'thou' },
    });
  });

  it('measured from the other face before joins the place from this face', () => {
    let job = edit.setPlanFace(smallJob(), 'f1', 's1', 'B');
    job = edit.setCell(job, 'f1', 's1', { depth: '0.5', clock: '2', values: '2.504' });
    job = edit.setPlanFace(job, 'f1', 's1', 'A');
    // 0.5 from B is 2.5 from A; 2 seen from B is 10 seen from A, so column 4–10
    job = edit.setCell(job, 'f1', 's1', { depth: 2, clock: 4, values: '2.504; 2.505' });
    const [before, added] = survey(job).readings.slice(-2);
    expect(before).toMatchObject({ face: 'B', clock: '2', value: { text: '2.504' } });
    expect(added).toMatchObject({ face: 'A', value: { text: '2.505' } });
    expect(added!.depth).toEqual({ text: '63.5', unit: 'mm' });
    expect(added!.clock).toBe('4');
  });
});

describe('rows and columns', () => {
  it('are added once, and removed only when empty', () => {
    const job = smallJob();
    const added = edit.addDepth(job, 'f1', 's1', { text: '2', unit: 'in' });
    expect(added.ok && survey(added.job).plan.depths).toHaveLength(4);
    expect(why(edit.addDepth(job, 'f1', 's1', { text: '6.35 mm', unit: 'in' }))).toContain(
      'already',
    );
    expect(why(edit.addDepth(job, 'f1', 's1', { text: '-1', unit: 'in' }))).toContain('below zero');
    expect(why(edit.addClock(job, 'f1', 's1', '7'))).toContain('already');
    expect(why(edit.addClock(job, 'f1', 's1', '25'))).toContain('hours go from 1 to 12');
    expect(why(edit.removeDepth(job, 'f1', 's1', 0))).toContain('holds readings');
    expect(why(edit.removeClock(job, 'f1', 's1', 0))).toContain('holds readings');
    const removed = edit.removeClock(job, 'f1', 's1', 1);
    expect(removed.ok && survey(removed.job).plan.clocks).toEqual(['12', '2', '3', '4', '5']);
    const emptied = edit.setCell(job, 'f1', 's1', { depth: 1, clock: 0, values: '' });
    const without = edit.removeDepth(emptied, 'f1', 's1', 1);
    expect(without.ok && survey(without.job).plan.depths.map((one) => one.text)).toEqual([
      '0.25',
      '2.75',
    ]);
  });
});

describe('surveys', () => {
  it('follow each other with the same places, counted passes and ids of their own', () => {
    let job = edit.setWornSide(smallJob(), 'f1', 's1', '6');
    for (const stage of ['after-squeezing', 'pass', 'pass', 'fitted'] as const) {
      job = edit.addSurvey(job, 'f1', stage);
    }
    const { surveys } = job.features[0]!;
    expect(surveys.map((one) => one.name)).toEqual([
      'As found',
      'After squeezing',
      'Pass 1',
      'Pass 2',
      'Fitted',
    ]);
    expect(surveys.map((one) => one.id)).toEqual(['s1', 's2', 's3', 's4', 's5']);
    // A bushing that was just pressed in is worn on no side.
    expect(surveys[4]!.wornSide).toBeUndefined();
    expect(surveys[3]).toMatchObject({ wornSide: '6', readings: [], plan: surveys[0]!.plan });
    const fewer = edit.removeSurvey(job, 'f1', 's3');
    expect(fewer.features[0]!.surveys.map((one) => one.id)).toEqual(['s1', 's2', 's4', 's5']);
  });

  it('of a new bore start with the places worth measuring', () => {
    const added = edit.addFeature(smallJob(), 'bore');
    if (!added.ok) throw new Error(added.why);
    let job = edit.setDimension(added.job, 'f2', 'length', { text: '60', unit: 'mm' });
    job = edit.addSurvey(job, 'f2', 'as-found');
    expect(job.features[1]!.surveys[0]!.plan.clocks).toHaveLength(6);
    expect(job.features[1]!.surveys[0]!.plan.depths).toHaveLength(3);
  });
});

describe('parts of a job', () => {
  it('are refused or kept with a reason where something stands on them', () => {
    const job = edit.addGauge(smallJob(), 'caliper');
    expect(why(edit.removeGauge(job, 'g1'))).toContain('is used in survey “As found”');
    expect(edit.removeGauge(job, 'g2')).toMatchObject({ ok: true });
    expect(why(edit.removeGauge(smallJob(), 'g1'))).toContain('at least one gauge');
    expect(why(edit.removeFeature(job, 'f1'))).toContain('at least one bore');
    const two = edit.addBushing(job, 'f1', 'B');
    expect(why(edit.addBushing(two.ok ? two.job : job, 'f1'))).toContain('2 bushings already');
  });

  it('go away when emptied, so that the default stands again', () => {
    let job = edit.setWanted(smallJob(), 'f1', 'pressFit', { text: '0.003', unit: 'in' });
    expect(job.features[0]!.wanted).toEqual({ pressFit: { text: '0.003', unit: 'in' } });
    job = edit.setWanted(job, 'f1', 'pressFit', { text: ' ', unit: 'in' });
    expect(job.features[0]!.wanted).toEqual({});
    job = edit.setDimension(job, 'f1', 'bossOutside', { text: '4', unit: 'in' });
    job = edit.setDimension(job, 'f1', 'bossOutside', undefined);
    expect(job.features[0]).not.toHaveProperty('boss');
  });

  it('change their gauge type with kind and usual name, and keep a name of one’s own', () => {
    let job = edit.setGauge(smallJob(), 'g1', { type: 'centred-pin' });
    expect(job.gauges[0]).toMatchObject({
      kind: 'radius',
      name: expect.stringContaining('Radius'),
    });
    job = edit.setGauge(job, 'g1', { name: 'Grandfather’s', reach: { text: '3', unit: 'in' } });
    job = edit.setGauge(job, 'g1', { type: 'dial-bore' });
    expect(job.gauges[0]).toMatchObject({ kind: 'two-point', name: 'Grandfather’s' });
    job = edit.setGauge(job, 'g1', { reach: undefined });
    expect(job.gauges[0]).not.toHaveProperty('reach');
  });
});
