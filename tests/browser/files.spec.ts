/** Files that are no job are one sentence on the page; those that are open; the job on screen is never lost. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dropFile, OVAL_ALONG_2, startJob, typeReadings, visit } from './bench.ts';
import { expect, test } from './page.ts';

const DEMO = readFileSync(
  join(import.meta.dirname, '../../demo-data/slipway-winch.roundhand.json'),
  'utf8',
);
const cell = (row: number, column: number) => `[data-cell="${row}-${column}"]`;

/** What is wrong with the file, its text, and what the one sentence must speak of. */
const BAD: readonly (readonly [string, string, RegExp])[] = [
  ['no JSON', 'hello, this is a letter', /bad\.json/],
  ['JSON, but no job', '{"a": 1}', /bad\.json/],
  ['another version', DEMO.replace('"version": 1', '"version": 99'), /version/i],
  ['a missing field', DEMO.replace(/"title":\s*"[^"]*",?/, ''), /title/],
  ['an absurd field', DEMO.replace('"units": "in"', '"units": "furlongs"'), /units/],
  ['rubbish of 10 MB', 'x'.repeat(10_000_000), /bad\.json/],
  ['nothing at all', '', /bad\.json|empty/i],
];

test('bad files: one sentence each, and the job on screen untouched', async ({ page }) => {
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await typeReadings(page, [['50.811', '50.822']]);
  const notice = page.locator('.notice[data-tone="fault"]');
  for (const [what, text, tells] of BAD) {
    expect(text, `the file with ${what} differs from the good one`).not.toBe(DEMO);
    await dropFile(page, 'bad.json', text);
    await expect(notice, what).toHaveCount(1);
    await expect(notice.locator('p'), what).toContainText(tells);
    // One sentence: a stop only at its end (a dot inside a name or number is followed by a letter).
    const said = ((await notice.locator('p').textContent()) ?? '').trim();
    expect(said.replace(/[.!?]$/, ''), what).not.toMatch(/[.!?]\s/);
    await expect(page.locator(cell(0, 1))).toHaveValue('50.822');
    await page.getByRole('button', { name: 'Put this message away' }).click();
    await expect(notice).toHaveCount(0);
  }
});

test('a job in doubt is opened only after a yes, and mended in the page', async ({ page }) => {
  const doubtful = JSON.parse(DEMO) as {
    id: string;
    title: string;
    features: { surveys: { readings: { value: { text: string } }[] }[] }[];
  };
  doubtful.id = 'doubtful';
  doubtful.title = 'Doubtful arm';
  doubtful.features[0]!.surveys[0]!.readings[0]!.value.text = 'two inches';
  await visit(page);
  await startJob(page, OVAL_ALONG_2.ask);
  await dropFile(page, 'doubtful.json', JSON.stringify(doubtful));
  const notice = page.locator('.notice');
  await expect(notice).toContainText('two inches');
  await expect(page.getByLabel('Title of the job')).not.toHaveValue('Doubtful arm');
  await page.getByRole('button', { name: 'open it anyway and mend it here' }).click();
  await expect(page.getByLabel('Title of the job')).toHaveValue('Doubtful arm');
  await expect(page.locator('.unread')).toContainText('“two inches” is no length');
});

test('a good file opens, and a newer job of the same id on the device is not overwritten', async ({
  page,
}) => {
  await visit(page);
  await dropFile(page, 'winch.json', DEMO);
  const title = page.getByLabel('Title of the job');
  const demo = (JSON.parse(DEMO) as { title: string }).title;
  await expect(title).toHaveValue(demo);
  await title.fill('The winch as I changed it');
  await title.press('Enter');
  await dropFile(page, 'winch.json', DEMO);
  await expect(title).toHaveValue(demo);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: /^The winch as I changed it/ }).click();
  await expect(title).toHaveValue('The winch as I changed it');
});

test('a table of readings opens as a job of its own; a bad one is one sentence', async ({
  page,
}) => {
  await visit(page);
  const rows = OVAL_ALONG_2.rows.flatMap((row, r) =>
    row.map(
      (reading, c) => `as found,A,${4 + 18 * r},${c === 0 ? 12 : c},two-point,,${reading},mm,,`,
    ),
  );
  const head = 'survey,face,depth,clock,instrument,setup,reading,unit,sd,note';
  await dropFile(page, 'arm.csv', [head, ...rows].join('\n'));
  await expect(page.getByLabel('Title of the job')).toHaveValue('arm');
  await expect(page.locator('#measure-head')).toContainText('18 readings');
  await page.getByLabel('Outside diameter of the bushing, across').fill('50.85');
  await page.getByLabel('Outside diameter of the bushing, across').press('Enter');
  await expect(page.locator('section[data-section="plan"]')).toContainText('High spots: take off');
  await dropFile(page, 'bad.csv', `${head}\nas found,A,4,25,two-point,,50.8,mm,,`);
  await expect(page.locator('.notice[data-tone="fault"]')).toContainText('25');
  await expect(page.getByLabel('Title of the job')).toHaveValue('arm');
});
