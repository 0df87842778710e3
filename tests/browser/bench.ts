/** What the page's checks do again and again: start a job, type readings, let a file fall on the page. */
import { expect, type Page } from '@playwright/test';

export interface Ask {
  readonly units: 'in' | 'mm';
  readonly length: string;
  readonly outside: string;
}

/** A bore without any taper, oval by 0.30 mm across, its long way along 2-8; six pairs at three depths, mm. */
export const OVAL_ALONG_2 = {
  ask: { units: 'mm', length: '45', outside: '50.85' },
  outOfRound: 0.3,
  rows: Array.from({ length: 3 }, () =>
    Array.from({ length: 6 }, (_, pair) => {
      const theta = (pair * Math.PI) / 6;
      return (50.8 + 0.15 * Math.cos(2 * (theta - Math.PI / 3))).toFixed(3);
    }),
  ),
} as const satisfies { ask: Ask; outOfRound: number; rows: readonly (readonly string[])[] };

/** The page, with whatever a first visit opens. */
export async function visit(page: Page): Promise<void> {
  await page.goto('');
  await expect(page.getByRole('heading', { name: /^(Measure|New job)/ })).toBeVisible();
}

/** A browser that draws no 3D: drawn in software it would slow down what is asked of the page alone. Before `visit`. */
export async function withoutScene(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const own = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (
      this: HTMLCanvasElement,
      ...args: unknown[]
    ) {
      if (String(args[0]).startsWith('webgl')) return null;
      return Reflect.apply(own, this, args);
    } as typeof own;
  });
}

/** A new job, by pointer; leaves the focus in the first cell. */
export async function startJob(page: Page, { units, length, outside }: Ask): Promise<void> {
  const asking = page.getByRole('heading', { name: 'New job' });
  if (!(await asking.isVisible())) {
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'New job' }).click();
  }
  await page.getByLabel('Units', { exact: true }).selectOption(units);
  await page.getByLabel('Length of the bore').fill(length);
  await page.getByLabel('Outside diameter of the bushing, across').fill(outside);
  await page.getByRole('button', { name: 'To the table' }).click();
  await expect(page.locator('[data-cell="0-0"]')).toBeFocused();
}

/** Types into the focused cell and on, one Enter a reading. */
export async function typeReadings(
  page: Page,
  rows: readonly (readonly string[])[],
): Promise<void> {
  for (const reading of rows.flat()) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
}

/** Lets a file fall on the page. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([fileName, body]) => {
      const data = new DataTransfer();
      data.items.add(new File([body], fileName));
      return data;
    },
    [name, text] as const,
  );
  await page.dispatchEvent('main', 'dragover', { dataTransfer: transfer });
  await page.dispatchEvent('main', 'drop', { dataTransfer: transfer });
}

/** Unfolds what is seldom said of a survey. */
export async function openMoreAbout(page: Page): Promise<void> {
  await page.getByText('More about this survey').click();
}
