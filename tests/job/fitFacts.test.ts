/** What a job says of pressing and of heat, and what of it cannot be: constructed figures. */
import { describe, expect, it } from 'vitest';
import { newJob } from '../../src/job/edits.ts';
import { heatFacts } from '../../src/job/heatFacts.ts';
import { pressFacts } from '../../src/job/pressFacts.ts';
import type { Decisions } from '../../src/job/schema.ts';

function pressed(fit: NonNullable<Decisions['fit']>) {
  const job = newJob({
    units: 'mm',
    gauge: 'telescoping',
    length: '30',
    bushingOutside: '45',
    depths: ['5'],
  });
  const [feature] = job.features;
  return pressFacts({ ...feature!, decisions: { fit } });
}

describe('friction and roughness', () => {
  it('are taken as typed', () => {
    const { frictionLow, frictionHigh, loss, wrong } = pressed({
      frictionLow: '0.08',
      frictionHigh: '0.2',
      roughnessLoss: { text: '0.004', unit: 'mm' },
    });
    expect([frictionLow.value, frictionHigh.value, loss.mm]).toEqual([0.08, 0.2, 0.004]);
    expect(wrong).toEqual([]);
  });

  it('say what cannot be, and what counts meanwhile', () => {
    const { frictionLow, frictionHigh, loss, wrong } = pressed({
      frictionLow: '-0.1',
      frictionHigh: '5',
      roughnessLoss: { text: '-1', unit: 'mm' },
    });
    expect([frictionLow.value, frictionHigh.value, loss.mm]).toEqual([0.05, 0.15, 0]);
    expect(wrong).toEqual([
      '“-0.1” is no friction, which is above 0 and no more than 1; 0.05 counts until then.',
      '“5” is no friction, which is above 0 and no more than 1; 0.15 counts until then.',
      '“-1” is below 0, which it cannot be; 0 mm counts until then.',
    ]);
  });

  it('say that the least and the greatest are the other way round', () => {
    const { frictionLow, frictionHigh, wrong } = pressed({
      frictionLow: '0.3',
      frictionHigh: '0.1',
    });
    expect([frictionLow.value, frictionHigh.value]).toEqual([0.1, 0.3]);
    expect(wrong).toHaveLength(1);
  });
});

describe('figures of heat', () => {
  it('leave out a limit that is colder than a shop, and a reading without a clock position', () => {
    const { limit, probes, wrong } = heatFacts({
      limit: { text: '-20', unit: 'C' },
      probes: [
        { clock: '25', at: { text: '80', unit: 'C' } },
        { clock: '3', at: { text: '90', unit: 'C' } },
      ],
    });
    expect(limit).toBeNaN();
    expect(probes.map(({ celsius }) => celsius)).toEqual([90]);
    expect(wrong.join(' ')).toMatch(/“-20” as the limit of the boss .*“25” is no clock position/);
  });

  it('take a limit that can be', () => {
    const { limit, wrong } = heatFacts({ limit: { text: '300', unit: 'F' } });
    expect(limit).toBeCloseTo(148.9, 1);
    expect(wrong).toEqual([]);
  });
});
