import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { PUBLIC, publishedSchemas } from '../../src/cli/schemas.ts';
import { Job } from '../../src/job/schema.ts';
import { anyJob, smallJob } from './jobs.ts';

const accepts = new Ajv().compile(
  JSON.parse(readFileSync(resolve(PUBLIC, 'job.schema.json'), 'utf8')),
);

describe('the published JSON Schemas', () => {
  it('are those of the program (npm run schema writes them)', () => {
    const schemas = publishedSchemas();
    expect(schemas.map((one) => one.file)).toContain('job.schema.json');
    for (const { file, text } of schemas) {
      expect(readFileSync(resolve(PUBLIC, file), 'utf8')).toBe(text);
    }
  });

  it('accept any job', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        expect(accepts(job)).toBe(true);
      }),
    );
  });

  it('refuse what the program refuses', () => {
    const job = smallJob();
    const wrong = [
      { ...job, units: 'cm' },
      { ...job, colour: 'red' },
      { ...job, gauges: [] },
      { ...job, title: undefined },
      { ...job, version: 2 },
      { ...job, features: [{ ...job.features[0], kind: 'hole' }] },
      { ...job, title: 'x'.repeat(201) },
    ];
    for (const one of wrong) {
      const saved = JSON.parse(JSON.stringify(one));
      expect(accepts(saved)).toBe(false);
      expect(v.safeParse(Job, saved).success).toBe(false);
    }
  });
});
