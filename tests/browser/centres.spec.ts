/** The centre: each rule is a tap and one step back; set by hand, its cross is moved by pointer and by keys. */
import type { Page } from '@playwright/test';
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

async function planned(page: Page) {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  const choice = page.locator('.centre-choice');
  await expect(choice.locator('td').first()).toBeVisible({ timeout: 30_000 });
  return choice;
}

test('each rule is chosen by a tap, and one undo takes it back; the partner says what it lacks', async ({
  page,
}) => {
  const choice = await planned(page);
  const rule = (name: RegExp) => choice.getByRole('radio', { name });
  await expect(rule(/^Least metal off/)).toBeChecked();
  await expect(rule(/^Line up with the partner/)).toBeDisabled();
  await expect(choice).toContainText('This job holds no other bore on the same pin: add it');
  for (const name of [/^Keep the old centre/, /^Least greatest cut/, /^By hand/]) {
    await rule(name).check();
    await expect(choice.locator('tbody[data-chosen="true"]')).toContainText(name.source.slice(1));
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(rule(/^Least metal off/)).toBeChecked();
  }
});

test('the cross of a centre set by hand is dragged and moved by keys; map and costs follow', async ({
  page,
}) => {
  const choice = await planned(page);
  await choice.getByRole('radio', { name: /^By hand/ }).check();
  const cross = page.getByRole('slider', { name: /^Centre of the target/ });
  const far = choice.getByRole('textbox', { name: 'Centre at face A: how far' });
  const clock = choice.getByRole('textbox', { name: 'Centre at face A: toward which' });
  await far.fill('0');
  await far.press('Enter');
  await expect(cross).toHaveAttribute('aria-valuetext', 'not at all');
  const moves = choice.locator('tbody[data-chosen="true"] td').last();
  const before = await moves.textContent();
  await cross.focus();
  for (let i = 0; i < 5; i += 1) await page.keyboard.press('Shift+ArrowRight');
  // Five times ten steps of 0.002 mm.
  await expect(cross).toHaveAttribute('aria-valuetext', '0.100 mm toward 3:00');
  await expect(far).toHaveValue('0.100');
  await expect(clock).toHaveValue('3:00');
  await expect(moves).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(cross).toHaveAttribute('aria-valuetext', 'not at all');
  const box = (await cross.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 6, { steps: 3 });
  await page.mouse.up();
  await expect(clock).toHaveValue('6:00');
  await expect(cross).toHaveAttribute('aria-valuetext', / mm toward 6:00$/);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(cross).toHaveAttribute('aria-valuetext', 'not at all');
});
