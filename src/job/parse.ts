/** A job file's text as a job, or one sentence about why it is none. */
import * as v from 'valibot';
import { doubtsOf } from './doubts.ts';
import { migrated } from './migrations.ts';
import { readJson } from './readJson.ts';
import { whyNotReferred } from './references.ts';
import { JOB_FORMAT, JOB_VERSION, Job } from './schema.ts';
import { schemaFault } from './schemaFault.ts';
import { quoted } from './words.ts';

export { saveJob } from './save.ts';

/** Letters of text; no job of the greatest size that people measure comes near. */
export const MOST_TEXT = 40_000_000;

const JOB_FILE = {
  one: 'job',
  wanted: 'a job saved by Roundhand',
  file: 'a .roundhand.json file saved by Roundhand',
};

export type Opened =
  | {
      readonly ok: true;
      readonly job: Job;
      /** What inside cannot be understood, or is absurd: sentences without the file's name. */
      readonly doubts: readonly string[];
    }
  | { readonly ok: false; readonly why: string };

/**
 * @param text what the file holds
 * @param fileName how the sentence is to name it
 */
export function openJob(text: string, fileName: string): Opened {
  const fault = (why: string): Opened => ({ ok: false, why: `${fileName}: ${why}.` });
  if (text.length > MOST_TEXT) {
    return fault(`${megabytes(text)} of text is no job; a job has ${MOST_TEXT / 1e6} MB at most`);
  }
  const saved = readJson(text, JOB_FILE);
  if ('why' in saved) return fault(saved.why);
  const { data } = saved;
  const head = headFault(data);
  if (head !== null) return fault(head);
  const version = (data as { version: number }).version;
  const now = migrated(data as Record<string, unknown>, version);
  if (now === null)
    return fault(`there is no version ${version} of the job format; versions start at 1`);
  const parsed = v.safeParse(Job, now, { abortEarly: true });
  if (!parsed.success) return fault(schemaFault(now, parsed.issues[0], 'the job'));
  const unreferred = whyNotReferred(parsed.output);
  if (unreferred !== null) return fault(unreferred);
  return { ok: true, job: parsed.output, doubts: doubtsOf(parsed.output) };
}

function megabytes(text: string): string {
  return `${(text.length / 1e6).toFixed(0)} MB`;
}

function headFault(data: unknown): string | null {
  const wanted = `a job has “format” ${quoted(JOB_FORMAT)} at its beginning`;
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return `this is JSON, but no job; ${wanted}`;
  }
  const { format, version } = data as Record<string, unknown>;
  if (format !== JOB_FORMAT) {
    const found =
      typeof format === 'string' ? `its “format” is ${quoted(format)}` : 'it says no “format”';
    return `this is JSON, but no job: ${found}; ${wanted}`;
  }
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return `“version” should be the whole number ${JOB_VERSION}`;
  }
  if (version > JOB_VERSION) {
    return `the job was saved by a newer Roundhand (version ${version} of its format); this one reads up to version ${JOB_VERSION}, so open it with the newer one`;
  }
  return null;
}
