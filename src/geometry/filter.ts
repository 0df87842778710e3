/** The Gaussian filter of roundness profiles: what is wavy apart from what is rough. */
import { cholesky, solveLower, solveLowerTransposed } from '../num/cholesky.ts';
import { mean } from '../num/mean.ts';
import { bySpacing, type Spacing } from './spacing.ts';

export interface FilteredProfile {
  status: 'ok';
  /** at each reading: mean and long waves, short waves; they add up to the profile */
  long: Float64Array;
  short: Float64Array;
  mean: number;
  /** readings in one undulation at the cut-off, where they lie farthest apart */
  perWave: number;
  /** true where the angles are evenly spaced: the transmission is then exact for every lobe */
  even: boolean;
  /** lobes above this go whole into the short part; at uneven angles some of them leaks */
  highest: number;
}

export type FilterFailure =
  | { status: 'not-finite'; row: number }
  | { status: 'cutoff-not-above-0' }
  | { status: 'too-few-readings'; needed: number; found: number }
  /** `from` and `to` in radians, clockwise as the angles run; `widest` is what the cut-off allows */
  | { status: 'gap-too-wide'; from: number; to: number; widest: number };

/** ISO 12181-2: at least this many readings in the shortest wave that is kept. */
const PER_WAVE = 7;

/** Past this many cut-offs less than 1e-16 of a lobe goes through. */
const NOTHING_LEFT = 7.3;
/** Where angles are uneven, lobes are kept up to here: 2^-10 of one goes through. */
const KEPT_UNEVEN = Math.sqrt(10);

/** Share of a lobe that goes into the long part: half at the cut-off (ISO 16610-21). Both in undulations per turn. */
export function gaussianTransmission(undulations: number, cutoff: number): number {
  return 2 ** -((undulations / cutoff) ** 2);
}

/**
 * Long- and short-wave part of a closed profile by the Gaussian filter of ISO 16610-21, cut-off in
 * undulations per revolution (ISO 12181-2 names 15, 50, 150, 500).
 *
 * The profile is worked out as a sum of lobes, and each lobe goes through by its transmission. At
 * even angles that is the discrete Fourier transform, exact up to the highest lobe that so many
 * readings carry. At uneven ones nothing is drawn between the readings: the lobes are fitted to them
 * where they are, each counting for its share of the turn. With no gap wider than half of the
 * shortest fitted wave that fit is sound whatever the angles (K. Grochenig, Mathematics of
 * Computation 59, 1992, 181-194), and wider ones are refused.
 *
 * @param theta radians, in any order and turn
 * @param r as many as theta, any unit
 * @param cutoff undulations per revolution, above 0
 * @throws RangeError when theta and r differ in length
 */
export function gaussianFilter(
  theta: ArrayLike<number>,
  r: ArrayLike<number>,
  cutoff: number,
): FilteredProfile | FilterFailure {
  if (theta.length !== r.length) throw new RangeError(`${theta.length} angles, ${r.length} radii`);
  for (let row = 0; row < r.length; row++) {
    if (!Number.isFinite(theta[row]!) || !Number.isFinite(r[row]!)) {
      return { status: 'not-finite', row };
    }
  }
  if (!(cutoff > 0)) return { status: 'cutoff-not-above-0' };
  const needed = Math.max(3, Math.ceil(PER_WAVE * cutoff));
  if (r.length < needed) return { status: 'too-few-readings', needed, found: r.length };
  const spacing = bySpacing(theta);
  const { even, gap } = spacing;
  const widest = (2 * Math.PI) / PER_WAVE / cutoff;
  // An even spacing is as wide as the count makes it; `needed` has judged that.
  if (!even && !(gap.to - gap.from <= widest)) {
    return { status: 'gap-too-wide', from: gap.from, to: gap.to, widest };
  }
  const base = mean(r);
  const off = Float64Array.from(r, (value) => value - base);
  const lobes = even ? transformed(spacing, off, cutoff) : fitted(theta, spacing, off, cutoff);
  const long = passed(theta, lobes, cutoff, base);
  return {
    status: 'ok',
    long,
    short: long.map((value, i) => r[i]! - value),
    mean: base + lobes[0]!,
    perWave: (2 * Math.PI) / cutoff / (gap.to - gap.from),
    even,
    highest: (lobes.length - 1) / 2,
  };
}

/** One sentence, without a full stop: what is wrong, and what would be right. */
export function filterFailureInWords(failure: FilterFailure, cutoff: number): string {
  const degrees = (radians: number) =>
    `${Number(((radians * 180) / Math.PI).toPrecision(4))} degrees`;
  switch (failure.status) {
    case 'not-finite':
      return `row ${failure.row} (counted from 0) is not a finite number in every column`;
    case 'cutoff-not-above-0':
      return 'the cut-off must be above 0 undulations per revolution; 15, 50, 150 and 500 are usual';
    case 'too-few-readings':
      return `a cut-off of ${cutoff} undulations per revolution needs ${failure.needed} readings round the turn, and there are ${failure.found}`;
    case 'gap-too-wide':
      return `nothing is read between ${degrees(failure.from)} and ${degrees(failure.to)}; a cut-off of ${cutoff} undulations per revolution allows gaps of ${degrees(failure.widest)}`;
  }
}

/** Mean, cosine 1, sine 1, cosine 2, ... of evenly spaced readings. */
function transformed({ order, start }: Spacing, off: Float64Array, cutoff: number): Float64Array {
  const count = off.length;
  const highest = Math.min(Math.floor(count / 2), Math.ceil(NOTHING_LEFT * cutoff));
  const turn = (2 * Math.PI) / count;
  const cosines = Float64Array.from({ length: count }, (_, i) => Math.cos(turn * i));
  const sines = Float64Array.from({ length: count }, (_, i) => Math.sin(turn * i));
  const out = new Float64Array(2 * highest + 1);
  for (let n = 0; n <= highest; n++) {
    let c = 0;
    let s = 0;
    for (let i = 0, k = 0; i < count; i++, k = (k + n) % count) {
      const value = off[order[i]!]!;
      c += value * cosines[k]!;
      s += value * sines[k]!;
    }
    // Size, and the lobe with two readings to a wave, are met once; the others as n and as count - n.
    const share = n === 0 || 2 * n === count ? 1 / count : 2 / count;
    if (n === 0) out[0] = share * c;
    else {
      // The transform counts angles from the first reading.
      const [ca, sa] = [Math.cos(n * start), Math.sin(n * start)];
      out[2 * n - 1] = share * (c * ca - s * sa);
      out[2 * n] = share * (c * sa + s * ca);
    }
  }
  return out;
}

/**
 * The same of readings at any angles, by least squares with the shares of the turn as weights. The
 * normal matrix holds only sums of cos k theta and sin k theta, so it costs readings times lobes.
 */
function fitted(
  theta: ArrayLike<number>,
  { share, gap }: Spacing,
  off: Float64Array,
  cutoff: number,
): Float64Array {
  const sound = Math.ceil(Math.PI / (gap.to - gap.from)) - 1;
  const highest = Math.min(sound, Math.ceil(KEPT_UNEVEN * cutoff));
  const p = 2 * highest + 1;
  const c = new Float64Array(p);
  const s = new Float64Array(p);
  const right = new Float64Array(p);
  for (let i = 0; i < off.length; i++) {
    for (let k = 0; k < p; k++) {
      const cosine = share[i]! * Math.cos(k * theta[i]!);
      const sine = share[i]! * Math.sin(k * theta[i]!);
      c[k]! += cosine;
      s[k]! += sine;
      if (k > highest) continue;
      if (k === 0) right[0]! += cosine * off[i]!;
      else {
        right[2 * k - 1]! += cosine * off[i]!;
        right[2 * k]! += sine * off[i]!;
      }
    }
  }
  const factor = cholesky(normalMatrix(c, s, highest), p);
  if (factor === null) throw new RangeError('gaps below half a wave give a definite matrix');
  return solveLowerTransposed(factor, p, solveLower(factor, p, right));
}

/** Products of cosines and sines as half sums and differences of those of both numbers together. */
function normalMatrix(c: Float64Array, s: Float64Array, highest: number): Float64Array {
  const p = 2 * highest + 1;
  const m = new Float64Array(p * p);
  m[0] = c[0]!;
  for (let n = 1; n <= highest; n++) {
    const [rc, rs] = [(2 * n - 1) * p, 2 * n * p];
    m[rc] = c[n]!;
    m[rs] = s[n]!;
    for (let k = 1; k <= n; k++) {
      const [kc, ks] = [2 * k - 1, 2 * k];
      m[rc + kc] = (c[n - k]! + c[n + k]!) / 2;
      m[rc + ks] = (s[n + k]! - s[n - k]!) / 2;
      m[rs + kc] = (s[n + k]! + s[n - k]!) / 2;
      m[rs + ks] = (c[n - k]! - c[n + k]!) / 2;
    }
  }
  return m;
}

/** The long part at each reading. */
function passed(
  theta: ArrayLike<number>,
  lobes: Float64Array,
  cutoff: number,
  base: number,
): Float64Array {
  const weighted = lobes.map((value, k) => value * gaussianTransmission((k + 1) >> 1, cutoff));
  return Float64Array.from(theta, (t) => {
    let sum = base + weighted[0]!;
    for (let n = 1; 2 * n < weighted.length; n++) {
      sum += weighted[2 * n - 1]! * Math.cos(n * t) + weighted[2 * n]! * Math.sin(n * t);
    }
    return sum;
  });
}
