import { execSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
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

/** When anything under a path last changed; a folder's own time tells of files taken away. */
function newestChange(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newestChange(join(path, name))));
}

/** Builds, unless the build that is there is newer than all that it is made of. */
export function buildIfStale(): void {
  const built = join(DIST, 'sw.js');
  const sources = ['src', 'public', 'demo-data', 'vite.config.ts', 'package-lock.json'];
  const newest = Math.max(...sources.map((name) => newestChange(join(ROOT, name))));
  if (existsSync(built) && statSync(built).mtimeMs > newest) return;
  execSync('npx vite build', { cwd: ROOT, stdio: 'inherit' });
}
