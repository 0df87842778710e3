/**
 * What the published JSON Schema of a job says beside what is drawn from `schema.ts`. The conversion itself is
 * `src/cli/schemas.ts`, as only the command that publishes needs the converter.
 */
import { JOB_FORMAT, JOB_VERSION } from './schema.ts';

/** Laid over the converted schema. */
export const JOB_SCHEMA_HEAD = {
  $id: `${JOB_FORMAT}.v${JOB_VERSION}`,
  title: 'Roundhand job',
  description:
    'One job as Roundhand saves it (.roundhand.json): bores and pins with their readings as typed. Lengths are texts with a unit; clock positions are hours (4:30) or degrees (135d), clockwise from 12 seen looking in at their face; depths go inward from their face. Issued passes are in millimetres and radians, per side.',
} as const;
