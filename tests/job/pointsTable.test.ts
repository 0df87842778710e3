/** Points of a scanner from the bytes of a CSV file, and what says that a file holds such points. */
import { describe, expect, it } from 'vitest';
import { isScan, readScan } from '../../src/job/pointsTable.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

function points(text: string): number[][] {
  const read = readScan(bytes(text));
  if ('error' in read) throw new Error(read.error);
  return read.map((column) => [...column]);
}

function refusal(text: string): string {
  const read = readScan(bytes(text));
  if (!('error' in read)) throw new Error('this was to be refused');
  return read.error;
}

describe('points of a scanner', () => {
  it('columns in any order and case, others passed over whatever they hold', () => {
    const text = 'Id, Z ,intensity,X,y\na1,3,0.5,1,2\n"b",6,,4,5e0\n';
    expect(points(text)).toEqual([
      [1, 4],
      [2, 5],
      [3, 6],
    ]);
  });

  it('a byte-order mark and lines ended in either way', () => {
    expect(points('\uFEFFx,y,z\r\n1,2,3\r\n\r\n')).toEqual([[1], [2], [3]]);
  });

  it.each([
    [
      'a word',
      'x,y,z\n1,2,3\n1,two,3\n',
      'line 3 (row 1, counted from 0), column y: "two" is not a finite number',
    ],
    ['nothing', 'n,x,y,z\n1,1,,3\n', 'line 2 (row 0, counted from 0), column y: nothing is there'],
    [
      'too few',
      'x,y,z\n1,2\n',
      'line 2 (row 0, counted from 0) has 2 columns; 3 are wanted: x,y,z',
    ],
    ['semicolons', 'x;y;z\n1;2;3\n', 'the columns are parted by semicolons; commas are wanted'],
    [
      'x twice',
      'x,x,y,z\n1,1,2,3\n',
      'line 1: the header is "x,x,y,z"; the first line must be x,y,z',
    ],
    ['no row', 'x,y,z\n', 'there are no points below the header'],
    ['infinity', 'x,y,z\n1,2,1e999\n', 'column z: "1e999" is not a finite number'],
  ])('%s is refused by line and column', (_, text, says) => {
    expect(refusal(text)).toContain(says);
  });
});

describe('what a file holds', () => {
  it.each([
    ['x,y,z\n', true],
    ['\uFEFFX,Y,Z,nx,ny,nz\n1,2', true],
    ['x;y;z\n', true],
    ['z\ty\tx\r\n', true],
    ['x,y\n1,2\n', false],
    ['depth,clock,reading\n', false],
    ['survey,face,x,y\n', false],
    ['{"x": 1, "y": 2, "z": 3}', false],
    ['', false],
  ])('%j: points %s', (text, is) => {
    expect(isScan(bytes(text))).toBe(is);
  });
});
