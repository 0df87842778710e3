/** What a document lacks of its schema, in one sentence: where, what stands there, and what would be right. */
import type * as v from 'valibot';
import { pathWords, quoted } from './words.ts';

type Issue = v.BaseIssue<unknown>;

/** @param whole what stands for the document itself: `the job` */
export function schemaFault(data: unknown, issue: Issue, whole: string): string {
  const path = (issue.path ?? []).map((item) => item.key as string | number);
  const place = pathWords(data, path) || whole;
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
