import { BLOCK_ROWS } from '../num/normalEquations.ts';

/** Least and greatest signed distance, with the first row that has each. */
export interface Extremes {
  low: number;
  high: number;
  lowRow: number;
  highRow: number;
}

/**
 * The extremes of `count` rows, some hundreds at a time.
 *
 * @param distances writes those of rows `from` to `to` (not included) into `out`, from 0
 */
export function extremesOf(
  count: number,
  distances: (from: number, to: number, out: Float64Array) => void,
): Extremes {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let lowRow = 0;
  let highRow = 0;
  const out = new Float64Array(Math.min(BLOCK_ROWS, count));
  for (let from = 0; from < count; from += BLOCK_ROWS) {
    const to = Math.min(from + BLOCK_ROWS, count);
    distances(from, to, out);
    for (let i = from; i < to; i++) {
      const f = out[i - from]!;
      if (f < low) {
        low = f;
        lowRow = i;
      }
      if (f > high) {
        high = f;
        highRow = i;
      }
    }
  }
  return { low, high, lowRow, highRow };
}
