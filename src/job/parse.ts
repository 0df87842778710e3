/** A job file's text as a job, or one sentence about why it is none. */
import * as v from 'valibot';
import { doubtsOf } from './doubts.ts';
import { migrated } from './migrations.ts';
import { whyNotReferred } from './references.ts';
import { JOB_FORMAT, JOB_VERSION, Job } from './schema.ts';
import { pathWords, quoted } from './words.ts';

export { saveJob } from './save.ts';

/** Letters of text; no job of the greatest size that people measure comes near. */
export const MOST_TEXT = 40_000_000;

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
  const saved = readJson(text);
  if ('why' in saved) return fault(saved.why);
  const { data } = saved;
  const head = headFault(data);
  if (head !== null) return fault(head);
  const version = (data as { version: number }).version;
  const now = migrated(data as Record<string, unknown>, version);
  if (now === null)
    return fault(`there is no version ${version} of the job format; versions start at 1`);
  const parsed = v.safeParse(Job, now, { abortEarly: true });
  if (!parsed.success) return fault(schemaFault(now, parsed.issues[0]));
  const unreferred = whyNotReferred(parsed.output);
  if (unreferred !== null) return fault(unreferred);
  return { ok: true, job: parsed.output, doubts: doubtsOf(parsed.output) };
}

function megabytes(text: string): string {
  return `${(text.length / 1e6).toFixed(0)} MB`;
}

function readJson(text: string): { data: unknown } | { why: string } {
  const plain = text.replace(/^\uFEFF/, '').trim();
  if (plain === '') return { why: 'the file is empty; a job saved by Roundhand is wanted' };
  try {
    return { data: JSON.parse(plain) };
  } catch (thrown) {
    if (plain.startsWith('{') && !plain.endsWith('}')) {
      return { why: 'the file stops in the middle of a job; it was cut off when it was copied' };
    }
    const line = faultLine(thrown instanceof Error ? thrown.message : '', plain);
    const where = line === null ? '' : ` (line ${line} is not written as JSON)`;
    return { why: `this is no job${where}; a .roundhand.json file saved by Roundhand is wanted` };
  }
}

/** Engines say where by position or by line, or do not say. */
function faultLine(message: string, text: string): number | null {
  const line = /line (\d+)/.exec(message);
  if (line !== null) return Number(line[1]);
  const position = /position (\d+)/.exec(message);
  return position === null ? null : text.slice(0, Number(position[1])).split('\n').length;
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

type Issue = v.InferIssue<typeof Job>;

function schemaFault(data: unknown, issue: Issue): string {
  const path = (issue.path ?? []).map((item) => item.key as string | number);
  const place = pathWords(data, path) || 'the job';
  return `${place} ${faultWords(issue)}`;
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  strict_object: 'an object with fields',
};

function faultWords(issue: Issue): string {
  if (issue.expected === 'never') return 'is not a field that belongs there';
  if (issue.received === 'undefined') return 'is missing';
  const requirement = (issue as { requirement?: unknown }).requirement;
  if (issue.type === 'max_length') return `is longer than the ${requirement} allowed`;
  if (issue.type === 'min_length') return 'is empty; at least one is needed';
  if (issue.type === 'finite') return 'is not a finite number';
  const wanted = TYPE_WORDS[issue.type] ?? `one of ${choices(issue.expected)}`;
  return `is ${givenWords(issue.input)}; it should be ${wanted}`;
}

/** `("in" | "mm")` as `in, mm`. */
function choices(expected: string | null): string {
  return (expected ?? '').replace(/[()"]/g, '').replaceAll(' | ', ', ');
}

function givenWords(input: unknown): string {
  if (typeof input === 'string') return quoted(input);
  if (typeof input === 'number' || typeof input === 'boolean') return String(input);
  if (input === null) return 'null';
  return Array.isArray(input) ? 'a list' : 'an object with fields';
}
