import { largestEigenvalue } from '../num/eigen.ts';
import { linearLeastSquares } from '../num/leastSquares.ts';

/** One wave: cosine + sine, or amplitude * cos(frequency * angle - phase). */
export interface Wave {
  /** lobes a turn when the angle is in radians */
  frequency: number;
  cosine: number;
  sine: number;
  /** >= 0, half of crest to trough */
  amplitude: number;
  /** radians, above -pi, up to pi; a crest lies at phase / frequency */
  phase: number;
}

export type WaveFit =
  | {
      status: 'ok';
      mean: number;
      /** in the order of the frequencies asked for */
      waves: Wave[];
      /** standard deviation of the readings about the fit; NaN when none are left over */
      residualSd: number;
      sumSquares: number;
      /** condition number of the columns scaled alike: 1 at even angles, large where lobes mix */
      conditioning: number;
    }
  | { status: 'too-few-angles'; needed: number; found: number }
  /** the angles are enough in number but cannot tell the waves apart */
  | { status: 'angles-cannot-tell' }
  | { status: 'not-finite' };

/**
 * Mean and lobes 1 to `order` of a profile r(theta) by least squares, at even or uneven angles
 * (lobes are the undulations per revolution of ISO 12181-1). Lobe 1 is an off-center profile, to
 * first order.
 *
 * @param theta radians, any turn
 * @param r as many as theta, any unit
 * @param order 0 or more; at least 2 * order + 1 different angles are needed
 * @throws RangeError when theta and r differ in length
 */
export function fitLobes(theta: ArrayLike<number>, r: ArrayLike<number>, order: number): WaveFit {
  if (!Array.from(theta).every(Number.isFinite)) return { status: 'not-finite' };
  const needed = 2 * order + 1;
  const found = differentAngles(theta);
  if (found < needed) return { status: 'too-few-angles', needed, found };
  return fitWaves(theta, r, lobeNumbers(order));
}

/**
 * Mean and one wave of each given frequency, by least squares.
 *
 * @param x angle, or any running quantity
 * @param y as many as x
 * @param frequencies radians of wave per unit of x, all different and above 0
 * @throws RangeError when x and y differ in length
 */
export function fitWaves(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  frequencies: readonly number[],
): WaveFit {
  if (x.length !== y.length) throw new RangeError(`${x.length} angles and ${y.length} readings`);
  const needed = 2 * frequencies.length + 1;
  const fit = linearLeastSquares(design(x, frequencies), y, x.length, needed);
  if (fit.status !== 'ok') {
    if (fit.status === 'not-finite') return { status: 'not-finite' };
    if (fit.status === 'columns-dependent') return { status: 'angles-cannot-tell' };
    return { status: 'too-few-angles', needed, found: x.length };
  }
  const spare = x.length - needed;
  return {
    status: 'ok',
    mean: fit.x[0]!,
    waves: frequencies.map((frequency, i) => {
      const cosine = fit.x[2 * i + 1]!;
      const sine = fit.x[2 * i + 2]!;
      const amplitude = Math.hypot(cosine, sine);
      return { frequency, cosine, sine, amplitude, phase: Math.atan2(sine, cosine) };
    }),
    residualSd: spare > 0 ? Math.sqrt(fit.sumSquares / spare) : Number.NaN,
    sumSquares: fit.sumSquares,
    conditioning: fit.conditioning,
  };
}

/** A lobe that was not fitted, and the fitted ones (0: the mean) it would have been taken for. */
export interface Alias {
  lobe: number;
  /** gain: amplitude that appears in lobe n for an amplitude of 1, at the worst phase */
  seenAs: { n: number; gain: number }[];
}

/** Gains below this are left out: a tenth of a small lobe misleads nobody. */
const WORTH_NAMING = 0.1;

/**
 * What a fit of lobes 1 to `order` at these angles takes other lobes for. At N even angles lobe m
 * comes back whole as |m - k N|: so k N is taken for size and k N - 1, k N + 1 for a shift of the
 * center.
 *
 * @param theta radians
 * @param upTo highest lobe asked about; one more than the number of angles shows the first fold
 * @returns lobes in rising order; empty when the angles cannot carry `order` lobes at all
 */
export function lobeAliases(
  theta: ArrayLike<number>,
  order: number,
  upTo: number = theta.length + 1,
): Alias[] {
  const p = 2 * order + 1;
  const rows = design(theta, lobeNumbers(order));
  const fit = linearLeastSquares(rows, new Float64Array(theta.length), theta.length, p);
  if (fit.status !== 'ok') return [];
  const project = (wave: (angle: number) => number) => {
    const right = new Float64Array(p);
    for (let i = 0; i < theta.length; i++) {
      for (let j = 0; j < p; j++) right[j]! += rows[i * p + j]! * wave(theta[i]!);
    }
    return right.map((_, j) => right.reduce((s, v, k) => s + fit.inverse[j * p + k]! * v, 0));
  };
  const aliases: Alias[] = [];
  for (let lobe = order + 1; lobe <= upTo; lobe++) {
    const cosine = project((angle) => Math.cos(lobe * angle));
    const sine = project((angle) => Math.sin(lobe * angle));
    const gains = [0, ...lobeNumbers(order)].map((n) => ({ n, gain: gainOf(cosine, sine, n) }));
    const seenAs = gains.filter(({ gain }) => gain >= WORTH_NAMING);
    if (seenAs.length > 0) aliases.push({ lobe, seenAs });
  }
  return aliases;
}

/** Largest amplitude in lobe n from any phase of a wave whose cosine and sine part give these. */
function gainOf(cosine: Float64Array, sine: Float64Array, n: number): number {
  const from = Math.max(2 * n - 1, 0);
  const to = 2 * n + 1;
  const c = cosine.subarray(from, to);
  const s = sine.subarray(from, to);
  const product = (a: Float64Array, b: Float64Array) => a.reduce((t, v, i) => t + v * b[i]!, 0);
  const mixed = product(c, s);
  return Math.sqrt(largestEigenvalue([product(c, c), mixed, mixed, product(s, s)], 2));
}

function lobeNumbers(order: number): number[] {
  return Array.from({ length: order }, (_, i) => i + 1);
}

/** Rows 1, cos f1 x, sin f1 x, cos f2 x, ... */
function design(x: ArrayLike<number>, frequencies: readonly number[]): Float64Array {
  const p = 2 * frequencies.length + 1;
  const rows = new Float64Array(x.length * p);
  for (let i = 0; i < x.length; i++) {
    rows[i * p] = 1;
    frequencies.forEach((f, j) => {
      rows[i * p + 2 * j + 1] = Math.cos(f * x[i]!);
      rows[i * p + 2 * j + 2] = Math.sin(f * x[i]!);
    });
  }
  return rows;
}

/** Angles that differ by more than rounding, whole turns aside. */
function differentAngles(theta: ArrayLike<number>): number {
  const turn = 2 * Math.PI;
  const wrapped = Array.from(theta, (t) => t - turn * Math.floor(t / turn)).sort((a, b) => a - b);
  const near = 1e-9;
  let found = 0;
  wrapped.forEach((t, i) => {
    const before = i > 0 ? wrapped[i - 1]! : wrapped[wrapped.length - 1]! - turn;
    if (wrapped.length === 1 || t - before > near) found++;
  });
  return Math.max(found, Math.min(wrapped.length, 1));
}
