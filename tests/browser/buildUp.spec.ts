/** Squeeze, shims and weld: a squeeze goes into the shop's log and out again; the whole plan is printed. */
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

test('what a squeeze brought goes into the log, teaches, and comes out again', async ({ page }) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const plan = page.locator('section[data-section="plan"]');
  await plan.locator('summary', { hasText: 'Squeeze with heat' }).click();
  const part = plan.locator('details', { hasText: 'Squeeze with heat' }).first();
  await expect(part).toContainText('No squeeze stands in this shop’s log yet');
  const enter = async (label: string, value: string) => {
    const field = part.getByLabel(label, { exact: true });
    await field.fill(value);
    await field.press('Enter');
    await expect(field).toHaveValue(value);
  };
  await enter('How far the jaws moved in while hot, across', '0.40');
  await enter('Measured cold along the jaws, across', '50.83');
  await enter('Measured cold straight across from the jaws, across', '50.71');
  // 50.95 along 2-8 and 50.65 across it before: 0.12 of 0.40 stayed, and the mean drew in by (0.12 - 0.06) / 2.
  await expect(part).toContainText('Cold, it closed by 0.12');
  await expect(part).toContainText('70 % sprang back');
  await part.getByRole('button', { name: 'write it to the shop’s log' }).click();
  await expect(part).toContainText('This squeeze stands in the shop’s log.');
  await expect(part).toContainText('One squeeze stands in this shop’s log');
  await expect(part).toContainText('(from one squeeze of this shop)');
  await part.getByRole('button', { name: 'Take squeeze 1 out of the log' }).click();
  await expect(part).toContainText('No squeeze stands in this shop’s log yet');
  await page.getByRole('button', { name: 'put back what was at hand before' }).click();
  await expect(part).toContainText('One squeeze stands in this shop’s log');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(part.getByLabel('Measured cold straight across from the jaws, across')).toHaveValue(
    '',
  );
});

test('the whole plan is printed: map with the face it is seen from, zones, and how it is done', async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.print = () => undefined;
  });
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  await page.getByLabel('Way of mending').selectOption('shim');
  const line = page.locator('p', { hasText: 'Print the whole plan for the bench' });
  await expect(page.locator('#plan')).toContainText('Strips to cut');
  await line.getByRole('button', { name: 'on A4' }).click();
  const sheet = page.locator('.print-sheet');
  await expect(sheet.locator('article')).toHaveCount(2);
  await expect(sheet).toContainText('Clock as seen looking in at face A');
  await expect(sheet).toContainText('How it is done');
  await expect(sheet).toContainText('Strips to cut');
  await page.emulateMedia({ media: 'print' });
  const room = await sheet
    .locator('article')
    .first()
    .evaluate((page) => ({
      has: page.clientHeight,
      needs: page.scrollHeight,
    }));
  // Nothing of the first sheet is cut off.
  expect(room.needs).toBeLessThanOrEqual(room.has);
});
