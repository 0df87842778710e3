/**
 * The centre as a linear programme for an independent library, highs: the deviation of a wall is told to first order
 * about a given axis, and the best move from there is what the library says.
 */
import loadHighs, { type ModelData } from 'highs';
import type { Axis, WearSurface } from '../../src/bore/types.ts';

const highs = await loadHighs();
/** The least that the library allows. Lengths are told in units of 0.1 mm, so that it is 1e-11 mm. */
const TOLERANCE = 1e-10;
const UNIT = 0.1;

/** One place of the seat: metal to the target (-e, mm), its share of the area, and how -e rises with a move, to first order. */
export interface Spot {
  readonly metal: number;
  readonly share: number;
  readonly slope: readonly [number, number, number, number];
}

/** The seat's places about an axis: `counts` says which of the wall's places are a seat. */
export function spotsOf(
  { grid: { theta, z }, mean }: WearSurface,
  radius: number,
  axis: Axis,
  counts: (k: number) => boolean,
): Spot[] {
  const half = z[z.length - 1]! / 2;
  const found = Array.from(mean, (r, k) => {
    const at = Math.floor(k / theta.length);
    const [sine, cosine] = [Math.sin(theta[k % theta.length]!), Math.cos(theta[k % theta.length]!)];
    const far = Math.hypot(
      r * sine - axis.x - axis.leanX * z[at]!,
      r * cosine - axis.y - axis.leanY * z[at]!,
    );
    const along = z[at]! / half - 1;
    // Area by the trapezoid along the depth: the end rows count half.
    const area = at === 0 || at === z.length - 1 ? 0.5 : 1;
    const slope = [sine, cosine, sine * along, cosine * along] as const;
    return { metal: radius - far, share: area, slope };
  }).filter((_, k) => counts(k));
  const all = found.reduce((sum, { share }) => sum + share, 0);
  return found.map((one) => ({ ...one, share: one.share / all }));
}

/** Mean over the seat of the metal to take off, mm. */
export const meanMetal = (spots: readonly Spot[]): number =>
  spots.reduce((sum, { metal, share }) => sum + share * Math.max(0, metal), 0);

/** The greatest cut, mm; 0 where none is needed. */
export const greatestCut = (spots: readonly Spot[]): number =>
  spots.reduce((most, { metal }) => Math.max(most, metal), 0);

function solved(data: ModelData): Float64Array {
  const model = highs.createModel(data);
  try {
    model.options.set({
      output_flag: false,
      primal_feasibility_tolerance: TOLERANCE,
      dual_feasibility_tolerance: TOLERANCE,
    });
    model.run();
    return Float64Array.from(model.getSolution().colValue);
  } finally {
    model.dispose();
  }
}

/**
 * The least mean metal over all moves, by the dual: weights from 0 to 1 on the places, by which the slopes balance, for
 * the greatest weighted sum of metal.
 */
export function leastMeanMetal(spots: readonly Spot[]): number {
  const indices: number[] = [];
  const values: number[] = [];
  const starts = [0];
  for (let j = 0; j < 4; j++) {
    spots.forEach(({ share, slope }, k) => {
      indices.push(k);
      values.push(share * slope[j]! * spots.length);
    });
    starts.push(values.length);
  }
  const weights = solved({
    numCols: spots.length,
    numRows: 4,
    colCost: spots.map(({ share, metal }) => (-share * spots.length * metal) / UNIT),
    colLower: spots.map(() => 0),
    colUpper: spots.map(() => 1),
    rowLower: [0, 0, 0, 0],
    rowUpper: [0, 0, 0, 0],
    matrix: { format: 'csr', numRows: 4, numCols: spots.length, starts, indices, values },
  });
  return spots.reduce((sum, { share, metal }, k) => sum + weights[k]! * share * metal, 0);
}

/** The least greatest height of metal over all moves, mm; below 0 where nothing need be cut. */
export function leastGreatest(spots: readonly Spot[]): number {
  const indices: number[] = [];
  const values: number[] = [];
  const starts = [0];
  for (const { slope } of spots) {
    slope.forEach((s, j) => {
      indices.push(j);
      values.push(s);
    });
    indices.push(4);
    values.push(-1);
    starts.push(values.length);
  }
  const found = solved({
    numCols: 5,
    numRows: spots.length,
    colCost: [0, 0, 0, 0, 1],
    colLower: Array.from({ length: 5 }, () => -highs.infinity),
    colUpper: Array.from({ length: 5 }, () => highs.infinity),
    rowLower: spots.map(() => -highs.infinity),
    rowUpper: spots.map(({ metal }) => -metal / UNIT),
    matrix: { format: 'csr', numRows: spots.length, numCols: 5, starts, indices, values },
  });
  return found[4]! * UNIT;
}

/** The least mean metal over the moves that leave no cut deeper than `most`, mm. */
export function leastMetalWithin(spots: readonly Spot[], most: number): number {
  const count = spots.length;
  const indices: number[] = [];
  const values: number[] = [];
  const starts = [0];
  // Move and, by place, the metal there: metal >= height + slope . move, and no more than `most`.
  spots.forEach(({ slope }, k) => {
    slope.forEach((s, j) => {
      indices.push(j);
      values.push(s);
    });
    indices.push(4 + k);
    values.push(-1);
    starts.push(values.length);
  });
  const found = solved({
    numCols: 4 + count,
    numRows: count,
    colCost: [0, 0, 0, 0, ...spots.map(({ share }) => share * count)],
    colLower: [...Array.from({ length: 4 }, () => -highs.infinity), ...spots.map(() => 0)],
    colUpper: [
      ...Array.from({ length: 4 }, () => highs.infinity),
      ...spots.map(() => Math.max(0, most) / UNIT),
    ],
    rowLower: spots.map(() => -highs.infinity),
    rowUpper: spots.map(({ metal }) => -metal / UNIT),
    matrix: { format: 'csr', numRows: count, numCols: 4 + count, starts, indices, values },
  });
  return spots.reduce((sum, { share }, k) => sum + share * found[4 + k]! * UNIT, 0);
}
