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
  /** standard deviation of the amplitude, to first order; NaN when nothing tells it */
  amplitudeSd: number;
  /** radians; NaN when nothing tells it, or the amplitude is too small to point anywhere */
  phaseSd: number;
}

export type WaveFit =
  | {
      status: 'ok';
      mean: number;
      /** in the order of the frequencies asked for */
      waves: Wave[];
      /** standard deviation of the readings about the fit; NaN when none are left over */
      residualSd: number;
      /** of what the readings are off the fit */
      sumSquares: number;
      /** the same, each over its stated standard deviation; NaN when none is stated */
      chiSquare: number;
      /** readings left over: how many more there are than unknowns */
      spare: number;
      /**
       * p * p row-major, of mean, cosine, sine, cosine, ...: from the stated standard deviations, or
       * from the scatter about the fit where none are stated (NaN when no reading is left over)
       */
      covariance: Float64Array;
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
 * @param sd one standard deviation of each reading, above 0, where it is known
 * @throws RangeError when theta and r differ in length
 */
export function fitLobes(
  theta: ArrayLike<number>,
  r: ArrayLike<number>,
  order: number,
  sd?: ArrayLike<number>,
): WaveFit {
  if (!Array.from(theta).every(Number.isFinite)) return { status: 'not-finite' };
  const needed = 2 * order + 1;
  const found = differentAngles(theta);
  if (found < needed) return { status: 'too-few-angles', needed, found };
  return fitWaves(theta, r, lobeNumbers(order), sd);
}

/**
 * Mean and one wave of each given frequency, by least squares.
 *
 * @param x angle, or any running quantity
 * @param y as many as x
 * @param frequencies radians of wave per unit of x, all different and above 0
 * @param sd one standard deviation of each reading, above 0: readings then count by 1 / sd^2
 * @throws RangeError when x, y and sd differ in length
 */
export function fitWaves(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  frequencies: readonly number[],
  sd?: ArrayLike<number>,
): WaveFit {
  if (x.length !== y.length) throw new RangeError(`${x.length} angles and ${y.length} readings`);
  if (sd !== undefined && sd.length !== y.length) {
    throw new RangeError(`${sd.length} standard deviations and ${y.length} readings`);
  }
  const p = 2 * frequencies.length + 1;
  const rows = design(x, frequencies);
  const weight = (i: number) => (sd === undefined ? 1 : 1 / sd[i]!);
  const fit = linearLeastSquares(
    rows.map((value, k) => value * weight(Math.floor(k / p))),
    Array.from(y, (value, i) => value * weight(i)),
    x.length,
    p,
  );
  if (fit.status !== 'ok') {
    if (fit.status === 'not-finite') return { status: 'not-finite' };
    if (fit.status === 'columns-dependent') return { status: 'angles-cannot-tell' };
    return { status: 'too-few-angles', needed: p, found: x.length };
  }
  const spare = x.length - p;
  const sumSquares = sd === undefined ? fit.sumSquares : offSquares(rows, y, fit.x);
  const residualSd = spare > 0 ? Math.sqrt(sumSquares / spare) : Number.NaN;
  const variance = sd === undefined ? residualSd ** 2 : 1;
  const covariance = fit.inverse.map((value) => value * variance);
  return {
    status: 'ok',
    mean: fit.x[0]!,
    waves: frequencies.map((f, i) => waveOf(f, fit.x, covariance, 2 * i + 1)),
    residualSd,
    sumSquares,
    chiSquare: sd === undefined ? Number.NaN : fit.sumSquares,
    spare,
    covariance,
    conditioning: fit.conditioning,
  };
}

/** Sum of squared y - rows x. */
function offSquares(rows: Float64Array, y: ArrayLike<number>, x: Float64Array): number {
  const p = x.length;
  let sum = 0;
  for (let i = 0; i < y.length; i++) {
    let off = y[i]!;
    for (let j = 0; j < p; j++) off -= rows[i * p + j]! * x[j]!;
    sum += off * off;
  }
  return sum;
}

/** The wave whose cosine is unknown k of the fit, and its sine the next. */
function waveOf(frequency: number, x: Float64Array, covariance: Float64Array, k: number): Wave {
  const p = x.length;
  const [cosine, sine] = [x[k]!, x[k + 1]!];
  const cc = covariance[k * p + k]!;
  const cs = covariance[k * p + k + 1]!;
  const ss = covariance[(k + 1) * p + k + 1]!;
  return { frequency, cosine, sine, ...polarWave(cosine, sine, cc, cs, ss) };
}

/** An amplitude of fewer standard deviations than this points anywhere: its phase is not told. */
const POINTS = 3;

/**
 * Amplitude and phase of a cosine and a sine, and one standard deviation of each, to first order.
 *
 * @param cc variance of the cosine; NaN, all three: not known
 * @param cs covariance of both
 * @param ss variance of the sine
 */
export function polarWave(
  cosine: number,
  sine: number,
  cc: number,
  cs: number,
  ss: number,
): Pick<Wave, 'amplitude' | 'phase' | 'amplitudeSd' | 'phaseSd'> {
  const amplitude = Math.hypot(cosine, sine);
  // Along the wave's own direction lies its amplitude, across it its phase.
  const sdOf = (c: number, s: number) =>
    Math.sqrt(Math.max(0, c * c * cc + 2 * c * s * cs + s * s * ss));
  const [c, s] = amplitude > 0 ? [cosine / amplitude, sine / amplitude] : [1, 0];
  const [along, across] = [sdOf(c, s), sdOf(-s, c)];
  return {
    amplitude,
    phase: Math.atan2(sine, cosine),
    amplitudeSd: amplitude > 0 ? along : Math.sqrt(largestEigenvalue([cc, cs, cs, ss], 2)),
    phaseSd: amplitude > POINTS * Math.max(along, across) ? across / amplitude : Number.NaN,
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
export function differentAngles(theta: ArrayLike<number>): number {
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
