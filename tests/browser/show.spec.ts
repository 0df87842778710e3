/** The story for the person who pays: in the drawing, over the whole screen by keys alone, and on one sheet of paper. */
import type { Page } from '@playwright/test';
import { visit } from './bench.ts';
import { expect, test } from './page.ts';

const show = (page: Page) => page.locator('section[data-section="show"]');

test('each step is one that can be reached by keys, and is the one shown while it is', async ({
  page,
}) => {
  await visit(page);
  const steps = show(page).locator('.story > li');
  await expect(steps).toHaveCount(4);
  await expect(show(page)).toContainText('Done, and measured:');
  await steps.nth(1).locator('.story-say').focus();
  await expect(steps.nth(1)).toHaveAttribute('data-shown', 'true');
  // Words that explain themselves lie between two steps.
  for (let tabs = 0; tabs < 6; tabs += 1) {
    if ((await steps.nth(2).getAttribute('data-shown')) === 'true') break;
    await page.keyboard.press('Tab');
  }
  await expect(steps.nth(2)).toHaveAttribute('data-shown', 'true');
  await expect(steps.nth(1)).toHaveAttribute('data-shown', 'false');
  await show(page).getByRole('button', { name: 'Full screen' }).focus();
  await expect(steps.locator('[aria-pressed="true"]')).toHaveCount(0);
});

test('full screen by keys alone: opened, gone through, and left to where it was opened', async ({
  page,
}) => {
  await visit(page);
  const opener = show(page).getByRole('button', { name: 'Full screen' });
  await opener.focus();
  await page.keyboard.press('Enter');
  const story = page.locator('.full-story');
  await expect(story).toBeFocused();
  await expect(story.locator('li')).toHaveCount(4);
  // What lies beneath cannot be reached meanwhile.
  await expect(page.locator('#page')).toHaveAttribute('inert', '');
  await page.keyboard.press('ArrowRight');
  await expect(story.locator('li')).toHaveCount(1);
  await expect(story.getByRole('heading', { level: 3 })).toHaveText('New');
  for (const title of ['Worn', 'The work', 'Done', 'Done']) {
    await page.keyboard.press('ArrowRight');
    await expect(story.getByRole('heading', { level: 3 })).toHaveText(title);
  }
  await page.keyboard.press('ArrowLeft');
  await expect(story).toContainText('3 of 4');
  await page.keyboard.press('Escape');
  await expect(story).toHaveCount(0);
  await expect(opener).toBeFocused();
  await expect(page.locator('#page')).not.toHaveAttribute('inert', '');
});

const DEMOS = ['Slipway winch, pawl arm', 'Grain elevator, head arm'];

for (const title of DEMOS)
  test(`one sheet of paper each, nothing cut: ${title}`, async ({ page }) => {
    // The browser's own print window cannot be driven; the page that it would be given can.
    await page.addInitScript(() => {
      window.print = () => undefined;
    });
    await visit(page);
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: title, exact: true }).first().click();
    await expect(page.getByLabel('Title of the job')).toHaveValue(title);
    await expect(show(page).locator('.story > li')).toHaveCount(4);
    for (const [paper, height] of [
      ['on letter', 279.4],
      ['on A4', 297],
    ] as const) {
      await show(page).getByRole('button', { name: paper }).click();
      const sheet = page.locator('.story-page');
      await page.emulateMedia({ media: 'print' });
      await expect(sheet).toBeVisible();
      await expect(sheet).toContainText('Signature');
      const cut = await sheet.evaluate((element) => {
        const { bottom, right } = element.getBoundingClientRect();
        const inside = [...element.querySelectorAll('p, svg, figcaption, h2')].map((one) =>
          one.getBoundingClientRect(),
        );
        return {
          over: inside.filter((one) => one.bottom > bottom || one.right > right + 0.5).length,
          map: element.querySelector('.page-map svg')?.getBoundingClientRect().height ?? 0,
          height: element.getBoundingClientRect().height,
        };
      });
      // CSS pixels: 96 an inch. A map lower than an inch and a half would not be read.
      expect(cut.over).toBe(0);
      expect(cut.map).toBeGreaterThan(1.5 * 96);
      expect(Math.abs(cut.height - (96 * (height - 1)) / 25.4)).toBeLessThan(1);
      await page.emulateMedia({ media: null });
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      await expect(sheet).toHaveCount(0);
    }
  });
