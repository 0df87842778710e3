/** The contact pressure on map and drawing: with the section, by hand, in the key and in words. */
import { visit, withoutScene } from './bench.ts';
import { expect, test } from './page.ts';

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
  await page.locator('section[data-section="fit"]').scrollIntoViewIfNeeded();
  await page.locator('section[data-section="fit"]').evaluate((element) => element.scrollIntoView());
  await expect(key).toContainText(/presses [\d ·]+ psi/);
  // The greatest is the one that the notebook says.
  const hardest = (await key.getByText(/^hardest/).textContent())!.replace('hardest ', '');
  await expect(page.getByText(`to ${hardest} at`).first()).toBeVisible();
  await expect(lines).toHaveAccessibleName(new RegExp(`to ${hardest} at .*Lines at [\\d, ]+ psi`));
  await map.focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.locator('.drawing-readout')).toHaveText(/pressed with \d+ psi here|no contact/);
  await page
    .locator('section[data-section="read"]')
    .evaluate((element) => element.scrollIntoView());
  await expect(key).toHaveCount(0);
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
  await page.locator('section[data-section="fit"]').evaluate((element) => element.scrollIntoView());
  await expect(page.locator('.fit-part').first()).toBeVisible();
  await expect(key).toHaveCount(0);
});
