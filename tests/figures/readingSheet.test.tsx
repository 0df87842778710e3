/** The sheet that is filled in by hand: all places on it, all of it on the paper. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { ReadingSheet } from '../../src/drawings/ReadingSheet.tsx';
import { PAPERS, type Paper } from '../../src/figures/paper.ts';
import { readingSheet } from '../../src/figures/readingSheet.ts';
import { layPlan } from '../../src/job/layPlan.ts';
import type { Job } from '../../src/job/schema.ts';
import { jobOf } from '../fixtures/bores.ts';

const typed = (mm: number) => ({ text: String(mm), unit: 'mm' as const });

function sheetOf(clocks: readonly string[], depths: readonly number[], face: 'A' | 'B' = 'A') {
  const job: Job = jobOf({ taken: [], length: 100, nominal: 60, face });
  const plan = { clocks, depths: depths.map(typed), short: false };
  const laid = layPlan(job, 'b', 's', plan);
  const bore = laid.features[0]!;
  return readingSheet(laid, bore, bore.surveys[0]!);
}

const SIX = ['12', '1', '2', '3', '4', '5'];

describe('a reading sheet', () => {
  it('has a box for every place, and a second table for a sweep', () => {
    const { tables } = sheetOf(SIX, [4, 20, 50, 80, 96]);
    expect(tables.map(({ columns, rows }) => columns.length * rows.length)).toEqual([30, 24]);
    expect(tables[0]!.columns[0]).toBe('12–6');
    expect(tables[1]!.rows).toEqual(['4', '50', '96']);
  });

  it.each([
    ['letter', 6, 5],
    ['a4', 6, 5],
    ['letter', 12, 12],
    ['a4', 4, 20],
  ] as const)(
    'on %s, %i pairs by %i depths: every mark lies on the paper',
    (paper: Paper, n, m) => {
      const clocks = Array.from({ length: n }, (_, i) => `${(180 * i) / n}d`);
      const depths = Array.from({ length: m }, (_, i) => 4 + (92 * i) / (m - 1));
      const svg = renderToStaticMarkup(
        <ReadingSheet sheet={sheetOf(clocks, depths)} paper={paper} />,
      );
      const { width, height } = PAPERS[paper];
      const numbers = (name: string) =>
        [...svg.matchAll(new RegExp(` ${name}="([-\\d.]+)"`, 'g'))].map(([, value]) =>
          Number(value),
        );
      expect(svg.match(/<rect/g)).toHaveLength(n * m + 24);
      expect(Math.max(...numbers('y'))).toBeLessThan(height - 5);
      expect(Math.max(...numbers('x'))).toBeLessThan(width - 5);
      expect(Math.min(...numbers('x'), ...numbers('y'))).toBeGreaterThan(5);
    },
  );

  it('says from which face it is seen, in the words of the page', () => {
    const svg = renderToStaticMarkup(
      <ReadingSheet sheet={sheetOf(SIX, [4, 50, 96], 'B')} paper="a4" />,
    );
    expect(svg).toContain('seen looking in at face B');
    expect(svg).not.toContain('face A');
  });
});
