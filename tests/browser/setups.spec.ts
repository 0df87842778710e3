/** What readings share and where they may not go is said in sentences: set-ups, comparators, temperatures, places to keep off. */
import type { Page } from '@playwright/test';
import { OVAL_ALONG_2, openMoreAbout, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

const measure = (page: Page) => page.locator('section[data-section="measure"]');

async function enter(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label).last().fill(text);
  await page.keyboard.press('Enter');
}

test.beforeEach(async ({ page }) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
});

test('set-ups of one indicator: each takes its own readings, and one with readings stays', async ({
  page,
}) => {
  await page.getByLabel('Gauge', { exact: true }).selectOption({ label: 'Dial indicator, swept' });
  const first = page.locator('[data-cell="0-0"]');
  await first.fill('0.03');
  await page.keyboard.press('Enter');
  const choice = page.getByLabel('Set-up that the next readings belong to');
  await choice.selectOption('new');
  await expect(choice.locator('option:checked')).toHaveText('Spindle 2');
  await expect(measure(page).locator('h2')).toContainText('Spindle 2');
  await expect(first).toHaveValue('');
  await choice.selectOption({ label: 'Spindle 1' });
  await expect(first).toHaveValue('0.03');
  await page.getByRole('button', { name: 'take it out', exact: true }).first().click();
  await expect(measure(page)).toContainText('holds readings');
  // Said as two standard deviations, kept as one; the field shows what was said.
  await enter(page, 'How square the spindle is over the bore’s length', '0.05');
  await expect(page.getByLabel('How square the spindle is')).toHaveValue('0.05');
});

test('a comparator: what its needle shows, its sense, and its zero at the end', async ({
  page,
}) => {
  await page.getByLabel('Gauge', { exact: true }).selectOption({ label: 'Dial bore gauge' });
  await page.getByLabel('What is typed of this gauge').selectOption('needle');
  await expect(page.getByLabel('Size at which the gauge was zeroed')).toHaveValue('50.85');
  const first = page.locator('[data-cell="0-0"]');
  await first.fill('0.02');
  await page.keyboard.press('Enter');
  await first.focus();
  await expect(measure(page).locator('.cell-line')).toContainText('50.870 mm');
  await page.getByLabel('What a needle turning clockwise means').selectOption('smaller');
  await expect(measure(page).locator('.cell-line')).toContainText('50.830 mm');
  await enter(page, 'What the gauge showed at the end', '0.02');
  await expect(measure(page)).toContainText('Its zero moved by 0.020 mm across');
});

test('temperatures are asked for together, and what they change is said', async ({ page }) => {
  await typeReadings(page, OVAL_ALONG_2.rows);
  await enter(page, 'Temperature of the part', '40');
  await expect(measure(page)).toContainText('the gauge’s is missing');
  await enter(page, 'Temperature of the gauge', '20');
  // 50.85 mm x 11.5e-6 x 20 = 0.0117 mm.
  await expect(measure(page)).toContainText('0.012 mm across was taken off every reading');
  await expect(measure(page)).toContainText('Too warm to trust');
});

test('a grease hole is kept off, taken out, and put back; a second bushing as well', async ({
  page,
}) => {
  await openMoreAbout(page);
  await page.getByRole('button', { name: 'add a grease hole' }).click();
  await enter(page, 'Begins at this depth', '10');
  await enter(page, 'Ends at this depth', '14');
  await enter(page, 'Clock position of its middle', '12');
  await enter(page, 'Width round the bore', '4');
  await page.getByRole('button', { name: 'take it out: grease hole' }).click();
  await expect(page.getByLabel('Begins at this depth')).toHaveCount(0);
  await page.getByRole('button', { name: 'put it back' }).click();
  await expect(page.getByLabel('Width round the bore')).toHaveValue('4');
  await page.getByRole('button', { name: 'a second bushing sits in this bore' }).click();
  await enter(page, 'Place 1 of the second bushing', '50.84');
  await expect(measure(page)).toContainText('of two bushings the smaller counts, 50.840 mm');
  await page.getByRole('button', { name: 'take the second out' }).click();
  await expect(measure(page)).not.toContainText('of two bushings');
});

test('three tries at one place show their spread, and a gauge of one’s own keeps its name', async ({
  page,
}) => {
  await page.locator('[data-cell="0-0"]').fill('50.80; 50.81; 50.95');
  await page.keyboard.press('Enter');
  await page.locator('[data-cell="0-0"]').focus();
  await expect(measure(page).locator('.cell-line')).toContainText('3 tries within 0.150 mm');
  await page
    .getByLabel('Gauge', { exact: true })
    .selectOption({ label: 'One more: Telescoping gauge and micrometer' });
  await openMoreAbout(page);
  await enter(page, 'Name of this gauge', 'Shop set, 2 to 3 in');
  const gauge = page.getByLabel('Gauge', { exact: true });
  await expect(gauge.locator('option:checked')).toHaveText('Shop set, 2 to 3 in');
  await page.getByRole('button', { name: 'take it off the list' }).click();
  await expect(gauge.locator('option:checked')).toHaveText('Telescoping gauge and micrometer');
});
