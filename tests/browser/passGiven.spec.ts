/** A pass is given to the bench by keys alone: it is kept, the focus stays, the paper names it, undo takes it back. */
import { violations } from './axeFound.ts';
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

test('a pass that is given to the bench stays as it was, on the page and on paper', async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.print = () => undefined;
  });
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const part = page.getByRole('region', { name: 'This pass on the bench' });
  const give = part.getByRole('button', { name: 'Give this pass to the bench' });
  await expect(give).toHaveAttribute('aria-disabled', 'false');
  await give.focus();
  await page.keyboard.press('Enter');
  await expect(part).toContainText(
    /Given to the bench on \d{4}-\d\d-\d\d: Pass 1: 0\.\d+ mm per side/,
  );
  await expect(part.getByRole('button')).toHaveCount(0);
  await expect(part).toBeFocused();
  expect(await violations(page), 'passes').toEqual([]);
  const said = await part.getByRole('status').textContent();

  const line = page.locator('p', { hasText: 'Print this pass for the bench' });
  await line.getByRole('button', { name: 'on A4' }).click();
  await expect(page.locator('.print-sheet')).toContainText(said ?? 'nothing was said');
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));

  const press = page.getByLabel('Press fit, across', { exact: true });
  await press.fill('0.06');
  await press.press('Enter');
  await expect(part).toContainText('The plan has changed since');
  await expect(part.getByRole('button', { name: 'Give this pass instead' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(part).not.toContainText('The plan has changed since');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(give).toBeVisible();
  await expect(part).not.toContainText('Given to the bench');
});
