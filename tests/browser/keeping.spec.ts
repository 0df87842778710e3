/** What was typed is on the device: a reload comes back to the same place, with the network off as well. */
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

const cell = (row: number, column: number) => `[data-cell="${row}-${column}"]`;

test('a reload comes back to the same place, half-typed reading and all', async ({ page }) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  await page.getByRole('button', { name: 'Add a stage' }).click();
  await page.getByRole('button', { name: 'After squeezing' }).click();
  await page.locator(cell(0, 0)).click();
  await typeReadings(page, [['50.801', '50.802']]);
  await page.keyboard.type('50.8');
  // Half-typed: not entered yet.
  await page.reload();
  await expect(page.getByRole('button', { name: 'After squeezing' })).toHaveAttribute(
    'aria-current',
    'step',
  );
  await expect(page.locator(cell(0, 1))).toHaveValue('50.802');
  await expect(page.locator(cell(0, 2))).toHaveValue('50.8');
  await page.locator(cell(0, 2)).focus();
  await page.keyboard.type('03');
  await page.keyboard.press('Enter');
  await expect(page.locator(cell(0, 2))).toHaveValue('50.803');

  await page.getByRole('button', { name: 'As found' }).click();
  await expect(page.locator('section[data-section="plan"]')).toContainText('High spots');
  await page.locator('#plan').evaluate((plan) => plan.scrollIntoView({ behavior: 'instant' }));
  // How far down is noted when the scrolling rests.
  await page.waitForTimeout(600);
  const before = await page.evaluate(() => scrollY);
  expect(before).toBeGreaterThan(200);
  await page.reload();
  await expect(page.getByRole('button', { name: 'As found' })).toHaveAttribute(
    'aria-current',
    'step',
  );
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(before - 5);
  expect(await page.evaluate(() => scrollY)).toBeLessThan(before + 5);
});

test('an edit is on the device the moment it is made: a crash loses nothing', async ({
  page,
  context,
}) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, [['50.811', '50.822']]);
  await expect(page.locator(cell(0, 1))).toHaveValue('50.822');
  // Closed without a word, as a crash would.
  await page.close({ runBeforeUnload: false });
  const again = await context.newPage();
  await again.goto('');
  await expect(again.locator(cell(0, 0))).toHaveValue('50.811');
  await expect(again.locator(cell(0, 1))).toHaveValue('50.822');
});

test('several jobs are kept, gone back to, taken off the device and put back', async ({ page }) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  const title = page.getByLabel('Title of the job');
  await title.fill('First arm');
  await title.press('Enter');
  await startJob(page, OVAL_ALONG_2.ask);
  await title.fill('Second arm');
  await title.press('Enter');
  const menu = page.getByRole('button', { name: 'Menu' });
  await menu.click();
  await page.getByRole('button', { name: /^First arm/ }).click();
  await expect(title).toHaveValue('First arm');
  await menu.click();
  await page.getByRole('button', { name: 'Take Second arm off this device' }).click();
  await expect(page.locator('.notice')).toContainText('“Second arm” is off this device.');
  await expect(page.getByRole('button', { name: /^Second arm/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'put it back' }).click();
  await menu.click();
  await expect(page.getByRole('button', { name: /^Second arm/ })).toBeVisible();
});

test('a device that keeps nothing says so, and the page works on', async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('not here', 'SecurityError');
    };
  });
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, [['50.811']]);
  await expect(page.locator('.notice').first()).toContainText('This device does not keep the job');
  await expect(page.locator(cell(0, 0))).toHaveValue('50.811');
});

test('with the network off, a reload and a new reading still give an answer', async ({
  page,
  context,
}) => {
  await visit(page);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  await context.setOffline(true);
  await page.reload();
  const read = page.locator('section[data-section="read"]');
  await expect(read).toContainText('Across 2–8');
  await page.locator(cell(0, 0)).click();
  await page.keyboard.type('51.2');
  await page.keyboard.press('Enter');
  // A reading so far out moves the answer; that it moves shows that it was worked out here.
  await expect(read).not.toContainText('0.300 mm wider than across 5–11');
  await expect(page.getByLabel('Drawing of the bore').locator('canvas, svg').first()).toBeVisible();
});
