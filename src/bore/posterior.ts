/**
 * The exact Gaussian posterior of the wear surface given the readings (Rasmussen and Williams, Gaussian Processes
 * for Machine Learning, 2006, algorithm 2.1), on the lobes' coefficients rather than on places.
 */
import {
  choleskyInPlace,
  solveLower,
  solveLowerMany,
  solveLowerTransposed,
} from '../num/cholesky.ts';
import type { KnownShape } from './crescent.ts';
import { type DepthTables, depthTables, mixed } from './depth.ts';
import type { Design } from './design.ts';
import { cosineColumn, LOBES, sizeGain, TERMS } from './instruments.ts';
import { pressValues, releaseWeights } from './pressed.ts';
import { ALONG, type DepthShape, depthShape, knownShapeAlong } from './prior.ts';
import { allKnown, spotAnswers } from './spotDesign.ts';
import type { SetupPrior, Sighting, Smoothness } from './types.ts';

export interface Posterior {
  readonly design: Design;
  readonly smoothness: Smoothness;
  /** Radius that the size varies about, mm. */
  readonly base: number;
  /** Lower factor of the pressed rows' covariance, noise included, pressed.count squared. */
  readonly factor: Float64Array;
  /** Covariance^-1 times what the pressed rows are off what was expected of them, 1 / mm. */
  readonly pressedWeights: Float64Array;
  /** The same reading by reading, 1 / mm. */
  readonly weights: Float64Array;
  /** Shapes known round the clock: of wear on the stated side, then of each spot; and what pressed rows answer them. */
  readonly known: readonly KnownShape[];
  /** pressed.count * known.length. */
  readonly knownGain: Float64Array;
  /** Of every lobe, 0 to LOBES; then of the amount of every known shape. */
  readonly shapes: readonly DepthShape[];
  /** Minus the logarithm of how likely the readings are, up to a constant. */
  readonly surprise: number;
}

export function condition(
  d: Design,
  smoothness: Smoothness,
  nominalRadius: number,
): Posterior | null {
  const base = baseRadius(d.sightings, nominalRadius);
  const factor = covariance(d, smoothness);
  const { count } = d.pressed;
  if (!choleskyInPlace(factor, count)) return null;
  const y = departures(d, base);
  const { rows, rest } = pressValues(d.pressed, y);
  const half = solveLower(factor, count, rows);
  const { noise } = smoothness;
  let surprise = (0.5 * rest) / (noise * noise) + (d.count - count) * Math.log(noise);
  for (let i = 0; i < count; i++) {
    surprise += 0.5 * half[i]! * half[i]! + Math.log(factor[i * count + i]!);
  }
  const places = smoothness.spots?.places ?? [];
  const pressedWeights = solveLowerTransposed(factor, count, half);
  return {
    design: d,
    smoothness,
    base,
    factor,
    pressedWeights,
    weights: releaseWeights(d.pressed, y, pressedWeights, noise),
    ...allKnown(d, places),
    shapes: [
      ...Array.from({ length: LOBES + 1 }, (_, n) => depthShape(n, smoothness, d.datum)),
      ...d.known.map(({ share }) => knownShapeAlong(share, smoothness.worn)),
      ...places.flatMap((spot, nth) => spotAnswers(d, spot).shapes.map(() => ofSpot(nth))),
    ],
    surprise,
  };
}

/** All along the depth that a spot's shapes have is in the spot's table. */
function ofSpot(spot: number): DepthShape {
  return { constant: 0, slope: 0, smooth: 0, local: 0, spot };
}

/** Covariance of the pressed rows, noise included; lower triangle. */
function covariance(d: Design, s: Smoothness): Float64Array {
  const { angular } = d;
  const { count, depthOf, sds } = d.pressed;
  const t = depthTables(d.depths, d.depths, d.length, s);
  const size = { ...depthShape(0, s, d.datum), local: 0 };
  const first = { ...depthShape(1, s, d.datum), local: 0 };
  const lobe2 = s.lobe * s.lobe;
  const local2 = s.local * s.local;
  const worn2 = d.known.length > 0 ? knownShapeAlong(1, s.worn).constant : 0;
  const m = t.columns;
  const along = Float64Array.from(
    t.slope,
    (slope, k) => ALONG.constant + ALONG.slope * slope + ALONG.smooth * t.smooth[k]!,
  );
  const sizes = Float64Array.from(t.slope, (_, k) => mixed(size, t, k));
  const firsts = Float64Array.from(t.slope, (_, k) => mixed(first, t, k));
  const out = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const row = depthOf[i]! * m;
    for (let j = 0; j <= i; j++) {
      const k = i * count + j;
      const z = row + depthOf[j]!;
      out[k] =
        angular.size[k]! * sizes[z]! +
        angular.first[k]! * firsts[z]! +
        (lobe2 * angular.others[k]! + angular.oddFloor[k]!) * along[z]! +
        local2 * angular.local[k]! * t.local[z]! +
        (worn2 > 0 ? worn2 * angular.known[k]! * along[z]! : 0) +
        angular.setup[k]!;
    }
    const sd = sds[i]! * s.noise;
    out[i * count + i] = out[i * count + i]! + sd * sd;
  }
  s.spots?.places.forEach((spot, nth) => {
    const { alike } = spotAnswers(d, spot);
    const table = t.spots[nth]!;
    for (let i = 0; i < count; i++) {
      const row = depthOf[i]! * m;
      for (let j = 0, k = i * count; j <= i; j++, k++) {
        out[k] = out[k]! + alike[k]! * table[row + depthOf[j]!]!;
      }
    }
  });
  return out;
}

function median(values: number[]): number {
  values.sort((a, b) => a - b);
  const m = values.length >> 1;
  return values.length % 2 ? values[m]! : (values[m - 1]! + values[m]!) / 2;
}

/** The radius that sizes are counted from: the middle one of the readings that see size, else the nominal. */
function baseRadius(sightings: readonly Sighting[], nominalRadius: number): number {
  const sized = sightings.filter((s) => s.setup < 0).map((s) => s.value / sizeGain(s.instrument));
  return sized.length > 0 ? median(sized) : nominalRadius;
}

/** Readings less what the prior expects of them. */
function departures(d: Design, base: number): Float64Array {
  const zeros = d.setups.map((setup, k) => setupZero(d.sightings, setup, k, base));
  return Float64Array.from(d.sightings, (s) =>
    s.setup < 0
      ? s.value - sizeGain(s.instrument) * base
      : s.value - d.setups[s.setup]!.sign * base - zeros[s.setup]!,
  );
}

function setupZero(
  sightings: readonly Sighting[],
  setup: SetupPrior,
  k: number,
  base: number,
): number {
  if (Number.isFinite(setup.zero)) return setup.zero;
  const own = sightings.filter((s) => s.setup === k);
  return own.reduce((sum, s) => sum + s.value - setup.sign * base, 0) / Math.max(1, own.length);
}

/** What each reading should have been, were the surface's mean the truth; mm, in the instrument's own figure. */
export function predicted(p: Posterior): Float64Array {
  const { design: d, weights } = p;
  const { readingSds } = d.pressed;
  return Float64Array.from(
    d.sightings,
    (s, i) => s.value - (readingSds[i]! * p.smoothness.noise) ** 2 * weights[i]!,
  );
}

/** The pressed rows' weights, gathered by depth and coefficient: depths * TERMS. Rows at one depth share its kernel. */
function gatheredWeights({ design: d, pressedWeights }: Posterior): Float64Array {
  const { count, depthOf, gain } = d.pressed;
  const terms = TERMS;
  const out = new Float64Array(d.depths.length * terms);
  for (let i = 0; i < count; i++) {
    const to = depthOf[i]! * terms;
    for (let c = 0; c < terms; c++) {
      out[to + c] = out[to + c]! + pressedWeights[i]! * gain[i * terms + c]!;
    }
  }
  return out;
}

/**
 * Mean of the coefficients at some depths.
 * @returns depths.length * TERMS, mm; c0 is the whole mean radius.
 */
export function meanCoefficients(p: Posterior, depths: ArrayLike<number>): Float64Array {
  const { design: d, shapes } = p;
  const t = depthTables(depths, d.depths, d.length, p.smoothness);
  const out = knownMean(p, depths);
  const gathered = gatheredWeights(p);
  for (let r = 0; r < depths.length; r++) {
    for (let k = 0; k < d.depths.length; k++) {
      for (let n = 0; n <= LOBES; n++) {
        const like = mixed(shapes[n]!, t, r * t.columns + k);
        const c = n === 0 ? 0 : cosineColumn(n);
        const at = r * TERMS + c;
        out[at] = out[at]! + like * gathered[k * TERMS + c]!;
        if (n > 0) out[at + 1] = out[at + 1]! + like * gathered[k * TERMS + c + 1]!;
      }
    }
    out[r * TERMS] = out[r * TERMS]! + p.base;
  }
  return out;
}

/** The part of `meanCoefficients` that is wear of known shape on the stated side, and spots; all 0 where there are none. */
export function knownMean(p: Posterior, depths: ArrayLike<number>): Float64Array {
  const { design: d, shapes } = p;
  const out = new Float64Array(depths.length * TERMS);
  if (p.known.length === 0) return out;
  const t = depthTables(depths, d.depths, d.length, p.smoothness);
  const gathered = gatheredWeights(p);
  p.known.forEach(({ profile }, nth) => {
    for (let r = 0; r < depths.length; r++) {
      let amount = 0;
      for (let k = 0; k < d.depths.length; k++) {
        const like = mixed(shapes[LOBES + 1 + nth]!, t, r * t.columns + k);
        profile.forEach((a, c) => {
          amount += like * a * gathered[k * TERMS + c]!;
        });
      }
      profile.forEach((a, c) => {
        out[r * TERMS + c] = out[r * TERMS + c]! + amount * a;
      });
    }
  });
  return out;
}

/**
 * Covariance of the coefficients at one depth, as what the readings took away of the prior.
 *
 * `whitened` holds, for each column, factor^-1 times the covariance of that coefficient with the pressed rows; the
 * posterior covariance of columns a and b is prior(a, b) - whitened_a . whitened_b. Columns of unseen lobes are 0.
 */
export interface DepthSpread {
  readonly whitened: Float64Array;
  /** Prior variance of each coefficient by itself, mm2. */
  readonly prior: Float64Array;
  /** Prior covariance through known shapes, TERMS squared, mm2; null where there are none. */
  readonly shared: Float64Array | null;
}

/** How one lobe's coefficient, at a depth or a combination of depths, varies by itself and with each reading depth. */
export interface Likeness {
  /** Prior variance of lobe n, or of known shape n - LOBES - 1, mm2. */
  prior(n: number): number;
  /** Covariance with lobe n at reading depth k, mm2. */
  with(n: number, k: number): number;
  /** Covariance with what the other columns hold, mm2. */
  across?(n: number): number;
}

const columnsOf = (n: number) => (n === 0 ? [0] : [cosineColumn(n), cosineColumn(n) + 1]);

function emptySpread({ design: { pressed }, known }: Posterior): DepthSpread {
  return {
    whitened: new Float64Array(TERMS * pressed.count),
    prior: new Float64Array(TERMS),
    shared: known.length > 0 ? new Float64Array(TERMS * TERMS) : null,
  };
}

/** Up to here it is quicker to solve for each reading depth once, and add up, than for each wanted depth. */
const FEW_DEPTHS = 32;

const answers = (d: Design, n: number) => n === 0 || d.seen.includes(n);

/** By column, for each reading depth: factor^-1 times what the rows there answer the column. */
type Halves = Map<number, readonly Float64Array[]>;

const halvesOf = new WeakMap<Posterior, Halves>();

function depthHalves(p: Posterior): Halves {
  const known = halvesOf.get(p);
  if (known !== undefined) return known;
  const { count, depthOf, gain } = p.design.pressed;
  const columns = Array.from({ length: LOBES + 1 }, (_, n) => n)
    .filter((n) => answers(p.design, n))
    .flatMap(columnsOf);
  const terms = TERMS;
  const solved = Array.from(p.design.depths, (_, k) => {
    const sides = new Float64Array(columns.length * count);
    for (let i = 0; i < count; i++) {
      if (depthOf[i] !== k) continue;
      columns.forEach((column, nth) => {
        sides[nth * count + i] = gain[i * terms + column]!;
      });
    }
    solveLowerMany(p.factor, count, sides, Math.max(0, depthOf.indexOf(k)));
    return sides;
  });
  const halves = new Map(
    columns.map((column, nth) => [
      column,
      solved.map((sides) => sides.subarray(nth * count, (nth + 1) * count)),
    ]),
  );
  halvesOf.set(p, halves);
  return halves;
}

/** The parts, each as often as it says, in `into`. */
function addUp(parts: readonly Float64Array[], shares: Float64Array, into: Float64Array): void {
  into.fill(0);
  parts.forEach((part, k) => {
    const share = shares[k]!;
    for (let i = 0; i < into.length; i++) into[i] = into[i]! + share * part[i]!;
  });
}

/**
 * Spread of some lobes' coefficients (0: size), the other columns left as `into` has them.
 * @param into a spread to write over; a new one, all 0, where left out
 */
export function spreadOf(
  p: Posterior,
  likeness: Likeness,
  lobes: readonly number[],
  into: DepthSpread = emptySpread(p),
): DepthSpread {
  const { design: d } = p;
  const { count, depthOf, gain } = d.pressed;
  const terms = TERMS;
  const halves = d.depths.length <= FEW_DEPTHS ? depthHalves(p) : null;
  for (const n of lobes) {
    const columns = columnsOf(n);
    for (const column of columns) into.prior[column] = likeness.prior(n);
    if (!answers(d, n)) continue;
    const like = Float64Array.from(d.depths, (_, k) => likeness.with(n, k));
    for (const column of columns) {
      const whitened = into.whitened.subarray(column * count, (column + 1) * count);
      if (halves !== null) addUp(halves.get(column)!, like, whitened);
      else {
        for (let i = 0; i < count; i++)
          whitened[i] = like[depthOf[i]!]! * gain[i * terms + column]!;
        solveLower(p.factor, count, whitened, whitened);
      }
    }
  }
  if (into.shared !== null) addKnown(p, likeness, lobes.flatMap(columnsOf), into);
  return into;
}

/** Adds what known shapes bring to some columns, and to their covariance with the others. */
function addKnown(
  p: Posterior,
  likeness: Likeness,
  columns: readonly number[],
  { whitened, shared }: DepthSpread,
): void {
  const { known, knownGain } = p;
  const { count, depthOf } = p.design.pressed;
  for (const a of columns) {
    for (let b = 0; b < TERMS; b++) {
      shared![a * TERMS + b] = 0;
      shared![b * TERMS + a] = 0;
    }
  }
  known.forEach(({ profile }, t) => {
    const n = LOBES + 1 + t;
    const own = likeness.prior(n);
    const across = likeness.across?.(n) ?? 0;
    const rhs = Float64Array.from(
      depthOf,
      (k, i) => likeness.with(n, k) * knownGain[i * known.length + t]!,
    );
    const half = rhs.some((x) => x !== 0) ? solveLower(p.factor, count, rhs, rhs) : rhs;
    for (const a of columns) {
      if (profile[a] === 0) continue;
      for (let i = 0; i < count; i++) {
        whitened[a * count + i] = whitened[a * count + i]! + profile[a]! * half[i]!;
      }
      for (let b = 0; b < TERMS; b++) {
        const both = profile[a]! * profile[b]! * (columns.includes(b) ? own : across);
        shared![a * TERMS + b] = shared![a * TERMS + b]! + both;
        if (!columns.includes(b)) shared![b * TERMS + a] = shared![a * TERMS + b]!;
      }
    }
  });
}

/** A depth by itself: row r of the tables from the wanted depths to the readings' and to themselves. */
export function atDepth(p: Posterior, t: DepthTables, own: DepthTables, r: number): Likeness {
  return {
    prior: (n) => mixed(p.shapes[n]!, own, r * own.columns + r),
    with: (n, k) => mixed(p.shapes[n]!, t, r * t.columns + k),
  };
}
