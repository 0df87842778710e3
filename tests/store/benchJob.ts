/** A small job for the store's tests; the numbers in it do not matter here. */
import type { Job } from '../../src/job/schema.ts';

export function benchJob(id: string, title = id): Job {
  return {
    format: 'roundhand-job',
    version: 1,
    id,
    title,
    units: 'in',
    gauges: [{ id: 'g', kind: 'two-point', name: 'telescoping gauge' }],
    features: [
      {
        id: 'b',
        kind: 'bore',
        name: 'heel bore',
        bushings: [],
        wanted: {},
        keepouts: [],
        surveys: [],
        decisions: {},
        issued: [],
      },
    ],
    safety: {},
  };
}

export const retitled =
  (title: string) =>
  (job: Job): Job => ({ ...job, title });
