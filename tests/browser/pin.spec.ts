/** A pin from its readings to the lathe: typed in, planned, welded up behind the questions, and found too low in one place. */
import { startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

/** 50 across when new; worn by 1.5 across along 12-6, as diameters tell it. */
const WORN = Array.from({ length: 3 }, () => [
  '48.50',
  '48.88',
  '49.62',
  '50.00',
  '49.62',
  '48.88',
]);

test('a pin is typed in, planned, and its survey welded up names what is too low', async ({
  page,
}) => {
  await visit(page);
  await startJob(page, { units: 'mm', length: '45', outside: '50.85' });
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Add the pin, to measure it' }).click();
  for (const [label, text] of [
    ['New size, across', '50'],
    ['Length of the part', '60'],
  ] as const) {
    await page.getByLabel(label).fill(text);
    await page.getByLabel(label).press('Enter');
  }
  for (const depth of ['10', '30', '50']) {
    await page.getByLabel('Depth to add').fill(depth);
    await page.getByLabel('Depth to add').press('Enter');
  }
  await page.locator('[data-cell="0-0"]').click();
  await typeReadings(page, WORN);
  const plan = page.locator('.pin-plan');
  await expect(plan).toContainText('Finished size 50.000 mm across: its new size');
  await expect(plan).toContainText(/0\.7\d* mm per side short/);
  const advice = page.locator('.way-advice');
  await expect(advice).toContainText('Say first what its skin is');
  await page.getByLabel('Skin of the pin').selectOption('hardened');
  await expect(advice).toContainText('Advised: make or buy a new one');
  await page.getByLabel('Skin of the pin').selectOption('plain');
  await expect(advice).toContainText('Advised: weld it up and turn it');
  // No step with heat before its questions are answered.
  await expect(plan).not.toContainText('Stringers along the pin');
  for (const [question, answer] of [
    [/drained/, 'Yes'],
    [/seals/, 'Yes'],
    [/What metal/, 'Plain steel'],
    [/people/, 'No'],
  ] as const) {
    await plan.getByRole('group', { name: question }).getByLabel(answer, { exact: true }).check();
  }
  await expect(plan).toContainText('Stringers along the pin');
  await page.getByRole('button', { name: 'It is cold: measure it welded up' }).click();
  await page.locator('[data-cell="0-0"]').click();
  // 52 across where it is high enough; across 12-6 in the middle 49.6 is left.
  const welded = WORN.map((row, at) =>
    row.map((_, pair) => (at === 1 && pair === 0 ? '49.60' : '52.00')),
  );
  await typeReadings(page, welded);
  await expect(plan).toContainText('weld again here before the lathe');
  await expect(plan).toContainText('Not yet ready for the lathe');
  // Its surface stands in the drawing's room, and beside the plan once that is folded.
  const map = page.getByRole('img', { name: /The outside of the pin rolled out/ });
  await expect(map).toHaveCount(1);
  await expect(page.locator('.outside-drawing').filter({ has: map })).toBeVisible();
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole('button', { name: /fold/ }).click();
  await expect(plan.filter({ has: map })).toBeVisible();
});
