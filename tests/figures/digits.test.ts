/**
 * Digits are earned: in the text reports of all demo jobs no figure has a digit finer than the second significant one
 * of its give-or-take (where that begins with a 1 two digits of it are told, else one), and every sentence with a
 * measured figure says its give-or-take.
 */
import { describe, expect, it } from 'vitest';
import { reportText } from '../../src/cli/reportText.ts';
import { evaluate } from '../../src/evaluate.ts';
import { shapeSentences } from '../../src/figures/shapeWords.ts';
import { demoJobs } from '../../src/practice/demos.ts';

const decimals = (text: string) => (text.split('.')[1] ?? '').length;

/** Decimals down to the second significant digit of a written number. */
function secondDigit(text: string): number {
  const [whole = '', rest = ''] = text.split('.');
  if (Number(whole) !== 0) return Math.max(0, 2 - whole.length);
  return rest.length - rest.replace(/^0+/, '').length + 2;
}

/** A figure, then nothing that ends the clause, then its give-or-take. */
const PAIR = /(\d+\.?\d*) (?:in|mm)\b[^;:.]*?(?:across|per side)[^;:]*?give or take (\d+\.?\d*\d)/g;

/** Depth, three diameters, out-of-round and, last, the give-or-take of the mean. */
const TABLE = /depth +mean[^(]*\(\w+, across\)/g;

describe.each(demoJobs().map(({ file, job }) => ({ file, job, seen: evaluate(job) })))(
  '$file',
  ({ job, seen }) => {
    const whole = reportText(job, seen);
    const tables = [...whole.matchAll(TABLE)].map(([table]) => table);
    // A line or a paragraph is one sentence or more; a table and a heading are none.
    const text = whole
      .replace(TABLE, '.')
      .replace(/\n-+\n/g, '.')
      .replace(/\s+/g, ' ');
    const pairs = [...text.matchAll(PAIR)].map(([said, figure, give]) => ({
      said,
      figure: figure!,
      give: give!,
    }));

    it('no figure is finer than its give-or-take', () => {
      expect(pairs.length).toBeGreaterThan(3);
      const finer = pairs.filter(({ figure, give }) => decimals(figure) > secondDigit(give));
      expect(finer).toEqual([]);
    });

    it('nor is any mean, greatest or least diameter of a table', () => {
      expect(tables.length).toBeGreaterThan(0);
      for (const table of tables) {
        for (const line of table.split('\n').slice(1, -1)) {
          const figures = line
            .trim()
            .split(/\s+/)
            .filter((cell) => /^[\d.]+$/.test(cell));
          const give = figures.at(-1)!;
          // The depth stands first; out-of-round, before the last, is less well known than the mean.
          for (const figure of figures.slice(1, -1)) {
            expect(decimals(figure)).toBeLessThanOrEqual(secondDigit(give));
          }
        }
      }
    });

    it('every measured figure of the shape says its give-or-take', () => {
      const bare = seen.bores.flatMap((bore) =>
        bore.surveys.flatMap((survey) =>
          shapeSentences(survey, bore.facts.length.mm, job.units)
            .filter(({ figure, after }) => figure !== '' && !/give.or.take/.test(after))
            .map(({ before, figure, after }) => before + figure + after),
        ),
      );
      expect(bare).toEqual([]);
    });
  },
);
