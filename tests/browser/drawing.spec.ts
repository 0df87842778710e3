import type { Locator, Page } from '@playwright/test';
import { visit } from './bench.ts';
import { expect, test } from './page.ts';

/** Counts what WebGL draws: `draws` in all, `frames` by the clearing that begins each. */
async function countDraws(page: Page): Promise<() => Promise<{ draws: number; frames: number }>> {
  await page.addInitScript(() => {
    const counted = { draws: 0, frames: 0 };
    Object.assign(globalThis, { counted });
    const own = WebGL2RenderingContext.prototype;
    const { clear } = own;
    for (const name of [
      'drawElements',
      'drawArrays',
      'drawElementsInstanced',
      'drawArraysInstanced',
    ] as const) {
      const drawing = own[name] as (...args: unknown[]) => void;
      own[name] = function (this: WebGL2RenderingContext, ...args: unknown[]) {
        counted.draws += 1;
        Reflect.apply(drawing, this, args);
      };
    }
    own.clear = function (...args) {
      counted.frames += 1;
      return clear.apply(this, args);
    };
  });
  return () =>
    page.evaluate(() => ({
      ...(globalThis as unknown as { counted: { draws: number; frames: number } }).counted,
    }));
}

/** Waits until nothing has been drawn for a second. */
async function stillness(drawn: () => Promise<{ draws: number }>): Promise<number> {
  let before = -1;
  await expect
    .poll(
      async () => {
        const { draws } = await drawn();
        const still = draws > 0 && draws === before;
        before = draws;
        return still;
      },
      { intervals: [1000], timeout: 60_000 },
    )
    .toBe(true);
  return before;
}

async function pointAtShare(page: Page, of: Locator, x: number, y: number): Promise<void> {
  const box = (await of.boundingBox())!;
  await page.mouse.move(box.x + x * box.width, box.y + y * box.height);
}

const readout = (page: Page) => page.locator('.drawing-readout');
const map = (page: Page) => page.getByRole('application', { name: /Flat map/ });

test('nothing is drawn while nothing moves, and at most 12 calls draw a frame', async ({
  page,
}) => {
  const drawn = await countDraws(page);
  await visit(page);
  const before = await stillness(drawn);
  await page.waitForTimeout(1500);
  expect((await drawn()).draws).toBe(before);
  const from = await drawn();
  await page.getByLabel(/Roll the bore out/).press('ArrowRight');
  await expect.poll(async () => (await drawn()).frames).toBeGreaterThan(from.frames);
  await stillness(drawn);
  const to = await drawn();
  expect((to.draws - from.draws) / (to.frames - from.frames)).toBeLessThanOrEqual(12);
});

test('3 o’clock is on the right in the scene and on the map, and the same place in table and text', async ({
  page,
}) => {
  const drawn = await countDraws(page);
  await page.setViewportSize({ width: 1440, height: 900 });
  await visit(page);
  await stillness(drawn);
  const canvas = page.locator('canvas').first();
  // Seen from the left and above, the wall at 3 o'clock shows on the right of the opening, the wall at 6 below. The
  // piece is as large as the height of its picture allows.
  const box = (await canvas.boundingBox())!;
  const across = (heights: number) => 0.5 + (heights * box.height) / box.width;
  await pointAtShare(page, canvas, across(0.32), 0.46);
  await expect(readout(page)).toHaveText(/^(2:[3-5]\d|3:\d\d|4:00), /);
  await pointAtShare(page, canvas, across(0.157), 0.73);
  await expect(readout(page)).toHaveText(/^(5:\d\d|6:\d\d), /);

  // The map runs 6 ... 12 ... 6: three quarters across is 3 o'clock, one quarter is 9.
  const wall = map(page).locator('> svg');
  await expect(wall).toBeVisible();
  await pointAtShare(page, wall, 0.5 + 0.235, 0.5);
  await expect(readout(page)).toHaveText(/^(2:[3-5]\d|3:\d\d), .+ deep: .*per side/);
  const shown = (await readout(page).textContent())!;
  const near = page.locator('td[data-near="true"]');
  await expect(near).toHaveCount(1);
  await pointAtShare(page, wall, 0.5 - 0.2, 0.5);
  await expect(readout(page)).toHaveText(/^(8:\d\d|9:\d\d), /);
  expect(await readout(page).textContent()).not.toBe(shown);
});

test('the map is read by arrow keys', async ({ page }) => {
  await visit(page);
  await map(page).focus();
  await page.keyboard.press('Home');
  await expect(readout(page)).toHaveText(/deep: /);
  const first = await readout(page).textContent();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowDown');
  await expect(readout(page)).not.toHaveText(first!);
  await page.keyboard.press('Escape');
  await expect(readout(page)).toHaveText(/^Point at/);
});

test('cut in half and flat are a button away, and the roll goes there by itself', async ({
  page,
}) => {
  const drawn = await countDraws(page);
  await visit(page);
  await stillness(drawn);
  await page.getByRole('button', { name: 'Flat', exact: true }).click();
  await expect(page.getByLabel(/Roll the bore out/)).toHaveValue('1');
  await page.getByRole('button', { name: 'Cut in half' }).click();
  await expect(page.locator('.drawing-head')).toContainText('Cut in half');
  await page.getByRole('button', { name: 'Rim', exact: true }).click();
  await expect(page.getByLabel(/Roll the bore out/)).toHaveValue('0');
  await expect(page.locator('.drawing-head')).toContainText('Looking in at face A');
});

test('with everything laid over it a frame takes at most 12 calls; what is shown is said in words', async ({
  page,
}) => {
  const drawn = await countDraws(page);
  await visit(page);
  await stillness(drawn);
  await page.getByRole('button', { name: 'Also show, in the drawing' }).press('Enter');
  const choices = page.getByRole('group', { name: 'What the drawing shows' });
  const stage = page.getByRole('application', { name: /in three dimensions/ });
  for (const box of await choices.getByRole('checkbox').all()) {
    if (!(await box.isChecked())) await box.press('Space');
    await expect(box).toBeChecked();
  }
  await expect(stage).toHaveAccessibleName(
    /Shown on it: readings, as pins; .*bushing and pin; where the bushing presses\./,
  );
  await expect(stage).toHaveAccessibleName(/Circles at .* deep, across: biggest plug \d/);
  await expect(page.getByRole('list', { name: 'Key to the lines' })).toContainText('average round');
  await stillness(drawn);
  const from = await drawn();
  await page.getByLabel(/Roll the bore out/).press('ArrowRight');
  await expect.poll(async () => (await drawn()).frames).toBeGreaterThan(from.frames);
  await stillness(drawn);
  const to = await drawn();
  const calls = (to.draws - from.draws) / (to.frames - from.frames);
  // Wall, metal, pins, films, lines, bushing with pin, letters: seven, so that something would be missed by fewer.
  expect(calls).toBeGreaterThanOrEqual(7);
  expect(calls).toBeLessThanOrEqual(12);
});

test('the cut is moved by its grip, by keys and by pointer, and the map follows', async ({
  page,
}) => {
  const drawn = await countDraws(page);
  await visit(page);
  await stillness(drawn);
  const grip = page.getByRole('slider', { name: /^Cut line, where/ });
  await expect(grip).toHaveAttribute('aria-valuetext', 'at 6:00');
  await grip.press('PageUp');
  await expect(grip).toHaveAttribute('aria-valuetext', 'at 7:00');
  await grip.press('ArrowLeft');
  await expect(grip).toHaveAttribute('aria-valuetext', 'at 6:45');
  await stillness(drawn);
  // Seen from the left and above, 3 o'clock is right of the hole's middle, about as high as the middle is.
  const box = (await grip.boundingBox())!;
  const canvas = (await page.locator('canvas').first().boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(
    canvas.x + canvas.width / 2 + 0.42 * canvas.height,
    canvas.y + 0.45 * canvas.height,
    {
      steps: 6,
    },
  );
  await page.mouse.up();
  await expect(grip).toHaveAttribute('aria-valuetext', /^at (2:30|2:45|3:00|3:15|3:30)$/);
  // The map begins at the cut.
  const said = await grip.getAttribute('aria-valuetext');
  const hour = Number(said!.split(' ')[1]!.split(':')[0]);
  const stage = page.getByRole('application', { name: /in three dimensions/ });
  await expect(stage).toHaveAccessibleName(new RegExp(`The cut line is at ${hour}:`));
  await stage.press(']');
  await expect(page.getByLabel(/Roll the bore out/)).toHaveValue('0.05');
});
