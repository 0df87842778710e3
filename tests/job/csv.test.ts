import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CSV_COLUMNS, readingsToCsv, readReadingsCsv } from '../../src/job/csv.ts';
import { readCsvText } from '../../src/job/csvText.ts';
import { jobFromCsv } from '../../src/job/fromCsv.ts';
import { openJob, saveJob } from '../../src/job/parse.ts';
import type { Job } from '../../src/job/schema.ts';
import { lengthMm } from '../../src/job/units.ts';

const HEAD = 'survey,face,depth,clock,instrument,setup,reading,unit,sd,note';
const SIZES = { units: 'in', nominal: '2.5', length: '3' } as const;

function read(text: string) {
  const result = readReadingsCsv(text, 'bore.csv');
  if (!result.ok) throw new Error(result.why);
  return result;
}
function readings(text: string) {
  const result = read(text);
  return result.readings;
}
function why(text: string): string {
  const result = readReadingsCsv(text, 'bore.csv');
  if (result.ok) throw new Error('read');
  return result.why;
}
const FULL = `${HEAD}
As found,A,0.25,12,two-point,,2.5030,in,0.0004,"first, and repeated"
As found,B,0.25,4:30,sweep,spindle,+3,thou,,
After squeezing,A,10,135d,wall,boss,20.05,mm,,
`;
// the second row is in thou, and its depth must say so: see below
const GOOD = FULL.replace('B,0.25,', 'B,0.25 in,');

describe('readings as CSV', () => {
  it('in all ten columns', () => {
    expect(readings(GOOD)).toEqual([
      {
        line: 2,
        survey: 'As found',
        face: 'A',
        depth: '0.25',
        clock: '12',
        instrument: 'two-point',
        setup: '',
        reading: '2.5030',
        unit: 'in',
        sd: '0.0004',
        note: 'first, and repeated',
      },
      expect.objectContaining({
        line: 3,
        face: 'B',
        instrument: 'sweep',
        setup: 'spindle',
        unit: 'thou',
      }),
      expect.objectContaining({
        line: 4,
        survey: 'After squeezing',
        instrument: 'wall',
        unit: 'mm',
      }),
    ]);
  });

  it('need only depth, clock and reading, in any order and any case', () => {
    expect(readings('Reading,Clock,Depth\n2.503,12,1/4\n')[0]).toMatchObject({
      depth: '1/4',
      clock: '12',
      reading: '2.503',
      face: 'A',
      instrument: 'two-point',
      unit: '',
      survey: '',
    });
  });

  it.each<[string, string]>([
    ['semicolons and decimal commas', 'depth;clock;reading\n6,35;12;63,5\n'],
    ['tabs and decimal commas', 'depth\tclock\treading\n6,35\t12\t63,5\n'],
    ['a byte order mark and CRLF', '\uFEFFdepth,clock,reading\r\n"6,35",12,"63,5"\r\n'],
    ['old line ends', 'depth,clock,reading\r6.35,12,63.5\r'],
    ['empty lines and spaces', '\n\n depth , clock , reading \n\n 6.35 , 12 , 63.5 \n\n'],
    ['quotes all over', '"depth","clock","reading"\n"6.35","12","63.5"\n'],
    ['no line end at the end', 'depth,clock,reading\n6.35,12,63.5'],
  ])('with %s', (_, text) => {
    const [row, ...more] = readings(text);
    expect(more).toEqual([]);
    expect(lengthMm({ text: row!.depth, unit: 'mm' })).toBeCloseTo(6.35, 12);
    expect(lengthMm({ text: row!.reading, unit: 'mm' })).toBeCloseTo(63.5, 12);
    expect(row!.clock).toBe('12');
  });

  it('may hold quotes, separators and line ends in a quoted note, and count lines on', () => {
    const rows = readings(
      'depth,clock,reading,note\n1,12,2.5,"say ""when"",\nthen stop"\n1,3,2.6,\n',
    );
    expect(rows[0]!.note).toBe('say "when",\nthen stop');
    expect(rows[1]!.line).toBe(4);
    // an inch mark of a field that is not quoted is the inch mark
    expect(readings('depth,clock,reading\n1/4",12,2.5"\n')[0]).toMatchObject({
      depth: '1/4"',
      reading: '2.5"',
    });
  });

  it.each<[string, string, string]>([
    ['nothing', '', 'the file is empty'],
    ['other columns', 'a,b,c\n1,2,3\n', 'line 1: the first line should name the columns'],
    ['no head', '0.25,12,2.503\n', 'line 1: the first line should name the columns'],
    ['a misspelt column', 'depth,clock,reading,surwey\n', 'line 1: there is no column “surwey”'],
    [
      'a column twice',
      'depth,clock,reading,depth\n1,2,3,4\n',
      'line 1: column “depth” stands twice',
    ],
    ['a missing column', 'depth,clock\n1,12\n', 'line 1: column “reading” is missing'],
    ['no rows', 'depth,clock,reading\n', 'no readings below the header'],
    [
      'an empty reading',
      'depth,clock,reading\n1,12,2.5\n1,3,\n',
      'line 3, column reading: nothing is there',
    ],
    ['a short row', 'depth,clock,reading\n1,12\n', 'line 2, column reading: nothing is there'],
    [
      'a text in a number',
      'depth,clock,reading\n1,12,2.5O3\n',
      'line 2, column reading: “2.5O3” is no length',
    ],
    [
      'a bad depth',
      'depth,clock,reading\ndeep,12,2.5\n',
      'line 2, column depth: “deep” is no length',
    ],
    [
      'a bad clock',
      'depth,clock,reading\n1,25,2.5\n',
      'line 2, column clock: “25” is not on the clock',
    ],
    ['no clock', 'depth,clock,reading\n1,,2.5\n', 'line 2, column clock: nothing is there'],
    [
      'a bad face',
      'depth,clock,reading,face\n1,12,2.5,C\n',
      'line 2, column face: “C” should be one of A, B',
    ],
    [
      'a bad instrument',
      'depth,clock,reading,instrument\n1,12,2.5,ruler\n',
      'column instrument: “ruler” should be one of two-point, three-leg, sweep, wall, radius',
    ],
    [
      'a bad unit',
      'depth,clock,reading,unit\n1,12,2.5,cm\n',
      'column unit: “cm” should be one of in, thou, mm',
    ],
    [
      'a bad sd',
      'depth,clock,reading,sd\n1,12,2.5,little\n',
      'line 2, column sd: “little” is no length',
    ],
    [
      'commas as points',
      'depth,clock,reading\n6,35,12,63,5\n',
      'line 2 has 5 fields under 3 columns',
    ],
    [
      'an open quote',
      'depth,clock,reading\n1,12,"2.5\n',
      'line 2: a quotation mark is opened and not closed',
    ],
    ['NaN', 'depth,clock,reading\n1,12,NaN\n', 'column reading: “NaN” is no length'],
    ['Infinity', 'depth,clock,reading\n1,12,Infinity\n', 'column reading: “Infinity” is no length'],
    [
      'inches of depth in a row in thou',
      'depth,clock,reading,unit\n0.25,12,+3,thou\n',
      'the row is in thou, so “0.25” would be 0.00025 in',
    ],
    [
      'a very long clock',
      `depth,clock,reading\n1,${'0'.repeat(30)}d,2.5\n`,
      'line 2, column clock',
    ],
    ['x and y only', 'x,y\n1,2\n', 'or x,y,z for points'],
    ['10 MB of rubbish', 'q'.repeat(10_000_000), 'line 1: the first line should name the columns'],
    ['10 MB of quotes', `"${'q'.repeat(10_000_000)}`, 'line 1: a quotation mark is opened'],
    [
      '10 MB of lines',
      `depth,clock,reading\n${'1,12,2.5\n'.repeat(1_100_000)}`,
      'a survey holds 20000 at most',
    ],
  ])('with %s are refused by line and column', (_, text, part) => {
    const sentence = why(text);
    expect(sentence).toContain(part);
    expect(sentence).toMatch(/^bore\.csv: [^\n]+\.$/);
    expect(sentence.length).toBeLessThan(300);
  });
});

describe('a job from readings', () => {
  it('has the surveys, gauges, set-ups and places of its rows', () => {
    const job = jobFromCsv(read(GOOD), { ...SIZES, bushing: '2.5005', pressFit: '.002' });
    const [bore] = job.features;
    expect(bore!.surveys.map((one) => [one.name, one.stage])).toEqual([
      ['As found', 'as-found'],
      ['After squeezing', 'after-squeezing'],
    ]);
    expect(job.gauges.map((one) => one.kind)).toEqual(['two-point', 'sweep', 'wall']);
    expect(bore!.surveys[0]!.setups).toEqual([
      { id: 'u1', gauge: 'g2', name: 'spindle', face: 'B' },
    ]);
    expect(bore!.surveys[0]!.readings[0]).toEqual({
      id: 'r1',
      face: 'A',
      depth: { text: '0.25', unit: 'in' },
      clock: '12',
      gauge: 'g1',
      value: { text: '2.5030', unit: 'in' },
      sd: { text: '0.0004', unit: 'in' },
      note: 'first, and repeated',
    });
    expect(bore).toMatchObject({
      nominal: { text: '2.5', unit: 'in' },
      length: { text: '3', unit: 'in' },
      bushings: [{ outside: [{ text: '2.5005', unit: 'in' }] }],
      wanted: { pressFit: { text: '.002', unit: 'in' } },
    });
    expect(openJob(saveJob(job), 'x')).toMatchObject({ ok: true, doubts: [] });
  });

  it('offers the places of its rows, in order, as a table', () => {
    const text = 'depth,clock,reading\n2,3,2.5\n1/4,3,2.5\n0.25,12,2.5\n2,12,2.5\n';
    const [survey] = jobFromCsv(read(text), SIZES).features[0]!.surveys;
    expect(survey!.plan.clocks).toEqual(['12', '3']);
    expect(survey!.plan.depths.map((one) => one.text)).toEqual(['1/4', '2']);
  });

  it('comes back from its own CSV with every reading as it was typed', () => {
    const table = (job: Job) =>
      job.features[0]!.surveys.map((survey) =>
        survey.readings.map((one) => ({
          ...one,
          // a length in another unit than its row's reading says its own: the same length
          depth: lengthMm(one.depth).toFixed(9),
          sd: lengthMm(one.sd).toFixed(9),
          setup: survey.setups.find((setup) => setup.id === one.setup)?.name,
        })),
      );
    const job = jobFromCsv(read(GOOD), SIZES);
    const csv = readingsToCsv(job, job.features[0]!);
    expect(csv.split('\n')[0]).toBe(CSV_COLUMNS.join(','));
    const again = jobFromCsv(read(csv), { ...SIZES, units: 'mm' });
    expect(table(again)).toEqual(table(job));
  });
});

describe('CSV as text', () => {
  it('reads back any fields that are written quoted', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\t', '\n', ' ', 'é') });
    fc.assert(
      fc.property(
        fc.array(fc.array(field, { minLength: 2, maxLength: 2 }), { minLength: 1 }),
        (rows) => {
          const text = rows
            .map((row) => row.map((one) => `"${one.replaceAll('"', '""')}"`).join(','))
            .join('\n');
          // the first line chooses the separator, so it has none of the others
          const csv = readCsvText(`"h","h"\n${text}`);
          const wanted = rows
            .map((row) => row.map((one) => one.trim()))
            .filter((row) => row.some((one) => one !== ''));
          expect(csv.ok && csv.records.slice(1).map((one) => one.fields)).toEqual(wanted);
        },
      ),
    );
  });
});
