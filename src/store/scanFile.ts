/** Files of a scanner's points: a million of them take a second or two, and the page stays free meanwhile. */
import { isScan } from '../job/pointsTable.ts';
import type { ScanAsked, ScanRead } from './scanWorker.ts';

/** As much of a file as tells what it is. */
const HEAD_BYTES = 4096;

export async function isScanFile(file: File): Promise<boolean> {
  const head = await file
    .slice(0, HEAD_BYTES)
    .arrayBuffer()
    .catch(() => null);
  return head !== null && isScan(new Uint8Array(head));
}

/** The job that a file of points makes, or one sentence why it makes none. */
export function readScanFile(file: File): Promise<ScanRead> {
  const worker = new Worker(new URL('./scanWorker.ts', import.meta.url), { type: 'module' });
  const title = file.name.replace(/\.[^.]*$/, '');
  return new Promise<ScanRead>((done) => {
    worker.onmessage = ({ data }: MessageEvent<ScanRead>) => done(data);
    worker.onerror = (event) => {
      event.preventDefault();
      const why = event.message || 'its code could not be loaded';
      done({ ok: false, why: `${file.name} could not be worked out: ${why}` });
    };
    worker.postMessage({ file, title } satisfies ScanAsked);
  }).finally(() => worker.terminate());
}
