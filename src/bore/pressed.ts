/**
 * The readings of each depth pressed into fewer, without loss.
 *
 * At one depth the readings answer only so many unknowns: the lobes that their instruments see, and shift and zero of
 * their set-ups. Where there are more readings than that, an orthonormal basis of what the unknowns can cause holds all
 * that the readings say of them (a sufficient statistic; Golub and Van Loan, Matrix Computations, 4th ed., section 5.3),
 * and the remainder is noise alone.
 */
import { TERMS } from './instruments.ts';
import type { Sighting } from './types.ts';

/** Readings that claim to repeat better than this are not believed: 1e-4 mm, far below any shop gauge. */
export const LEAST_SD = 1e-4;

/** What is left of a column once its likes are taken out, as a share of it: below this it is rounding. */
const NOTHING_NEW = 1e-11;

/** Columns of one set-up: its sine, its cosine, its zero. */
const SETUP_TERMS = 3;

interface Block {
  /** Readings of one depth. */
  readonly readings: readonly number[];
  /** Their pressed rows. */
  readonly rows: readonly number[];
  /** rows * readings, orthonormal in units of noise; null where each reading is a row of its own. */
  readonly basis: Float64Array | null;
}

export interface Pressed {
  /** Rows: at most the readings. Where it is as many, they are the readings in their order. */
  readonly count: number;
  /** count * TERMS and count * 3 * set-ups. */
  readonly gain: Float64Array;
  readonly setupGain: Float64Array;
  /** Place of each row's depth among the depths. */
  readonly depthOf: Int32Array;
  readonly blocks: readonly Block[];
  /** One standard deviation of each row, mm, as the readings state it. */
  readonly sds: Float64Array;
  readonly readingSds: Float64Array;
}

export function press(
  sightings: readonly Sighting[],
  gain: Float64Array,
  depthOf: Int32Array,
  setups: number,
): Pressed {
  const readingSds = Float64Array.from(sightings, (s) => Math.max(s.sd, LEAST_SD));
  const width = SETUP_TERMS * setups;
  const all = TERMS + width;
  const answers = scaledAnswers(sightings, gain, readingSds, all);
  const readingsAt = new Map<number, number[]>();
  depthOf.forEach((depth, i) => {
    const there = readingsAt.get(depth);
    if (there === undefined) readingsAt.set(depth, [i]);
    else there.push(i);
  });
  const pieces = [...readingsAt.values()].map((readings) => pressDepth(readings, answers, all));
  const fewer = pieces.some((piece) => piece.basis !== null);
  const count = pieces.reduce((sum, piece) => sum + piece.answers.length / all, 0);
  const out = {
    count,
    gain: new Float64Array(count * TERMS),
    setupGain: new Float64Array(count * width),
    depthOf: new Int32Array(count),
    sds: new Float64Array(count),
  };
  let next = 0;
  const blocks = pieces.map(({ readings, basis, answers: own }): Block => {
    const rows = Array.from({ length: own.length / all }, (_, r) =>
      fewer ? next++ : readings[r]!,
    );
    rows.forEach((row, r) => {
      // Any unit of noise would do for a pressed row: that of a reading there keeps all in mm.
      const sd = readingSds[readings[r]!]!;
      const answer = own.subarray(r * all, (r + 1) * all).map((v) => v * sd);
      out.gain.set(answer.subarray(0, TERMS), row * TERMS);
      out.setupGain.set(answer.subarray(TERMS), row * width);
      out.depthOf[row] = depthOf[readings[0]!]!;
      out.sds[row] = sd;
    });
    return { readings, rows, basis };
  });
  return { ...out, blocks, readingSds };
}

/** What each reading answers, in units of its noise: the lobes, then sine, cosine and zero of every set-up. */
function scaledAnswers(
  sightings: readonly Sighting[],
  gain: Float64Array,
  sds: Float64Array,
  all: number,
): Float64Array {
  const out = new Float64Array(sightings.length * all);
  sightings.forEach((s, i) => {
    for (let c = 0; c < TERMS; c++) out[i * all + c] = gain[i * TERMS + c]! / sds[i]!;
    if (s.setup < 0) return;
    const at = i * all + TERMS + SETUP_TERMS * s.setup;
    out[at] = Math.sin(s.theta) / sds[i]!;
    out[at + 1] = Math.cos(s.theta) / sds[i]!;
    out[at + 2] = 1 / sds[i]!;
  });
  return out;
}

/** The rows that stand for the readings of one depth, and the basis that makes them. */
function pressDepth(
  readings: readonly number[],
  answers: Float64Array,
  all: number,
): { readings: readonly number[]; answers: Float64Array; basis: Float64Array | null } {
  const m = readings.length;
  const own = new Float64Array(m * all);
  readings.forEach((i, r) => {
    own.set(answers.subarray(i * all, (i + 1) * all), r * all);
  });
  const columns: number[] = [];
  for (let c = 0; c < all; c++)
    if (readings.some((_, r) => own[r * all + c] !== 0)) columns.push(c);
  if (m <= columns.length) return { readings, answers: own, basis: null };
  const basis = orthonormal(own, all, m, columns);
  const held = basis.length / m;
  const out = new Float64Array(held * all);
  for (let k = 0; k < held; k++) {
    for (const c of columns) {
      let sum = 0;
      for (let r = 0; r < m; r++) sum += basis[k * m + r]! * own[r * all + c]!;
      out[k * all + c] = sum;
    }
  }
  return { readings, answers: out, basis };
}

/** Orthonormal basis of the columns (modified Gram-Schmidt, each twice), one after the other, m numbers each. */
function orthonormal(
  own: Float64Array,
  all: number,
  m: number,
  columns: readonly number[],
): Float64Array {
  const kept: Float64Array[] = [];
  for (const c of columns) {
    const v = Float64Array.from({ length: m }, (_, r) => own[r * all + c]!);
    const before = Math.sqrt(dot(v, v));
    for (let pass = 0; pass < 2; pass++) {
      for (const q of kept) {
        const share = dot(q, v);
        for (let r = 0; r < m; r++) v[r] = v[r]! - share * q[r]!;
      }
    }
    const after = Math.sqrt(dot(v, v));
    if (after > NOTHING_NEW * before) kept.push(v.map((x) => x / after));
  }
  const out = new Float64Array(kept.length * m);
  kept.forEach((q, k) => {
    out.set(q, k * m);
  });
  return out;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/**
 * Readings' departures, pressed.
 * @param y one each reading, mm
 * @returns one each row, mm; `rest`: sum of squares of what is noise alone, in units of it
 */
export function pressValues(
  { blocks, count, sds, readingSds }: Pressed,
  y: Float64Array,
): { rows: Float64Array; rest: number } {
  const out = new Float64Array(count);
  let rest = 0;
  for (const { readings, rows, basis } of blocks) {
    const own = Float64Array.from(readings, (i) => y[i]! / readingSds[i]!);
    const shares = basis === null ? own : takeShares(basis, own, rows.length);
    rows.forEach((row, r) => {
      out[row] = shares[r]! * sds[row]!;
    });
    if (basis !== null) {
      const noise = lessShares(basis, own, shares);
      rest += dot(noise, noise);
    }
  }
  return { rows: out, rest };
}

/**
 * Covariance^-1 times the departures, reading by reading, from that of the pressed rows; 1 / mm.
 * @param noise factor on the stated standard deviations
 */
export function releaseWeights(
  { blocks, sds, readingSds }: Pressed,
  y: Float64Array,
  weights: Float64Array,
  noise: number,
): Float64Array {
  const out = new Float64Array(y.length);
  for (const { readings, rows, basis } of blocks) {
    const held = Float64Array.from(rows, (row) => weights[row]! * sds[row]!);
    let own: Float64Array = held;
    if (basis !== null) {
      const values = Float64Array.from(readings, (i) => y[i]! / readingSds[i]!);
      const alone = lessShares(basis, values, takeShares(basis, values, rows.length));
      const ofNoise = alone.map((v) => v / (noise * noise));
      own = lessShares(
        basis,
        ofNoise,
        held.map((w) => -w),
      );
    }
    readings.forEach((i, r) => {
      out[i] = own[r]! / readingSds[i]!;
    });
  }
  return out;
}

function takeShares(basis: Float64Array, values: Float64Array, count: number): Float64Array {
  const m = values.length;
  return Float64Array.from({ length: count }, (_, k) =>
    dot(basis.subarray(k * m, (k + 1) * m), values),
  );
}

/** Values less the basis times its shares. */
function lessShares(basis: Float64Array, values: Float64Array, shares: Float64Array): Float64Array {
  const m = values.length;
  const out = values.slice();
  for (let k = 0; k < shares.length; k++) {
    for (let r = 0; r < m; r++) out[r] = out[r]! - shares[k]! * basis[k * m + r]!;
  }
  return out;
}
