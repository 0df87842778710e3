import { describe, expect, it } from 'vitest';
import { defaultClearanceMm, defaultPressFit, defaultPressFitMm } from '../../src/job/defaults.ts';
import { GAUGE_KINDS, gaugeFigures, kindOfGauge } from '../../src/job/gauges.ts';
import { defaultClocks, defaultDepths, stageOfName } from '../../src/job/plan.ts';
import type { Gauge } from '../../src/job/schema.ts';

describe('defaults', () => {
  it('are a press fit of 0.002 in or 0.05 mm (common practice)', () => {
    expect(defaultPressFit('in')).toEqual({ text: '0.002', unit: 'in' });
    expect(defaultPressFitMm('in')).toBeCloseTo(0.0508, 12);
    expect(defaultPressFitMm('mm')).toBe(0.05);
  });

  // 0.002 in per inch of pin and 0.002 in more, at least 0.004 in, by hand
  it.each([
    [0.5, 0.004],
    [1, 0.004],
    [1.5, 0.005],
    [2, 0.006],
    [4, 0.01],
  ])('give a pin of %f in %f in to run', (pin, clearance) => {
    expect(defaultClearanceMm(pin * 25.4)).toBeCloseTo(clearance * 25.4, 12);
  });

  it('know no clearance for a pin that is not known', () => {
    expect(defaultClearanceMm(Number.NaN)).toBeNaN();
    expect(defaultClearanceMm(0)).toBeNaN();
  });
});

describe('gauges', () => {
  const gauge: Gauge = { id: 'g1', kind: 'two-point', name: 'mine' };

  it('have typical figures until they have their own', () => {
    expect(gaugeFigures(gauge).repeatability).toEqual({ mm: 0.01, stated: false });
    expect(gaugeFigures({ ...gauge, type: 'caliper' })).toEqual({
      resolution: { mm: 0.01, stated: false },
      repeatability: { mm: 0.025, stated: false },
      reach: { mm: 16, stated: false },
    });
    const own = gaugeFigures({ ...gauge, repeatability: { text: '0.3', unit: 'thou' } });
    expect(own.repeatability).toEqual({ mm: expect.closeTo(0.00762, 12), stated: true });
    expect(own.reach.stated).toBe(false);
  });

  it('ignore figures that are none, and a type of another kind', () => {
    for (const text of ['0', '-1', 'fine', '']) {
      expect(gaugeFigures({ ...gauge, reach: { text, unit: 'mm' } }).reach.stated).toBe(false);
    }
    expect(kindOfGauge({ ...gauge, type: 'indicator' }).type).toBe('telescoping');
  });

  it('are one standard deviation of about half the trust that mechanics report', () => {
    // give-or-take in inches as reported in the trade, from and to
    const trust: Record<string, [number, number]> = {
      caliper: [0.002, 0.003],
      telescoping: [0.0005, 0.001],
      stick: [0.001, 0.001],
      'dial-bore': [0.0002, 0.0005],
      'three-leg': [0.0002, 0.0005],
    };
    for (const [type, [least, most]] of Object.entries(trust)) {
      const kind = GAUGE_KINDS.find((one) => one.type === type)!;
      expect(2 * kind.repeatability).toBeGreaterThanOrEqual(0.9 * least * 25.4);
      expect(2 * kind.repeatability).toBeLessThanOrEqual(1.1 * most * 25.4);
    }
    expect(GAUGE_KINDS.every((one) => one.resolution > 0 && one.reach > 0)).toBe(true);
  });
});

describe('places worth measuring', () => {
  it('are six pairs across, every hour on one side, and a third of a turn for three legs', () => {
    expect(defaultClocks('two-point')).toHaveLength(6);
    expect(defaultClocks('sweep')).toHaveLength(12);
    expect(defaultClocks('wall')).toHaveLength(12);
    expect(defaultClocks('three-leg')).toEqual(['12', '1', '2', '3']);
  });

  it('lie inside the bore, past the chamfer, and climb', () => {
    for (let length = 1; length <= 400; length += 7) {
      for (const units of ['in', 'mm'] as const) {
        const depths = defaultDepths(length, 60, units).map(
          (one) => Number(one.text) * (units === 'in' ? 25.4 : 1),
        );
        expect(depths.length).toBeGreaterThan(0);
        expect(depths[0]).toBeGreaterThan(0);
        expect(depths.at(-1)).toBeLessThan(length);
        expect(depths).toEqual([...depths].sort((a, b) => a - b));
        expect(new Set(depths).size).toBe(depths.length);
        if (length > 90) expect(depths).toHaveLength(5);
      }
    }
    expect(defaultDepths(Number.NaN, 60, 'mm')).toEqual([]);
    expect(defaultDepths(0, 60, 'mm')).toEqual([]);
  });

  it('belong to the stage that a survey’s name speaks of', () => {
    expect(stageOfName('As found', true)).toBe('as-found');
    expect(stageOfName('after squeezing', false)).toBe('after-squeezing');
    expect(stageOfName('Pass 2', false)).toBe('pass');
    expect(stageOfName('welded up', false)).toBe('after-build-up');
    expect(stageOfName('Fitted', false)).toBe('fitted');
    expect(stageOfName('Tuesday', true)).toBe('as-found');
    expect(stageOfName('Wednesday', false)).toBe('pass');
  });
});
