/** A word of the trade explains itself where it stands, by finger and by keyboard, and nothing else moves. */
import { visit } from './bench.ts';
import { expect, test } from './page.ts';

test('the first of each term in a section is a button; its card opens in place and gives the focus back', async ({
  page,
}) => {
  await visit(page);
  const read = page.locator('#read');
  const marked = read.locator('[data-marked]');
  await expect.poll(() => marked.count()).toBeGreaterThan(5);
  const ids = await marked.evaluateAll((all) =>
    all.map((one) => (one as HTMLElement).dataset.term),
  );
  expect(new Set(ids).size).toBe(ids.length);
  // A word that is said again further down is plain there.
  expect(await read.locator('[data-term]').count()).toBeGreaterThan(ids.length);

  const word = read.locator('[data-marked][data-term="bell-mouth"]');
  await word.focus();
  const high = () => page.evaluate(() => document.documentElement.scrollHeight);
  let height = Number.NaN;
  // What is fetched or settled late makes the page longer, with or without a card.
  await expect(async () => {
    height = await high();
    await page.waitForTimeout(700);
    expect(await high()).toBe(height);
  }).toPass({ timeout: 20_000 });
  await page.keyboard.press('Enter');
  const card = page.getByRole('dialog');
  await expect(card).toBeFocused();
  await expect(card).toHaveAccessibleName('Bell-mouth');
  await expect(card.getByRole('img', { name: 'Picture: Bell-mouth' })).toBeVisible();
  await expect(word).toHaveAttribute('aria-expanded', 'true');
  expect(await high()).toBe(height);
  await page.keyboard.press('Escape');
  await expect(card).toHaveCount(0);
  await expect(word).toBeFocused();
  await expect(word).not.toHaveAttribute('aria-expanded', 'true');

  // On by Tab is on from the word.
  await page.keyboard.press(' ');
  await page.keyboard.press('Tab');
  await expect(card.getByRole('button', { name: 'Put this away' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(card).toHaveCount(0);
  await expect(word).not.toBeFocused();
  expect(await page.evaluate(() => document.activeElement?.closest('#read') !== null)).toBe(true);
});

test.describe('by finger on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('one card at a time, within the page, gone at a tap elsewhere', async ({ page }) => {
    await visit(page);
    const words = page.locator('#measure [data-marked]');
    await expect.poll(() => words.count()).toBeGreaterThan(2);
    const card = page.getByRole('dialog');
    await page.locator('#measure [data-marked][data-term="press-fit"]').tap();
    await expect(card).toHaveAccessibleName('Press fit');
    const box = (await card.boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
    await page.locator('#measure [data-marked][data-term="across"]').tap();
    await expect(card).toHaveCount(1);
    await expect(card).toHaveAccessibleName('Across');
    await page.locator('#measure-head').tap({ position: { x: 5, y: 5 } });
    await expect(card).toHaveCount(0);
  });
});
