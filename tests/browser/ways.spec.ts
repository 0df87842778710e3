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
  // Low by 0.15 across, the long way 50.95: nobody has answered for heat.
  await expect(advice).toContainText('Advised: oversize bushing');
  const oversize = page.getByRole('radio', { name: 'Oversize bushing' });
  await oversize.focus();
  const band = page.locator('.way-band');
  await expect(band).toContainText('Oversize bushing: as planned');
  await oversize.check();
  const target = page.getByLabel('Target diameter, across').first();
  // 50.95 and the press fit on the next step of 0.02, less the press fit.
  await expect(target).toHaveValue(/^50\.9[5-9]/);
  await expect(page.getByLabel('Way of mending')).toHaveValue('oversize');
  await band.getByRole('button', { name: 'back' }).click();
  await expect(band).toBeHidden();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(target).toHaveValue('50.800');
  await expect(page.getByLabel('Way of mending')).toHaveValue('undecided');
  for (const [rule, to] of [
    ['Low spots that a squeeze closes', '0.05'],
    ['Low spots that a larger bushing takes up', '0.1'],
  ] as const) {
    const limit = page.getByLabel(rule);
    await limit.fill(to);
    await limit.press('Enter');
  }
  await expect(advice).toContainText('Advised: bore out and sleeve');
  await expect(advice).toContainText('Weld up and cut again would come first');
});
