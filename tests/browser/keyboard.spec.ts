/** The whole job without a pointer, on a desk and at 200 %: every step reached, its focus seen, and within the page. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { OVAL_ALONG_2, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

/** More stops than any page has. */
const MOST_STOPS = 250;

interface Stop {
  readonly name: string;
  /** How its focus shows, and whether it lies within the window, under nothing else. */
  readonly outline: number;
  readonly within: boolean;
  readonly over: number;
}

/** Runs in the page: where the focus is. */
function here(): Stop {
  const at = document.activeElement as HTMLElement;
  const { left, right, top, bottom } = at.getBoundingClientRect();
  const style = getComputedStyle(at);
  const seen = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
  return {
    name: at.getAttribute('aria-label') ?? at.textContent?.trim() ?? '',
    outline: style.outlineStyle === 'none' ? 0 : Number.parseFloat(style.outlineWidth),
    within: seen !== null && (at.contains(seen) || seen.contains(at)),
    over: document.documentElement.scrollWidth - innerWidth,
  };
}

/** Tabs on to the stop of this name; the focus shows there, and nothing is cut. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let stop = 0; stop < MOST_STOPS; stop += 1) {
    const { name: now } = await page.evaluate(here);
    if (name.test(now)) break;
    await page.keyboard.press('Tab');
  }
  // The page scrolls to the focus smoothly.
  await expect
    .poll(async () => (await page.evaluate(here)).within, `${name}: it is in sight`)
    .toBe(true);
  const stop = await page.evaluate(here);
  expect(stop.name).toMatch(name);
  expect(stop.outline, `${stop.name}: its focus shows`).toBeGreaterThanOrEqual(2);
  expect(stop.over, `${stop.name}: nothing is wider than the page`).toBeLessThanOrEqual(0);
}

async function wholeJob(page: Page): Promise<void> {
  const { keyboard } = page;
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'));
  await visit(page);
  await tabTo(page, /^Menu$/);
  await keyboard.press('Enter');
  await tabTo(page, /^New job$/);
  await keyboard.press('Enter');
  await tabTo(page, /^Units$/);
  await keyboard.type('m');
  await tabTo(page, /^Length of the bore$/);
  await keyboard.type(OVAL_ALONG_2.ask.length);
  await tabTo(page, /^Outside diameter of the bushing/);
  await keyboard.type(OVAL_ALONG_2.ask.outside);
  await keyboard.press('Enter');
  await expect(page.locator('[data-cell="0-0"]')).toBeFocused();

  // The seventh reading with one micrometer turn too much; the answer to it is on the way from the table.
  const rows = OVAL_ALONG_2.rows.map((row) => [...row]);
  const meant = rows[1]![0]!;
  rows[1]![0] = (Number(meant) + 0.5).toFixed(3);
  await typeReadings(page, rows);
  await expect(page.locator('.doubts')).toContainText('one micrometer turn');
  await tabTo(page, /^use .* for 12–6/);
  await keyboard.press('Enter');
  await expect(page.locator('[data-cell="1-0"]')).toHaveValue(meant);
  await expect(page.locator('.doubts')).toHaveCount(0);

  await expect(page.locator('#plan')).toContainText('High spots: take off');
  await tabTo(page, /^Target diameter, across$/);
  await keyboard.type('50.82');
  await keyboard.press('Enter');
  await expect(page.locator('#plan')).toContainText('press fit of 0.030 mm across');
  await tabTo(page, /^Side that wore$/);
  await keyboard.type('at 8');
  await expect(page.locator('.assumed')).toContainText('the side that you said');
  await tabTo(page, /^show \d+:\d\d, .* deep$/);
  await keyboard.press('Enter');
  await expect(page.locator('.readings td[data-near="true"]')).toHaveCount(1);

  // Backwards to the bar is one way; from the top of the page the other.
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await page.locator('body').press('Tab');
  await tabTo(page, /^Menu$/);
  await keyboard.press('Enter');
  await tabTo(page, /^Theme$/);
  await keyboard.type('su');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sunlight');
  await keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Menu' })).toBeFocused();
  await keyboard.press('Enter');
  await tabTo(page, /^Save to a file/);
  const saving = page.waitForEvent('download');
  await keyboard.press('Enter');
  const saved = JSON.parse(readFileSync((await (await saving).path())!, 'utf8'));
  const [bore] = saved.features;
  expect(bore.decisions.target.text).toBe('50.82');
  expect(bore.surveys[0].wornSide).toBe('8');
  expect(bore.surveys[0].readings).toHaveLength(18);
}

test('the whole job by keyboard alone', async ({ page }) => {
  await wholeJob(page);
});

test.describe('at 200 %', () => {
  // A window of 1440 by 900 px, its page twice as large.
  test.use({ viewport: { width: 720, height: 450 }, deviceScaleFactor: 2 });

  test('the whole job by keyboard alone, and nothing cut', async ({ page }) => {
    await wholeJob(page);
  });
});
