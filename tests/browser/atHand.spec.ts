/** What is at hand is ticked once, by keyboard or finger, stays on the device, and the next reading keeps to it. */
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

test('the next reading is sought with the gauges that are ticked, in every job and after a reload', async ({
  page,
}) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const said = page.locator('.at-hand > span');
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
  await next.getByRole('button').click();
  await expect(page.getByLabel('Gauge', { exact: true }).locator('option:checked')).toHaveText(
    'Dial bore gauge',
  );
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
    await expect(page.locator('.at-hand > span')).toContainText('dial bore gauge');
  });
});
