/** Edits of a bore's parts: bushings, keepouts, set-ups, stages. Each changes its own and nothing else. */

import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import * as edit from '../../src/job/edits.ts';
import { boreFacts } from '../../src/job/facts.ts';
import * as feature from '../../src/job/featureEdits.ts';
import { Job } from '../../src/job/schema.ts';
import * as setups from '../../src/job/setupEdits.ts';
import { Shop } from '../../src/job/shop.ts';
import * as surveys from '../../src/job/surveyEdits.ts';
import { smallJob } from './jobs.ts';

const bore = (job: Job) => job.features[0]!;
const survey = (job: Job) => bore(job).surveys[0]!;
const mm = (text: string) => ({ text, unit: 'mm' as const });

function withSetup(): Job {
  const job = smallJob();
  const { id } = survey(job);
  const reading = { ...survey(job).readings[0]!, id: 'swept', setup: 'u1' };
  const setup = { id: 'u1', gauge: job.gauges[0]!.id, name: 'Spindle', face: 'A' as const };
  const changed = { ...survey(job), setups: [setup], readings: [...survey(job).readings, reading] };
  expect(changed.id).toBe(id);
  return { ...job, features: [{ ...bore(job), surveys: [changed] }, ...job.features.slice(1)] };
}

describe('a bushing', () => {
  it('sits no farther than its lead chamfer, from either face, unless a depth is stated', () => {
    // Constructed: 60 mm long, 3 mm of chamfer on the end that goes in first, in a bore of 3 in.
    const { id, bushings } = bore(smallJob());
    const sized = (['length', 'leadChamfer'] as const).reduce(
      (job, key) =>
        feature.setBushing(job, id, bushings[0]!.id, key, mm(key === 'length' ? '60' : '3')),
      smallJob(),
    );
    const seat = (job: Job) => boreFacts(job, bore(job)).seats[0]!;
    expect(seat(sized)).toEqual({ from: 0, to: 57 });
    const turned = seat(feature.setBushingFace(sized, id, bushings[0]!.id, 'B'));
    expect(turned.from).toBeCloseTo(76.2 - 57, 12);
    expect(turned.to).toBeCloseTo(76.2, 12);
    const stated = feature.setBushing(sized, id, bushings[0]!.id, 'to', mm('50'));
    expect(seat(stated)).toEqual({ from: 0, to: 50 });
  });

  it('is set from the other face, and taken out', () => {
    const job = smallJob();
    const [bushing] = bore(job).bushings;
    const turned = feature.setBushingFace(job, bore(job).id, bushing!.id, 'B');
    expect(bore(turned).bushings[0]!.seat.face).toBe('B');
    expect(bore(turned).surveys).toBe(bore(job).surveys);
    const without = feature.removeBushing(turned, bore(job).id, bushing!.id);
    expect(bore(without).bushings).toHaveLength(bore(job).bushings.length - 1);
    expect(v.is(Job, without)).toBe(true);
  });
});

describe('a keepout', () => {
  it('is taken away by its name alone', () => {
    const hole = {
      id: 'k1',
      kind: 'grease-hole' as const,
      face: 'A' as const,
      from: mm('20'),
      to: mm('26'),
    };
    const job = smallJob();
    const holed: Job = { ...job, features: [{ ...bore(job), keepouts: [hole] }] };
    expect(bore(feature.removeKeepout(holed, bore(job).id, 'k2'))).toEqual(bore(holed));
    expect(bore(feature.removeKeepout(holed, bore(job).id, 'k1')).keepouts).toEqual([]);
  });
});

describe('a set-up', () => {
  it('takes a figure, gives it back to the usual one, and keeps its readings', () => {
    const job = withSetup();
    const ids = [bore(job).id, survey(job).id, 'u1'] as const;
    const leaning = setups.setSetup(job, ...ids, { lean: mm('0.01'), resetEachDepth: true });
    expect(survey(leaning).setups[0]).toMatchObject({ lean: mm('0.01'), resetEachDepth: true });
    const usual = setups.setSetup(leaning, ...ids, { lean: undefined, resetEachDepth: false });
    expect(survey(usual).setups[0]).toEqual(survey(job).setups[0]);
    expect(survey(usual).readings).toBe(survey(job).readings);
  });

  it('goes only when it holds no readings, and says so', () => {
    const job = withSetup();
    const held = setups.removeSetup(job, bore(job).id, survey(job).id, 'u1');
    expect(held.ok ? '' : held.why).toContain('Spindle');
    const readings = survey(job).readings.filter((one) => one.setup === undefined);
    const empty: Job = {
      ...job,
      features: [{ ...bore(job), surveys: [{ ...survey(job), readings }] }],
    };
    const gone = setups.removeSetup(empty, bore(job).id, survey(job).id, 'u1');
    expect(gone.ok && survey(gone.job).setups).toEqual([]);
  });
});

describe('a stage', () => {
  it('is said to be another without losing a reading', () => {
    const job = smallJob();
    const squeezed = surveys.setStage(job, bore(job).id, survey(job).id, 'after-squeezing');
    expect(survey(squeezed).stage).toBe('after-squeezing');
    expect(survey(squeezed).readings).toBe(survey(job).readings);
    expect(edit.rename(squeezed, 'x').title).toBe('x');
  });
});

describe('the shop document', () => {
  const shop = {
    format: 'roundhand-shop',
    version: 1,
    gauges: [],
    tools: [{ id: 't1', name: 'Drum', kind: 'drum', radius: mm('12'), bite: mm('0.05') }],
    stock: [{ id: 'k1', name: 'Shim', thickness: { text: '4.5', unit: 'thou' } }],
    rates: [{ tool: 't1', perPass: mm('0.02'), passes: 3 }],
    squeezes: [{ when: '2026-05-02', asked: mm('0.2'), came: mm('0.15'), note: '' }],
  };

  it('holds tools, stock, rates and squeezes as typed, and refuses what is none', () => {
    expect(v.parse(Shop, shop)).toEqual(shop);
    expect(v.is(Shop, { ...shop, version: 2 })).toBe(false);
    expect(v.is(Shop, { ...shop, rates: [{ tool: 't1', perPass: 0.02, passes: 3 }] })).toBe(false);
  });
});
