/** The contact pressure on map and drawing: with the section, by hand, in the key and in words. */
import type { Page } from '@playwright/test';
import { visit, withoutScene } from './bench.ts';
import { expect, test } from './page.ts';

/** Scrolls to a section, once all of the notebook is there and nothing moves it any more. */
async function read(page: Page, section: string): Promise<void> {
  await expect(page.locator('.fit-fold').first()).toBeAttached();
  await expect(async () => {
    const place = page.locator(`section[data-section="${section}"]`);
    await place.evaluate((element) =>
      element.scrollIntoView({ block: 'start', behavior: 'instant' }),
    );
    const { y } = (await place.boundingBox())!;
    await page.waitForTimeout(500);
    expect((await place.boundingBox())!.y).toBe(y);
  }).toPass();
}

test('comes with the fit, is switched by hand in any section, and is told in key and words', async ({
  page,
}) => {
  await withoutScene(page);
  await page.setViewportSize({ width: 1440, height: 900 });
  await visit(page);
  const key = page.getByRole('list', { name: 'Key to the contact pressure' });
  const map = page.getByRole('application', { name: /Flat map/ });
  const lines = map.getByRole('img', { name: /Where the bushing presses/ });
  await expect(map).toBeVisible();
  await expect(key).toHaveCount(0);
  await read(page, 'fit');
  await expect(key).toContainText(/presses [\d ·]+ psi/);
  // The greatest is the one that the notebook says.
  const hardest = (await key.getByText(/^hardest/).textContent())!.replace('hardest ', '');
  await expect(page.locator('section[data-section="fit"]')).toContainText(`to ${hardest} at`);
  await expect(lines).toHaveAccessibleName(new RegExp(`to ${hardest} at .*Lines at [\\d, ]+ psi`));
  await map.focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.locator('.drawing-readout')).toHaveText(/; (pressed with \d+ psi|no contact)/);
  await read(page, 'read');
  await expect(key).toHaveCount(0);
  // By hand in any section, without a drawing in three dimensions too.
  await page.getByRole('checkbox', { name: 'where the bushing presses' }).check();
  await expect(key).toBeVisible();
});

test('is switched on by hand, and off while the fit is read', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await visit(page);
  const key = page.getByRole('list', { name: 'Key to the contact pressure' });
  const stage = page.getByRole('application', { name: /in three dimensions/ });
  await page.getByRole('button', { name: 'Also show, in the drawing' }).press('Enter');
  const box = page.getByRole('checkbox', { name: 'where the bushing presses' });
  await expect(box).not.toBeChecked();
  await box.press('Space');
  await expect(key).toBeVisible();
  await expect(stage).toHaveAccessibleName(/Shown on it: .*where the bushing presses\. .*Lines at/);
  await box.press('Space');
  await expect(key).toHaveCount(0);
  await page.keyboard.press('Escape');
  await read(page, 'fit');
  await expect(page.locator('.fit-fold').first()).toBeVisible();
  await expect(key).toHaveCount(0);
});
