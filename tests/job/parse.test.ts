import { describe, expect, it } from 'vitest';
import * as edit from '../../src/job/edits.ts';
import { openJob, saveJob } from '../../src/job/parse.ts';
import type { Job } from '../../src/job/schema.ts';
import { smallJob } from './jobs.ts';

const job = smallJob();
const why = (text: string) => {
  const opened = openJob(text, 'heel.roundhand.json');
  if (opened.ok) throw new Error('opened');
  return opened.why;
};
/** The small job's file with one place changed. */
function changed(change: (data: Record<string, never>) => void): string {
  const data = JSON.parse(saveJob(job));
  change(data);
  return JSON.stringify(data);
}
// biome-ignore lint/suspicious/noExplicitAny: files that are wrong in any way
type Wrong = any;
const doubts = (of: Job) => {
  const opened = openJob(saveJob(of), 'x');
  if (!opened.ok) throw new Error(opened.why);
  return opened.doubts;
};

describe('a job file', () => {
  it('has format and version first, and a reading on one line', () => {
    const lines = saveJob(job).split('\n');
    expect(lines.slice(0, 3)).toEqual(['{', '  "format": "roundhand-job",', '  "version": 1,']);
    expect(saveJob(job).endsWith('}\n')).toBe(true);
    expect(lines.some((line) => line.includes('"depth": { "text": "0.25", "unit": "in" }'))).toBe(
      true,
    );
  });

  it('without fault has no doubts', () => {
    expect(doubts(job)).toEqual([]);
  });

  it('may begin with a byte order mark', () => {
    expect(openJob(`\uFEFF${saveJob(job)}`, 'x')).toMatchObject({ ok: true });
  });
});

describe('a file that is no job', () => {
  it.each<[string, string]>([
    ['', 'the file is empty'],
    ['  \n', 'the file is empty'],
    ['hello', 'this is no job'],
    ['{"format": "roundhand-job",\n oops}', 'line 2 is not written as JSON'],
    [saveJob(job).slice(0, 200), 'cut off'],
    ['[]', 'this is JSON, but no job'],
    ['null', 'this is JSON, but no job'],
    ['3', 'this is JSON, but no job'],
    ['{"a": 1}', 'it says no “format”'],
    ['{"format": "roundhand-shop"}', 'its “format” is “roundhand-shop”'],
    ['{"format": "roundhand-job"}', '“version” should be the whole number 1'],
    ['{"format": "roundhand-job", "version": "1"}', '“version” should be the whole number 1'],
    ['{"format": "roundhand-job", "version": 1.5}', '“version” should be the whole number 1'],
    ['{"format": "roundhand-job", "version": 7}', 'newer Roundhand (version 7'],
    ['{"format": "roundhand-job", "version": 0}', 'no version 0'],
    ['{"format": "roundhand-job", "version": -3}', 'no version -3'],
    ['{"format": "roundhand-job", "version": 1}', '“id” is missing'],
  ])('%j', (text, part) => {
    expect(why(text)).toContain(part);
    expect(why(text)).toMatch(/^heel\.roundhand\.json: [^\n]+\.$/);
  });

  it('is named in plain words where one field is wrong', () => {
    const reading = 'bore “Bore”, survey “As found”, reading 2';
    const cases: [(data: Wrong) => void, string][] = [
      [(d) => delete d.title, '“title” is missing'],
      [(d) => (d.units = 'cm'), '“units” is “cm”; it should be one of in, mm'],
      [(d) => (d.colour = 'red'), '“colour” is not a field that belongs there'],
      [(d) => (d.title = 3), '“title” is 3; it should be a text'],
      [(d) => (d.title = 'x'.repeat(300)), '“title” is longer than the 200 allowed'],
      [(d) => (d.gauges = []), '“gauges” is empty'],
      [(d) => (d.gauges = {}), '“gauges” is an object with fields; it should be a list'],
      [
        (d) => (d.features[0].surveys[0].readings[1].value.unit = 'furlong'),
        `${reading}, “value.unit” is “furlong”`,
      ],
      [(d) => (d.features[0].surveys[0].readings[1].value = 2.5), `${reading}, “value” is 2.5`],
      [(d) => delete d.features[0].surveys[0].readings[1].clock, `${reading}, “clock” is missing`],
      [(d) => (d.features[0].surveys[0].readings[1] = null), `${reading} is null`],
      [(d) => (d.features[0].bushings[0].seat.face = 'C'), 'bushing “Bushing”, “seat.face” is “C”'],
      [
        (d) => (d.features[0].surveys[0].plan.depths[2] = 'x'),
        'survey “As found”, plan depth 3 is “x”',
      ],
      [(d) => (d.features[0].kind = 'hole'), '“kind” is “hole”; it should be one of bore, pin'],
    ];
    for (const [change, part] of cases) expect(why(changed(change))).toContain(part);
  });

  it('is refused where ids are not their own or name nothing', () => {
    const cases: [(data: Wrong) => void, string][] = [
      [(d) => d.gauges.push(d.gauges[0]), 'one id, “g1”, twice among its gauges'],
      [(d) => d.features.push(d.features[0]), 'one id, “f1”, twice among its features'],
      [
        (d) => (d.features[0].surveys[0].readings[1].id = 'r1'),
        '“r1”, twice among its readings (numbers 1 and 2)',
      ],
      [(d) => (d.features[0].surveys[0].readings[1].gauge = 'g9'), 'reading 2 of a gauge “g9”'],
      [(d) => (d.features[0].surveys[0].readings[1].setup = 'u9'), 'reading 2 of a set-up “u9”'],
      [(d) => (d.features[0].surveys[0].plan.gauge = 'g9'), 'plans for a gauge “g9”'],
    ];
    for (const [change, part] of cases) expect(why(changed(change))).toContain(part);
  });

  it('is refused where an issued pass does not add up', () => {
    const issued = edit.issuePass(job, 'f1', {
      when: '2026-11-25',
      survey: 's1',
      title: 'Pass 1',
      targetDiameter: 63.45,
      theta: [0, 1],
      z: [0, 1, 2],
      removal: [
        [0, 0],
        [0, 0],
      ],
      words: [],
    });
    expect(why(saveJob(issued))).toContain('3 rows of 2 numbers');
  });
});

describe('a hostile file', () => {
  const text = saveJob(job);

  it('with reserved names gains nothing by them', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      const planted = text.replace('"safety": {', `"safety": {"${name}": {"polluted": true}`);
      expect(planted).not.toBe(text);
      expect(why(planted)).toContain(`“safety.${name}” is not a field`);
    }
    expect(({} as Wrong).polluted).toBeUndefined();
  });

  it('nested without end is answered', () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
    expect(why(deep)).toMatch(/no job/);
    const inside = text.replace('"title": "New job"', `"title": ${deep}`);
    expect(inside).not.toBe(text);
    expect(why(inside)).toContain('“title” is a list');
    expect(why('['.repeat(1_000_000))).toMatch(/no job|cut off/);
  });

  it('with numbers that are none is refused', () => {
    expect(why(text.replace('"version": 1', '"version": NaN'))).toContain('no job');
    expect(why(text.replace('"version": 1', '"version": Infinity'))).toContain('no job');
    expect(why(text.replace('"version": 1', '"version": 1e999'))).toContain('version');
    const endless = changed((d: Wrong) => {
      d.features[0].issued = [
        {
          id: 'i1',
          when: '',
          survey: 's1',
          title: '',
          targetDiameter: 123.5,
          theta: [],
          z: [],
          removal: [],
          words: [],
        },
      ];
    }).replace('123.5', '1e999');
    expect(why(endless)).toContain('“targetDiameter” is not a finite number');
  });

  it('of 10 MB is answered at once and in one sentence', () => {
    const million = 1_000_000;
    const rubbish = [
      'x'.repeat(10 * million),
      '{"a":'.repeat(2 * million),
      `[${'1,'.repeat(5 * million)}1]`,
      `{"format":"roundhand-job","version":1,"title":"${'y'.repeat(10 * million)}"}`,
      '\u0000'.repeat(10 * million),
      'z'.repeat(41 * million),
    ];
    for (const one of rubbish) {
      const before = process.cpuUsage();
      const sentence = why(one);
      // processor time, which others on the machine do not lengthen; the longest is JSON's own, some 0.3 s
      const { user, system } = process.cpuUsage(before);
      expect((user + system) / 1e6).toBeLessThan(2);
      expect(sentence.length).toBeLessThan(250);
      expect(sentence).not.toContain('\n');
    }
  });
});

describe('doubts', () => {
  const inch = (text: string) => ({ text, unit: 'in' as const });
  const reading = (change: Parameters<typeof edit.setReading>[4]) =>
    edit.setReading(job, 'f1', 's1', 'r2', change);
  const place = 'bore “Bore”, survey “As found”, reading 2: ';

  it.each<[string, Job, string]>([
    ['an unreadable reading', reading({ value: inch('2.5O1') }), `${place}“2.5O1” is no length`],
    [
      'a depth past the bottom',
      reading({ depth: inch('4') }),
      `${place}depth 4.0000 in lies outside the bore, which is 3.0000 in long`,
    ],
    [
      'a depth before the face',
      reading({ depth: inch('-1') }),
      `${place}depth −1.0000 in is below zero`,
    ],
    ['an unreadable depth', reading({ depth: inch('deep') }), `${place}depth: “deep” is no length`],
    ['no depth', reading({ depth: inch('') }), `${place}its depth is missing`],
    [
      'an unreadable clock',
      reading({ clock: 'noon' }),
      `${place}clock position: “noon” is no clock position`,
    ],
    [
      'a reading of nothing',
      reading({ value: inch('0') }),
      `${place}it is 0.0000 in, and should be above zero`,
    ],
    [
      'face B without a length',
      edit.setDimension(reading({ face: 'B' }), 'f1', 'length', undefined),
      `${place}it is taken from face B, which needs the length`,
    ],
    [
      'a length of nothing',
      edit.setDimension(job, 'f1', 'length', inch('0')),
      'bore “Bore”: length is 0.0000 in, and should be above zero',
    ],
    [
      'a length below zero',
      edit.setDimension(job, 'f1', 'length', inch('-3')),
      'length is −3.0000 in',
    ],
    [
      'a bore of 6 m',
      edit.setDimension(job, 'f1', 'nominal', { text: '6001', unit: 'mm' }),
      'should be between 1 mm and 5 m',
    ],
    [
      'a bore of half a millimetre',
      edit.setDimension(job, 'f1', 'nominal', { text: '.5', unit: 'mm' }),
      'should be between 1 mm and 5 m',
    ],
    [
      'an unreadable length',
      edit.setDimension(job, 'f1', 'length', inch('long')),
      'length: “long” is no length',
    ],
    [
      'a press fit past 2 %',
      edit.setWanted(job, 'f1', 'pressFit', inch('0.06')),
      'more than 2 % of the diameter (0.0500 in)',
    ],
    [
      'a loose press fit',
      edit.setWanted(job, 'f1', 'pressFit', inch('-0.002')),
      'the press fit is below zero',
    ],
    [
      'a bushing wider inside than outside',
      edit.setBushing(job, 'f1', 'b1', 'inside', inch('2.6')),
      'bushing “Bushing”: it is no smaller inside than outside',
    ],
    [
      'a bushing of another unit',
      edit.setDimension(job, 'f1', 'nominal', { text: '2.5', unit: 'mm' }),
      "far from the bore's size",
    ],
    [
      'a seat that ends before it begins',
      edit.setBushing(
        edit.setBushing(job, 'f1', 'b1', 'from', inch('2')),
        'f1',
        'b1',
        'to',
        inch('1'),
      ),
      'its seat ends before it begins',
    ],
    [
      'a boss inside the bore',
      edit.setDimension(job, 'f1', 'bossOutside', inch('2')),
      'the boss is no larger outside',
    ],
    [
      'a worn side that is no clock',
      edit.setWornSide(job, 'f1', 's1', 'left'),
      'worn side: “left”',
    ],
    [
      'a temperature that is no number',
      edit.setTemperature(job, 'f1', 's1', { part: 'warm', unit: 'F' }),
      'temperature of the part: “warm” is no number',
    ],
    [
      'a gauge that reaches nowhere',
      edit.setGauge(job, 'g1', { reach: inch('0') }),
      'reach is 0.0000 in',
    ],
    [
      'a reading over a size not known',
      edit.setBushingOutside(
        edit.setReading(job, 'f1', 's1', 'r2', { value: inch('+3') }),
        'f1',
        'b1',
        0,
        undefined,
      ),
      `${place}“+3” is over or under the nominal size`,
    ],
  ])('%s is doubted, with its place', (_, of, doubt) => {
    expect(doubts(of).join('\n')).toContain(doubt);
  });

  it('are at most twenty, and the number of the rest', () => {
    let many = job;
    for (let index = 0; index < 30; index++) {
      many = edit.addReading(many, 'f1', 's1', {
        face: 'A',
        depth: inch('1'),
        clock: '12',
        gauge: 'g1',
        value: inch('bad'),
      });
    }
    expect(doubts(many)).toHaveLength(21);
    expect(doubts(many).at(-1)).toBe('and 10 more places like these');
  });
});
