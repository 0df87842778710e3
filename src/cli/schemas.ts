/** `npm run schema`: writes the published JSON Schemas into public/, from the schemas that the program itself uses. */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { toJsonSchema } from '@valibot/to-json-schema';
import { JOB_SCHEMA_HEAD } from '../job/jsonSchema.ts';
import { Job } from '../job/schema.ts';
import { Shop } from '../job/shop.ts';
import { Report } from './reportSchema.ts';

export const PUBLIC = resolve(import.meta.dirname, '../../public');

const REPORT_SCHEMA_HEAD = {
  $id: 'roundhand-report.v1',
  title: 'Roundhand report',
  description:
    'What roundhand report --json writes: lengths in millimetres, arrays [z][theta], theta in radians and clock ' +
    "in degrees, both clockwise from 12 o'clock seen looking in at face A. Deviation and removal are per side, " +
    'diameters and out-of-round across. Not known is null.',
};

const SHOP_SCHEMA_HEAD = {
  $id: 'roundhand-shop.v1',
  title: 'Roundhand shop document',
  description:
    'What is at hand in the shop and what was learned there, kept beside the jobs; as typed.',
};

export interface Published {
  /** In public/. */
  readonly file: string;
  readonly text: string;
}

/** Each published schema as it should stand in public/. */
export function publishedSchemas(): Published[] {
  // JSON has no infinity to forbid, so the check for finite numbers needs no words there
  const job = toJsonSchema(Job, { errorMode: 'throw', ignoreActions: ['finite'] });
  const report = toJsonSchema(Report, { errorMode: 'throw' });
  return [
    published('job.schema.json', JOB_SCHEMA_HEAD, job),
    published('report.schema.json', REPORT_SCHEMA_HEAD, report),
    published('shop.schema.json', SHOP_SCHEMA_HEAD, toJsonSchema(Shop, { errorMode: 'throw' })),
  ];
}

function published(file: string, head: object, schema: object): Published {
  const { $schema, ...rest } = schema as { $schema?: string };
  return { file, text: `${JSON.stringify({ $schema, ...head, ...rest }, null, 2)}\n` };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { file, text } of publishedSchemas()) writeFileSync(resolve(PUBLIC, file), text);
}
