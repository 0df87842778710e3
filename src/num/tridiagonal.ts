/** A system of equations in which each unknown meets only its two neighbours. */

export interface Tridiagonal {
  readonly below: Float64Array;
  readonly diagonal: Float64Array;
  readonly above: Float64Array;
}

/**
 * Factors in place, without exchanging rows: safe where the diagonal outweighs its neighbours, as in conduction. After
 * it `diagonal` holds reciprocals of the pivots, and `below` the multipliers.
 */
export function factorInPlace({ below, diagonal, above }: Tridiagonal): void {
  diagonal[0] = 1 / diagonal[0]!;
  for (let i = 1; i < diagonal.length; i++) {
    below[i] = below[i]! * diagonal[i - 1]!;
    diagonal[i] = 1 / (diagonal[i]! - below[i]! * above[i - 1]!);
  }
}

/** Solves a factored system; `right` becomes the answer. */
export function solveFactored({ below, diagonal, above }: Tridiagonal, right: Float64Array): void {
  const n = diagonal.length;
  for (let i = 1; i < n; i++) right[i] = right[i]! - below[i]! * right[i - 1]!;
  right[n - 1] = right[n - 1]! * diagonal[n - 1]!;
  for (let i = n - 2; i >= 0; i--) {
    right[i] = (right[i]! - above[i]! * right[i + 1]!) * diagonal[i]!;
  }
}
