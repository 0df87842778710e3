/** Where an empty survey is worth reading, and the table's room for a reading that is worth taking. */
import { describe, expect, it } from 'vitest';
import { layPlan, planOf } from '../../src/job/layPlan.ts';
import { offerPlace, placeInTable } from '../../src/job/offerPlace.ts';
import { readingPlan } from '../../src/job/plan.ts';
import { readingTable } from '../../src/job/table.ts';
import { jobOf } from '../fixtures/bores.ts';

const texts = (depths: readonly { text: string }[]) => depths.map(({ text }) => Number(text));

describe('a reading plan', () => {
  it('is six pairs by five depths, the second and fourth close to the faces', () => {
    const plan = readingPlan('two-point', { length: 100, diameter: 80, reach: 150 }, 'mm');
    expect(plan.clocks).toEqual(['12', '1', '2', '3', '4', '5']);
    expect(texts(plan.depths)).toEqual([4, 20, 50, 80, 96]);
    expect(plan.short).toBe(false);
  });

  it('is three depths in a short bore, none where the length is not known', () => {
    const at = (length: number) =>
      readingPlan('sweep', { length, diameter: 60, reach: 150 }, 'mm').depths;
    expect(texts(at(30))).toEqual([4, 15, 26]);
    expect(at(Number.NaN)).toEqual([]);
  });

  it('ends where the gauge does, and says so', () => {
    const plan = readingPlan('two-point', { length: 101.6, diameter: 60, reach: 16 }, 'in');
    expect(texts(plan.depths)).toEqual([0.15]);
    expect(plan.short).toBe(true);
  });

  it('becomes the table, readings kept', () => {
    const taken = [{ theta: 0, z: 7, value: 60, gauge: 'two-point' as const }];
    const job = jobOf({ taken, length: 100, nominal: 60 });
    const bore = job.features[0]!;
    const laid = layPlan(job, 'b', 's', planOf(job, bore, bore.surveys[0]!));
    const survey = laid.features[0]!.surveys[0]!;
    expect(survey.readings).toBe(bore.surveys[0]!.readings);
    const table = readingTable(laid.features[0]!, survey, laid);
    expect(table.rows.map(({ z }) => z)).toEqual([4, 7, 20, 50, 80, 96]);
    expect(table.clocks).toHaveLength(6);
  });
});

describe('room for a reading worth taking', () => {
  it.each(['A', 'B'] as const)(
    'adds what the table lacks, seen from face %s, and once only',
    (face) => {
      const taken = [{ theta: 0, z: 40, value: 60, gauge: 'two-point' as const }];
      const job = jobOf({ taken, length: 100, nominal: 60, face });
      const place = { gauge: 'three-leg', theta: (5 * Math.PI) / 12, z: 71.26 };
      const tried = offerPlace(job, 'b', 's', place);
      if (!tried.ok) throw new Error(tried.why);
      const [bore] = tried.job.features;
      const [survey] = bore!.surveys;
      expect(survey!.plan.gauge).toBe('three-leg');
      const table = readingTable(bore!, survey!, tried.job);
      const cell = placeInTable(table, place);
      expect(Math.abs(table.rows[cell!.row]!.z - place.z)).toBeLessThanOrEqual(0.05 + 1e-9);
      const turn = (table.clocks[cell!.column]!.theta - place.theta) / ((2 * Math.PI) / 3);
      expect(Math.abs(turn - Math.round(turn))).toBeLessThan(1e-6);
      const again = offerPlace(tried.job, 'b', 's', place);
      expect(again.ok && again.job.features[0]!.surveys[0]!.plan).toEqual(survey!.plan);
    },
  );

  it('is refused from face B while the length is not known', () => {
    const taken = [{ theta: 0, z: 0, value: 60, gauge: 'two-point' as const }];
    const job = jobOf({ taken, nominal: 60, face: 'B' });
    expect(offerPlace(job, 'b', 's', { gauge: '', theta: 0, z: 30 }).ok).toBe(false);
  });
});
