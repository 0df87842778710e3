/** A worker for one file of points: read, drawn together and made a job while the page stays free. */
import { jobFromScan } from '../evaluate/scanJob.ts';
import { readScan } from '../job/pointsTable.ts';
import type { Job } from '../job/schema.ts';

export interface ScanAsked {
  readonly file: File;
  readonly title: string;
}

/** The job without an id of its own, or one sentence. */
export type ScanRead =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly why: string };

self.onmessage = async ({ data }: MessageEvent<ScanAsked>) => {
  self.postMessage(await read(data));
};

async function read({ file, title }: ScanAsked): Promise<ScanRead> {
  const { name } = file;
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) return { ok: false, why: `${name} could not be read from the device` };
  const columns = readScan(new Uint8Array(bytes));
  if ('error' in columns) return { ok: false, why: `${name}: ${columns.error}` };
  const sizes = { units: null, nominal: '', length: '', title };
  const made = jobFromScan({ name, columns }, sizes);
  return made.ok ? { ok: true, job: made.job } : { ok: false, why: `${name}: ${made.why}` };
}
