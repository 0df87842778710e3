/*
 * npm run shots: pictures of every page and section, at three sizes and in three themes, in shots/.
 * They are looked at, not compared. Words behind it take fewer: npm run shots -- 390 sunlight
 */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { findBrowser, LAUNCH_ARGS } from './findBrowser.ts';
import { buildIfStale, serve } from './serve.ts';

/** Each page, and its sections by the name in `data-section`; `whole` is the page as it opens. */
const PAGES = [
  { name: 'bench', path: '', sections: ['measure', 'read', 'plan', 'show'] },
  { name: 'patterns', path: '#wear-patterns/crossed', sections: [] },
] as const;

const SIZES = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1440, height: 900 },
] as const;

const THEMES = ['light', 'dark', 'sunlight'] as const;

const ROOT = resolve(import.meta.dirname, '../..');
const SHOTS = join(ROOT, 'shots');

/** Software drawing needs about half a second a frame; after this long a still page has settled. */
const SETTLE_MS = 2_000;
/** A busy machine takes its time to work a bore out and to fetch the drawing. */
const WAIT_MS = 90_000;

async function settle(page: Page): Promise<void> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.waitForFunction(isThere, undefined, { timeout: WAIT_MS });
  await page.waitForTimeout(SETTLE_MS);
}

/** Runs in the page: nothing is still being worked out or fetched, and the drawing has been drawn. */
function isThere(): boolean {
  const canvas = document.querySelector('.drawing canvas');
  const drawn = canvas === null || Number(canvas.getAttribute('data-frames')) > 0;
  return drawn && !/(Working|Fetching)[^.]*…/.test(document.body.textContent);
}

/** Takes one page at one size and theme; returns the sections that were not found. */
async function shoot(
  browser: Browser,
  url: string,
  { name, path, sections }: (typeof PAGES)[number],
  viewport: (typeof SIZES)[number],
  theme: (typeof THEMES)[number],
): Promise<string[]> {
  const context = await browser.newContext({ viewport, serviceWorkers: 'block' });
  await context.addInitScript((value) => localStorage.setItem('roundhand-theme', value), theme);
  const page = await context.newPage();
  await page.goto(url + path, { waitUntil: 'networkidle', timeout: WAIT_MS });
  await settle(page);
  const file = (section: string) =>
    join(SHOTS, `${name}-${section}-${viewport.width}-${theme}.png`);
  await page.screenshot({ path: file('whole'), fullPage: true });
  const missing: string[] = [];
  for (const section of sections) {
    const place = page.locator(`section[data-section="${section}"]`);
    if ((await place.count()) !== 1) {
      missing.push(`${name}: section ${section} at ${viewport.width} px`);
      continue;
    }
    await place.evaluate((element) =>
      element.scrollIntoView({ block: 'start', behavior: 'instant' }),
    );
    await settle(page);
    await page.screenshot({ path: file(section) });
  }
  await context.close();
  return missing;
}

async function all(): Promise<string[]> {
  buildIfStale();
  const wanted = process.argv.slice(2);
  const taken = <T>(all: readonly T[], name: (one: T) => string): readonly T[] => {
    const named = all.filter((one) => wanted.includes(name(one)));
    return named.length > 0 ? named : all;
  };
  if (wanted.length === 0) rmSync(SHOTS, { recursive: true, force: true });
  mkdirSync(SHOTS, { recursive: true });
  const served = await serve();
  const browser = await chromium.launch({ executablePath: findBrowser(), args: LAUNCH_ARGS });
  const missing: string[] = [];
  try {
    for (const page of taken(PAGES, ({ name }) => name))
      for (const size of taken(SIZES, ({ width }) => String(width)))
        for (const theme of taken(THEMES, String))
          missing.push(...(await shoot(browser, served.url, page, size, theme)));
  } finally {
    await browser.close();
    await served.close();
  }
  return missing;
}

const missing = await all();
for (const line of missing) console.error(`not found: ${line}`);
console.log(`${readdirSync(SHOTS).length} pictures are in ${SHOTS}`);
process.exitCode = missing.length > 0 ? 1 : 0;
