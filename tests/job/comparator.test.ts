/** Readings typed as what a comparator's needle shows. Figures worked by hand; that dials differ in sense is common knowledge of the trade. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import { isComparator, readGauge, zeroMoved } from '../../src/job/comparator.ts';
import { addGauge, setCell, setGauge, setPlanGauge, setZeroAfter } from '../../src/job/edits.ts';
import type { Gauge, Unit } from '../../src/job/schema.ts';
import { readingTable } from '../../src/job/table.ts';
import { smallJob } from './jobs.ts';

const zeroed = (text: string, unit: Unit, needle?: Gauge['needle']): Gauge => ({
  id: 'g',
  kind: 'two-point',
  type: 'dial-bore',
  name: 'Dial bore gauge',
  zeroedAt: { text, unit },
  ...(needle === undefined ? {} : { needle }),
});
const mm = (gauge: Gauge, text: string, unit: Unit) => {
  const read = readGauge({ text, unit }, gauge, 70);
  return read.ok ? read.mm : Number.NaN;
};

describe('what a needle’s figure means', () => {
  const inch = zeroed('2.5000', 'in');
  const about = zeroed('2.5000', 'in', 'smaller');
  const metric = zeroed('25', 'mm', 'smaller');
  it.each([
    [inch, '+3', 'in', 2.503],
    [inch, '3', 'in', 2.503],
    [inch, '-1.5', 'in', 2.4985],
    [inch, '−1.5', 'in', 2.4985],
    [inch, '+0.0012', 'in', 2.5012],
    [inch, '0', 'in', 2.5],
    [inch, '2.5', 'in', 2.5025],
    [inch, '4', 'thou', 2.504],
    [about, '+3', 'in', 2.497],
    [about, '3', 'in', 2.497],
    [about, '-2', 'thou', 2.502],
    [about, '2.5031', 'in', 2.5031],
    [metric, '-0.02', 'mm', 25.02 / 25.4],
    [metric, '0.02', 'mm', 24.98 / 25.4],
    [metric, '25.02', 'mm', 25.02 / 25.4],
  ] as const)('%#: %s', (gauge, text, unit, inches) => {
    expect(mm(gauge, text, unit)).toBeCloseTo(25.4 * inches, 9);
  });

  it('a gauge that was not zeroed on a size counts over the new size, as before', () => {
    const { zeroedAt: _, ...plain } = inch;
    expect(isComparator(plain)).toBe(false);
    expect(mm(plain, '+3', 'thou')).toBeCloseTo(70 + 3 * 0.0254, 9);
  });

  it('a swept needle is no comparator, whatever it states', () => {
    expect(isComparator({ ...inch, kind: 'sweep' })).toBe(false);
  });

  it('a size that cannot be read is asked for', () => {
    expect(readGauge({ text: '+3', unit: 'in' }, zeroed('ring', 'in'), 70)).toMatchObject({
      ok: false,
      why: expect.stringContaining('give that size'),
    });
  });
});

describe('a comparator in a job', () => {
  const started = () => {
    const job = setPlanGauge(addGauge(smallJob(), 'dial-bore'), 'f1', 's1', 'g2');
    return setGauge(job, 'g2', { zeroedAt: { text: '2.5000', unit: 'in' }, needle: 'smaller' });
  };

  it('the table keeps what was typed, and echoes the size', () => {
    const job = setCell(started(), 'f1', 's1', { depth: 1, clock: '4', values: '-3' });
    const feature = job.features[0]!;
    const shown = readingTable(feature, feature.surveys[0]!, job).rows[1]!.cells.flatMap(
      (cell) => cell.readings,
    );
    expect(shown.find(({ text }) => text === '-3')).toMatchObject({ echo: '2.5030 in', ok: true });
  });

  it('its zero at the end: 0.2 thou is within what it repeats to, 0.5 is not', () => {
    // Typical: 0.004 mm and a step of 0.0025 mm, 0.0041 mm = 0.16 thou (1 sd).
    const notes = (shown: string) => {
      const job = setZeroAfter(started(), 'f1', 's1', 'g2', { text: shown, unit: 'thou' });
      return evaluate(job)
        .bores[0]!.surveys[0]!.notes.map(({ text }) => text)
        .join('\n');
    };
    expect(notes('0.1')).not.toContain('The zero of');
    expect(notes('-0.5')).toContain('The zero of “Dial bore gauge” moved by 0.0005 in across');
  });

  it('a needle turned about that shows more at the end makes holes seem smaller', () => {
    const gauge = started().gauges[1]!;
    expect(zeroMoved(gauge, { text: '+0.5', unit: 'thou' })).toBeCloseTo(-0.0127, 9);
    expect(zeroMoved(gauge, { text: '0', unit: 'thou' })).toBeCloseTo(0, 12);
  });
});
