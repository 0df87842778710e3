import { expect, test } from 'vitest';
import { setCell, setDecision, setDimension, setUnits } from '../../src/job/edits.ts';
import type { Job } from '../../src/job/schema.ts';
import { tableOf } from '../../src/store/tables.ts';
import { smallJob } from '../job/jobs.ts';

const laid = (job: Job) => tableOf(job, 0, 0);

test('a target that is dragged lays the table out once; what it comes of, anew', () => {
  const job = smallJob();
  const bore = job.features[0]!;
  const survey = bore.surveys[0]!;
  const first = laid(job);
  const aimed = setDecision(job, bore.id, { target: { text: '1.9', unit: 'in' } });
  expect(aimed).not.toBe(job);
  expect(laid(aimed)).toBe(first);
  const changed: readonly Job[] = [
    setUnits(aimed, job.units === 'in' ? 'mm' : 'in'),
    setDimension(aimed, bore.id, 'length', { text: '77', unit: 'mm' }),
    setCell(aimed, bore.id, survey.id, { depth: 0, clock: 0, values: '2.0001' }),
  ];
  for (const other of changed) {
    expect(laid(aimed)).toBe(laid(job));
    expect(laid(other)).not.toBe(laid(aimed));
  }
});
