import { resolve } from 'node:path';
import { preview } from 'vite';
import { freePort } from './freePort.ts';

const ROOT = resolve(import.meta.dirname, '../..');
export const DIST = resolve(ROOT, 'dist');

export interface Served {
  /** The address of the page, with a slash at its end. */
  readonly url: string;
  /** Stops serving; later requests are refused. */
  close(): Promise<void>;
}

/** Serves a built copy of the product on a free port of this machine. */
export async function serve(folder = DIST): Promise<Served> {
  const port = await freePort();
  const server = await preview({
    configFile: resolve(ROOT, 'vite.config.ts'),
    root: resolve(ROOT, 'src'),
    logLevel: 'error',
    build: { outDir: folder },
    preview: { port, strictPort: true, host: '127.0.0.1', open: false },
  });
  return { url: `http://127.0.0.1:${port}/`, close: () => server.close() };
}
