/** The page against axe-core, whole and in its parts, in all three themes and on a phone. */
import type { Page } from '@playwright/test';
import axe from 'axe-core';
import { expect, test } from './page.ts';

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Rules that were checked and what was found; no rule checked would mean that axe did not run. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const page = window as unknown as {
      axe: { run(): Promise<{ violations: Violation[]; passes: unknown[] }> };
    };
    const { violations: bad, passes } = await page.axe.run();
    return { bad, passed: passes.length };
  });
  expect(found.passed).toBeGreaterThan(10);
  return found.bad.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary ?? ''}`),
  );
}

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
