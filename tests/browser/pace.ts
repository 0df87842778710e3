/*
 * npm run pace: how quickly the page answers a hand that types, on a processor slowed down four times, and one that drags
 * the target, on the processor as it is. Each figure has its bar; a missed bar exits 1. They only mean something on a
 * quiet machine, so npm test does not ask.
 *
 * Interaction to next paint: from a key press to the frame that shows its effect, as the browser itself times it
 * (Event Timing, W3C; entries come in steps of 8 ms and none below 16 ms). Layout shift: the sum of the browser's own
 * entries (Layout Instability, WICG) that no key press just before explains. Usable: from asking for the page until a
 * digit stands in the first cell. Drag of the target: time of the page's own thread spent in script, by the clock of that
 * thread, from the first of a row of steps until the last is drawn, by the number of steps.
 *
 * Without a graphics card the bore is drawn in software, on the processor that is being timed; `-- --flat` leaves that
 * out, as on a device without WebGL.
 */
import { type Browser, chromium, type Page } from '@playwright/test';
import { findBrowser, TIMED_ARGS } from './findBrowser.ts';
import { buildIfStale, type Served, serve } from './serve.ts';

const FLAT = process.argv.includes('--flat');
const SLOWED = 4;
const RUNS = 5;
const BARS = { paintMs: 100, shift: 0.02, usableMs: 1500, dragMs: 33 } as const;
/** Steps of a drag, the time from one to the next, and how often it is dragged there and back. */
const STEPS = 30;
const BETWEEN_STEPS_MS = 60;
const DRAGS = 3;
/** Shorter than any key press is told of. */
const LEAST_MS = 16;
/** Digits and Enters of a hand that does not hurry, ms apart. */
const BETWEEN_KEYS_MS = 150;
const READINGS = ['2.0143', '2.0129', '2.0077', '2.0018', '2.0073'] as const;

interface Seen {
  /** Longest event of each interaction, ms. */
  readonly interactions: Record<string, number>;
  /** Of the same: ms from the press until the page's code runs, and while it runs. */
  readonly waits: Record<string, number>;
  readonly works: Record<string, number>;
  shift: number;
  usable: number;
}

/** Runs in the page before anything of its own. */
function watch(): void {
  const seen: Seen = { interactions: {}, waits: {}, works: {}, shift: 0, usable: Number.NaN };
  Object.assign(window, { seen });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceEventTiming[]) {
      const id = String(entry.interactionId);
      if (id === '0') continue;
      const { duration, startTime, processingStart, processingEnd } = entry;
      seen.interactions[id] = Math.max(seen.interactions[id] ?? 0, duration);
      seen.waits[id] = Math.max(seen.waits[id] ?? 0, processingStart - startTime);
      seen.works[id] = (seen.works[id] ?? 0) + processingEnd - processingStart;
    }
  }).observe({ type: 'event', buffered: true, durationThreshold: 16 } as PerformanceObserverInit);
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as (PerformanceEntry & {
      value: number;
      hadRecentInput: boolean;
    })[])
      if (!entry.hadRecentInput) seen.shift += entry.value;
  }).observe({ type: 'layout-shift', buffered: true });
  // The first cell takes the focus as soon as it is there, and says so; nothing else asks the page meanwhile.
  const { cellIsThere } = window as unknown as { cellIsThere(): void };
  const watcher = new MutationObserver(() => {
    const cell = document.querySelector<HTMLElement>('[data-cell="0-0"]');
    if (cell === null) return;
    watcher.disconnect();
    cell.focus();
    cellIsThere();
  });
  watcher.observe(document, { childList: true, subtree: true });
  addEventListener(
    'input',
    () => {
      if (Number.isNaN(seen.usable)) seen.usable = performance.now();
    },
    { capture: true },
  );
}

/** Runs in the page: a canvas gives no WebGL. */
function withoutScene(): void {
  const own = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...args: unknown[]) {
    return String(args[0]).startsWith('webgl') ? null : Reflect.apply(own, this, args);
  } as typeof own;
}

async function open(browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  if (FLAT) await context.addInitScript(withoutScene);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  let tell: () => void = () => undefined;
  const there = new Promise<void>((resolve) => {
    tell = resolve;
  });
  await page.exposeFunction('cellIsThere', () => tell());
  await page.addInitScript(watch);
  await page.goto(url, { waitUntil: 'commit' });
  await there;
  return page;
}

/** One visit: ms from each key press to its frame, the shift of it all, and ms until the page was usable. */
async function once(browser: Browser, url: string): Promise<Seen & { paints: number[] }> {
  const page = await open(browser, url);
  await page.keyboard.press('2');
  await page.waitForTimeout(6_000);
  await page.keyboard.press('Escape');
  await page.waitForTimeout(500);
  await page.evaluate(() => {
    const { interactions, waits, works } = (window as unknown as { seen: Seen }).seen;
    for (const record of [interactions, waits, works])
      for (const id of Object.keys(record)) delete record[id];
  });
  let presses = 0;
  for (const reading of READINGS) {
    await page.keyboard.type(reading, { delay: BETWEEN_KEYS_MS });
    await page.keyboard.press('Enter', { delay: BETWEEN_KEYS_MS });
    presses += reading.length + 1;
  }
  await page.waitForTimeout(4_000);
  const seen = await page.evaluate(() => (window as unknown as { seen: Seen }).seen);
  await page.context().close();
  const told = Object.values(seen.interactions);
  const untold = Array.from({ length: Math.max(0, presses - told.length) }, () => LEAST_MS);
  return { ...seen, paints: [...told, ...untold] };
}

/** ms of script to a step of the target's handle, drag by drag. */
async function dragged(browser: Browser, url: string): Promise<number[]> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.goto(url);
  const handle = page.getByRole('slider', { name: 'Target diameter, across' });
  await handle.focus({ timeout: 60_000 });
  await page.waitForTimeout(6_000);
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const script = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1000 * metrics.find(({ name }) => name === 'ScriptDuration')!.value;
  };
  const found: number[] = [];
  // The first one warms the code up.
  for (let drag = 0; drag <= DRAGS; drag += 1) {
    const before = await script();
    for (let step = 0; step < STEPS; step += 1) {
      await page.keyboard.press(drag % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
      await page.waitForTimeout(BETWEEN_STEPS_MS);
    }
    if (drag > 0) found.push(((await script()) - before) / STEPS);
    await page.waitForTimeout(2_000);
  }
  await context.close();
  return found;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

function report(name: string, value: number, bar: number, digits: number, rest: string): boolean {
  const kept = value < bar;
  console.log(
    `${name.padEnd(44)}${value.toFixed(digits).padStart(9)}  bar ${bar} ${kept ? 'kept' : 'MISSED'}  ${rest}`,
  );
  return kept;
}

async function all(served: Served): Promise<boolean> {
  const browser = await chromium.launch({ executablePath: findBrowser(), args: TIMED_ARGS });
  const visits: Awaited<ReturnType<typeof once>>[] = [];
  const drags: number[] = [];
  try {
    for (let run = 0; run < RUNS; run += 1) visits.push(await once(browser, served.url));
    drags.push(...(await dragged(browser, served.url)));
  } finally {
    await browser.close();
  }
  const paints = visits.flatMap((visit) => visit.paints).sort((a, b) => a - b);
  const [waits, works] = (['waits', 'works'] as const).map((part) =>
    median(visits.flatMap((visit) => Object.values(visit[part]))).toFixed(0),
  );
  const usable = visits.map((visit) => visit.usable);
  const shifts = visits.map((visit) => visit.shift);
  console.log(
    `${RUNS} visits, processor slowed down ${SLOWED} times, ${paints.length} key presses`,
  );
  const worst = paints[Math.floor(paints.length * 0.95)]!;
  return [
    report(
      'key press to next paint, median ms',
      median(paints),
      BARS.paintMs,
      0,
      `least ${paints[0]}, 95 % ${worst}; waiting ${waits}, working ${works}`,
    ),
    report('layout shift, greatest', Math.max(...shifts), BARS.shift, 4, ''),
    report(
      'usable after, median ms',
      median(usable),
      BARS.usableMs,
      0,
      `least ${Math.min(...usable).toFixed(0)}`,
    ),
    report(
      'script to a step of the target, median ms',
      median(drags),
      BARS.dragMs,
      1,
      `greatest ${Math.max(...drags).toFixed(1)}; ${STEPS} steps, ${DRAGS} drags, not slowed down`,
    ),
  ].every(Boolean);
}

buildIfStale();
const served = await serve();
try {
  process.exitCode = (await all(served)) ? 0 : 1;
} finally {
  await served.close();
}
