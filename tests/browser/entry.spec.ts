/** Help for the hand that types: large echo, spoken echo, last digits, the screen kept on, a slip mended by one key. */
import type { Page } from '@playwright/test';
import { OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

const cell = (row: number, column: number) => `[data-cell="${row}-${column}"]`;
const typed = (page: Page) => page.locator('.echo output');
const entered = (page: Page) => page.locator('.echo-last .echo-value');

/** In place of the device's own voice and screen: what was said, and which locks are held. */
async function stubDevice(page: Page, voices: number): Promise<void> {
  await page.addInitScript((count) => {
    const device = { said: [] as string[], locks: 0 };
    Object.assign(window, { device });
    Object.defineProperty(window, 'speechSynthesis', {
      value: {
        cancel: () => undefined,
        speak: ({ text }: SpeechSynthesisUtterance) => device.said.push(text),
        getVoices: () => Array.from({ length: count }),
        addEventListener: () => undefined,
        removeEventListener: () => undefined,
      },
    });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: async () => {
          device.locks += 1;
          const hears: (() => void)[] = [];
          return {
            release: async () => {
              device.locks -= 1;
              for (const hear of hears) hear();
            },
            addEventListener: (_: string, hear: () => void) => hears.push(hear),
          };
        },
      },
    });
  }, voices);
}
const device = (page: Page) =>
  page.evaluate(() => (window as unknown as { device: { said: string[]; locks: number } }).device);

test('each reading is called back with the next place, and the screen stays on while typing', async ({
  page,
}) => {
  await stubDevice(page, 1);
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await page.getByLabel('say readings aloud').check();
  await page.locator(cell(0, 4)).click();
  await typeReadings(page, [['50.81', '50.79']]);
  await expect(entered(page)).toHaveText('50.79');
  await expect
    .poll(async () => (await device(page)).said.slice(0, 2))
    .toEqual([
      'five zero point eight one. Next: five, eleven.',
      'five zero point seven nine. Next: twelve, six, at two three deep.',
    ]);
  expect((await device(page)).locks).toBe(1);
  await expect(page.locator('#measure')).toContainText('The screen is kept on while you type');
  await page.getByLabel('keep the screen on').uncheck();
  await expect.poll(async () => (await device(page)).locks).toBe(0);
  // The device remembers how its owner likes to type.
  await page.reload();
  await expect(page.getByLabel('say readings aloud')).toBeChecked();
  await expect(page.getByLabel('keep the screen on')).not.toBeChecked();
});

test('a browser without a voice says so in words', async ({ page }) => {
  await stubDevice(page, 0);
  await visit(page);
  await page.getByLabel('say readings aloud').check();
  await expect(page.locator('#measure')).toContainText('has no voice here');
});

test('only the last digits are typed, shown whole before they are taken; two-way ones stay out', async ({
  page,
}) => {
  await visit(page);
  await startJob(page, { units: 'in', length: '1.75', outside: '2.0062' });
  await page.getByLabel('only the last digits').check();
  await expect(page.locator('#measure')).toContainText('Type the first reading whole');
  await page.locator(cell(0, 0)).click();
  await typeReadings(page, [['2.0034']]);
  await page.keyboard.type('143');
  await expect(typed(page)).toHaveText('2.0143');
  await page.keyboard.press('Enter');
  await expect(page.locator(cell(0, 1))).toHaveValue('2.0143');
  await page.keyboard.type('543');
  await expect(page.locator('.echo')).toContainText('1.9543 or 2.0543? Type it whole.');
  await page.keyboard.press('Enter');
  await expect(page.locator(cell(0, 2))).toBeFocused();
  await expect(page.locator(cell(0, 2))).toHaveValue('543');
  await page.keyboard.press('Escape');
  await page.keyboard.type('1.9998');
  await page.keyboard.press('Enter');
  await expect(page.locator(cell(0, 2))).toHaveValue('1.9998');
});

test('a slip is said while typing goes on, and one key mends it or leaves it out', async ({
  page,
}) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, OVAL_ALONG_2.rows);
  // One micrometer turn, 0.50 mm, more than was meant.
  const meant = OVAL_ALONG_2.rows[1]![2]!;
  const slip = (Number(meant) + 0.5).toFixed(3);
  await page.locator(cell(1, 2)).click();
  await page.keyboard.type(slip);
  await page.keyboard.press('Enter');
  await expect(page.locator('.doubts')).toContainText('one micrometer turn');
  await expect(page.locator(cell(1, 3))).toBeFocused();
  await expect(page.locator(`td:has(${cell(1, 2)})`)).toHaveAttribute('data-suspect', 'true');
  // While something is being typed, a letter is a letter.
  await page.keyboard.type('5u');
  await expect(page.locator(cell(1, 3))).toHaveValue('5u');
  await page.keyboard.press('Escape');
  await page.keyboard.press('u');
  await expect(page.locator(cell(1, 2))).toHaveValue(meant);
  await expect(entered(page)).toHaveText(meant);
  await expect(page.locator(cell(1, 3))).toBeFocused();
  await expect(page.locator('.doubts')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(page.locator(cell(1, 2))).toHaveValue(slip);
  await expect(page.locator('.doubts')).toContainText('one micrometer turn');
  await page.keyboard.press('x');
  await expect(page.locator(`td:has(${cell(1, 2)})`)).toHaveAttribute('data-left-out', 'true');
});
