/** Tools as stated, the shop's, or the usual ones. Figures constructed; units by definition (1 in = 25.4 mm). */
import { describe, expect, it } from 'vitest';
import type { Shop } from '../../src/job/shop.ts';
import { NO_SHOP } from '../../src/job/shopGauges.ts';
import { toolFacts, withRate } from '../../src/job/tools.ts';

const SHOP: Shop = {
  ...NO_SHOP,
  tools: [
    {
      id: 't1',
      name: 'the long stone',
      kind: 'stone',
      radius: { text: '0.5', unit: 'in' },
      width: { text: '40', unit: 'mm' },
    },
  ],
};

describe('the grinding tool', () => {
  it('is a drum two thirds of the bore where nobody has said', () => {
    const inch = toolFacts({}, null, 2 * 25.4, 'in');
    // Two thirds of 2 in is 1.333, the eighth below it 1.25.
    expect(inch).toMatchObject({ kind: 'drum', rigid: true, diameter: { from: 'default' } });
    expect(inch.diameter.mm).toBeCloseTo(1.25 * 25.4, 9);
    expect(inch.bite.mm).toBeCloseTo(0.0762, 9);
    expect(inch.slope.mm).toBeCloseTo(0.02, 9);
    const mm = toolFacts({}, null, 80, 'mm');
    expect([mm.diameter.mm, mm.width.mm, mm.bite.mm, mm.slope.mm]).toEqual([50, 25, 0.08, 0.02]);
  });

  it('takes what is stated before the shop’s figures, and those before the usual', () => {
    const found = toolFacts(
      { tool: 't1', grinding: { width: { text: '1', unit: 'in' } } },
      SHOP,
      60,
      'mm',
    );
    expect(found).toMatchObject({ kind: 'stone', name: 'the long stone' });
    expect(found.diameter).toMatchObject({ mm: 25.4, from: 'shop' });
    expect(found.width).toMatchObject({ mm: 25.4, from: 'typed' });
    expect(found.bite).toMatchObject({ mm: 0.08, from: 'default' });
  });

  it('another kind is another tool, and no figure above 0 is none', () => {
    const found = toolFacts(
      { tool: 't1', grinding: { kind: 'flap-wheel', bite: { text: '0', unit: 'mm' } } },
      SHOP,
      60,
      'mm',
    );
    expect(found).toMatchObject({ kind: 'flap-wheel', rigid: false, name: 'flap wheel' });
    expect(found.bite).toMatchObject({ mm: 0.05, from: 'default' });
  });

  it('a run-out in thou is by the inch, one in mm by the mm, whatever the job’s units', () => {
    const slope = (text: string, unit: 'thou' | 'mm', units: 'in' | 'mm') =>
      toolFacts({ grinding: { slope: { text, unit } } }, null, 60, units).slope.mm;
    expect(slope('10', 'thou', 'in')).toBeCloseTo(0.01, 12);
    expect(slope('0.01', 'mm', 'mm')).toBeCloseTo(0.01, 12);
    expect(slope('10 thou', 'mm', 'mm')).toBeCloseTo(0.01, 12);
  });
});

describe('the rate of a hand', () => {
  it('is the mean of the passes counted, by tool', () => {
    const once = withRate(null, {}, 0.04);
    const twice = withRate(once, {}, 0.06);
    expect(toolFacts({}, twice, 60, 'mm').rate).toEqual({ perPass: 0.05, passes: 2 });
    expect(toolFacts({ grinding: { kind: 'stone' } }, twice, 60, 'mm').rate).toBeNull();
    const own = withRate(SHOP, { tool: 't1' }, 0.03);
    expect(own.rates).toEqual([{ tool: 't1', perPass: { text: '0.0300', unit: 'mm' }, passes: 1 }]);
    expect(toolFacts({ tool: 't1' }, own, 60, 'mm').rate).toEqual({ perPass: 0.03, passes: 1 });
  });
});
