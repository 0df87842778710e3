/** A scanner's points on a phone: the drawing comes, and the readings made of them wait folded. */
import { dropFile, visit } from './bench.ts';
import { expect, test } from './page.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

/** A cylinder of 65 mm, 50 mm long, oval by 0.2 mm across along 2-8: 60,000 points on a spiral. */
function points(): string {
  const rows = ['x,y,z'];
  for (let i = 0; i < 60_000; i++) {
    const theta = i * 2.399963;
    const r = 32.5 + 0.05 * Math.cos(2 * (theta - Math.PI / 3));
    const at = [r * Math.sin(theta), r * Math.cos(theta), (50 * (i + 0.5)) / 60_000];
    rows.push(at.map((mm) => mm.toFixed(4)).join(','));
  }
  return rows.join('\n');
}

test('60,000 points are drawn, their table shown on request, and a reading to be taken unfolds it', async ({
  page,
}) => {
  await visit(page);
  await dropFile(page, 'scan.csv', points());
  await expect(page.locator('.bar h1')).toContainText('scan');
  await expect(page.locator('.drawing-wait')).toHaveCount(0);
  await expect(page.locator('canvas').first()).toBeVisible();
  const said = page.locator('section[data-section="read"]');
  await expect(said).toContainText('Across 2–8 it is 0.2');

  const cells = page.locator('[data-cell]');
  await expect(page.getByText('each drawn together from many points')).toBeVisible();
  await expect(cells).toHaveCount(0);
  await page.getByRole('button', { name: 'show the table' }).tap();
  expect(await cells.count()).toBeGreaterThan(100);
  await page.getByRole('button', { name: 'fold the table' }).tap();
  await expect(cells).toHaveCount(0);
  await page.locator('.next-line .link-button').tap();
  await expect(page.locator('[data-cell]:focus')).toHaveAccessibleName(/, wanted next/);
});
