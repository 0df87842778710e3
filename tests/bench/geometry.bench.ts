/*
 * Least-squares fits of scans of a worn bore. A plain sum, s += a[i] in order, is the measure of the
 * machine. The cylinder of a million points is to take less than 40 plain sums over its points, all
 * three columns; beside it stands the sum of one column. Cost grows no faster than the points: ten
 * times as many cost at most thirteen times as much.
 */
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCone } from '../../src/geometry/cone.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { seededRandom } from '../../src/num/random.ts';
import type { Bench } from './bench.ts';

type Columns = [Float64Array, Float64Array, Float64Array];

/** Radius 32.5 mm, 60 mm long, leaning, tapering by 1e-3, worn oval by 0.1 mm, noise 0.01 mm. */
function scan(count: number): Columns {
  const random = seededRandom(count);
  const columns: Columns = [
    new Float64Array(count),
    new Float64Array(count),
    new Float64Array(count),
  ];
  const [x, y, z] = columns;
  for (let i = 0; i < count; i++) {
    const t = 2 * Math.PI * random.uniform();
    z[i] = 60 * (random.uniform() - 0.5);
    const r = 32.5 + 0.1 * Math.cos(2 * t) + 0.001 * z[i]! + 0.01 * random.normal();
    x[i] = 12 + 0.05 * z[i]! + r * Math.cos(t);
    y[i] = -0.02 * z[i]! + r * Math.sin(t);
  }
  return columns;
}

function sum(a: Float64Array): number {
  let s = 0;
  for (let i = 0; i < a.length; i++) s += a[i]!;
  return s;
}

const MILLION = 1_000_000;
const ONE_COLUMN = 'plain sum, one column of 1000000';
const ALL_COLUMNS = 'plain sum, three columns of 1000000';

function sized(
  feature: string,
  counts: readonly number[],
  solve: (columns: Columns) => { status: string },
): Bench[] {
  return counts.map((count, i) => {
    const before = counts[i - 1];
    const growth = before === undefined ? null : 1.3 * (count / before);
    return {
      name: `least-squares ${feature}, ${count} points`,
      ...(growth === null
        ? {}
        : { ratioTo: { name: `least-squares ${feature}, ${before} points`, atMost: growth } }),
      prepare: () => {
        const columns = scan(count);
        return () => {
          const { status } = solve(columns);
          if (status !== 'ok') throw new Error(`the ${feature} of the bench: ${status}`);
        };
      },
    };
  });
}

const SIZES = [1_000, 10_000, 100_000, MILLION];

export const benches: Bench[] = [
  {
    name: ONE_COLUMN,
    prepare: () => {
      const [x] = scan(MILLION);
      return () => sum(x);
    },
  },
  {
    name: ALL_COLUMNS,
    prepare: () => {
      const columns = scan(MILLION);
      return () => columns.map(sum);
    },
  },
  ...sized('circle', SIZES, ([x, y]) => fitCircle(x, y)),
  ...sized('cylinder', SIZES, (columns) => fitCylinder(...columns)),
  {
    name: 'least-squares cylinder, 1000000 points, in sums',
    ratioTo: { name: ALL_COLUMNS, atMost: 40 },
    prepare: () => {
      const columns = scan(MILLION);
      return () => fitCylinder(...columns);
    },
  },
  ...sized('cone', [10_000, MILLION], (columns) => fitCone(...columns)),
];
