/** Figures of a way of mending and readings of a rim face: stated, usual again, and what they come to. */
import { describe, expect, it } from 'vitest';
import { addFaceReading, setFaceReading, setMending } from '../../src/job/edits.ts';
import { mendingFacts, numberOf } from '../../src/job/mendingFacts.ts';
import type { Job } from '../../src/job/schema.ts';
import type { Shop } from '../../src/job/shop.ts';
import { smallJob } from './jobs.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });
const facts = (job: Job, shop: Shop | null = null) => mendingFacts(job, job.features[0]!, shop);
const face = (clock: string, below: string) => ({ face: 'B' as const, clock, below: mm(below) });

describe('figures of a way', () => {
  it('stand where stated, and are the usual ones again once taken back', () => {
    const job = smallJob();
    // Common practice: 1/8 in of weld above the finished size, the largest place 0.002 in under the target.
    expect(facts(job).weld.allowance).toEqual({ mm: 3.175, from: 'default' });
    expect(facts(job).squeeze.under.mm).toBeCloseTo(0.0508, 12);
    const stated = setMending(job, 'f1', 'shim', 'gap', mm('1.5'));
    expect(facts(stated).shim.gap).toEqual({ mm: 1.5, from: 'typed' });
    const back = setMending(stated, 'f1', 'shim', 'gap', undefined);
    expect(back).toEqual(job);
    expect(setMending(job, 'f1', 'shim', 'gap', undefined)).toBe(job);
  });

  it('a heat in Fahrenheit counts in Celsius, and one that no steel bears does not count', () => {
    const at = (text: string) =>
      facts(setMending(smallJob(), 'f1', 'squeeze', 'heat', { text, unit: 'F' })).squeeze.heat;
    expect(at('1112').value).toBeCloseTo(600, 9);
    expect(at('9999')).toEqual({ value: 600, from: 'default', refused: '9999 °F' });
  });

  it('a bead of no size or an overlap of all of it is the usual one', () => {
    let job = setMending(smallJob(), 'f1', 'weld', 'beadWidth', mm('0'));
    job = setMending(job, 'f1', 'weld', 'overlap', '100');
    expect(facts(job).weld.beadWidth.from).toBe('default');
    expect(facts(job).weld.overlap).toEqual({ value: 40, from: 'default' });
  });

  it('sheets are those of the shop where it has any, else the usual series', () => {
    expect(facts(smallJob()).stock.from).toBe('series');
    const shop: Shop = {
      format: 'roundhand-shop',
      version: 1,
      tools: [],
      stock: [{ id: 'k1', name: 'Brass sheet', thickness: mm('0.2') }],
      rates: [],
      squeezes: [],
    };
    expect(facts(smallJob(), shop).stock).toEqual({ sheets: [0.2], from: 'shop' });
  });

  it('a plain number is read with a comma or a point, and nothing else', () => {
    expect(['0.42', '0,42', '40 %', ' 235 '].map(numberOf)).toEqual([0.42, 0.42, 40, 235]);
    expect(['', 'much', '-3', '1.2.3'].map((text) => numberOf(text))).toEqual([
      Number.NaN,
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ]);
  });
});

describe('face readings', () => {
  it('are added, changed and taken out; from face B the clock is mirrored', () => {
    const tried = addFaceReading(smallJob(), 'f1', face('3', '0.5'));
    expect(tried.ok).toBe(true);
    const job = tried.ok ? tried.job : smallJob();
    expect(facts(job).rims).toEqual([
      { face: 'B', readings: [{ theta: (3 * Math.PI) / 2, below: 0.5 }], standOut: 0 },
    ]);
    const changed = setFaceReading(job, 'f1', 0, face('3', '0.7'));
    expect(facts(changed).rims[0]!.readings[0]!.below).toBe(0.7);
    expect(setFaceReading(changed, 'f1', 0, null)).toEqual(smallJob());
    expect(setFaceReading(job, 'f1', 5, null)).toBe(job);
  });

  it('are no more than a job holds', () => {
    let job = smallJob();
    for (let i = 0; i < 48; i++) {
      const tried = addFaceReading(job, 'f1', face('3', '0.5'));
      if (tried.ok) job = tried.job;
    }
    expect(addFaceReading(job, 'f1', face('3', '0.5')).ok).toBe(false);
  });
});
