import { describe, expect, it } from 'vitest';
import {
  addGauge,
  addReading,
  addSetup,
  newJob,
  setCell,
  setDimension,
  setPlanFace,
  setPlanGauge,
  setUnits,
} from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { type ReadingTable, readingTable } from '../../src/job/table.ts';
import { smallJob } from './jobs.ts';

const tableOf = (job: Job): ReadingTable => {
  const feature = job.features[0]!;
  return readingTable(feature, feature.surveys[0]!, job);
};
const texts = (job: Job) => tableOf(job).rows.map((row) => row.cells.map((cell) => cell.text));

describe('the reading table', () => {
  it('lays the plan out by depth and by clock pair, with the readings in their cells', () => {
    const table = tableOf(smallJob());
    expect(table.clocks.map((one) => one.text)).toEqual([
      '12–6',
      '1–7',
      '2–8',
      '3–9',
      '4–10',
      '5–11',
    ]);
    expect(table.rows.map((row) => row.depthText)).toEqual(['0.25', '1.5', '2.75']);
    expect(table.rows.map((row) => row.z)).toEqual([0.25 * 25.4, 1.5 * 25.4, 2.75 * 25.4]);
    expect(table.rows.map((row) => row.cells[0]!.text)).toEqual(['2.5030', '2.5010', '2.5005']);
    expect(table.rows[0]!.cells[0]!.readings).toEqual([
      {
        row: 0,
        id: 'r1',
        text: '2.5030',
        ok: true,
        mm: expect.closeTo(63.5762, 10),
        echo: '2.5030 in',
        why: '',
        leftOut: false,
      },
    ]);
    expect(table.rows[0]!.cells[1]!.text).toBe('');
    expect(table.others).toEqual([]);
  });

  it('puts a diameter read at 6 under 12–6, at 7 under 1–7, at 10:30 in a column of its own', () => {
    let job = smallJob();
    for (const clock of ['6', '7', '10:30']) {
      job = setCell(job, 'f1', 's1', { depth: 0, clock, values: `2.50${clock.length}` });
    }
    const table = tableOf(job);
    expect(table.clocks.map((one) => one.text)).toContain('4:30–10:30');
    expect(table.clocks).toHaveLength(7);
    // sorted by clock: 4:30 between 4 and 5
    expect(table.clocks.map((one) => one.text).indexOf('4:30–10:30')).toBe(5);
    // at 6 the cell of 12–6 was found and typed over
    expect(table.rows[0]!.cells[0]!.text).toBe('2.501');
    expect(table.rows[0]!.cells[1]!.text).toBe('2.501');
  });

  it('keeps 6 apart from 12 for radii, and takes three legs to be the same after 120 degrees', () => {
    const radius = newJob({
      units: 'mm',
      gauge: 'centred-pin',
      length: '60',
      bushingOutside: '50',
    });
    expect(tableOf(radius).clocks.map((one) => one.text)).toHaveLength(12);
    let legs = newJob({ units: 'mm', gauge: 'three-leg', length: '60', bushingOutside: '50' });
    expect(tableOf(legs).clocks.map((one) => one.text)).toEqual(['12', '1', '2', '3']);
    legs = addReading(legs, 'f1', 's1', {
      face: 'A',
      depth: { text: '4', unit: 'mm' },
      clock: '5',
      gauge: 'g1',
      value: { text: '50.1', unit: 'mm' },
    });
    expect(tableOf(legs).clocks).toHaveLength(4);
    expect(tableOf(legs).rows[0]!.cells[1]!.text).toBe('50.1');
  });

  it('finds a depth again however it was typed, and adds one that is new in its order', () => {
    const value = { text: '2.502', unit: 'in' as const };
    let job = smallJob();
    const at = (text: string, unit: 'in' | 'mm') =>
      addReading(job, 'f1', 's1', {
        face: 'A',
        depth: { text, unit },
        clock: '3',
        gauge: 'g1',
        value,
      });
    job = at('1/4', 'in');
    job = at('6.35', 'mm');
    job = at('1 in', 'mm');
    const table = tableOf(job);
    expect(table.rows.map((row) => row.depthText)).toEqual(['0.25', '1 in', '1.5', '2.75']);
    expect(table.rows[0]!.cells[3]!.text).toBe('2.502; 2.502');
    expect(table.rows[1]!.cells[3]!.text).toBe('2.502');
  });

  it('shows a reading from face B at its mirrored clock and at length less depth', () => {
    const job = addReading(smallJob(), 'f1', 's1', {
      face: 'B',
      depth: { text: '0.25', unit: 'in' },
      clock: '2',
      gauge: 'g1',
      value: { text: '2.504', unit: 'in' },
    });
    const table = tableOf(job);
    // 2 seen from B is 10 seen from A, which a diameter reads as 4; 0.25 from B is 2.75 from A
    const row = table.rows.findIndex((one) => one.depthText === '2.75');
    const column = table.clocks.findIndex((one) => one.text === '4–10');
    expect(table.rows[row]!.cells[column]!.text).toBe('2.504');
    expect(table.rows).toHaveLength(3);
  });

  it('planned from face B is seen from face B, and told in face A', () => {
    let job = setPlanFace(
      newJob({
        units: 'mm',
        gauge: 'centred-pin',
        length: '60',
        bushingOutside: '50',
        depths: ['5'],
      }),
      'f1',
      's1',
      'B',
    );
    job = setCell(job, 'f1', 's1', { depth: 0, clock: '3', values: '25.1' });
    expect(job.features[0]!.surveys[0]!.readings[0]).toMatchObject({ face: 'B', clock: '3' });
    const table = tableOf(job);
    const column = table.clocks[3]!;
    expect(column.text).toBe('3');
    expect((column.theta * 180) / Math.PI).toBeCloseTo(270, 9);
    expect(table.rows[0]!.z).toBe(55);
    expect(table.rows[0]!.cells[3]!.text).toBe('25.1');
  });

  it('keeps apart what it cannot place, and tells why', () => {
    let job = smallJob();
    const reading = {
      face: 'A' as const,
      depth: { text: '0.25', unit: 'in' as const },
      clock: 'noon',
      gauge: 'g1',
      value: { text: '2.5O3', unit: 'in' as const },
    };
    job = addReading(job, 'f1', 's1', reading);
    job = addReading(job, 'f1', 's1', { ...reading, clock: '3', face: 'B' });
    job = setDimension(job, 'f1', 'length', undefined);
    const table = tableOf(job);
    expect(table.others.map((one) => [one.row, one.ok, one.why])).toEqual([
      [3, false, expect.stringContaining('“2.5O3” is no length')],
      [4, false, expect.stringContaining('“2.5O3” is no length')],
    ]);
  });

  it('shows the readings of one kind of gauge, and of one set-up', () => {
    let job = setPlanGauge(addGauge(smallJob(), 'indicator'), 'f1', 's1', 'g2');
    expect(tableOf(job).others.map((one) => one.text)).toEqual(['2.5030', '2.5010', '2.5005']);
    const setup = { gauge: 'g2', name: 'first', face: 'A' as const };
    job = addSetup(job, 'f1', 's1', setup);
    job = setCell(job, 'f1', 's1', { depth: 0, clock: '3', values: '+4' });
    job = addSetup(job, 'f1', 's1', { ...setup, name: 'second' });
    job = setCell(job, 'f1', 's1', { depth: 0, clock: '3', values: '+6' });
    expect(job.features[0]!.surveys[0]!.readings.map((one) => one.setup)).toEqual([
      undefined,
      undefined,
      undefined,
      'u1',
      'u2',
    ]);
    const feature = job.features[0]!;
    const cell = (setupId: string) =>
      readingTable(feature, feature.surveys[0]!, job, { setup: setupId }).rows[0]!.cells.map(
        (one) => one.text,
      );
    expect(cell('u1').filter(Boolean)).toEqual(['+4']);
    expect(cell('u2').filter(Boolean)).toEqual(['+6']);
    // a needle at +4 in an inch job is 4 thou
    const first = readingTable(feature, feature.surveys[0]!, job, { setup: 'u1' });
    expect(first.rows[0]!.cells.flatMap((one) => one.readings)[0]!.mm).toBeCloseTo(0.1016, 12);
  });

  it('says the unit of what was typed in another one', () => {
    const job = setUnits(smallJob(), 'mm');
    expect(texts(job)[0]![0]).toBe('2.5030 in');
    expect(tableOf(job).rows[0]!.depthText).toBe('0.25 in');
  });

  it('does not grow into a table of a scan', () => {
    let job = smallJob();
    const reading = job.features[0]!.surveys[0]!.readings[0]!;
    const scan = Array.from({ length: 5000 }, (_, index) => ({
      ...reading,
      id: `r${index + 100}`,
      clock: `${index * 0.03}d`,
      depth: { text: String(0.0005 * index), unit: 'in' as const },
    }));
    const feature = job.features[0]!;
    job = {
      ...job,
      features: [{ ...feature, surveys: [{ ...feature.surveys[0]!, readings: scan }] }],
    };
    const table = tableOf(job);
    expect(table.rows.length).toBeLessThanOrEqual(100);
    expect(table.clocks.length).toBeLessThanOrEqual(72);
    const shown = table.rows.flatMap((row) => row.cells.flatMap((cell) => cell.readings));
    expect(shown.length + table.others.length).toBe(5000);
  });
});
