/** The two answers to a reading in doubt: as it was likely meant, or left out. */

import type { KeyboardEvent } from 'react';
import type { Doubt } from '../../figures/checkWords.ts';
import { setLeftOut, setReading } from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { jobStore } from '../../store/job.ts';
import { useSession } from '../../store/session.ts';

export type Answer = (job: Job) => Job;

/** @returns `use` null where only a retake helps */
export function answersTo(
  { rows, suggested }: Doubt,
  { job: { units }, bore, survey }: Pick<Bench, 'job' | 'bore' | 'survey'>,
): { readonly use: Answer | null; readonly leaveOut: Answer } {
  const ids = rows.flatMap((row) => survey.readings[row]?.id ?? []);
  const meant = (text: string): Answer => {
    const value = { text, unit: units };
    return (now) =>
      ids.reduce((done, id) => setReading(done, bore.id, survey.id, id, { value }), now);
  };
  return {
    use: suggested === null ? null : meant(suggested),
    leaveOut: (now) =>
      ids.reduce((done, id) => setLeftOut(done, bore.id, survey.id, id, true), now),
  };
}

/** U and X begin no reading: pressed in a cell that nothing is typed into yet, they answer. True where they did. */
export function answerByKey(event: KeyboardEvent, bench: Bench, doubt: Doubt | null): boolean {
  const plain = !(event.ctrlKey || event.metaKey || event.altKey);
  const inCell = event.target instanceof HTMLElement && event.target.dataset.cell !== undefined;
  if (doubt === null || !plain || !inCell || useSession.getState().draft !== null) return false;
  const { use, leaveOut } = answersTo(doubt, bench);
  const key = event.key.toLowerCase();
  const answer = key === 'u' ? use : key === 'x' ? leaveOut : null;
  if (answer === null) return false;
  jobStore.getState().edit(answer);
  return true;
}
