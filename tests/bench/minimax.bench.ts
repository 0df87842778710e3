/*
 * Minimax fits beside an independent LP library, highs, in one run.
 *
 * Its programme: about the least-squares feature, the distance d of every point and its change per
 * move m are known; find moves, radius r and level w for which w is least and, for every point,
 * m.g - r - w <= -d and -m.g + r - w <= d: two rows a point, all moves free. The matrix is built
 * once, outside the timing; a timed run forgets the last answer and solves. One such programme is
 * not yet the answer (distances are not linear, and the circle is to be the best of all, not the
 * best nearby), which the fits find in the time given for them. `as it comes`: the library's own
 * choice of everything. `turned round`: the dual programme, five or seven rows and a column for
 * each side of a point, primal simplex without presolve: the quickest way found to ask it.
 *
 * The bars of the fits are the library's own median, as it comes and in this run (the least of
 * three, since other work on the machine must not flatter the fits), over 50 for a circle and over
 * 20 for a cylinder; the name says what part of it a fit may take.
 */
import loadHighs, { type Model, type ModelData } from 'highs';
import { fitCircle } from '../../src/geometry/circle.ts';
import { fitCylinder } from '../../src/geometry/cylinder.ts';
import { type Axis, programme, seenFromAxis } from '../laws/minimaxLinear.ts';
import { CIRCLES, CRITERIA, CYLINDERS, circleOf, cylinderOf } from '../laws/minimaxSets.ts';
import type { Criterion } from '../laws/optimum.ts';
import { type Bench, time } from './bench.ts';

const highs = await loadHighs();
const COUNT = 2000;

function leastSquaresAxis([x, y, z]: Float64Array[]): { axis: Axis; radius: number } {
  const fit = z === undefined ? fitCircle(x!, y!) : fitCylinder(x!, y!, z);
  if (fit.status !== 'ok') throw new Error(fit.status);
  const axis = 'axis' in fit ? fit.axis : { point: fit.center, direction: [0, 0, 1] };
  return { axis: { ...axis, halfAngle: 0 }, radius: fit.diameter / 2 };
}

function zoneProgramme(columns: Float64Array[]): ModelData {
  const { axis, radius } = leastSquaresAxis(columns);
  const seen = seenFromAxis(columns, axis);
  const options = { size: 1, trust: highs.infinity, reach: radius, middle: radius };
  return programme(seen, 'minimum-zone', columns.length === 2 ? 2 : 4, 0, options);
}

/** Dual of: least c.x with a x <= b and x free. It is: greatest -b.y with a^T y = -c and y >= 0. */
function dualOf({ numCols, numRows, colCost, rowUpper, matrix }: ModelData): ModelData {
  const cost = Array.from(colCost, (v) => (v === 0 ? 0 : -v));
  return {
    numCols: numRows,
    numRows: numCols,
    colCost: rowUpper,
    colLower: new Float64Array(numRows),
    colUpper: new Float64Array(numRows).fill(highs.infinity),
    rowLower: cost,
    rowUpper: cost,
    matrix: { ...matrix, format: 'csc', numRows: numCols, numCols: numRows },
  };
}

/** Solves a model afresh, and refuses to time anything but an optimum. */
function solving(model: Model): () => number {
  model.options.set('output_flag', false);
  return () => {
    model.clearSolver();
    const { modelStatus } = model.run();
    if (modelStatus !== highs.constants.modelStatus.optimal) throw new Error(`${modelStatus}`);
    return model.getObjectiveValue();
  };
}

const feature = { circle: circleOf, cylinder: cylinderOf };

function zone([x, y, z]: Float64Array[], criterion: Criterion = 'minimum-zone') {
  const fit = z === undefined ? CIRCLES[criterion](x!, y!) : CYLINDERS[criterion](x!, y!, z);
  if (fit.status !== 'ok') throw new Error(fit.status);
  return fit;
}

/** The fit, the library as it comes, and the library asked in the quickest way found. */
async function besideLibrary(name: keyof typeof feature, times: number): Promise<Bench[]> {
  const what = `minimum-zone ${name}, ${COUNT} points`;
  const make = () => feature[name]({ seed: 1, count: COUNT });
  const asItComes: Bench = {
    name: `${what}: LP as it comes`,
    prepare: () => solving(highs.createModel(zoneProgramme(make()))),
  };
  const medians: number[] = [];
  for (let turn = 0; turn < 3; turn++) medians.push((await time(asItComes)).median);
  return [
    {
      name: `${what}: 1/${times} of LP`,
      bar: Number((Math.min(...medians) / times).toPrecision(3)),
      prepare() {
        const columns = make();
        return () => zone(columns);
      },
    },
    asItComes,
    {
      name: `${what}: LP turned round`,
      prepare() {
        const model = highs.createModel(dualOf(zoneProgramme(make())));
        model.options.set({ solver: 'simplex', simplex_strategy: 4, presolve: 'off' });
        return solving(model);
      },
    },
  ];
}

function growing(name: keyof typeof feature, criterion: Criterion): Bench[] {
  const called = (count: number) => `${criterion} ${name}, ${count} points`;
  // Ten times as many points cost at most thirteen times as much.
  return [1e3, 1e4, 1e5, 1e6].map((count) => ({
    name: called(count),
    ...(count > 1e3 ? { ratioTo: { name: called(count / 10), atMost: 13 } } : {}),
    prepare() {
      const columns = feature[name]({ seed: 2, count });
      return () => zone(columns, criterion);
    },
  }));
}

export const benches: Bench[] = [
  ...(await besideLibrary('circle', 50)),
  ...(await besideLibrary('cylinder', 20)),
  ...CRITERIA.flatMap((criterion) => growing('circle', criterion)),
  ...CRITERIA.flatMap((criterion) => growing('cylinder', criterion)),
];
