/** The wear patterns: reached from the menu and from Read, gone through by keys, and left for where one was. */
import { visit } from './bench.ts';
import { expect, test } from './page.ts';

test('from Read to its pattern, on by keys, and back', async ({ page }) => {
  await visit(page);
  const link = page.getByRole('link', { name: 'See it among the wear patterns' }).first();
  await link.click();
  const entry = page.locator('.gallery-entry');
  await expect(entry.getByRole('heading', { level: 3 })).toHaveText('Egg-shaped: worn on one side');
  await expect(entry).toContainText('This bore’s readings name the same.');
  // Its own map and the made-up one, side by side.
  await expect(entry.locator('.gallery-side svg[aria-label^="The wall"]')).toHaveCount(2);
  await expect(entry).toContainText('this gauge cannot see that it is out of round');
  await page.keyboard.press('ArrowRight');
  await expect(entry).toContainText('2 of 18');
  await expect(page).toHaveURL(/#wear-patterns\/oval$/);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect(entry).toContainText('1 of 18');
  await page.goBack();
  await expect(entry).toContainText('2 of 18');
  await page.getByRole('button', { name: 'Back to the notebook' }).click();
  await expect(page.locator('section[data-section="measure"]')).toBeVisible();
  await expect(page).not.toHaveURL(/#wear-patterns/);
});

test('a link opens its pattern; on a phone nothing runs out of the page', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('#wear-patterns/two-ear-skew');
  const entry = page.locator('.gallery-entry');
  await expect(entry).toContainText('18 of 18');
  await expect(entry.getByRole('img', { name: /^Two ears cut along/ })).toBeVisible();
  for (const name of ['Three-lobed', 'Barrel: widest in the middle']) {
    await page.getByRole('link', { name }).click();
    await expect(entry.getByRole('heading', { level: 3 })).toHaveText(name);
    await expect(entry.locator('.gallery-side')).toHaveCount(2);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
    ).toBeLessThanOrEqual(0);
  }
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New job' }).click();
  await expect(page.getByRole('heading', { name: 'New job' })).toBeVisible();
});
