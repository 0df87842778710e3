/**
 * What is left unknown after one reading more, for many candidates at once.
 *
 * Given the readings, a place x of the map varies by v(x), a reading h by var(h), and both together by cov(x, h); h
 * leaves v(x) - cov(x, h)^2 / var(h) (conditioning a Gaussian on one more value; Rasmussen and Williams 2006, A.2).
 */
import { solveLower } from '../num/cholesky.ts';
import { type DepthTables, depthTables, mixed } from './depth.ts';
import { bentLikeness, freeSpreads } from './frame.ts';
import { gains, LOBES, TERMS } from './instruments.ts';
import type { MapAsked } from './nextTypes.ts';
import { atDepth, type DepthSpread, type Posterior, spreadOf } from './posterior.ts';
import { LEAST_SD } from './pressed.ts';
import { betweenRows, gridSpread, variances } from './surface.ts';
import type { Field, SetupPrior, Sighting } from './types.ts';

const ALL_LOBES = Array.from({ length: LOBES + 1 }, (_, n) => n);

/** Mean over the places that count; NaN where none does. */
export function meanSd(sd: Field, counts: Uint8Array): number {
  let sum = 0;
  let count = 0;
  for (let k = 0; k < sd.length; k++) {
    if (counts[k] !== 1) continue;
    sum += sd[k]!;
    count++;
  }
  return sum / count;
}

/** Mean standard deviation of the map after each candidate by itself, mm per side; a candidate's value plays no part. */
export function meanSdAfterEach(
  p: Posterior,
  asked: MapAsked,
  candidates: readonly Sighting[],
): Float64Array {
  const { grid, counts } = asked;
  const map = mapSpread(p, asked, candidates);
  return Float64Array.from(candidates, (_, j) => {
    const rows = map.before.map((before, r) => {
      const { c, variance } = map.shared(j, r);
      return before.map((v, i) => Math.max(0, v - harmonic(c, map.basis, i) ** 2 / variance));
    });
    return meanSd(betweenRows(rows, grid), counts);
  });
}

/** The map's variances, what each of its depths shares with each candidate, and what two candidates share, mm2. */
export function mapSpread(
  p: Posterior,
  { grid, frame }: MapAsked,
  candidates: readonly Sighting[],
) {
  const spread = gridSpread(p, grid);
  const spreads = frame === 'free' ? freeSpreads(p, spread) : spread.spreads;
  const depths = Float64Array.from(new Set(candidates.map(({ z }) => z)));
  const toMap = depthTables(spread.rows, depths, p.design.length, p.smoothness);
  const bent = frame === 'free' ? bentLikeness(p, spread.rows, toMap) : null;
  const own = depthTables(depths, depths, p.design.length, p.smoothness);
  const known = atDepths(p, depths, own);
  const gain = gains(candidates, p.design.setups);
  const readings = candidates.map((h, j) => {
    const k = depths.indexOf(h.z);
    const g = gain.subarray(j * TERMS, (j + 1) * TERMS);
    return { h, k, own: g, ...readingSpread(p, h, g, known[k]!) };
  });
  return {
    basis: spread.basis,
    before: spreads.map((one) => variances(one, p, spread.basis).all),
    shared: (j: number, r: number) => {
      const { k, own, whitened, variance } = readings[j]!;
      const plain = (n: number) => mixed(p.shapes[n]!, toMap, r * toMap.columns + k);
      const first = (n: number) => (bent === null ? plain(n) : bent(r, k, n));
      const c = covariances(spreads[r]!, whitened, own, (n) => (n === 1 ? first(n) : plain(n)));
      p.known.forEach(({ profile }, t) => {
        const n = LOBES + 1 + t;
        const answer = dot(profile, own);
        profile.forEach((a, column) => {
          const like = column === 1 || column === 2 ? first(n) : plain(n);
          c[column] = c[column]! + a * answer * like;
        });
      });
      return { c, variance };
    },
    /** Covariance of two candidates' readings, given those that are there; without their noise. */
    between: (j: number, i: number) => between(p, readings[j]!, readings[i]!, own),
  };
}

/** The field at angle i of the basis. */
export function harmonic(c: Float64Array, basis: Float64Array, i: number): number {
  let sum = 0;
  for (let k = 0; k < TERMS; k++) sum += c[k]! * basis[i * TERMS + k]!;
  return sum;
}

/** The coefficients' spread at each of the depths. */
function atDepths(p: Posterior, depths: Float64Array, own: DepthTables): DepthSpread[] {
  const { design: d, smoothness } = p;
  const toReadings = depthTables(depths, d.depths, d.length, smoothness);
  return Array.from(depths, (_, k) => spreadOf(p, atDepth(p, toReadings, own, k), ALL_LOBES));
}

interface Foreseen {
  readonly h: Sighting;
  /** Place of its depth among the candidates' depths. */
  readonly k: number;
  readonly own: Float64Array;
  readonly whitened: Float64Array;
}

function between(p: Posterior, a: Foreseen, b: Foreseen, own: DepthTables): number {
  const { setups, length } = p.design;
  const { known } = p;
  const at = a.k * own.columns + b.k;
  let sum = -dot(a.whitened, b.whitened);
  for (let c = 0; c < TERMS; c++) {
    const both = a.own[c]! * b.own[c]!;
    if (both !== 0) sum += both * mixed(p.shapes[(c + 1) >> 1]!, own, at);
  }
  known.forEach(({ profile }, t) => {
    sum += dot(profile, a.own) * dot(profile, b.own) * mixed(p.shapes[LOBES + 1 + t]!, own, at);
  });
  const setup = a.h.setup === b.h.setup ? setups[a.h.setup] : undefined;
  if (setup === undefined) return sum;
  return sum + setupCovariance(setup, a.h.z, b.h.z, length, Math.cos(a.h.theta - b.h.theta), 1);
}

/** A reading not taken yet: its covariance with the readings over their factor, and its variance given them, mm2. */
function readingSpread(p: Posterior, h: Sighting, gain: Float64Array, at: DepthSpread) {
  const { design: d, factor, smoothness } = p;
  const { count } = d.pressed;
  const setup = d.setups[h.setup];
  const whitened =
    setup === undefined
      ? new Float64Array(count)
      : solveLower(factor, count, setupCovariances(p, h, setup));
  let prior = setup === undefined ? 0 : setupCovariance(setup, h.z, h.z, d.length, 1, 1);
  for (let c = 0; c < TERMS; c++) {
    const g = gain[c]!;
    if (g === 0) continue;
    prior += g * g * at.prior[c]!;
    if (at.shared !== null) {
      for (let b = 0; b < TERMS; b++) prior += g * gain[b]! * at.shared[c * TERMS + b]!;
    }
    for (let i = 0; i < count; i++) whitened[i] = whitened[i]! + g * at.whitened[c * count + i]!;
  }
  const noise = Math.max(h.sd, LEAST_SD) * smoothness.noise;
  return { whitened, variance: prior + noise * noise - whitened.reduce((a, w) => a + w * w, 0) };
}

/** Covariance of a reading with the pressed rows through the unknowns of its set-up. */
function setupCovariances({ design: d }: Posterior, h: Sighting, setup: SetupPrior): Float64Array {
  const { count, setupGain, depthOf } = d.pressed;
  const [sine, cosine] = [Math.sin(h.theta), Math.cos(h.theta)];
  return Float64Array.from({ length: count }, (_, i) => {
    const at = 3 * (i * d.setups.length + h.setup);
    const centre = setupGain[at]! * sine + setupGain[at + 1]! * cosine;
    return setupCovariance(
      setup,
      h.z,
      d.depths[depthOf[i]!]!,
      d.length,
      centre,
      setupGain[at + 2]!,
    );
  });
}

/** @param centre share of offset and lean that both answer, @param zero of the zero */
function setupCovariance(
  s: SetupPrior,
  a: number,
  b: number,
  length: number,
  centre: number,
  zero: number,
): number {
  const apart = s.resetEachDepth && a !== b;
  const off = s.offset ** 2 + (s.lean ** 2 * a * b) / (length * length);
  return off * centre + (apart ? 0 : s.zeroSd ** 2 * zero);
}

/** Covariance of each coefficient at one depth of the map with a reading, given the readings, mm2. */
function covariances(
  one: DepthSpread,
  whitened: Float64Array,
  gain: Float64Array,
  alike: (n: number) => number,
): Float64Array {
  const count = whitened.length;
  const likeness = ALL_LOBES.map((n) => alike(n));
  return Float64Array.from({ length: TERMS }, (_, c) => {
    let sum = gain[c]! * likeness[(c + 1) >> 1]!;
    for (let i = 0; i < count; i++) sum -= one.whitened[c * count + i]! * whitened[i]!;
    return sum;
  });
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
