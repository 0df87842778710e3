/** The chart of target sizes has its handle under finger and keys; two stages are compared, swept and left again. */
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

test('dragging the handle moves the target, the words and the metal with it', async ({ page }) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const handle = page.getByRole('slider', { name: 'Target diameter, across' });
  const words = page.locator('.trade-off-words');
  await expect(words).toContainText('At 50.800 mm across');
  await handle.scrollIntoViewIfNeeded();
  const box = (await handle.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y);
  await page.mouse.move(x + 60, y);
  await page.mouse.up();
  const size = async () => Number(await handle.getAttribute('aria-valuenow'));
  expect(await size()).toBeGreaterThan(50.8);
  await expect(words).toContainText(`At ${(await size()).toFixed(3)} mm across`);
  // One drag is one step back.
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(words).toContainText('At 50.800 mm across');
  await page.getByText('The same as a table').click();
  // A row of the table, or a card where the notebook has no room for one.
  const usual = page.locator('tr, .row-cards > li').filter({ hasText: 'bushing less press fit' });
  await expect(usual).toContainText('50.800');
});

test('two stages are laid over each other from the bar, swept by key, told in words, and left', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await visit(page);
  await page.getByRole('button', { name: 'Compare with another stage' }).click();
  const menu = page.locator('.stages .menu');
  await menu.getByRole('button', { name: 'After squeezing' }).click();
  const sweep = page.getByRole('slider', { name: 'From As found to After squeezing' });
  await expect(sweep).toHaveAttribute('aria-valuetext', 'As found');
  await sweep.focus();
  await page.keyboard.press('End');
  await expect(sweep).toHaveAttribute('aria-valuetext', 'After squeezing');
  await expect(page.locator('#read')).toContainText('From As found to After squeezing');
  await expect(page.locator('.what-changed')).toContainText(/12–6 closed by 0\.0\d+ in across/);
  await page.getByRole('button', { name: 'what changed' }).click();
  await expect(page.getByRole('img', { name: /closed in or built up/ }).first()).toBeVisible();
  // Nothing of the bar is wider than the page.
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  await page.locator('.compare-band').getByRole('button', { name: 'back', exact: true }).click();
  await expect(page.locator('.compare-band')).toHaveCount(0);
  await expect(page.locator('.what-changed')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Compare with another stage' })).toBeFocused();
});
