/** How a reading might have been meant, spelt as it was typed. The steps are those of inch and metric micrometers and dials. */
import { describe, expect, it } from 'vitest';
import type { GaugeType, Instrument, Job, Reading, Unit } from '../../src/job/schema.ts';
import { pastReach, retypings } from '../../src/job/slips.ts';
import { jobOf } from '../fixtures/bores.ts';

interface Typing {
  readonly text: string;
  readonly unit: Unit;
  readonly units?: 'in' | 'mm';
  readonly type?: GaugeType;
  readonly kind?: Instrument;
}

function jobWith({ text, unit, units = 'in', type, kind = 'two-point' }: Typing): Job {
  const taken = [{ theta: 0, z: 20, value: 63.5, gauge: 'two-point' as const }];
  const job = jobOf({ taken, length: 50, nominal: 63.5, units });
  const gauges = [
    { id: 'two-point', kind, name: 'gauge', ...(type === undefined ? {} : { type }) },
  ];
  const [bore] = job.features;
  const [survey] = bore!.surveys;
  const readings = [{ ...survey!.readings[0]!, value: { text, unit } }];
  return { ...job, gauges, features: [{ ...bore!, surveys: [{ ...survey!, readings }] }] };
}

const readingOf = (job: Job): Reading => job.features[0]!.surveys[0]!.readings[0]!;

function meant(typing: Typing) {
  const job = jobWith(typing);
  return retypings(job, job.features[0]!, readingOf(job)).map(({ slip, text, mm }) => ({
    slip,
    text,
    mm: Number(mm.toFixed(4)),
  }));
}

const texts = (typing: Typing, slip: RegExp) =>
  meant(typing).flatMap((one) => (slip.test(one.slip) ? [one.text] : []));

describe('one turn', () => {
  it('is 0.025 in of a micrometer and 0.100 in of a dial, with the decimals that were typed', () => {
    const typing: Typing = { text: '2.5031', unit: 'in' };
    expect(texts(typing, /micrometer turn, 0.025 in/)).toEqual(['2.4781', '2.5281']);
    expect(texts(typing, /dial turn, 0.100 in/)).toEqual(['2.4031', '2.6031']);
  });

  it('is 0.50 mm and 1.00 mm in millimetres, a comma staying a comma', () => {
    const typing: Typing = { text: '63,58', unit: 'mm', units: 'mm' };
    expect(texts(typing, /micrometer turn, 0.50 mm/)).toEqual(['63,08', '64,08']);
    expect(texts(typing, /dial turn, 1.00 mm/)).toEqual(['62,58', '64,58']);
  });

  it('is 25 and 100 of thou over or under, the sign kept', () => {
    const typing: Typing = { text: '+3', unit: 'in' };
    expect(texts(typing, /micrometer turn/)).toEqual(['-22', '+28']);
    expect(meant(typing).find(({ text }) => text === '+28')?.mm).toBe(63.5 + 0.7112);
  });

  it('of small signed inches stays in inches', () => {
    const [under, over] = meant({ text: '+0.004', unit: 'in' });
    expect(under).toMatchObject({ text: '-0.021 in', mm: Number((63.5 - 0.5334).toFixed(4)) });
    expect(over).toMatchObject({ text: '+0.029 in', mm: Number((63.5 + 0.7366).toFixed(4)) });
  });

  it('keeps a unit that was typed, in a job of the other one', () => {
    expect(texts({ text: '63.58mm', unit: 'in' }, /micrometer/)).toEqual(['63.08mm', '64.08mm']);
    expect(texts({ text: '63.58', unit: 'mm' }, /micrometer/)).toEqual(['63.08 mm', '64.08 mm']);
  });
});

describe('other slips of typing', () => {
  it('two neighbouring digits, the point staying where it is; equal ones are no slip', () => {
    expect(texts({ text: '65.31', unit: 'mm', units: 'mm' }, /swapped/)).toEqual([
      '56.31',
      '63.51',
      '65.13',
    ]);
    expect(texts({ text: '65.55', unit: 'mm', units: 'mm' }, /swapped/)).toEqual(['56.55']);
  });

  it('inches among millimetres and the reverse', () => {
    expect(meant({ text: '2.562', unit: 'mm', units: 'mm' })).toContainEqual({
      slip: 'inches typed as millimetres',
      text: '2.562 in',
      mm: Number((2.562 * 25.4).toFixed(4)),
    });
    expect(meant({ text: '65.1', unit: 'in' })).toContainEqual({
      slip: 'millimetres typed as inches',
      text: '65.1 mm',
      mm: 65.1,
    });
  });

  it('thou are meant by signed figures only', () => {
    expect(texts({ text: '+3', unit: 'mm', units: 'mm' }, /^thou typed/)).toEqual(['+3 thou']);
    expect(texts({ text: '3', unit: 'mm', units: 'mm' }, /^thou typed/)).toEqual([]);
  });

  it('the radius for the diameter, and per side for across', () => {
    expect(texts({ text: '31.79', unit: 'mm', units: 'mm' }, /^the radius/)).toEqual(['63.58']);
    expect(texts({ text: '+0.04', unit: 'mm', units: 'mm' }, /per side/)).toEqual(['+0.08']);
    const radius: Typing = { text: '63.5', unit: 'mm', units: 'mm', kind: 'radius' };
    expect(texts(radius, /^the diameter typed/)).toEqual(['31.75']);
  });

  it('nothing is made of fractions and of what is no number', () => {
    expect(meant({ text: '2 1/2', unit: 'in' })).toEqual([]);
    expect(meant({ text: 'smooth', unit: 'in' })).toEqual([]);
  });
});

describe('reach', () => {
  const reach = (typing: Typing, change: Partial<Job['gauges'][number]> = {}) => {
    const job = jobWith(typing);
    const gauges = [{ ...job.gauges[0]!, ...change }];
    return pastReach({ ...job, gauges }, readingOf(job));
  };
  const typing: Typing = { text: '63.5', unit: 'mm', units: 'mm', type: 'caliper' };

  it('of a kind: 20 mm deep is a quarter more than 16 mm and passes; stated, half a millimetre more does not', () => {
    expect(reach(typing)).toBeNull();
    expect(reach(typing, { reach: { text: '19', unit: 'mm' } })).toBe(
      'deeper than its gauge reaches: 19.0 mm from the face',
    );
    expect(reach(typing, { reach: { text: '19.6', unit: 'mm' } })).toBeNull();
  });

  it('of a gauge with a long shaft: deeper than its kind usually gets is no doubt, unless its reach is stated', () => {
    const deep = (change: Partial<Job['gauges'][number]>) => {
      const job = jobWith({ ...typing, type: 'telescoping' });
      const gauges = [{ ...job.gauges[0]!, ...change }];
      const depth = { text: '200', unit: 'mm' } as const;
      return pastReach({ ...job, gauges }, { ...readingOf(job), depth });
    };
    expect(deep({})).toBeNull();
    expect(deep({ reach: { text: '120', unit: 'mm' } })).toMatch(/^deeper than its gauge reaches/);
  });
});
