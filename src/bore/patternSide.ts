/**
 * Egg, oval or crossed: what the centres say beside an oval.
 *
 * Wear w on one side is R = w max(0, cos): its first lobe w/2 and its second 2w/(3 pi), 2.36 times as much; a part smaller
 * than the bore leaves less first lobe, 1.4 times the second where it is smaller by as much as it wore. An oval alike at
 * both ends has no first lobe. What was measured as first lobe is that, and where the spindle, boss or datum stands: an
 * offset and a lean with the set-up's own standard deviations. Each case is then a normal law for the centres of all
 * depths, and the cases are compared by their likelihoods. 2 ln of the ratio above 6 is "strong" evidence (Kass and
 * Raftery, Journal of the American Statistical Association 90, 1995).
 */
import { cholesky, solveLower } from '../num/cholesky.ts';
import type { DepthLobes } from './depthLobes.ts';
import type { WaveRound } from './patternRound.ts';
import type { Posterior } from './posterior.ts';

const STRONG = 6;
/** First lobe over second: between 1.4 and 2.36. */
const RATIO = 2;
const RATIO_SD = 0.3;
/** How far an axis of the repairer's own may stand off the bore's, and over its length, mm, as the surface takes it. */
const DATUM = { offset: 1, lean: 0.5 };

export interface Side {
  readonly kind: 'egg' | 'oval' | 'crossed' | 'not-told';
  /** 2 ln of the likelihood ratio to the next best. */
  readonly odds: number;
  /** The worn side of an egg; of crossed wear, the side worn at face A. NaN: none. */
  readonly theta: number;
}

/** The side's share at each depth: +1 towards the crest of the oval, -1 to the other end of it, 0 both alike. */
type Share = (z: number) => number;

interface Case {
  readonly kind: 'egg' | 'oval' | 'crossed';
  readonly turn: 0 | 1;
  readonly share: Share;
}

/** @returns null where no one-sided readings show centres */
export function sideOf(p: Posterior, found: readonly DepthLobes[], oval: WaveRound): Side | null {
  const sources = sourcesOf(found);
  if (sources.length === 0) return null;
  const depths = sources.flatMap((one) => one.map(({ z }) => z));
  const middle = p.design.length / 2;
  const bothEnds =
    Math.min(...depths) < 0.4 * p.design.length && Math.max(...depths) > middle * 1.2;
  const cases: Case[] = [
    { kind: 'oval', turn: 0, share: () => 0 },
    { kind: 'egg', turn: 0, share: () => 1 },
    { kind: 'egg', turn: 1, share: () => -1 },
  ];
  if (bothEnds) {
    cases.push({ kind: 'crossed', turn: 0, share: (z) => Math.sign(middle - z) });
    cases.push({ kind: 'crossed', turn: 1, share: (z) => Math.sign(z - middle) });
  }
  const ranked = cases
    .map((one) => ({
      one,
      log: sources.reduce((sum, source) => sum + likelihood(p, source, oval, one.share), 0),
    }))
    .sort((a, b) => b.log - a.log);
  const [best, next] = [ranked[0]!, ranked[1]!];
  const odds = 2 * (best.log - next.log);
  const told = odds > STRONG;
  const side = (oval.theta + best.one.turn * Math.PI) % (2 * Math.PI);
  return {
    kind: told ? best.one.kind : 'not-told',
    odds,
    theta: told && best.one.kind !== 'oval' ? side : Number.NaN,
  };
}

/** Centres of one set-up at a time. */
function sourcesOf(found: readonly DepthLobes[]): DepthLobes[][] {
  const sources = new Map<string, DepthLobes[]>();
  for (const one of found) {
    if (one.centre === null) continue;
    const key = `${one.instrument} ${one.setup}`;
    sources.set(key, [...(sources.get(key) ?? []), one]);
  }
  return [...sources.values()];
}

/** Log of the normal density of one set-up's centres along the oval's long way. */
function likelihood(
  p: Posterior,
  source: readonly DepthLobes[],
  oval: WaveRound,
  share: Share,
): number {
  const setup = p.design.setups[source[0]!.setup] ?? DATUM;
  const [sine, cosine] = [Math.sin(oval.theta), Math.cos(oval.theta)];
  const n = source.length;
  const covariance = new Float64Array(n * n);
  const off = new Float64Array(n);
  const rows = source.map(({ z, centre }) => {
    const { x, y, xx, xy, yy } = centre!;
    const own = oval.depths.find((d) => d.z === z) ?? { amount: oval.amplitude, sd: oval.sd };
    return {
      z,
      k: share(z),
      along: x * sine + y * cosine,
      variance: xx * sine * sine + 2 * xy * sine * cosine + yy * cosine * cosine,
      ...own,
    };
  });
  rows.forEach((a, i) => {
    off[i] = a.along - a.k * RATIO * a.amount;
    rows.forEach((b, j) => {
      const shared =
        setup.offset ** 2 +
        (setup.lean / p.design.length) ** 2 * a.z * b.z +
        a.k * b.k * RATIO_SD ** 2 * a.amount * b.amount;
      covariance[i * n + j] = shared + (i === j ? a.variance + (a.k * RATIO * a.sd) ** 2 : 0);
    });
  });
  return logNormal(off, covariance, n);
}

function logNormal(off: Float64Array, covariance: Float64Array, n: number): number {
  const lower = cholesky(covariance, n);
  if (lower === null) return Number.NEGATIVE_INFINITY;
  const whitened = solveLower(lower, n, off);
  let log = 0;
  for (let i = 0; i < n; i++) log -= 0.5 * whitened[i]! ** 2 + Math.log(lower[i * n + i]!);
  return log;
}
