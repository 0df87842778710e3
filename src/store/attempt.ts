/** Edits that may be refused. */
import type { Tried } from '../job/edits.ts';
import type { Job } from '../job/schema.ts';
import { jobStore } from './job.ts';

/** Tries an edit of the job on the bench; null where it was done, else one sentence why not. */
export function attempt(change: (job: Job) => Tried): string | null {
  const { job, edit } = jobStore.getState();
  if (job === null) return null;
  const tried = change(job);
  if (!tried.ok) return sentence(tried.why);
  edit(() => tried.job);
  return null;
}

/** A reason as a sentence of its own; a file's name at its beginning stays as it is. */
export function sentence(why: string): string {
  const text = why.trim();
  const end = /[.!?]$/.test(text) ? '' : '.';
  if (/^\S+\.\w+:/.test(text)) return `${text}${end}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${end}`;
}
