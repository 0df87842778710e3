/** Points from the bytes of a CSV file: what is read, and the sentence for what is not. */
import { truncateSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Points, readPoints } from '../../src/cli/pointsCsv.ts';
import { fileOf, run } from './run.ts';

function points(csv: Uint8Array | string): Points {
  const read = readPoints(csv);
  if ('error' in read) throw new Error(read.error);
  return read;
}

function refusal(csv: Uint8Array | string): string {
  const read = readPoints(csv);
  if (!('error' in read)) throw new Error('this was to be refused');
  expect(read.error).not.toContain('\n');
  return read.error;
}

const rows = ({ columns }: Points) => columns.map((column) => [...column]);

describe('what is read', () => {
  it('bytes as text, from the middle of a larger piece of memory too', () => {
    const text = 'x,y\n1,2.5\n-3e-1,4\n';
    const within = new TextEncoder().encode(`9,9\n${text}8,8`);
    const read = points(within.subarray(4, 4 + text.length));
    expect(read).toEqual({ header: 'x,y', names: ['x', 'y'], columns: points(text).columns });
    expect(rows(read)).toEqual([
      [1, -0.3],
      [2.5, 4],
    ]);
  });

  it.each([
    ['line feeds', '\n'],
    ['carriage return and line feed', '\r\n'],
    ['carriage returns alone', '\r'],
  ])('lines that end in %s', (_, end) => {
    const lines = ['X, y', ' 1,2', '3 ,4'];
    for (const tail of ['', end, `${end}${end} ${end}`]) {
      expect(rows(points(lines.join(end) + tail))).toEqual([
        [1, 3],
        [2, 4],
      ]);
    }
    const bad = [...lines, 'a,5', ''].join(end);
    expect(refusal(bad)).toContain('line 4 (row 2, counted from 0), column x: "a"');
  });

  it('one lone carriage return among line feeds ends no line', () => {
    expect(refusal('x,y\n1,2\r3,4\n5,6\n')).toContain('line 2 (row 0, counted from 0) has 3');
  });
});

describe('radii about a datum axis', () => {
  it('a circle: x to 3 o’clock, y to 12, the clock in hours or degrees', () => {
    const read = points('clock,radius\n12,10\n3:00,20\n4.5,30\n180d,40\n 270° ,50\n');
    expect(read).toMatchObject({ header: 'clock,radius', names: ['x', 'y'] });
    const wanted = [0, 20, 30 * Math.SQRT1_2, 0, -50, 10, 0, -30 * Math.SQRT1_2, -40, 0];
    // sin and cos of a rounded angle of some radians: a few units in the last place of the radius.
    read.columns
      .flatMap((column) => [...column])
      .forEach((value, i) => {
        expect(Math.abs(value - wanted[i]!)).toBeLessThan(50 * 8 * Number.EPSILON);
      });
  });

  it('a cylinder: the depth is z', () => {
    const read = points('Clock, Depth, Radius\n3,-1.5,20\n9,2,20\n');
    expect(read).toMatchObject({ header: 'clock,depth,radius', names: ['x', 'y', 'z'] });
    expect([...read.columns[2]!]).toEqual([-1.5, 2]);
    expect(read.columns[0]![0]).toBeCloseTo(20, 13);
    expect(read.columns[0]![1]).toBeCloseTo(-20, 13);
  });

  it('refused by line, row and column of the file', () => {
    const say = (row: string) => refusal(`clock,depth,radius\n3,1,20\n${row}\n`);
    const place = 'line 3 (row 1, counted from 0)';
    expect(say('noon,1,20')).toBe(
      `${place}, column clock: “noon” is no clock position: type hours such as 4:30 or degrees such as 135d`,
    );
    expect(say('13:30,1,20')).toContain('is not on the clock');
    expect(say('4.30,1,20')).toContain('type 4:30 for minutes');
    expect(say('12-6,1,20')).toContain('column clock: “12-6” is a pair of clock positions');
    expect(say(',1,20')).toContain('nothing is there; a clock position such as 4:30');
    expect(say(`${'4'.repeat(1e6)},1,20`)).toContain(`“${'4'.repeat(40)}…” is no clock position`);
    expect(say('3,deep,20')).toContain('column depth: "deep" is not a finite number');
    expect(say('3,1,-20')).toBe(
      `${place}, column radius: "-20" is no radius; a number above 0 such as 25.013 is wanted`,
    );
    expect(say('3,1,0')).toContain('"0" is no radius');
    expect(say('3,1,1e999')).toContain('column radius: "1e999" is not a finite number');
    expect(say('3,1,0x10')).toContain('column radius: "0x10" is not a finite number');
    expect(say('3,1')).toBe(`${place} has 2 columns; 3 are wanted: clock,depth,radius`);
  });
});

describe('what is no such CSV', () => {
  it('UTF-16, by its mark or by the bytes of value 0 that it is full of', () => {
    const wide = Buffer.from('\ufeffx,y\n1,2\n', 'utf16le');
    const turned = Buffer.from(wide).swap16();
    for (const bytes of [wide, turned]) {
      expect(refusal(bytes)).toBe('the file is in UTF-16; save it as CSV in UTF-8');
    }
    expect(refusal(wide.subarray(2))).toMatch(
      /^line 1 holds a byte of value 0, so this is no text/,
    );
  });

  it('a picture, a packed file, a file that was cut short', () => {
    const picture = Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 0x1a, 10, 0, 0, 0, 13]);
    expect(refusal(picture)).toMatch(/^line 1: the header is .*; the first line must be x,y/);
    expect(refusal(Buffer.from('PK\x03\x04\x14\0'))).toContain('a byte of value 3');
    expect(refusal(Buffer.from('x,y\n1,2\n3,4\n\0\0\0\0'))).toMatch(
      /^line 4 \(row 2, counted from 0\) holds a byte of value 0/,
    );
  });

  it('other separators, and decimal commas', () => {
    expect(refusal('x;y\n1,5;2,5\n')).toBe(
      'line 1: the columns are parted by semicolons; commas are wanted, and points in decimals: x,y',
    );
    expect(refusal('x\ty\tz\n1\t2\t3\n')).toContain('parted by tabs; commas are wanted');
    expect(refusal('clock  radius\n3 20\n')).toMatch(/parted by spaces.*: clock,radius$/);
    expect(refusal('x,y\n12,5,3,25\n')).toBe(
      'line 2 (row 0, counted from 0) has 4 columns; 2 are wanted: x,y, with points, not commas, in decimals',
    );
    expect(refusal('x,y\n1;2\n')).toMatch(/has 1 column; 2 are wanted: x,y, parted by commas$/);
    expect(refusal('x,y\n1.5 2.5\n')).toMatch(/has 1 column; 2 are wanted: x,y$/);
  });

  it('one line of ten million characters, in any column', () => {
    expect(refusal(`x,y\n1,2\n${'1'.repeat(1e7)}`)).toMatch(
      /^line 3 .* has 1 column; 2 are wanted/,
    );
    expect(refusal(`x,y\n${'é'.repeat(5e6)},2\n`)).toContain(
      `column x: "${'é'.repeat(40)}…" is not a finite number`,
    );
    expect(refusal(`x,y\n${','.repeat(1e7)}\n`)).toContain('has 10000001 columns');
  });
});

describe('from the command line', () => {
  it('radii are fitted as the points that they are', async () => {
    const shifted = Array.from({ length: 12 }, (_, i) => {
      const theta = (i * Math.PI) / 6;
      return `${i * 30}d,${2 * Math.cos(theta) + Math.sqrt(100 - (2 * Math.sin(theta)) ** 2)}`;
    });
    const file = fileOf('radii.csv', ['clock,radius', ...shifted].join('\n'));
    const { code, out, err } = await run('fit', file, '--feature', 'circle');
    expect([code, err]).toEqual([0, '']);
    const report = JSON.parse(out);
    expect(report.points).toBe(12);
    expect(report.diameter).toBeCloseTo(20, 12);
    expect(report.center[1]).toBeCloseTo(2, 12);
  });

  it('a file beyond 2 GB, a folder and none at all get one line each', async () => {
    const large = fileOf('large.csv', 'x,y\n');
    truncateSync(large, 3e9);
    for (const [file, why] of [
      [large, 'larger than 2 GB, the most that can be read; give fewer rows.'],
      [import.meta.dirname, 'this is a folder; name a file.'],
      [`${large}.none`, 'there is no such file.'],
    ] as const) {
      const { code, out, err } = await run('fit', file, '--feature', 'circle');
      expect([code, out, err]).toEqual([1, '', `${file}: ${why}\n`]);
    }
    truncateSync(large, 0);
  });
});
