/**
 * The wear pattern of one survey of a bore: those of the trade's catalogue that readings can show, each with the rule by
 * which it is told, and what stays open. More than one may hold.
 */
import { type DepthLobes, depthLobes } from './depthLobes.ts';
import { design } from './design.ts';
import { alongPattern, roundButBig } from './patternAlong.ts';
import { besideDent, dentOf, rough } from './patternDent.ts';
import { offTheClock, ovalPattern, threeLobed, type WaveRound, waveRound } from './patternRound.ts';
import { type Side, sideOf } from './patternSide.ts';
import type { OpenQuestion, Pattern, Patterns } from './patternTypes.ts';
import { condition, type Posterior } from './posterior.ts';
import { type DepthMean, depthMeans, profileOf } from './profile.ts';
import { measuredDepths } from './sections.ts';
import { ovalsByDepth } from './turn.ts';
import type { Profile } from './types.ts';

export const NO_PATTERNS: Patterns = { named: [], open: [] };

/** A stated side counts where it lies within this of an end of the oval's long way. */
const ALONG = Math.PI / 4;

/**
 * @param nominal new size across as stated, mm; NaN not stated
 * @param stated about the bore's size per side, mm, for surveys without a diameter; 0 not known
 */
export function findPatterns(p: Posterior, nominal: number, stated: number): Patterns {
  const means = depthMeans(p);
  const read = means.reduce((sum, m) => sum + m.diameter, 0) / (2 * means.length);
  const radius = read > 0 ? read : stated;
  const whole = shapeOf(p, radius);
  const { sightings, setups, length, wornSide } = p.design;
  const dent = dentOf(p, outOfRound(whole.oval));
  if (dent !== null) {
    // A dent reads small at its own places only, which would pass for an oval or a waist.
    const beside = design(besideDent(p, dent), setups, length, wornSide);
    const rest = condition(beside, p.smoothness, radius) ?? p;
    return named(rest, shapeOf(rest, radius), nominal, dent);
  }
  const scatter = rough(p, outOfRound(whole.oval));
  if (scatter === null) return named(p, whole, nominal, null);
  // Readings that stray are believed less, or every stray depth would be a step.
  const noise = (scatter.amount + scatter.give / 2) / Math.max(...sightings.map((s) => s.sd));
  const humbler = condition(p.design, { ...p.smoothness, noise }, radius) ?? p;
  return named(humbler, shapeOf(humbler, radius), nominal, scatter);
}

interface Shape {
  readonly found: readonly DepthLobes[];
  readonly oval: WaveRound | null;
  readonly ovalSeen: boolean;
  readonly side: Side | null;
  readonly profile: Profile | null;
  readonly means: readonly DepthMean[];
}

function shapeOf(p: Posterior, radius: number): Shape {
  const found = depthLobes(p).map((one) => toFirstOrder(one, radius));
  const ovals = ovalsByDepth(found).map((one) => one.oval);
  const oval = waveRound(2, ovals);
  const means = depthMeans(p);
  return {
    found,
    oval,
    ovalSeen: ovals.length > 0,
    side: oval === null ? null : sideOf(p, found, oval),
    profile: profileOf(means, p.design.length),
    means,
  };
}

/**
 * An indicator that turns off centre by e shows e^2 / (4 R) of an oval that is not there, and moves a third lobe of t by
 * 3 t e / (2 R) into its neighbours: the lobes are right to first order only. So much more is not known.
 */
function toFirstOrder(one: DepthLobes, radius: number): DepthLobes {
  const { centre, oval, third } = one;
  if (centre === null || oval === null || one.instrument === 'wall' || !(radius > 0)) return one;
  const off = Math.hypot(centre.x, centre.y);
  const lobe = third === null ? 0 : Math.hypot(third.a, third.b);
  const more = ((off * off) / (4 * radius)) ** 2 + ((1.5 * lobe * off) / radius) ** 2;
  return { ...one, oval: { ...oval, aa: oval.aa + more, bb: oval.bb + more } };
}

/** At the depth where it is greatest, across. */
function outOfRound(oval: WaveRound | null): number {
  return oval === null ? 0 : 4 * Math.max(...oval.depths.map(({ amount }) => amount));
}

/** @param local a dent or a scatter found before; null neither */
function named(p: Posterior, shape: Shape, nominal: number, local: Pattern | null): Patterns {
  const { found, oval, side, profile, means } = shape;
  const thirds = found.map(({ third }) => third).filter((t) => t !== null);
  const all = [
    ...(oval === null ? [] : sided(oval, side, p.design.wornSide)),
    ...(oval === null ? [] : offTheClock(oval)),
    ...threeLobed(thirds, oval),
    ...(profile === null ? [] : alongPattern(profile, means, oval, p.design.length)),
    ...(local === null ? [] : [local]),
  ];
  return {
    named: [...all, ...roundButBig(means, nominal, all)],
    open: openQuestions(p, all, shape),
  };
}

function sided(oval: WaveRound, side: Side | null, stated: number): Pattern[] {
  const plain = ovalPattern(oval);
  if (side !== null && side.kind !== 'not-told') {
    const theta = side.kind === 'oval' ? plain.theta : side.theta;
    return [{ ...plain, name: side.kind, rule: 'odds', sure: side.odds, theta }];
  }
  // Both ends of the long way are half a turn apart; the stated side is the nearer one.
  const apart = Math.abs(Math.atan(Math.tan(oval.theta - stated)));
  if (!(apart < ALONG)) return [plain];
  const nearer = Math.cos(oval.theta - stated) > 0 ? oval.theta : oval.theta + Math.PI;
  return [{ ...plain, name: 'egg', rule: 'stated', sure: Number.NaN, theta: nearer }];
}

function openQuestions(
  p: Posterior,
  named: readonly Pattern[],
  { side, profile, ovalSeen }: Shape,
): OpenQuestion[] {
  const { sightings } = p.design;
  const legsOnly = sightings.every((s) => s.instrument === 'three-leg');
  const noSides = sightings.every(
    (s) => s.instrument === 'two-point' || s.instrument === 'three-leg',
  );
  const out: OpenQuestion[] = [];
  if (legsOnly) out.push('three-leg');
  else if (!ovalSeen) out.push('few-clocks');
  if (named.some((one) => one.name === 'egg-or-oval' || one.rule === 'stated')) {
    out.push(side === null ? 'sides' : 'sides-weak');
  }
  if (measuredDepths(p).length < 3) out.push('few-depths');
  else if (profile?.shape === 'not-told') out.push('along');
  if (noSides && !legsOnly) out.push('lobes');
  return out;
}
