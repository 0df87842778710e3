/** What axe-core finds wrong with a page as it stands. */
import { expect, type Page } from '@playwright/test';
import axe from 'axe-core';

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/**
 * What was found; no rule checked would mean that axe did not run.
 *
 * @param within a selector; left out: the whole page
 */
export async function violations(page: Page, within = 'html'): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(async (context) => {
    const page = window as unknown as {
      axe: { run(context: string): Promise<{ violations: Violation[]; passes: unknown[] }> };
    };
    const { violations: bad, passes } = await page.axe.run(context);
    return { bad, passed: passes.length };
  }, within);
  expect(found.passed).toBeGreaterThan(10);
  return found.bad.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary ?? ''}`),
  );
}
