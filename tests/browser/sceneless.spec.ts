/** Without WebGL, with less motion, and by finger: the drawing still does its work. */
import { visit, withoutScene } from './bench.ts';
import { expect, test } from './page.ts';

test('where there is no WebGL the drawing says so, and the map is read as ever', async ({
  page,
}) => {
  await withoutScene(page);
  await page.setViewportSize({ width: 1440, height: 900 });
  await visit(page);
  await expect(page.locator('.drawing-sceneless')).toContainText('has no WebGL');
  await expect(page.locator('canvas')).toHaveCount(0);
  await page.getByRole('application', { name: /Flat map/ }).focus();
  await page.keyboard.press('Home');
  await expect(page.locator('.drawing-readout')).toHaveText(/, 0\.00 in deep: /);
  // The sheets have the scene's room: all three are seen at once, and each of them moves the cursor.
  await page.getByRole('application', { name: /Cut across/ }).focus();
  const before = await page.locator('.drawing-readout').textContent();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(page.locator('.drawing-readout')).not.toHaveText(before!);
  await page.getByRole('application', { name: /Size along the depth/ }).focus();
  await page.keyboard.press('End');
  await expect(page.locator('.drawing-readout')).toHaveText(/, 2\.75 in deep: /);
});

test('with less motion asked for, a view is there in one step', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.setViewportSize({ width: 1440, height: 900 });
  await visit(page);
  const canvas = page.locator('canvas').first();
  const frames = () => canvas.getAttribute('data-frames').then(Number);
  await expect.poll(frames).toBeGreaterThan(0);
  await page.waitForTimeout(2000);
  const before = await frames();
  await page.getByRole('button', { name: 'Flat', exact: true }).click();
  await expect.poll(frames).toBeGreaterThan(before);
  await page.waitForTimeout(2000);
  // One for the session's change, one more where the button's own change of layout asked again.
  expect((await frames()) - before).toBeLessThanOrEqual(2);
});

test.describe('by finger', () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } });

  test('a tap on the wall, and on the map, reads the place', async ({ page }) => {
    await visit(page);
    const readout = page.locator('.drawing-readout');
    const canvas = page.locator('canvas').first();
    await expect.poll(() => canvas.getAttribute('data-frames').then(Number)).toBeGreaterThan(0);
    await page.waitForTimeout(1500);
    const box = (await canvas.boundingBox())!;
    await page.touchscreen.tap(box.x + 0.5 * box.width, box.y + 0.63 * box.height);
    await expect(readout).toHaveText(/deep: /);
    const first = await readout.textContent();
    await page.getByRole('button', { name: 'Map', exact: true }).click();
    const map = (await page.locator('.map-view > svg').boundingBox())!;
    await page.touchscreen.tap(map.x + 0.3 * map.width, map.y + 0.5 * map.height);
    await expect(readout).not.toHaveText(first!);
    await expect(readout).toHaveText(/^[89]:\d\d, |^10:\d\d, /);
  });
});
