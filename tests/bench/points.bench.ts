/*
 * A million points as CSV, from the bytes of the file to the answer. The command line adds its start,
 * a second or less (`time npm run -s roundhand -- fit FILE --feature cylinder --criterion minimum-zone`
 * tells the whole): the promise is four seconds in all.
 */
import { runFit } from '../../src/cli/fit.ts';
import { readPoints } from '../../src/cli/pointsCsv.ts';
import { jobFromScan } from '../../src/evaluate/scanJob.ts';
import { evaluate } from '../../src/evaluate.ts';
import { readScan } from '../../src/job/pointsTable.ts';
import { bell, fading, lobe, round, sum } from '../fixtures/bores.ts';
import { type Columns, scanOf } from '../fixtures/scans.ts';
import { cylinderOf } from '../laws/minimaxSets.ts';
import type { Bench } from './bench.ts';

const COUNT = 1e6;

/** Every number with all of its digits, as programs write them. */
function csv(): Uint8Array {
  const [x, y, z] = cylinderOf({ seed: 3, count: COUNT }) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const lines = Array.from(x, (_, i) => `${x[i]},${y[i]},${z[i]}`);
  return Buffer.from(`x,y,z\n${lines.join('\n')}\n`);
}

const WORN = sum(round(32.5), lobe(2, 0.2, 0.4, fading(60)), bell('lorentzian', 0.1, 16));
const SCAN = { count: COUNT, length: 50, noise: 0.01 };

/** A worn bore scanned: readings, surface, profile, target, removal, zones, and nothing known before. */
function evaluated(columns: Columns): unknown {
  const sizes = { units: 'mm', nominal: '65', length: '50', bushing: '65.3' } as const;
  const made = jobFromScan({ name: 'scan.csv', columns }, sizes);
  if (!made.ok) throw new Error(made.why);
  return evaluate(made.job, new Map(), 'quick');
}

export const benches: Bench[] = [
  {
    name: '1e6 scanner points to evaluation',
    bar: 2000,
    prepare() {
      const columns = scanOf(WORN, SCAN);
      return () => evaluated(columns);
    },
  },
  {
    name: 'CSV of 1e6 scanner points to evaluation',
    prepare() {
      const [x, y, z] = scanOf(WORN, SCAN);
      const lines = Array.from(x, (_, i) => `${x[i]},${y[i]},${z[i]}`);
      const bytes = Buffer.from(`x,y,z\n${lines.join('\n')}\n`);
      return () => {
        const columns = readScan(bytes);
        if ('error' in columns) throw new Error(columns.error);
        return evaluated(columns);
      };
    },
  },
  {
    name: 'CSV of 1e6 points, read',
    prepare() {
      const bytes = csv();
      return () => {
        const points = readPoints(bytes);
        if ('error' in points) throw new Error(points.error);
        return points;
      };
    },
  },
  {
    name: 'CSV of 1e6 points to minimum-zone cylinder',
    bar: 4000,
    prepare() {
      const bytes = csv();
      const options = { feature: 'cylinder', criterion: 'minimum-zone', units: 'mm' };
      return () => {
        const report = runFit(bytes, options);
        if ('error' in report) throw new Error(report.error);
        return report;
      };
    },
  },
];
