import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

const here = (path: string) => resolve(import.meta.dirname, path);

/** A desktop to show a window on, and something that opens it. Elsewhere the printed address is all. */
function canOpenBrowser(): boolean {
  const { CI, DISPLAY, WAYLAND_DISPLAY, PATH = '' } = process.env;
  if (CI) return false;
  if (process.platform === 'darwin' || process.platform === 'win32') return true;
  if (!DISPLAY && !WAYLAND_DISPLAY) return false;
  return PATH.split(delimiter).some((folder) => existsSync(join(folder, 'xdg-open')));
}

/**
 * Tells the built service worker which files to keep, by a line put in front of it: every file of
 * the build but the worker itself, source maps, and the old font format that no browser with
 * service workers asks for. The version is made from their names and contents and from the worker's
 * own, so it changes when any of them does and only then.
 */
function keepForOffline(): Plugin {
  let outDir = '';
  return {
    name: 'roundhand-keep-for-offline',
    apply: 'build',
    configResolved(config) {
      outDir = resolve(config.root, config.build.outDir);
    },
    writeBundle: {
      order: 'post',
      sequential: true,
      handler() {
        const files = readdirSync(outDir, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile() && !/^sw\.js$|\.(woff|map)$/.test(entry.name))
          .map((entry) => join(entry.parentPath, entry.name).slice(outDir.length + 1))
          .sort();
        const worker = join(outDir, 'sw.js');
        const code = readFileSync(worker, 'utf8');
        const hash = createHash('sha256').update(code);
        for (const file of files) hash.update(file).update(readFileSync(join(outDir, file)));
        const version = JSON.stringify(hash.digest('hex').slice(0, 16));
        // The page itself is kept under the address it is asked by: the folder, not the file.
        const kept = files.map((file) => file.replaceAll('\\', '/').replace(/^index\.html$/, './'));
        const head = `const KEPT_VERSION=${version},KEPT_FILES=${JSON.stringify(kept)};\n`;
        writeFileSync(worker, head + code);
      },
    },
  };
}

/** Asks for the type with the page: found only by the first layout, it would have the whole page laid out twice. */
function typeWithThePage(): Plugin {
  return {
    name: 'roundhand-type-with-the-page',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(_, { bundle = {} }) {
        const files = Object.keys(bundle).filter((name) => name.endsWith('.woff2'));
        return files.map((name) => ({
          tag: 'link',
          attrs: {
            rel: 'preload',
            href: `/${name}`,
            as: 'font',
            type: 'font/woff2',
            crossorigin: '',
          },
          injectTo: 'head' as const,
        }));
      },
    },
  };
}

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  plugins: [react(), typeWithThePage(), keepForOffline()],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // The scene's chunk holds all of three, and loads when the notebook is already there.
    chunkSizeWarningLimit: 1_000,
    rolldownOptions: {
      input: { index: here('src/index.html'), sw: here('src/app/serviceWorker.ts') },
      output: {
        // A service worker is found by a fixed name: only its contents say that it changed.
        entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
        // All that the first painting needs comes in one file: each of many small ones is asked for,
        // answered and read by itself before anything can be typed.
        codeSplitting: {
          groups: [{ name: 'page', tags: ['$initial'], test: (id) => !/serviceWorker/.test(id) }],
        },
      },
    },
  },
  worker: { format: 'es' },
  // A port of our own: jobs and kept files belong to the address, and must not meet another
  // program's on the port that everyone uses.
  preview: { port: 4736, open: canOpenBrowser() },
  test: {
    root: '.',
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**'],
    setupFiles: ['tests/fixedSeed.ts'],
    // Two slow cores shared with other work: a limit for tests that hang, not for slow ones.
    testTimeout: 240_000,
    coverage: { provider: 'v8', include: ['src/**/*.{ts,tsx}'], reporter: ['text', 'html'] },
  },
});
