/**
 * The same place is named by the map, the sentence, the sections, the table and the drawing in three dimensions. What
 * each should say is worked out here from the job itself: pixels from the map's frame alone, figures by straight lines
 * between the evaluation's own grid points.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { evaluate, type SurveyEvaluation } from '../../src/evaluate.ts';
import { openJob } from '../../src/job/parse.ts';
import { visit } from './bench.ts';
import { expect, test } from './page.ts';

const FILE = resolve(import.meta.dirname, '../../demo-data/slipway-winch.roundhand.json');
const IN = 25.4;
const TURN = 2 * Math.PI;
const PLACES = 50;

/** Numbers from 0 to 1, the same at every run (Park and Miller's generator, Communications of the ACM 31, 1988). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647;
  };
}

function jobEvaluated(): SurveyEvaluation {
  const opened = openJob(readFileSync(FILE, 'utf8'), FILE);
  if (!opened.ok) throw new Error(opened.why);
  return evaluate(opened.job).bores[0]!.surveys[0]!;
}

const apart = (a: number, b: number) =>
  Math.abs(((((a - b) % TURN) + 1.5 * TURN) % TURN) - Math.PI);

/** Straight lines between grid points, round the clock and down the depth. */
function between(survey: SurveyEvaluation, field: Float64Array, theta: number, z: number): number {
  const { theta: angles, z: depths } = survey.surface!.grid;
  const n = angles.length;
  const u = (theta / TURN) * n;
  const i = Math.floor(u) % n;
  const k = Math.min(
    depths.findLastIndex((depth) => depth <= z),
    depths.length - 2,
  );
  const [s, t] = [u - Math.floor(u), (z - depths[k]!) / (depths[k + 1]! - depths[k]!)];
  const row = (r: number) => (1 - s) * field[r * n + i]! + s * field[r * n + ((i + 1) % n)]!;
  return (1 - t) * row(k) + t * row(k + 1);
}

/** The map's frame on the page, CSS pixels: the only rectangle of its scales, without the width of its line. */
function frameOf(page: Page) {
  return page.evaluate(() => {
    const svg = document.querySelector('.map-view > svg')!;
    const { x: left, y: top } = svg.getBoundingClientRect();
    const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((name) =>
      Number(svg.querySelector(':scope > g > rect')!.getAttribute(name)),
    ) as [number, number, number, number];
    return { x: left + x, y: top + y, width, height };
  });
}

/** Clock in radians, depth and signed deviation in mm, and its last digit, as a sentence says them. */
function told(sentence: string) {
  const found =
    /^(\d+):(\d\d), ([\d.]+) in deep: (?:(take off) ([\d.]+) in per side|([\d.]+) in per side short|on size)/.exec(
      sentence,
    );
  if (found === null) throw new Error(`no place in “${sentence}”`);
  const [, hour, minute, depth, off, take, short] = found;
  const figure = take ?? short ?? '0.0000';
  return {
    theta: ((Number(hour) + Number(minute) / 60) * TURN) / 12,
    z: Number(depth) * IN,
    deviation: (off === undefined ? 1 : -1) * Number(figure) * IN,
    digit: IN * 10 ** -(figure.split('.')[1]?.length ?? 0),
  };
}

const FIVE_MINUTES = TURN / 144;

/** What the page should say within half of its last digits. */
function agrees(survey: SurveyEvaluation, sentence: string, theta: number, z: number) {
  const said = told(sentence);
  expect(apart(said.theta, theta), sentence).toBeLessThanOrEqual(FIVE_MINUTES / 2 + 1e-6);
  expect(Math.abs(said.z - z), sentence).toBeLessThanOrEqual(0.005 * IN + 1e-6);
  const e = between(survey, survey.removal!.deviation, theta, z);
  // Half a digit, and what the worker's and this engine's arithmetic may differ by.
  expect(Math.abs(said.deviation - e), sentence).toBeLessThanOrEqual(said.digit / 2 + 1e-6);
}

async function shownPlace(canvas: Locator) {
  const [theta, z] = ((await canvas.getAttribute('data-cursor')) ?? '').split(' ').map(Number);
  return { theta: theta!, z: z! };
}

/** Waits until the scene has painted its cursor at a place. */
async function painted(canvas: Locator, theta: number, z: number) {
  await expect(async () => {
    const shown = await shownPlace(canvas);
    expect(apart(shown.theta, theta)).toBeLessThan(1e-6);
    expect(Math.abs(shown.z - z)).toBeLessThan(1e-6);
  }).toPass({ intervals: [20, 40, 80, 160, 320], timeout: 10_000 });
}

/**
 * What the page shows of the place, read at once: the sentence, the middle of the map's ring, the ray of the cut across,
 * the line of the size along, and the marked cell's row and column with the table's heads (depths in inches, the hour of
 * each pair's first end).
 */
function shownOf(page: Page) {
  return page.evaluate(() => {
    const cell = document.querySelector('td[data-near="true"]') as HTMLTableCellElement;
    const table = cell.closest('table')!;
    const ring = document.querySelector('.map-cursor circle')!.getBoundingClientRect();
    const figure = (name: string) =>
      Number(document.querySelector(`[data-${name}]`)!.getAttribute(`data-${name}`));
    const heads = (where: string) =>
      [...table.querySelectorAll(where)].map((th) => Number.parseFloat(th.textContent));
    return {
      sentence: document.querySelector('.drawing-readout')!.textContent,
      ring: { x: ring.x + ring.width / 2, y: ring.y + ring.height / 2 },
      ray: figure('ray'),
      deep: figure('depth'),
      depths: heads('tbody th'),
      clocks: heads('thead th').slice(1),
      row: (cell.parentElement as HTMLTableRowElement).sectionRowIndex,
      column: cell.cellIndex - 1,
    };
  });
}

function least<T>(list: readonly T[], far: (one: T) => number): number {
  return list.map(far).indexOf(Math.min(...list.map(far)));
}

test.use({ viewport: { width: 1800, height: 800 } });

test('fifty places of the map are the same place everywhere, and eight of the drawing too', async ({
  page,
}) => {
  const survey = jobEvaluated();
  await visit(page);
  const canvas = page.locator('canvas').first();
  // A low picture is soon drawn where a processor does the drawing; what it shows is the same.
  await page.addStyleTag({ content: '.drawing .drawing-stage { flex-basis: 120px !important; }' });
  await expect.poll(() => canvas.getAttribute('data-frames').then(Number)).toBeGreaterThan(0);
  await page.waitForTimeout(1000);
  const frame = await frameOf(page);
  const length = survey.surface!.grid.z.at(-1)!;
  const next = numbers(20250);
  for (let i = 0; i < PLACES; i++) {
    const x = Math.round(frame.x + next() * frame.width);
    const y = Math.round(frame.y + next() * frame.height);
    const share = Math.min(1, Math.max(0, (x - frame.x) / frame.width));
    const theta = (Math.PI + TURN * share) % TURN;
    const z = length * Math.min(1, Math.max(0, (y - frame.y) / frame.height));
    await page.mouse.move(x, y);
    await painted(canvas, theta, z);
    // The page follows between moves of the pointer.
    await expect(async () => {
      const shown = await shownOf(page);
      agrees(survey, shown.sentence, theta, z);
      expect(Math.abs(shown.ring.x - x)).toBeLessThan(1);
      expect(Math.abs(shown.ring.y - y)).toBeLessThan(1);
      expect(apart(shown.ray, theta)).toBeLessThanOrEqual(0.005 + 1e-6);
      expect(Math.abs(shown.deep * IN - z)).toBeLessThanOrEqual(0.005 * IN + 1e-6);
      expect(shown.row).toBe(least(shown.depths, (depth) => Math.abs(depth * IN - z)));
      const half = (hour: number) => {
        const a = apart((hour * TURN) / 12, theta);
        return Math.min(a, Math.PI - a);
      };
      // Half way between two pairs either may be marked.
      const best = Math.min(...shown.clocks.map(half));
      expect(half(shown.clocks[shown.column]!)).toBeLessThan(best + 1e-6);
    }).toPass({ intervals: [20, 40, 80, 160, 320], timeout: 10_000 });
  }
  await backFromTheDrawing(page, survey, canvas);
});

/** Pointing at the rolled-out wall in the scene sets the place that map, sentence and scene then show. */
async function backFromTheDrawing(page: Page, survey: SurveyEvaluation, canvas: Locator) {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.getByRole('button', { name: 'Flat', exact: true }).click();
  await expect(page.getByLabel(/Roll the bore out/)).toHaveValue('1');
  await page.waitForTimeout(1500);
  const stage = (await canvas.boundingBox())!;
  const readout = page.locator('.drawing-readout');
  const frame = await frameOf(page);
  const length = survey.surface!.grid.z.at(-1)!;
  const next = numbers(7);
  let before = await readout.textContent();
  for (let i = 0; i < 8; i++) {
    const x = stage.x + stage.width * (0.44 + 0.12 * next());
    const y = stage.y + stage.height * (0.43 + 0.14 * next());
    await page.mouse.move(x, y);
    await expect(readout).not.toHaveText(before!);
    before = await readout.textContent();
    await expect(async () => {
      const { theta, z } = await shownPlace(canvas);
      agrees(survey, (await readout.textContent())!, theta, z);
      const ring = (await page.locator('.map-cursor circle').first().boundingBox())!;
      const turn = ((((theta - Math.PI) / TURN) % 1) + 1) % 1;
      expect(Math.abs(ring.x + ring.width / 2 - frame.x - turn * frame.width)).toBeLessThan(1);
      expect(
        Math.abs(ring.y + ring.height / 2 - frame.y - (z / length) * frame.height),
      ).toBeLessThan(1);
    }).toPass({ timeout: 10_000 });
  }
}
