/** The `fit` command on text: what it reports and how it refuses. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FitOptions, runFit } from '../../src/cli/fit.ts';
import { readPoints } from '../../src/cli/pointsCsv.ts';

const CIRCLE: FitOptions = { feature: 'circle', criterion: 'least-squares', units: 'mm' };
const CYLINDER = { ...CIRCLE, feature: 'cylinder' };
const SQUARE = 'x,y\n10,0\n0,10\n-10,0\n0,-10\n';

function refusal(text: string, options = CIRCLE): string {
  const report = runFit(text, options);
  if (!('error' in report)) throw new Error('this was to be refused');
  expect(report.error).not.toContain('\n');
  return report.error;
}

describe('what fit reports', () => {
  it('a circle, with the unit that was said', () => {
    const report = runFit(SQUARE, { ...CIRCLE, units: 'in' });
    expect(report).toMatchObject({
      feature: 'circle',
      criterion: 'least-squares',
      units: 'in',
      points: 4,
      status: 'ok',
      diameter: 20,
      deviation: { min: 0, max: 0, range: 0 },
      contacts: [0, 0],
    });
    expect(report).toHaveProperty('center');
  });

  it('a cylinder, with its axis', () => {
    const rows = Array.from({ length: 24 }, (_, i) => {
      const turn = (i % 8) * (Math.PI / 4);
      return `${5 + 3 * Math.cos(turn)},${3 * Math.sin(turn)},${Math.floor(i / 8)}`;
    });
    const report = runFit(['x,y,z', ...rows].join('\n'), CYLINDER);
    if ('error' in report || !('axis' in report)) throw new Error('no axis');
    expect(report.diameter).toBeCloseTo(6, 13);
    expect(report.axis.direction[2]).toBeCloseTo(1, 13);
    expect(report.axis.point[0]).toBeCloseTo(5, 13);
  });

  it('reads every number to the last digit, as the language itself does', () => {
    const written = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((v) => v.toPrecision(17)),
      fc
        .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 12 }))
        .map(([v, places]) => (v / 10 ** places).toFixed(places)),
    );
    fc.assert(
      fc.property(written, written, (x, y) => {
        const points = readPoints(`x,y\n${x},${y}\n`);
        if ('error' in points) throw new Error(points.error);
        expect(points.columns.map((c) => c[0])).toEqual([Number(x), Number(y)]);
      }),
      { numRuns: 2000 },
    );
  });

  it('spaces, either line end, a byte-order mark and empty last lines are nothing', () => {
    const plain = runFit(SQUARE, CIRCLE);
    const other = '\ufeff X , Y \r\n10, 0\r\n 0 ,+10.\r\n-1e1,.0\r\n0,-10\r\n\r\n \n';
    expect(runFit(other, CIRCLE)).toEqual(plain);
    expect(runFit(SQUARE.trimEnd(), CIRCLE)).toEqual(plain);
  });
});

describe('--filter', () => {
  // ISO 16610-21: half of a lobe at the cut-off goes through, and none to speak of at four times it.
  const round = (lobe: number) =>
    ['clock,radius']
      .concat(
        Array.from({ length: 360 }, (_, i) => {
          const theta = (i * Math.PI) / 180;
          return `${i}d,${30 + 0.01 * Math.cos(lobe * theta)}`;
        }),
      )
      .join('\n');
  const range = (lobe: number) => {
    const report = runFit(round(lobe), { ...CIRCLE, filter: '15' });
    if ('error' in report) throw new Error(report.error);
    expect(report.filter).toBe(15);
    return report.deviation.range;
  };

  it('lets half of a lobe at the cut-off through', () => {
    // The readings meet every crest of 15 lobes; the angles about the center are off by 0.01 / 30.
    expect(Math.abs(range(15) - 0.01)).toBeLessThan(0.01 * (0.01 / 30) * 15);
    expect(range(60)).toBeLessThan(0.02 * 2 ** -15);
    expect(range(2)).toBeGreaterThan(0.0197);
  });

  it('is for circles, with readings enough, and takes a number', () => {
    expect(refusal(SQUARE, { ...CIRCLE, filter: '15' })).toContain('needs 105 readings');
    expect(refusal(SQUARE, { ...CIRCLE, filter: 'x' })).toContain('"x"');
    expect(refusal(SQUARE, { ...CYLINDER, filter: '15' })).toContain('cylinder');
  });
});

describe('what fit refuses, in one sentence', () => {
  it('an unknown feature, criterion or unit, and says what there is', () => {
    const sphere = refusal(SQUARE, { ...CIRCLE, feature: 'sphere' });
    expect(sphere).toContain('"sphere"');
    expect(sphere).toContain('circle by least-squares, minimum-zone');
    expect(sphere).toContain('cone by least-squares, minimum-zone');
    const criterion = 'maximum-inscribed';
    expect(refusal(SQUARE, { ...CIRCLE, feature: 'cone', criterion })).toContain('least-squares');
    expect(refusal(SQUARE, { ...CIRCLE, feature: 'constructor' })).toContain('"constructor"');
    expect(refusal(SQUARE, { ...CIRCLE, units: 'cm' })).toContain('mm or in');
  });

  it('nothing, blanks, a wrong header, a header alone', () => {
    expect(refusal('')).toContain('empty');
    expect(refusal(' \n\n')).toContain('empty');
    expect(refusal('a;b\n1;2\n')).toContain('line 1: the header is "a;b"');
    expect(refusal('1,2\n3,4\n')).toContain('x,y,z');
    expect(refusal('x,y\n')).toContain('no points');
    expect(refusal(`${'#'.repeat(1e7)}`)).toMatch(/^line 1: the header is "#{40}…"/);
  });

  it('columns of another feature', () => {
    expect(refusal(SQUARE, CYLINDER)).toBe(
      'line 1: a cylinder needs the columns x,y,z (or clock,depth,radius), and the header is x,y',
    );
    expect(refusal('x,y,z\n1,2,3\n')).toContain('needs the columns x,y (or');
  });

  it('a ragged row, by line, row and number of columns', () => {
    expect(refusal('x,y\n1,2\n3\n5,6\n')).toBe(
      'line 3 (row 1, counted from 0) has 1 column; 2 are wanted: x,y',
    );
    expect(refusal('x,y\n1,2\n3,4,5\n')).toContain('row 1, counted from 0) has 3 columns');
    expect(refusal('x,y\n1,2\n3,4,')).toContain('has 3 columns');
    expect(refusal('x,y\n1,2\n\n3,4\n')).toContain('line 3 (row 1, counted from 0) is empty');
  });

  it('what is no finite number, by line, row and column', () => {
    for (const cell of ['abc', 'inf', '-Infinity', 'NaN', '1e999', '0x10', '1_000', '1.2.3', '-']) {
      const error = refusal(`x,y\n1,2\n3,${cell}\n`);
      expect(error).toContain('line 3 (row 1, counted from 0), column y');
      expect(error).toContain(`"${cell}"`);
    }
    expect(refusal('x,y\n,2\n')).toContain('column x: nothing is there');
    expect(refusal(`x,y\n1,${'9a'.repeat(1e6)}\n`).length).toBeLessThan(200);
  });

  it('too few points, and points that leave the feature open', () => {
    expect(refusal('x,y\n1,2\n')).toContain('at least 3 different points, and there is 1');
    expect(refusal('x,y,z\n1,0,0\n0,1,0\n0,0,1\n', CYLINDER)).toContain('there are 3');
    expect(refusal('x,y\n0,0\n1,1\n2,2\n')).toContain('one straight line');
  });
});
