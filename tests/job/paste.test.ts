import { describe, expect, it } from 'vitest';
import { newJob, pasteBlock } from '../../src/job/edits.ts';
import { readBlock } from '../../src/job/paste.ts';
import type { Job } from '../../src/job/schema.ts';
import { readingTable } from '../../src/job/table.ts';

const empty = newJob({
  units: 'in',
  gauge: 'telescoping',
  length: '3',
  bushingOutside: '2.5',
  depths: ['0.25', '1.5', '2.75'],
});
const shown = (job: Job) => {
  const feature = job.features[0]!;
  return readingTable(feature, feature.surveys[0]!, job).rows.map((row) =>
    row.cells.map((cell) => cell.text),
  );
};
const paste = (text: string, row = 0, column = 0) =>
  pasteBlock(empty, 'f1', 's1', row, column, text);
const pasted = (text: string, row = 0, column = 0) => {
  const result = paste(text, row, column);
  if (!result.ok) throw new Error(result.why);
  return shown(result.job);
};
const why = (text: string, row = 0, column = 0) => {
  const result = paste(text, row, column);
  return result.ok ? '' : result.why;
};

describe('a block as read', () => {
  it.each<[string, string[][]]>([
    [
      '2.5\t2.6\n2.7\t2.8',
      [
        ['2.5', '2.6'],
        ['2.7', '2.8'],
      ],
    ],
    [
      '2.5,2.6\r\n2.7,2.8\r\n',
      [
        ['2.5', '2.6'],
        ['2.7', '2.8'],
      ],
    ],
    [
      '2,5;2,6\n2,7;2,8',
      [
        ['2,5', '2,6'],
        ['2,7', '2,8'],
      ],
    ],
    ['2,5 2,6', [['2,5', '2,6']]],
    ['2,5', [['2,5']]],
    ['2 1/2  2 5/8', [['2-1/2', '2-5/8']]],
    ['2.5\t\t2.6', [['2.5', '', '2.6']]],
    ['"2.5","2.6","2.7"', [['2.5', '2.6', '2.7']]],
    [
      '12\t3\n12\t3',
      [
        ['12', '3'],
        ['12', '3'],
      ],
    ],
  ])('%j is its cells', (text, cells) => {
    expect(readBlock(text)).toEqual({ clocks: null, depths: null, cells });
  });

  it.each(['\t12\t3\n0.25\t2.5\t2.6', 'depth,12,3\n0.25,2.5,2.6', 'depth;12–6;3–9\n0.25;2.5;2.6'])(
    '%j brings clock positions and depths',
    (text) => {
      const block = readBlock(text);
      expect(block.clocks).toHaveLength(2);
      expect(block.depths).toEqual(['0.25']);
      expect(block.cells).toEqual([['2.5', '2.6']]);
    },
  );

  it('takes a first row that climbs round the clock for a head, and readings for readings', () => {
    expect(readBlock('12 3 6 9\n2.50 2.51 2.52 2.53').clocks).toEqual(['12', '3', '6', '9']);
    expect(readBlock('3 6 9 12\n2.50 2.51 2.52 2.53').clocks).toEqual(['3', '6', '9', '12']);
    expect(readBlock('0d 45d\n2.50 2.51').clocks).toEqual(['0d', '45d']);
    expect(readBlock('2.50 2.51\n2.52 2.53').clocks).toBeNull();
    expect(readBlock('+1 +2\n+3 +4').clocks).toBeNull();
    expect(readBlock('5 3 1\n2.1 2.2 2.3').clocks).toBeNull();
  });
});

describe('pasting', () => {
  it('starts at a cell and leaves empty cells alone', () => {
    expect(pasted('2.5\t\t2.6\n2.7\t2.8\t2.9', 1, 2)).toEqual([
      ['', '', '', '', '', ''],
      ['', '', '2.5', '', '2.6', ''],
      ['', '', '2.7', '2.8', '2.9', ''],
    ]);
  });

  it('goes where its own head and depths say', () => {
    expect(pasted('depth\t3\t12\n2.75\t2.51\t2.52\n1/4\t2.53\t2.54', 2, 5)).toEqual([
      ['2.54', '', '', '2.53', '', ''],
      ['', '', '', '', '', ''],
      ['2.52', '', '', '2.51', '', ''],
    ]);
  });

  it('knows the depths of the table in its first column', () => {
    expect(pasted('0.25 2.51\n1.5 2.52')).toEqual([
      ['2.51', '', '', '', '', ''],
      ['2.52', '', '', '', '', ''],
      ['', '', '', '', '', ''],
    ]);
  });

  it('makes rows and columns that the table does not have', () => {
    const result = paste('\t12\t1:30\n2\t2.51\t2.52');
    if (!result.ok) throw new Error(result.why);
    const feature = result.job.features[0]!;
    const table = readingTable(feature, feature.surveys[0]!, result.job);
    expect(table.rows.map((row) => row.depthText)).toEqual(['0.25', '1.5', '2', '2.75']);
    expect(table.clocks.map((one) => one.text)).toContain('1:30–7:30');
    expect(table.rows[2]!.cells.map((cell) => cell.text)).toEqual([
      '2.51',
      '',
      '2.52',
      '',
      '',
      '',
      '',
    ]);
  });

  it('that does not fit is refused with the room there is', () => {
    expect(why('1 2 3', 0, 4)).toContain('3 columns wide, and from here there is room for 2');
    expect(why('1\n2\n3', 1, 0)).toContain('3 rows high, and from here there is room for 2');
    expect(why(' \n ')).toContain('nothing to paste');
    expect(why('depth\t12\nx\t2.5')).toContain('“x” is no length');
    expect(why(`${'1 '.repeat(200)}\n`.repeat(200))).toContain('5000 cells at most');
  });

  it('that cannot be understood is kept as typed', () => {
    expect(pasted('2.5o\t2.6')[0]).toEqual(['2.5o', '2.6', '', '', '', '']);
  });
});
