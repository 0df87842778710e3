/** What is at hand is ticked once, by keyboard or finger, stays on the device, and the next reading keeps to it. */
import { dropFile, OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

test('the next reading is sought with the gauges that are ticked, in every job and after a reload', async ({
  page,
}) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const said = page.locator('#measure .at-hand > span');
  await expect(said).toHaveText(
    'Gauges at hand: telescoping gauge and micrometer; dial indicator, swept.',
  );
  const next = page.locator('.next-line');
  await expect(next).toContainText('with the telescoping gauge');

  const change = page.getByRole('button', { name: 'Change the gauges at hand' });
  await change.press('Enter');
  await page.getByLabel('Dial bore gauge', { exact: true }).press(' ');
  await page.getByLabel('Telescoping gauge and micrometer', { exact: true }).press(' ');
  await page.getByLabel('Dial indicator, swept', { exact: true }).press(' ');
  await page.keyboard.press('Escape');
  await expect(change).toBeFocused();
  await expect(said).toHaveText('Gauges at hand: dial bore gauge.');
  await expect(next).toContainText('with the dial bore gauge');
  await expect(next).not.toContainText('dial indicator');

  await page.reload();
  await expect(said).toHaveText('Gauges at hand: dial bore gauge.');
  // The job holds no such gauge yet: going to the reading brings it in.
  await next.getByRole('button', { name: / deep$/ }).click();
  await expect(page.getByLabel('Gauge', { exact: true }).locator('option:checked')).toHaveText(
    'Dial bore gauge',
  );
});

test('a shop document dropped on the page counts, a gauge of its own can be put back, and a bad one is one sentence', async ({
  page,
}) => {
  // Without a chooser of the system's own, saving is a download.
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
  });
  await visit(page);
  const said = page.locator('#measure .at-hand > span');
  const shop = (kind: string) =>
    JSON.stringify({
      format: 'roundhand-shop',
      version: 1,
      gauges: [{ id: 'g1', kind, type: 'dial-bore', name: 'Long dial bore gauge' }],
      tools: [],
      stock: [],
      rates: [],
      squeezes: [],
    });
  await dropFile(page, 'shop.json', shop('laser'));
  await expect(page.locator('.notices')).toContainText(
    'shop.json: gauge “Long dial bore gauge”, “kind” is “laser”; it should be one of',
  );
  await dropFile(page, 'shop.json', shop('two-point'));
  await expect(page.locator('.notices')).toContainText('What is at hand is now as shop.json says.');
  await expect(said).toHaveText('Gauges at hand: dial bore gauge.');
  await expect(page.locator('.next-line')).toContainText('with the long dial bore gauge');

  await page.getByRole('button', { name: 'Change the gauges at hand' }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save this list to a file' }).click();
  expect((await saving).suggestedFilename()).toBe('shop.roundhand-shop.json');
  await page.getByLabel('Dial bore gauge', { exact: true }).uncheck();
  await expect(said).toHaveText('Gauges at hand: none.');
  await page.getByRole('button', { name: 'put back what was at hand before' }).click();
  await expect(said).toHaveText('Gauges at hand: dial bore gauge.');
});

test.describe('with a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('every box is as high as a finger, and the list stays within the page', async ({ page }) => {
    await visit(page);
    await page.getByRole('button', { name: 'Change the gauges at hand' }).tap();
    const labels = page.locator('.kinds label');
    await expect(labels).toHaveCount(7);
    for (const label of await labels.all()) {
      const box = (await label.boundingBox())!;
      expect(box.height).toBeGreaterThanOrEqual(48);
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(390);
    }
    await labels.filter({ hasText: 'Dial bore gauge' }).tap();
    await expect(page.locator('#measure .at-hand > span')).toContainText('dial bore gauge');
  });
});
