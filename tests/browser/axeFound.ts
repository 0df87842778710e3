/** What axe-core finds wrong with a page as it stands. */
import { expect, type Page } from '@playwright/test';
import axe from 'axe-core';

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Rules that were checked and what was found; no rule checked would mean that axe did not run. */
export async function violations(page: Page): Promise<string[]> {
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
