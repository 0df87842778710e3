/** Heat, cold and the clock on the page: they follow what is typed, and nothing impossible is left without its sentence. */
import { visit, withoutScene } from './bench.ts';
import { expect, test } from './page.ts';

test('heat and cold follow what is typed, and undo', async ({ page }) => {
  await withoutScene(page);
  await visit(page);
  const fit = page.locator('section[data-section="fit"]');
  await fit.scrollIntoViewIfNeeded();
  await fit.getByRole('button', { name: 'Heat and cold' }).click();
  const part = page.locator('.fit-fold', { hasText: 'must be won by heat and cold' });
  await expect(part).toHaveAttribute('open');
  await expect(part).toContainText('Bushing from a freezer, boss at');
  await part.getByLabel('Where the bushing comes from').selectOption('dry-ice');
  await expect(part).toContainText('Bushing from dry ice, boss at');
  await fit.getByRole('button', { name: 'The clock' }).click();
  await expect(page.getByRole('img', { name: /Room between bushing and bore/ })).toBeVisible();
  const boss = part.getByLabel('Temperature of the boss when the heat is taken away');
  await boss.fill('3000');
  await boss.press('Enter');
  await expect(fit).toContainText('the boss would melt');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(fit).not.toContainText('the boss would melt');
  await expect(part).toContainText('Bushing from dry ice, boss at');
  const probe = part.getByLabel('Boss temperature at 12 o’clock');
  await probe.fill('310');
  await probe.press('Enter');
  await expect(part.getByLabel('Boss temperature 1', { exact: true })).toHaveValue('310');
  await expect(part).toContainText('boss at 310 °F (154 °C)');
});
