/**
 * Minimax features by an independent linear programming library, highs: the distances are made
 * linear about a feature, the linear programme is solved, and so on.
 */
import loadHighs, { type Model, type ModelData } from 'highs';
import { lastPlace, squareTo, unit, type Vector } from './generated.ts';
import { type Criterion, gradientOf, heightOf, reachOf, type Seen, seenFrom } from './optimum.ts';

/** An axis, whose radius follows from the points. A circle's stands square to the paper. */
export interface Axis {
  point: readonly number[];
  direction: readonly number[];
  halfAngle: number;
}

export interface Linear {
  axis: Axis;
  /** range of the deviations for a zone, else the radius (for a cone: its own, square to the wall) */
  value: number;
}

/** 2 for a circle, 4 for a cylinder, 5 for a cone. */
export type Moves = 2 | 4 | 5;

const highs = await loadHighs();
/** The least that the library allows; see `programme` for what it means in mm. */
const TOLERANCE = 1e-10;

/** The library with the programme inside and its options set; dispose of it after use. */
function modelOf(data: ModelData): Model {
  const model = highs.createModel(data);
  model.options.set({
    output_flag: false,
    primal_feasibility_tolerance: TOLERANCE,
    dual_feasibility_tolerance: TOLERANCE,
  });
  return model;
}

export function seenFromAxis(columns: readonly Float64Array[], axis: Axis): Seen[] {
  const nothing = { diameter: 0, contacts: [], multipliers: [] };
  const deviation = { min: 0, max: 0, range: 0 };
  return columns.length === 2
    ? seenFrom(columns, { ...nothing, deviation, center: axis.point })
    : seenFrom(columns, { ...nothing, deviation, axis });
}

/** What a criterion makes small: the range, the greatest distance, or minus the least. */
function criterionOf(heights: readonly number[], criterion: Criterion): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const height of heights) {
    if (!(height >= low)) low = height;
    if (!(height <= high)) high = height;
  }
  if (criterion === 'minimum-zone') return high - low;
  return criterion === 'maximum-inscribed' ? -low : high;
}

/**
 * Smallest w over moves m (each within `trust` mm), radius r and level w, rows
 * `g.m - r - w <= r0 - h` for outer bounds and `-g.m + r - w <= h - r0` for inner ones: columns are
 * the moves, for a zone the change of the radius, and the level (half the range). All lengths are
 * divided by `size`, so that the library's feasibility tolerance of 1e-10 is 1e-10 of it in mm.
 * Leans and half-angle are in mm at `reach`.
 */
export function programme(
  seen: readonly Seen[],
  criterion: Criterion,
  moves: Moves,
  halfAngle: number,
  options: { size: number; trust: number; reach: number; middle: number },
): ModelData {
  const { size, trust, reach, middle } = options;
  const zone = criterion === 'minimum-zone';
  const sides = {
    'minimum-zone': [1, -1],
    'maximum-inscribed': [-1],
    'minimum-circumscribed': [1],
  };
  const width = moves + (zone ? 2 : 1);
  const indices: number[] = [];
  const values: number[] = [];
  const starts = [0];
  const upper: number[] = [];
  const rowOf = (side: number, gradient: readonly number[], off: number) => {
    gradient.forEach((g, j) => {
      indices.push(j);
      values.push((side * g) / (j < 2 ? 1 : reach));
    });
    if (zone) {
      indices.push(moves);
      values.push(-side);
    }
    indices.push(width - 1);
    values.push(-1);
    starts.push(values.length);
    upper.push((-side * off) / size);
  };
  for (const side of sides[criterion]) {
    for (const point of seen) {
      rowOf(side, gradientOf(point, halfAngle, moves), heightOf(point, halfAngle, []) - middle);
    }
  }
  const bound = Array.from({ length: width }, (_, j) =>
    j < moves ? trust / size : highs.infinity,
  );
  return {
    numCols: width,
    numRows: upper.length,
    colCost: bound.map((_, j) => (j === width - 1 ? 1 : 0)),
    colLower: bound.map((b) => -b),
    colUpper: bound,
    rowLower: upper.map(() => -highs.infinity),
    rowUpper: upper,
    matrix: { format: 'csr', numRows: upper.length, numCols: width, starts, indices, values },
  };
}

/** One linear programme about an axis: the moves (leans as tangents) and the gain it promises. */
export function linearStep(
  columns: readonly Float64Array[],
  criterion: Criterion,
  moves: Moves,
  axis: Axis,
  trust: number,
): { axis: Axis; value: number; gain: number; size: number } {
  const seen = seenFromAxis(columns, axis);
  const heights = seen.map((point) => heightOf(point, axis.halfAngle, []));
  const middle =
    (criterionOf(heights, 'minimum-circumscribed') - criterionOf(heights, 'maximum-inscribed')) / 2;
  const range = criterionOf(heights, 'minimum-zone');
  const value = criterionOf(heights, criterion);
  const reach = reachOf(seen, axis.halfAngle);
  const size = Math.max(range, 8 * lastPlace([...columns]));
  const model = modelOf(
    programme(seen, criterion, moves, axis.halfAngle, { size, trust, reach, middle }),
  );
  try {
    model.run();
    const solved = model.getSolution().colValue;
    const level = solved[solved.length - 1]! * size;
    const present =
      criterion === 'minimum-zone'
        ? value / 2
        : value - (criterion === 'maximum-inscribed' ? -middle : middle);
    const gain = (criterion === 'minimum-zone' ? 2 : 1) * (present - level);
    const step = Array.from(solved.subarray(0, moves), (v, j) => (v * size) / (j < 2 ? 1 : reach));
    return { axis: moved(axis, columns.length === 2, step), value, gain, size };
  } finally {
    model.dispose();
  }
}

function moved(axis: Axis, flat: boolean, step: readonly number[]): Axis {
  const [a1 = 0, a2 = 0, b1 = 0, b2 = 0, wider = 0] = step;
  const direction = axis.direction as Vector;
  const [first, second]: [Vector, Vector] = flat
    ? [
        [1, 0, 0],
        [0, 1, 0],
      ]
    : squareTo(direction);
  return {
    point: axis.point.map((p, d) => p + a1 * first[d]! + a2 * second[d]!),
    direction: unit(direction.map((v, d) => v + b1 * first[d]! + b2 * second[d]!) as Vector),
    halfAngle: axis.halfAngle + wider,
  };
}

/**
 * Linear programmes, each about the answer of the one before, while they gain; a step that keeps
 * less than a tenth of its promise is not taken and the next may go a quarter as far.
 */
export function sequentialLinear(
  columns: readonly Float64Array[],
  criterion: Criterion,
  moves: Moves,
  start: Axis,
  options: { trust: number; steps: number },
): Linear {
  let { trust } = options;
  let axis = start;
  let value = valueAt(columns, criterion, axis);
  for (let step = 0; step < options.steps; step++) {
    const next = linearStep(columns, criterion, moves, axis, trust);
    if (!(next.gain > 4e-10 * next.size) || !(trust > 1e-11)) break;
    const reached = valueAt(columns, criterion, next.axis);
    const kept = (value - reached) / next.gain;
    if (kept > 0.1) {
      axis = next.axis;
      value = reached;
    }
    if (kept > 0.75) trust *= 2;
    else if (!(kept > 0.25)) trust /= 4;
  }
  return { axis, value: criterion === 'maximum-inscribed' ? -value : value };
}

function valueAt(columns: readonly Float64Array[], criterion: Criterion, axis: Axis): number {
  const heights = seenFromAxis(columns, axis).map((s) => heightOf(s, axis.halfAngle, []));
  return criterionOf(heights, criterion);
}
