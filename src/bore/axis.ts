/** How the bore's axis runs, where one-sided readings at several depths show centres. */
import { axisThrough, type CenterAt, chanceAbove, straightnessZone } from '../geometry/axisLine.ts';
import type { DepthLobes } from './depthLobes.ts';
import type { Posterior } from './posterior.ts';
import type { BoreAxis } from './types.ts';

const notTold = (why: string): BoreAxis => ({ status: 'not-told', why });

/**
 * Straight line through the centres of one set-up (or of the radii about one datum axis): the one with most depths,
 * among equals the one that knows its centres best. A set-up's own lean is part of what is not known.
 */
export function boreAxis(p: Posterior, found: readonly DepthLobes[]): BoreAxis {
  const oneSided = p.design.sightings.filter(
    ({ instrument }) => instrument !== 'two-point' && instrument !== 'three-leg',
  );
  if (oneSided.length === 0) {
    return notTold('Diameters show no centre: how the axis runs cannot be known from them.');
  }
  const best = bestSource(found.filter(({ centre }) => centre !== null));
  if (best === null) {
    return notTold(
      'A centre needs one-sided readings at five clock positions or four even ones, round the same depth.',
    );
  }
  const centres = best.map(({ centre }) => centre!);
  const fit = axisThrough(centres);
  if (fit.status !== 'ok') {
    return notTold('How the axis runs needs one set-up with readings round two depths or more.');
  }
  const { instrument, setup } = best[0]!;
  const own = ((p.design.setups[setup]?.lean ?? 0) / p.design.length) ** 2;
  const [xx, xy, yy] = [fit.leanXX + own, fit.leanXY, fit.leanYY + own];
  const { leanX, leanY } = fit;
  const slope = Math.hypot(leanX, leanY);
  const square = (leanX ** 2 * yy - 2 * leanX * leanY * xy + leanY ** 2 * xx) / (xx * yy - xy * xy);
  const along = (leanX ** 2 * xx + 2 * leanX * leanY * xy + leanY ** 2 * yy) / slope ** 2;
  return {
    status: 'told',
    instrument,
    centres: centres.map(({ z, x, y, xx: vx, yy: vy }) => ({
      z,
      x,
      y,
      sd: Math.sqrt((vx + vy) / 2),
    })),
    lean: {
      slope,
      theta: clockOf(leanX, leanY),
      sd: slope > 0 ? Math.sqrt(along) : Math.sqrt(Math.max(xx, yy)),
      chance: chanceAbove(square, 2),
    },
    straightness: centres.length < 3 ? null : straightness(centres, fit),
  };
}

function bestSource(found: readonly DepthLobes[]): readonly DepthLobes[] | null {
  const sources = new Map<string, DepthLobes[]>();
  for (const one of found) {
    const key = `${one.instrument} ${one.setup}`;
    sources.set(key, [...(sources.get(key) ?? []), one]);
  }
  const unknown = (list: readonly DepthLobes[]) =>
    list.reduce((sum, { centre }) => sum + centre!.xx + centre!.yy, 0) / list.length;
  return [...sources.values()].reduce<readonly DepthLobes[] | null>((best, next) => {
    if (best === null || next.length > best.length) return next;
    return next.length === best.length && unknown(next) < unknown(best) ? next : best;
  }, null);
}

function straightness(
  centres: readonly CenterAt[],
  fit: Extract<ReturnType<typeof axisThrough>, { status: 'ok' }>,
) {
  let far = 0;
  fit.distances.forEach((d, i) => {
    if (d > fit.distances[far]!) far = i;
  });
  const { z, x, y, xx, yy } = centres[far]!;
  return {
    distance: fit.distances[far]!,
    z,
    theta: clockOf(x - fit.x - fit.leanX * z, y - fit.y - fit.leanY * z),
    sd: Math.sqrt((xx + yy) / 2),
    zone: straightnessZone(centres),
    chance: chanceAbove(fit.chiSquare, fit.spare),
  };
}

/** Towards which clock position a shift goes: x to 3 o'clock, y to 12. */
function clockOf(x: number, y: number): number {
  const theta = Math.atan2(x, y);
  return theta < 0 ? theta + 2 * Math.PI : theta;
}
