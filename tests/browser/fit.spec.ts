/** The fit on the page: the answers first with a way to their parts, and every part followed as things are typed. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { violations } from './axeFound.ts';
import { dropFile, visit, withoutScene } from './bench.ts';
import { expect, test } from './page.ts';

const fitOf = (page: Page) => page.locator('section[data-section="fit"]');
const foldOf = (page: Page, title: string) =>
  fitOf(page).locator('.fit-fold', { has: page.locator('summary', { hasText: title }) });

async function enter(field: Locator, text: string) {
  await field.fill(text);
  await field.press('Enter');
}

/** Before anybody has read the bushing's own bore. */
function unread(job: string): string {
  const whole = JSON.parse(job);
  for (const one of whole.features) {
    one.surveys = one.surveys.filter(({ stage }: { stage: string }) => stage !== 'fitted');
  }
  return JSON.stringify(whole);
}

async function openFit(page: Page, file?: string, change = (job: string) => job) {
  await withoutScene(page);
  await visit(page);
  if (file !== undefined) {
    const path = join(import.meta.dirname, '../../demo-data', file);
    await dropFile(page, file, change(readFileSync(path, 'utf8')));
  }
  // The page is drawn anew for a job that was dropped on it.
  await expect(() => fitOf(page).scrollIntoViewIfNeeded({ timeout: 2000 })).toPass();
  await expect(fitOf(page).locator('.fit-short').first()).toContainText('Goes in?');
}

test('press fit, metals, contact, running clearance, side gap and order of work', async ({
  page,
}) => {
  await openFit(page, 'slipway-winch.roundhand.json', unread);
  const short = fitOf(page).locator('.fit-short');
  await expect(short).toContainText('it clears the pin by 0.0050 in to 0.0062 in across');

  await short.getByRole('button', { name: 'Where it presses' }).click();
  const round = foldOf(page, 'Where it presses');
  await expect(round.locator('> summary')).toBeFocused();
  await expect(round).toContainText('The widest gap that is left is');
  await expect(round.getByRole('img', { name: /Where the bushing presses/ })).toBeVisible();

  // A pin that fills the bore is told at once, above and in its part.
  await enter(fitOf(page).getByLabel('The pin that runs here, place 1, across'), '1.5050');
  await expect(short).toContainText('No: it clears the pin by');
  const running = foldOf(page, 'How freely the pin runs');
  await expect(running.locator('> summary')).toContainText('the pin does not go in');
  await running.locator('> summary').click();
  await expect(running).toContainText('Hone the bushing’s bore evenly until a straight bar of');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(short).toContainText('As near as can be told: it clears the pin by');

  // Without an inside the field for it is one jump away.
  const inside = fitOf(page).getByLabel('Inside of “New heel bushing”, across');
  await enter(inside, '');
  await expect(short).toContainText('Not known: the bushing’s inside diameter is not given.');
  await fitOf(page).getByRole('button', { name: 'the bushing’s inside diameter' }).click();
  await expect(inside).toBeFocused();
  await enter(inside, '1.5060');
  await expect(short).toContainText('As near as can be told: it clears the pin by');

  // A metal of one's own counts where it is chosen.
  const metals = foldOf(page, 'Metals and their figures');
  await metals.locator('> summary').click();
  await enter(metals.getByLabel('Name of a metal of your own'), 'Harrow bronze');
  const press = foldOf(page, 'Press fit');
  await expect(press).toHaveAttribute('open');
  await press.getByLabel('Metal of New heel bushing').selectOption('Harrow bronze');
  await expect(press).toContainText('a bushing of Harrow bronze');

  const side = foldOf(page, 'Side gap');
  await expect(side.locator('> summary')).toContainText('at most 0.040 in is wanted');
  await enter(side.getByLabel('Greatest side gap'), '0.060');
  await expect(side.locator('> summary')).toContainText('as wanted');
  // What its own mending does not shut under the hand.
  await expect(side).toHaveAttribute('open');

  const order = foldOf(page, 'Order of the work');
  await order.locator('> summary').click();
  await order.getByRole('checkbox').first().check();
  await expect(order.locator('> summary')).toContainText(
    /^Order of the work\s*1 of \d+ steps done/,
  );
});

test('several bores on one pin follow what is read from the bar', async ({ page }) => {
  await openFit(page, 'orchard-lift-clevis.roundhand.json');
  const pin = foldOf(page, 'Several bores on one pin');
  const line = pin.locator('.fit-line');
  await expect(line).toContainText('largest straight pin 38.');
  if ((await pin.getAttribute('open')) === null) await pin.locator('> summary').click();
  await pin.getByText('Read how the bores stand to each other').click();
  const before = await line.textContent();
  for (const [clock, gap] of [
    ['12', '0.40'],
    ['6', '0.10'],
    ['3', '0.25'],
    ['9', '0.25'],
  ] as const) {
    await enter(pin.getByLabel(`Right ear, face A, bar reading at ${clock} o’clock`), gap);
  }
  await expect(line).not.toHaveText(before ?? '');
});

test('the folds by keyboard alone, remembered over a reload, all open on paper', async ({
  page,
}) => {
  await openFit(page);
  await fitOf(page).locator('.fit-jump', { hasText: 'Press fit' }).first().focus();
  await page.keyboard.press('Enter');
  const press = foldOf(page, 'Press fit');
  await expect(press.locator('> summary')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(press).not.toHaveAttribute('open');
  const order = foldOf(page, 'Order of the work');
  await order.locator('> summary').focus();
  await page.keyboard.press('Space');
  await expect(order).toHaveAttribute('open');
  // It is kept a moment later.
  const kept = () => page.evaluate(() => localStorage.getItem('roundhand-place') ?? '');
  await expect.poll(kept).toMatch(/order":true/);
  await page.reload();
  await expect(order).toHaveAttribute('open');
  await expect(press).not.toHaveAttribute('open');
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await expect(press).toHaveAttribute('open');
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await expect(press).not.toHaveAttribute('open');
  await expect(order).toHaveAttribute('open');
});

test('no violation with every part open, in three themes and on a phone', async ({ page }) => {
  await openFit(page, 'slipway-winch.roundhand.json');
  for (const fold of await fitOf(page).locator('.fit-fold').all()) {
    if ((await fold.getAttribute('open')) === null) await fold.locator('> summary').click();
  }
  for (const theme of ['light', 'dark', 'sunlight']) {
    await page.evaluate((value) => {
      document.documentElement.dataset.theme = value;
    }, theme);
    expect(await violations(page, 'section[data-section="fit"]'), theme).toEqual([]);
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await expect(fitOf(page).locator('.row-cards').first()).toBeVisible();
  expect(await violations(page, 'section[data-section="fit"]'), 'phone').toEqual([]);
  const sideways = await page.evaluate(
    () =>
      [...document.querySelectorAll('section[data-section="fit"] .table-room')].filter(
        (one) => one.scrollWidth > one.clientWidth,
      ).length,
  );
  expect(sideways).toBe(0);
});
