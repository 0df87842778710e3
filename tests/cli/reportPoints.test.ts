/** `report` of points: a job of readings, the surface near the truth, and one sentence for what is at fault. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { jobFromScan } from '../../src/evaluate/scanJob.ts';
import { clockTheta } from '../../src/job/clock.ts';
import { openJob, saveJob } from '../../src/job/parse.ts';
import { lengthMm } from '../../src/job/units.ts';
import { bell, fading, lobe, round, sum } from '../fixtures/bores.ts';
import { type Columns, scanOf } from '../fixtures/scans.ts';
import { fileOf, run } from './run.ts';

const LENGTH = 50;
const WALL = sum(round(32.5), lobe(2, 0.1, 0.4, fading(60)), bell('lorentzian', 0.1, 16));
const NOISE = 0.01;

function csvOf([x, y, z]: Columns, scale = 1): string {
  const rows = Array.from(x, (_, i) =>
    [i, z[i]! / scale, x[i]! / scale, y[i]! / scale].map((v) => Number(v.toFixed(6))).join(','),
  );
  return `id,Z,X,Y\n${rows.join('\n')}\n`;
}

const POINTS = scanOf(WALL, { count: 20_000, length: LENGTH, noise: NOISE });
const SIZES = ['--nominal', '65', '--length', `${LENGTH}`];

function made(columns: Columns, sizes = {}) {
  const found = jobFromScan(
    { name: 'p.csv', columns },
    { units: 'mm', nominal: '65', length: '', ...sizes },
  );
  if (!found.ok) throw new Error(found.why);
  return found.job;
}

interface Report {
  bores: {
    surveys: {
      notes: { text: string }[];
      checks: unknown[];
      surface: { theta: number[]; z: number[]; mean: number[][]; sdSeen: number[][] };
    }[];
  }[];
}

describe('a scan reported', () => {
  let report: Report;
  beforeAll(async () => {
    const file = fileOf('scan.csv', csvOf(POINTS));
    const { code, out, err } = await run('report', file, ...SIZES, '--bushing', '65.2', '--json');
    expect([code, err]).toEqual([0, '']);
    report = JSON.parse(out);
  }, 60_000);

  it('the surface is the bore’s, and as sure as it says', () => {
    const { theta, z, mean, sdSeen } = report.bores[0]!.surveys[0]!.surface;
    const off = z.flatMap((deep, k) =>
      theta.map((t, i) => [mean[k]![i]! - WALL(t, deep), sdSeen[k]![i]!] as const),
    );
    const rms = Math.sqrt(off.reduce((s, [e]) => s + e * e, 0) / off.length);
    // 35 points a place are known to 0.01 x 1.5 / sqrt(35) = 0.0025 mm, before places lend to each other.
    expect(rms).toBeLessThan(0.0025);
    const within = off.filter(([e, sd]) => Math.abs(e) <= 2 * sd).length / off.length;
    expect(within).toBeGreaterThan(0.9);
  });

  it('says what became of the points, and doubts none of their means', () => {
    const [survey] = report.bores[0]!.surveys;
    expect(survey!.notes[0]!.text).toMatch(
      /^20,000 points of scan\.csv, drawn together into 36 clock positions × 16 depths; that makes no radius wrong by more than 0\.0\d+ mm per side\. Their axes are taken as the bore’s/,
    );
    expect(survey!.checks).toEqual([]);
  });
});

describe('points in inches', () => {
  it('are the same bore where --units says so', async () => {
    const file = fileOf('inches.csv', csvOf(POINTS, 25.4));
    const sizes = ['--nominal', '2.559', '--length', '1.9685', '--units', 'in', '--json'];
    const { code, out, err } = await run('report', file, ...sizes);
    expect([code, err]).toEqual([0, '']);
    const { mean } = (JSON.parse(out) as Report).bores[0]!.surveys[0]!.surface;
    expect(Math.abs(mean[32]![0]! - WALL(0, 25))).toBeLessThan(0.01);
  });

  it('are asked about where the sizes are in another unit', async () => {
    const file = fileOf('inches.csv', csvOf(POINTS, 25.4));
    const { code, err } = await run('report', file, ...SIZES);
    expect(code).toBe(1);
    expect(err).toMatch(
      /^inches\.csv: the points lie 1\.\d+ mm per side off their axis, .*say the unit/,
    );
  });

  it('are known by their size where nothing says', () => {
    const inches = POINTS.map((column) => column.map((v) => v / 25.4)) as Columns;
    expect(made(inches, { units: null, nominal: '' }).units).toBe('in');
    expect(made(POINTS, { units: null, nominal: '' }).units).toBe('mm');
  });
});

describe('what is at fault', () => {
  it.each([
    [
      'x,y,z\n1,2,3\n1,two,3\n',
      1,
      'line 3 (row 1, counted from 0), column y: "two" is not a finite number',
    ],
    ['x;y;z\n1;2;3\n', 1, 'parted by semicolons; commas are wanted'],
    [
      'x,y,z\n30,0,60\n0,30,70\n-30,0,80\n',
      1,
      'none lie on a wall between the ends of the bore (3 above',
    ],
  ])('%j: one sentence', async (text, exit, says) => {
    const { code, out, err } = await run('report', fileOf('bad.csv', text), ...SIZES);
    expect([code, out]).toEqual([exit, '']);
    expect(err).toContain(says);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('the length left out, and --accuracy that is none or where it has no meaning', async () => {
    const file = fileOf('scan.csv', csvOf(POINTS));
    expect(await run('report', file, '--nominal', '65')).toMatchObject({ code: 2 });
    const none = await run('report', file, ...SIZES, '--accuracy', 'good');
    expect(none).toMatchObject({ code: 2, err: expect.stringContaining('not “good”') });
    const readings = fileOf('r.csv', 'depth,clock,reading\n5,12,65.1\n9,3,65.2\n');
    const idle = await run('report', readings, ...SIZES, '--accuracy', '0.01');
    expect(idle).toMatchObject({
      code: 2,
      err: expect.stringContaining('goes with a CSV of points'),
    });
  });
});

describe('the job that points make', () => {
  it('is stored and opened again as it was, a table of places', () => {
    const job = made(POINTS);
    expect(openJob(saveJob(job), 'x')).toMatchObject({ ok: true, doubts: [], job });
    const [survey] = job.features[0]!.surveys;
    expect(survey!.readings).toHaveLength(576);
    expect([survey!.plan.clocks.length, survey!.plan.depths.length]).toEqual([36, 16]);
    expect(survey!.plan.clocks.slice(0, 3)).toEqual(['12:00', '12:20', '12:40']);
  });

  it('single points become radii: x is 3 o’clock, y is 12, z goes inward', () => {
    const columns = [
      [0, 31.7, 0, -31.6, 22.5],
      [31.8, 0, -31.9, 0, 22.5],
      [5, 5, 10, 10, 0],
    ].map((c) => Float64Array.from(c)) as Columns;
    const { readings } = made(columns).features[0]!.surveys[0]!;
    expect(readings.map((one) => one.clock)).toEqual(['12:00', '3:00', '6:00', '9:00', '1:30']);
    const wanted = [31.8, 31.7, 31.9, 31.6, 22.5 * Math.SQRT2];
    readings.forEach((one, k) => {
      expect(lengthMm(one.value)).toBeCloseTo(wanted[k]!, 11);
    });
    expect(readings.map((one) => one.depth.text)).toEqual(['5', '5', '10', '10', '0']);
  });

  it('a few points come back from clock, depth and radius wherever round the bore they lie', () => {
    const place = fc.tuple(
      fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
      fc.double({ min: 29.6, max: 30.4, noNaN: true }),
      fc.double({ min: 0, max: 200, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 30 }), (places) => {
        const columns = [
          places.map(([t, r]) => r * Math.sin(t)),
          places.map(([t, r]) => r * Math.cos(t)),
          places.map(([, , z]) => z),
        ].map((c) => Float64Array.from(c)) as Columns;
        const { readings } = made(columns, { nominal: '60' }).features[0]!.surveys[0]!;
        readings.forEach((one, k) => {
          const [theta, r] = [clockTheta(one.clock), lengthMm(one.value)];
          // the clock is written to 1e-9 degrees or a minute within 1e-7 minutes: 1e-9 rad at 30 mm
          expect(Math.abs(r * Math.sin(theta) - columns[0][k]!)).toBeLessThan(1e-7);
          expect(Math.abs(r * Math.cos(theta) - columns[1][k]!)).toBeLessThan(1e-7);
          expect(Math.abs(lengthMm(one.depth) - columns[2][k]!)).toBeLessThan(1e-11);
        });
      }),
    );
  });
});
