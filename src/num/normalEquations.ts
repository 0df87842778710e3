import { choleskyInPlace, solveLower, solveLowerTransposed } from './cholesky.ts';

/** J^T J, J^T f and f^T f of residuals f, where J is the change of f per unknown. */
export interface NormalEquations {
  /** p * p row-major; only the lower triangle counts */
  matrix: Float64Array;
  /** length p */
  gradient: Float64Array;
  sumSquares: number;
}

/** Some consecutive rows of J and f, column by column. */
export interface Block {
  /** p arrays of up to BLOCK_ROWS */
  columns: readonly Float64Array[];
  /** as many */
  residuals: Float64Array;
}

/** Rows worked at once: all columns of a block stay in the processor's nearest cache. */
export const BLOCK_ROWS = 512;

export function emptyNormal(p: number): NormalEquations {
  return { matrix: new Float64Array(p * p), gradient: new Float64Array(p), sumSquares: 0 };
}

export function emptyBlock(p: number, rows: number): Block {
  const row = () => new Float64Array(rows);
  return { columns: Array.from({ length: p }, row), residuals: row() };
}

/** Adds the first `rows` rows of a block. Sums of blocks also round less than one long sum. */
export function addBlock(out: NormalEquations, { columns, residuals }: Block, rows: number): void {
  const p = columns.length;
  for (let i = 0; i < p; i++) {
    const a = columns[i]!;
    for (let j = 0; j <= i; j++) out.matrix[i * p + j]! += dot(a, columns[j]!, rows);
    out.gradient[i]! += dot(a, residuals, rows);
  }
  out.sumSquares += dot(residuals, residuals, rows);
}

/** Four running sums, since one addition cannot start before the last has ended. */
function dot(a: Float64Array, b: Float64Array, rows: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  const even = rows - (rows % 4);
  for (let i = 0; i < even; i += 4) {
    s0 += a[i]! * b[i]!;
    s1 += a[i + 1]! * b[i + 1]!;
    s2 += a[i + 2]! * b[i + 2]!;
    s3 += a[i + 3]! * b[i + 3]!;
  }
  for (let i = even; i < rows; i++) s0 += a[i]! * b[i]!;
  return s0 + s1 + (s2 + s3);
}

/**
 * Minus (J^T J + damping * its diagonal)^-1 J^T f, or null when that matrix is singular to
 * working precision once its columns are scaled alike.
 */
export function dampedStep(
  { matrix, gradient }: NormalEquations,
  damping: number,
): Float64Array | null {
  const p = gradient.length;
  const factor = scaledFactor(matrix, p, damping);
  if (factor === null) return null;
  const { l, scales } = factor;
  const step = gradient.map((g, i) => -g * scales[i]!);
  solveLower(l, p, step, step);
  solveLowerTransposed(l, p, step, step);
  return step.map((value, i) => value * scales[i]!);
}

/** (J^T J)^-1, p * p row-major and full, or null when J^T J is singular in the same sense. */
export function invertNormal({ matrix, gradient }: NormalEquations): Float64Array | null {
  const p = gradient.length;
  const factor = scaledFactor(matrix, p, 0);
  if (factor === null) return null;
  const { l, scales } = factor;
  const inverse = new Float64Array(p * p);
  const unit = new Float64Array(p);
  for (let j = 0; j < p; j++) {
    unit.fill(0);
    unit[j] = 1;
    const column = solveLowerTransposed(l, p, solveLower(l, p, unit));
    for (let i = 0; i < p; i++) inverse[i * p + j] = column[i]! * scales[i]! * scales[j]!;
  }
  return inverse;
}

/** Root mean square change of the residuals that a step makes, to first order. */
export function changeOf({ matrix }: NormalEquations, step: Float64Array, rows: number): number {
  const p = step.length;
  let sum = 0;
  for (let i = 0; i < p; i++) {
    sum += matrix[i * p + i]! * step[i]! * step[i]!;
    for (let j = 0; j < i; j++) sum += 2 * matrix[i * p + j]! * step[i]! * step[j]!;
  }
  return Math.sqrt(Math.max(sum, 0) / rows);
}

/** A pivot this small is what rounding leaves of nothing. */
const LEAST_PIVOT = 1e-7;

/** Cholesky factor of the matrix scaled to a diagonal of 1 + damping, and the scales that did it. */
function scaledFactor(
  matrix: Float64Array,
  p: number,
  damping: number,
): { l: Float64Array; scales: Float64Array } | null {
  const scales = new Float64Array(p);
  for (let i = 0; i < p; i++) {
    const diagonal = matrix[i * p + i]!;
    if (!(diagonal > 0)) return null;
    scales[i] = 1 / Math.sqrt(diagonal);
  }
  const l = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < i; j++) l[i * p + j] = matrix[i * p + j]! * scales[i]! * scales[j]!;
    l[i * p + i] = 1 + damping;
  }
  if (!choleskyInPlace(l, p)) return null;
  for (let i = 0; i < p; i++) if (!(l[i * p + i]! > LEAST_PIVOT)) return null;
  return { l, scales };
}
