/** Light and dark: as the device has it, or as chosen; never a flash of the other. */
import type { Page } from '@playwright/test';
import { visit } from './bench.ts';
import { expect, test } from './page.ts';

const shown = (page: Page) => page.evaluate(() => document.documentElement.dataset.theme);

test('the page follows the device, until a theme is chosen; the choice stays', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await visit(page);
  expect(await shown(page)).toBe('dark');
  await page.emulateMedia({ colorScheme: 'light' });
  await expect.poll(() => shown(page)).toBe('light');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByLabel('Theme', { exact: true }).selectOption('dark');
  await expect.poll(() => shown(page)).toBe('dark');
  await page.reload();
  await expect(page.getByRole('heading', { name: /^Measure/ })).toBeVisible();
  expect(await shown(page)).toBe('dark');
});

test('the theme is there before the first paint', async ({ page }) => {
  await page.addInitScript(() => {
    localStorage.setItem('roundhand-theme', 'dark');
    const seen: (string | undefined)[] = [];
    Object.assign(window, { seen });
    const look = () => {
      if (document.body) seen.push(document.documentElement.dataset.theme);
      if (seen.length < 3) requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  await page.goto('');
  const seen = () => page.evaluate(() => (window as unknown as { seen: string[] }).seen);
  await expect.poll(async () => (await seen()).length).toBe(3);
  expect(await seen()).toEqual(['dark', 'dark', 'dark']);
});

test('nothing is wider than the page, from a small phone to a desk', async ({ page }) => {
  await visit(page);
  for (const width of [360, 390, 600, 820, 901, 1440]) {
    await page.setViewportSize({ width, height: 844 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(over, `${width} px`).toBeLessThanOrEqual(0);
  }
});

test('on a phone every target is at least 48 px, or a link within a line of text', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await visit(page);
  await expect(page.locator('#plan')).toContainText('Way of mending');
  const small = await page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>('.page button, .page select, .page input');
    const found = [...all]
      .filter((one) => one.checkVisibility())
      .map((one) => {
        // A box to tick or a dot to choose is as large as its label, which does the same.
        const marks = /radio|checkbox/.test(one.getAttribute('type') ?? '');
        const target = (marks && one.closest('label')) || one;
        return { name: one.outerHTML.slice(0, 120), height: target.offsetHeight };
      });
    return { count: found.length, low: found.filter(({ height }) => height < 48) };
  });
  expect(small.count).toBeGreaterThan(40);
  expect(small.low).toEqual([]);
});
