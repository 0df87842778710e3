/** The page against axe-core, whole and in its parts, in all three themes and on a phone. */
import { violations } from './axeFound.ts';
import { expect, test } from './page.ts';

const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
] as const;

for (const theme of ['light', 'dark', 'sunlight'] as const)
  for (const viewport of SIZES)
    test.describe(`${theme}, ${viewport.width} px`, () => {
      test.use({ viewport });

      test('no violation on the bench, in the story, in the menu, in a new job, before heat, or in the wear patterns', async ({
        page,
      }) => {
        await page.addInitScript((value) => localStorage.setItem('roundhand-theme', value), theme);
        await page.goto('');
        await expect(page.locator('section[data-section="plan"]')).toContainText('Way of mending');
        await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
        expect(await violations(page), 'bench').toEqual([]);
        await page.getByLabel('Way of mending').selectOption('squeeze');
        await expect(page.getByText('Before any heat')).toBeVisible();
        expect(await violations(page), 'safety questions').toEqual([]);
        await page.getByRole('button', { name: 'Full screen' }).click();
        await expect(page.locator('.full-story')).toBeVisible();
        expect(await violations(page), 'story').toEqual([]);
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'Menu' }).click();
        expect(await violations(page), 'menu').toEqual([]);
        await page.getByRole('button', { name: 'Wear patterns' }).click();
        await expect(page.locator('.gallery-side svg').first()).toBeVisible();
        expect(await violations(page), 'wear patterns').toEqual([]);
        await page.getByRole('button', { name: 'Menu' }).click();
        await page.getByRole('button', { name: 'New job' }).click();
        expect(await violations(page), 'new job').toEqual([]);
      });
    });
