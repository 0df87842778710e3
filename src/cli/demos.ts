/** `npm run demos`: writes the demo jobs into demo-data/. */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { saveJob } from '../job/parse.ts';
import { demoJobs } from '../practice/demos.ts';

const FOLDER = resolve(import.meta.dirname, '../../demo-data');

for (const { file, job } of demoJobs()) writeFileSync(resolve(FOLDER, file), saveJob(job));
