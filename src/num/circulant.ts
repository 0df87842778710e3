/**
 * Symmetric circulant matrices of even order: what is the same wherever on a circle it happens. Told by what they make of
 * each number of waves; worked out by rows (Davis, Circulant Matrices, 1979, section 3.2).
 */
export interface Circulant {
  readonly count: number;
  /** The first row twice over: `twice[count - i + j]` is the entry at i, j. */
  readonly twice: Float64Array;
  /** The same for what is alike half-way round, and for what is opposite there: entry i, j at half + j - i. */
  readonly alike: Float64Array;
  readonly opposite: Float64Array;
}

/**
 * @param byWaves what the matrix makes of n waves round the circle, n = 0 ... count / 2
 * @param count order, even
 */
export function circulant(byWaves: ArrayLike<number>, count: number): Circulant {
  const half = count / 2;
  const twice = new Float64Array(2 * count);
  const cosines = Float64Array.from({ length: count }, (_, k) =>
    Math.cos((2 * Math.PI * k) / count),
  );
  for (let k = 0; k < count; k++) {
    let sum = byWaves[0]!;
    for (let n = 1; n <= half; n++) {
      sum += (n === half ? 1 : 2) * byWaves[n]! * cosines[(n * k) % count]!;
    }
    twice[k] = sum / count;
    twice[k + count] = sum / count;
  }
  const folded = (sign: number) =>
    Float64Array.from({ length: count }, (_, m) => (twice[m + half]! + sign * twice[m]!) / 2);
  return { count, twice, alike: folded(1), opposite: folded(-1) };
}

/**
 * @param x length `count`
 * @param out where matrix times x goes; not x itself
 */
export function turnBy(
  { count, alike, opposite }: Circulant,
  x: Float64Array,
  out: Float64Array,
): void {
  const half = count / 2;
  for (let i = 0; i < half; i++) {
    let even = 0;
    let odd = 0;
    const from = half - i;
    for (let j = 0; j < half; j++) {
      const here = x[j]!;
      const across = x[j + half]!;
      even += alike[from + j]! * (here + across);
      odd += opposite[from + j]! * (here - across);
    }
    out[i] = even + odd;
    out[i + half] = even - odd;
  }
}
