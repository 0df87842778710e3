/*
 * A million points as CSV, from the bytes of the file to the answer. The command line adds its start,
 * a second or less (`time npm run -s roundhand -- fit FILE --feature cylinder --criterion minimum-zone`
 * tells the whole): the promise is four seconds in all.
 */
import { runFit } from '../../src/cli/fit.ts';
import { readPoints } from '../../src/cli/pointsCsv.ts';
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

export const benches: Bench[] = [
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
