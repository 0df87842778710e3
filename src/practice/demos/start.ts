/** What the demo jobs share: how one is started, and texts with their units. */
import { newJob, setJobText, type Tried } from '../../job/edits.ts';
import type { GaugeType, Job, Typed } from '../../job/schema.ts';

export const IN = 25.4;
export const THOU = 0.0254;
export const HOUR = Math.PI / 6;
export const PAIRS = ['12', '1', '2', '3', '4', '5'];
export const HOURS = [...PAIRS, '6', '7', '8', '9', '10', '11'];
export const inch = (text: string): Typed => ({ text, unit: 'in' });
export const mm = (text: string): Typed => ({ text, unit: 'mm' });

export interface Start {
  readonly id: string;
  readonly title: string;
  readonly machine: string;
  readonly place: string;
  readonly bore: string;
  readonly units: Job['units'];
  readonly gauge: GaugeType;
  readonly length: string;
  readonly outside: string;
  readonly depths: readonly string[];
  readonly clocks: readonly string[];
}

export function started(start: Start): Job {
  const { id, title, bore, units, gauge, length, depths, clocks } = start;
  const asked = { id, title, bore, units, gauge, length, depths, clocks, made: '2026-11-02' };
  const job = newJob({ ...asked, bushingOutside: start.outside });
  return setJobText(setJobText(job, 'machine', start.machine), 'place', start.place);
}

/** The edited job; a demo that is refused an edit is a fault of the demo. */
export function done(tried: Tried): Job {
  if (!tried.ok) throw new Error(tried.why);
  return tried.job;
}
