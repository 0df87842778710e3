/**
 * A dent (one clock position stands proud at several depths, its neighbours do not), and readings that scatter more than
 * their gauge explains.
 *
 * Of each depth what a centre and an oval explain is taken off; a dent is one amount at one clock position over a run
 * of depths in what is left. One low reading by itself is a burr, grit or a dent: that is asked in the list of doubts.
 */
import type { Pattern } from './patternTypes.ts';
import type { Posterior } from './posterior.ts';
import { LEAST_SD } from './pressed.ts';
import { measuredDepths } from './sections.ts';
import type { Sighting } from './types.ts';

/**
 * A dent takes this much off the sum of squares over the variance. 16 is 4 standard deviations; of some 40 places and
 * runs that are tried, chance brings about one such in 400 surveys.
 */
const STANDS_OUT = 16;
/** A wave of two unknowns explains about as much by itself where it comes within this. */
const RATHER = 3;
const FEWEST_PAIRS = 6;
const FEWEST_SIDES = 8;
/** Clock positions nearer than this are one; depths nearer than this (mm) are. */
const SAME_CLOCK = 0.035;
const SAME_DEPTH = 0.5;
/**
 * Wear on one side is no pure oval: the corners of a crescent w deep (w out of round across) stand 0.21 w inside its
 * oval, and twice that where the part was smaller. Less than this share of the out-of-round is that and no dent.
 */
const OF_A_CRESCENT = 0.5;

/** One depth's readings of one kind, per side, less what a centre and an oval explain. */
interface Left {
  readonly z: number;
  readonly theta: readonly number[];
  /** Residuals, mm; `square` to the fitted columns. */
  readonly r: Float64Array;
  readonly square: readonly Float64Array[];
  readonly sd: number;
  readonly spare: number;
}

interface Group {
  readonly pairs: boolean;
  readonly depths: Left[];
}

/** Readings of a kind that sees sides, or pairs, at each depth where there are clock positions enough. */
function leftOver(p: Posterior, waves: (pairs: boolean) => readonly number[]): Group[] {
  const groups = new Map<string, Group>();
  for (const { z, rows } of measuredDepths(p)) {
    const byKind = new Map<string, number[]>();
    for (const i of rows) {
      const { instrument, setup } = p.design.sightings[i]!;
      if (instrument === 'three-leg') continue;
      const key = `${instrument} ${setup}`;
      byKind.set(key, [...(byKind.get(key) ?? []), i]);
    }
    for (const [key, of] of byKind) {
      const pairs = p.design.sightings[of[0]!]!.instrument === 'two-point';
      const left = leftAt(p, z, of, pairs, waves(pairs));
      if (left === null) continue;
      const known = groups.get(key);
      if (known === undefined) groups.set(key, { pairs, depths: [left] });
      else known.depths.push(left);
    }
  }
  return [...groups.values()];
}

function leftAt(
  p: Posterior,
  z: number,
  rows: readonly number[],
  pairs: boolean,
  waves: readonly number[],
): Left | null {
  const seen = rows.map((i) => p.design.sightings[i]!);
  const turn = pairs ? Math.PI : 2 * Math.PI;
  const theta = seen.map((s) => ((s.theta % turn) + turn) % turn);
  const places = new Set(theta.map((t) => Math.round(t / SAME_CLOCK)));
  if (places.size < (pairs ? FEWEST_PAIRS : FEWEST_SIDES)) return null;
  const per = pairs ? 2 : (p.design.setups[seen[0]!.setup]?.sign ?? 1);
  const columns = [
    theta.map(() => 1),
    ...waves.flatMap((n) => [theta.map((t) => Math.cos(n * t)), theta.map((t) => Math.sin(n * t))]),
  ];
  const square = orthonormal(columns);
  const r = without(
    square,
    seen.map((s) => s.value / per),
  );
  const sd = Math.max(...seen.map((s) => s.sd), LEAST_SD) / Math.abs(per);
  return { z, theta, r, square, sd, spare: seen.length - square.length };
}

/** Gram and Schmidt, twice over each column; one that depends on those before it is left out. */
function orthonormal(columns: readonly (readonly number[])[]): Float64Array[] {
  const out: Float64Array[] = [];
  for (const column of columns) {
    const rest = without(out, without(out, column));
    const long = Math.hypot(...rest);
    if (long > 1e-6) out.push(rest.map((v) => v / long));
  }
  return out;
}

/** The part of v that none of the columns reaches. */
function without(columns: readonly Float64Array[], v: ArrayLike<number>): Float64Array {
  const out = Float64Array.from(v);
  for (const q of columns) {
    let dot = 0;
    for (let i = 0; i < out.length; i++) dot += q[i]! * out[i]!;
    for (let i = 0; i < out.length; i++) out[i] = out[i]! - dot * q[i]!;
  }
  return out;
}

/** What a column would explain, if its amount were the same at all these depths. */
function explains(depths: readonly Left[], column: (theta: number) => number) {
  let top = 0;
  let weight = 0;
  for (const { theta, r, square, sd } of depths) {
    const own = without(square, theta.map(column));
    for (let i = 0; i < r.length; i++) {
      top += (own[i]! * r[i]!) / sd ** 2;
      weight += own[i]! ** 2 / sd ** 2;
    }
  }
  return { amount: top / weight, gain: weight > 1e-9 ? top ** 2 / weight : 0, weight };
}

/**
 * The plainest dent; null where none stands out.
 *
 * @param outOfRound of the oval beside it, across, mm: 0 none
 */
export function dentOf(p: Posterior, outOfRound: number): Pattern | null {
  return leftOver(p, (pairs) => (pairs ? [2] : [1, 2]))
    .map(dentIn)
    .filter((d) => d !== null && acrossOf(d) > OF_A_CRESCENT * outOfRound)
    .reduce((best, d) => (best === null || d!.sure > best.sure ? d : best), null);
}

/** The readings without those at the dent: of these the rest of the shape is asked. */
export function besideDent(p: Posterior, dent: Pattern): Sighting[] {
  return p.design.sightings.filter(({ theta, z, instrument }) => {
    const turn = dent.per === 'across' ? Math.PI : 2 * Math.PI;
    const here = Math.abs(apart(theta - dent.theta, turn)) < SAME_CLOCK;
    const sees = instrument === 'two-point' || dent.per === 'side';
    const near = z > dent.from - SAME_DEPTH && z < dent.to + SAME_DEPTH;
    return !(here && sees && near);
  });
}

function apart(angle: number, turn: number): number {
  return angle - turn * Math.round(angle / turn);
}

const acrossOf = ({ amount, per }: Pattern) => (per === 'side' ? 2 : 1) * amount;

function dentIn({ pairs, depths }: Group): Pattern | null {
  const clocks = new Map<number, number>();
  for (const { theta } of depths) {
    for (const t of theta) clocks.set(Math.round(t / SAME_CLOCK), t);
  }
  let best: { gain: number; amount: number; weight: number; at: number; run: Left[] } | null = null;
  for (const at of clocks.values()) {
    const here = (theta: number) => Number(Math.abs(theta - at) < SAME_CLOCK);
    for (let first = 0; first < depths.length; first++) {
      for (let last = first; last < depths.length; last++) {
        const run = depths.slice(first, last + 1);
        const readings = run.flatMap(({ theta }) => theta.filter((t) => here(t) === 1)).length;
        if (readings < 2) continue;
        const { amount, gain, weight } = explains(run, here);
        if (amount < 0 && gain > (best?.gain ?? 0)) best = { gain, amount, weight, at, run };
      }
    }
  }
  if (best === null) return null;
  const spare = depths.reduce((sum, d) => sum + d.spare, 0) - 1;
  const all = depths.reduce((sum, { r, sd }) => sum + (Math.hypot(...r) / sd) ** 2, 0);
  const scatter = Math.max(1, (all - best.gain) / Math.max(1, spare));
  if (!(best.gain / scatter > STANDS_OUT)) return null;
  const waves = (pairs ? [4] : [3, 4]).map((n) => {
    const cosine = explains(best.run, (t) => Math.cos(n * t));
    const sine = explains(best.run, (t) => Math.sin(n * t));
    return cosine.gain + sine.gain;
  });
  if (!(best.gain > Math.max(...waves) + RATHER * scatter)) return null;
  // A pair reads small by what stands proud on one side; which of the two, diameters do not say.
  const per = pairs ? 2 : 1;
  return {
    name: 'dent',
    rule: 'sds',
    sure: Math.sqrt(best.gain / scatter),
    amount: -per * best.amount,
    give: 2 * per * Math.sqrt(scatter / best.weight),
    per: pairs ? 'across' : 'side',
    theta: best.at,
    from: best.run[0]!.z,
    to: best.run.at(-1)!.z,
    everywhere: best.run.length === depths.length,
    face: null,
  };
}

/** A hand may be this much worse than its gauge is stated to be, or than such gauges typically are. */
const HAND_STATED = 1.5;
const HAND_TYPICAL = 2;
const FEWEST_SPARE = 5;
/** Standard deviations of the scatter itself that it must stand above the hand's. */
const ABOVE = 3;

/** Lobes of a crescent beyond those taken off here scatter by less than this share of its out-of-round. */
const CRESCENT_SCATTER = 0.2;

/**
 * Readings that scatter about centre, oval and the next lobes more than an unsteady hand would have them.
 *
 * @param outOfRound across, mm: 0 round
 */
export function rough(p: Posterior, outOfRound: number): Pattern | null {
  const groups = leftOver(p, (pairs) => (pairs ? [2, 4] : [1, 2, 3]));
  const depths = groups.flatMap((g) => g.depths);
  const spare = depths.reduce((sum, d) => sum + d.spare, 0);
  if (spare < FEWEST_SPARE) return null;
  const all = depths.reduce((sum, { r, sd }) => sum + (Math.hypot(...r) / sd) ** 2, 0);
  const times = Math.sqrt(all / spare);
  const hand = p.design.sightings.every((s) => s.sdStated) ? HAND_STATED : HAND_TYPICAL;
  const sure = (times / hand - 1) * Math.sqrt(2 * spare);
  const usual = Math.max(...p.design.sightings.map((s) => s.sd));
  if (!(sure > ABOVE) || !(times * usual > CRESCENT_SCATTER * outOfRound)) return null;
  return {
    name: 'rough',
    rule: 'sds',
    sure,
    amount: times * usual,
    // The scatter of n readings left over is known to 1 in sqrt(2n).
    give: (2 * times * usual) / Math.sqrt(2 * spare),
    per: groups.every((g) => g.pairs) ? 'across' : 'side',
    theta: Number.NaN,
    from: depths[0]!.z,
    to: depths.at(-1)!.z,
    everywhere: true,
    face: null,
  };
}
