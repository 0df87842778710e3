import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test as watched } from './page.ts';
import { DIST, type Served, serve } from './serve.ts';

/** A copy of the build on a server of its own, so that a test can change it and switch it off. */
interface Copy {
  readonly folder: string;
  readonly served: Served;
}

const test = watched.extend<{ copy: Copy }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads a fixture's needs off this pattern
  copy: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'roundhand-dist-'));
    cpSync(DIST, folder, { recursive: true });
    const served = await serve(folder);
    await use({ folder, served });
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  },
  baseURL: async ({ copy }, use) => use(copy.served.url),
});

watched('the test browser draws WebGL2', async ({ page }) => {
  await page.goto('');
  const version = await page.evaluate(() => {
    const context = document.createElement('canvas').getContext('webgl2');
    return context ? String(context.getParameter(context.VERSION)) : 'no context';
  });
  expect(version).toContain('WebGL 2.0');
});

watched(
  'icon and manifest are there, and the manifest names a picture that is',
  async ({ page }) => {
    const { request } = page;
    const manifest = await request.get('manifest.webmanifest');
    expect(manifest.ok()).toBe(true);
    const { name, icons } = (await manifest.json()) as { name: string; icons: { src: string }[] };
    expect(name).toBe('Roundhand');
    expect(icons.length).toBeGreaterThan(0);
    for (const { src } of icons) {
      const icon = await request.get(src);
      // An address that is not there is answered with the page, so the type tells.
      expect(icon.headers()['content-type']).toContain('image/svg+xml');
    }
  },
);

watched('what the page loads before it can be used is at most 150 kB compressed', () => {
  const html = readFileSync(join(DIST, 'index.html'), 'utf8');
  const scripts = [...html.matchAll(/(?:src|href)="\/?([^"]+\.js)"/g)].map(
    (match) => match[1] ?? '',
  );
  expect(scripts.length).toBeGreaterThan(0);
  const bytes = scripts.map((file) => gzipSync(readFileSync(join(DIST, file))).length);
  expect(bytes.reduce((sum, n) => sum + n, 0)).toBeLessThanOrEqual(150_000);
});

test('once loaded, the page opens with the server gone', async ({ page, copy }) => {
  await page.goto('');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  const title = await page.title();
  await copy.served.close();
  await page.reload();
  await expect(page).toHaveTitle(title);
  await expect(page.getByRole('main')).toContainText(/\w/);
  // An address with a query opens the same page.
  await page.goto('?job=any');
  await expect(page).toHaveTitle(title);
});

test('a new version shows at the load after the one that fetched it', async ({ page, copy }) => {
  await page.goto('');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  const index = join(copy.folder, 'index.html');
  const worker = join(copy.folder, 'sw.js');
  const html = readFileSync(index, 'utf8');
  const code = readFileSync(worker, 'utf8');
  const newer = code.replace(/^const KEPT_VERSION="[0-9a-f]{16}"/, 'const KEPT_VERSION="newer"');
  expect(newer).not.toBe(code);
  writeFileSync(index, html.replace('<head>', '<head><meta name="newer">'));
  writeFileSync(worker, newer);
  await page.reload();
  await expect(page.locator('meta[name="newer"]')).toHaveCount(0);
  const names = () => page.evaluate(() => caches.keys());
  await expect.poll(names).toContain('roundhand-newer');
  await page.evaluate(async () => {
    const { waiting, installing } = (await navigator.serviceWorker.getRegistration()) ?? {};
    const coming = installing ?? waiting;
    if (!coming) return;
    await new Promise<void>((resolve) => {
      const look = () => coming.state === 'activated' && resolve();
      coming.addEventListener('statechange', look);
      look();
    });
  });
  await page.reload();
  await expect(page.locator('meta[name="newer"]')).toHaveCount(1);
});
