/**
 * Which places of the wall to take for spots: those that make the readings likelier by enough.
 *
 * A reading that stands off is asked whether variance at its place, and only there, would have led one to expect it:
 * with U the readings' answers to the spot's humps, K their covariance without it and y their values, variance v raises
 * the logarithm of their likelihood by v q'(I + v S)^-1 q / 2 - log det(I + v S) / 2, q = U'K^-1 y, S = U'K^-1 U (Tipping
 * and Faul, Fast marginal likelihood maximisation for sparse Bayesian models, 2003, for many columns at once). The
 * best place is taken, and the next sought beside it.
 */
import { choleskyInPlace, solveLower, solveLowerMany } from '../num/cholesky.ts';
import type { Design } from './design.ts';
import { TERMS } from './instruments.ts';
import { condition, type Posterior } from './posterior.ts';
import { spotAnswers } from './spotDesign.ts';
import { depthHumps, middleAlong, middleHump } from './spotShapes.ts';
import type { Smoothness, Spot } from './types.ts';

/** More gouges than this are a rough wall. */
const MOST = 3;
/** A spot is taken where it raises the log-likelihood, less what its size costs, by this: e times as likely. */
const WORTH = 1;
/** Said to be on one side rather than on either: what that must be worth more. Both are one choice; a side is two. */
const ONE_SIDED = 1.5;
/** The places with the farthest readings are worked out in full. */
const LOOKED_AT = 8;
/** Square of a reading's stand-off over its sd, below which nothing is asked. */
const FAR = 2;
/** Weak prior of a spot's standard deviation, mm per side: median, and spread as a factor (natural log). */
const SIZE = 0.05;
const SIZE_SPREAD = 1;
/** Sizes that are tried, as steps from the median (natural log): a finer choice changes no band by a third. */
const SIZES = Array.from({ length: 15 }, (_, i) => -4 + i / 2);
/**
 * The likeliest size is that of what readings happen to touch, mostly the flanks of a gouge; its floor is deeper. Set on
 * simulated gouges (tests/laws/calibration): twice is where bands inside them held the truth as often as elsewhere.
 */
const FLOOR = 2;

/** @returns the best first, at most MOST; none where no place is worth it */
export function findSpots(d: Design, plain: Smoothness, nominalRadius: number): Spot[] {
  const found: Spot[] = [];
  const places = candidates(d);
  let p = condition(d, plain, nominalRadius);
  while (p !== null && found.length < MOST) {
    const spot = bestOf(p, places);
    if (spot === null) break;
    found.push({ ...spot, sd: FLOOR * spot.sd });
    p = condition(d, { ...plain, spots: { places: [...found], without: plain } }, nominalRadius);
  }
  return found;
}

/** Every place that a reading touches; of a diameter that is either end, or the one or the other where odd lobes tell. */
function candidates({ sightings, seen }: Design): Spot[] {
  const sides = seen.some((n) => n % 2 === 1);
  const all = sightings.flatMap(({ instrument, theta, z }): Spot[] => {
    const at = (turn: number, across: boolean) => ({ theta: theta + turn, z, sd: 1, across });
    if (instrument === 'two-point')
      return sides ? [at(0, true), at(0, false), at(Math.PI, false)] : [at(0, true)];
    if (instrument === 'three-leg') return [];
    return [at(0, false)];
  });
  const half = ({ across }: Spot) => (across ? Math.PI : 2 * Math.PI);
  const key = (one: Spot) => {
    const turn = one.theta / half(one);
    return `${(turn - Math.floor(turn + 1e-9)).toFixed(6)} ${one.z} ${one.across}`;
  };
  return [...new Map(all.map((one) => [key(one), one])).values()];
}

/** The place and size that explain most; null where none is worth it. */
function bestOf(p: Posterior, places: readonly Spot[]): Spot | null {
  const looked = places
    .map((place) => ({ place, far: farness(p, place) }))
    .filter(({ far }) => far > FAR)
    .sort((a, b) => b.far - a.far)
    .slice(0, LOOKED_AT);
  let best: Spot | null = null;
  let most = WORTH;
  const sides = p.design.seen.some((n) => n % 2 === 1);
  for (const { place } of looked) {
    const { sd, gain } = bestSize(p, place);
    const worth = gain - (sides && !place.across ? ONE_SIDED : 0);
    if (!(worth > most)) continue;
    most = worth;
    best = { ...place, sd };
  }
  return best;
}

/** How far the readings stand off in the way of a hump at that place: square of the standard deviations. */
function farness({ design: d, factor, pressedWeights }: Posterior, { theta, z }: Spot): number {
  const { count, gain, depthOf } = d.pressed;
  const hump = middleHump(theta);
  const along = middleAlong(z, d.depths, d.length);
  const answers = Float64Array.from({ length: count }, (_, i) => {
    const deep = along[depthOf[i]!]!;
    let sum = 0;
    for (let c = 0; c < TERMS; c++) sum += hump[c]! * gain[i * TERMS + c]!;
    return deep * sum;
  });
  const off = dot(answers, pressedWeights);
  const half = solveLower(factor, count, answers, answers);
  return (off * off) / dot(half, half);
}

/** The likeliest size of a spot at that place, and by how much it raises the log-likelihood, its prior taken off. */
function bestSize(p: Posterior, place: Spot): { sd: number; gain: number } {
  const { rows, q, m } = answersToHumps(p, place);
  const s = new Float64Array(m * m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) s[a * m + b] = dot(rows[a]!, rows[b]!);
  }
  let best = { sd: 0, gain: Number.NEGATIVE_INFINITY };
  for (const step of SIZES) {
    const sd = SIZE * Math.exp(step);
    const gain = gained(s, q, sd * sd) - 0.5 * (step / SIZE_SPREAD) ** 2;
    if (gain > best.gain) best = { sd, gain };
  }
  return best;
}

/** factor^-1 U, hump by hump, and q. */
function answersToHumps({ design: d, factor, pressedWeights }: Posterior, place: Spot) {
  const { count, depthOf } = d.pressed;
  const { shapes, answers } = spotAnswers(d, place);
  const deep = depthHumps(place.z, d.depths, d.length);
  const columns = shapes.flatMap((_, t) =>
    deep.map((along) =>
      Float64Array.from(depthOf, (k, i) => along[k]! * answers[i * shapes.length + t]!),
    ),
  );
  // What nothing answers (the odd half, to diameters) has no part in it.
  const answering = columns.filter((u) => u.some((x) => x !== 0));
  const q = Float64Array.from(answering, (u) => dot(u, pressedWeights));
  const all = new Float64Array(answering.length * count);
  answering.forEach((u, t) => {
    all.set(u, t * count);
  });
  solveLowerMany(factor, count, all);
  const rows = answering.map((_, t) => all.subarray(t * count, (t + 1) * count));
  return { rows, q, m: answering.length };
}

/** The formula above. */
function gained(s: Float64Array, q: Float64Array, variance: number): number {
  const m = q.length;
  const a = s.map((x) => variance * x);
  for (let i = 0; i < m; i++) a[i * m + i] = a[i * m + i]! + 1;
  if (!choleskyInPlace(a, m)) return Number.NEGATIVE_INFINITY;
  const half = solveLower(a, m, q);
  let gain = 0.5 * variance * dot(half, half);
  for (let i = 0; i < m; i++) gain -= Math.log(a[i * m + i]!);
  return gain;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
