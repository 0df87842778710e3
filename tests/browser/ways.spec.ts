/** The ways of mending side by side: pointed at they show in the drawing, chosen they bring their size, figures follow. */
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

test('a way is looked at, chosen with its size, taken back; a limit changes the advice', async ({
  page,
}) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const advice = page.locator('.way-advice');
  // Low by 0.15 per side, 0.30 across: more than a squeeze closes.
  await expect(advice).toContainText('Advised: oversize bushing');
  const oversize = page.getByRole('radio', { name: 'Oversize bushing' });
  await oversize.focus();
  const band = page.locator('.way-band');
  await expect(band).toContainText('Oversize bushing: as planned');
  await oversize.check();
  const target = page.getByLabel('Target diameter, across').first();
  // 50.80 + 0.30 and the press fit, on the next step of 0.02, less the press fit.
  await expect(target).toHaveValue(/^51\.1\d/);
  await expect(page.getByLabel('Way of mending')).toHaveValue('oversize');
  await band.getByRole('button', { name: 'back' }).click();
  await expect(band).toBeHidden();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(target).toHaveValue('50.800');
  await expect(page.getByLabel('Way of mending')).toHaveValue('undecided');
  const limit = page.getByLabel(
    'Low spots that a larger bushing takes up are at most across over the target',
  );
  await limit.fill('0.2');
  await limit.press('Enter');
  await expect(advice).toContainText('Advised: bore out and sleeve');
  await expect(advice).toContainText('Weld up and cut again would come first');
});
