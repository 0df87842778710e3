/**
 * Centre and oval of each depth from its own readings alone.
 *
 * The wear surface lets depths lend to each other, and believes in straight axes and steady ovals before it has
 * seen any: whether an axis is straight, or an oval stays as it lies, cannot be asked of it. Here every depth, and every
 * set-up at it, is fitted by itself.
 */
import type { CenterAt } from '../geometry/axisLine.ts';
import { differentAngles, fitLobes, lobeAliases } from '../geometry/harmonics.ts';
import type { OvalAt } from '../geometry/ovalTurn.ts';
import type { Posterior } from './posterior.ts';
import { LEAST_SD } from './pressed.ts';
import { measuredDepths } from './sections.ts';

/** What one kind of reading (one set-up, where there is one) shows at one depth. */
export interface DepthLobes {
  readonly z: number;
  readonly instrument: 'two-point' | 'radius' | 'sweep' | 'wall';
  readonly setup: number;
  /** Places in the posterior's list of sightings. */
  readonly sightings: readonly number[];
  /** About the reference axis, or the set-up's; null where the clock positions cannot tell it from an oval. */
  readonly centre: CenterAt | null;
  readonly oval: OvalAt | null;
  /** Cosine and sine of the third lobe, per side; null where it is not fitted. */
  readonly third: OvalAt | null;
}

/** What no gauge and no bore is true to, per side, mm: 0.000025 in. */
const FLOOR = 0.0006;
/** Lobes that are fitted besides, where there are clock positions for them. */
const MOST_LOBES = 4;
const MOST_PAIR_LOBES = 2;

interface Group {
  readonly z: number;
  readonly instrument: DepthLobes['instrument'];
  readonly setup: number;
  readonly sightings: number[];
}

interface Fitted {
  readonly group: Group;
  readonly fit: Extract<ReturnType<typeof fitLobes>, { status: 'ok' }>;
  readonly order: number;
  readonly theta: readonly number[];
}

export function depthLobes(p: Posterior): DepthLobes[] {
  const fits = groupsOf(p)
    .map((group) => fitGroup(p, group))
    .filter((f) => f !== null);
  return fits.map((one) => {
    // Readings that scatter more than their gauge explains are believed less: all of one kind together.
    const alike = fits.filter(
      ({ group: g }) => g.instrument === one.group.instrument && g.setup === one.group.setup,
    );
    const spare = alike.reduce((sum, { fit }) => sum + fit.spare, 0);
    const chiSquare = alike.reduce((sum, { fit }) => sum + fit.chiSquare, 0);
    return lobesOf(p, one, spare > 0 ? Math.max(1, chiSquare / spare) : 1);
  });
}

function groupsOf(p: Posterior): Group[] {
  const groups = new Map<string, Group>();
  measuredDepths(p).forEach(({ z, rows }, at) => {
    for (const i of rows) {
      const { instrument, setup } = p.design.sightings[i]!;
      if (instrument === 'three-leg') continue;
      const key = `${at} ${instrument} ${setup}`;
      const known = groups.get(key);
      if (known === undefined) groups.set(key, { z, instrument, setup, sightings: [i] });
      else known.sightings.push(i);
    }
  });
  return [...groups.values()];
}

/** Diameters repeat after half a turn: on the doubled angle an oval is their first lobe. */
function fitGroup(p: Posterior, group: Group): Fitted | null {
  const seen = group.sightings.map((i) => p.design.sightings[i]!);
  const pairs = group.instrument === 'two-point';
  const theta = seen.map((s) => (pairs ? 2 * s.theta : s.theta));
  const order = orderFor(differentAngles(theta), pairs);
  if (order === 0) return null;
  const sd = seen.map((s) => Math.max(s.sd * p.smoothness.noise, LEAST_SD));
  const fit = fitLobes(
    theta,
    seen.map((s) => s.value),
    order,
    sd,
  );
  return fit.status === 'ok' ? { group, fit, order, theta } : null;
}

/** As many lobes as leave a reading over; an oval beside a centre even where none is. */
function orderFor(angles: number, pairs: boolean): number {
  const most = pairs ? MOST_PAIR_LOBES : MOST_LOBES;
  const spared = Math.min(most, Math.floor((angles - 2) / 2));
  const least = pairs ? Number(angles >= 3) : angles >= 5 ? 2 : Number(angles >= 3);
  return Math.max(spared, least);
}

function lobesOf(p: Posterior, { group, fit, order, theta }: Fitted, scatter: number): DepthLobes {
  const { z, instrument, setup, sightings } = group;
  const sign = p.design.setups[setup]?.sign ?? 1;
  const terms = 2 * order + 1;
  const pairs = instrument === 'two-point';
  /** Cosine and sine of wave k of the fit, per side, and their covariance. */
  const wave = (k: number) => {
    const per = pairs ? 2 : sign;
    const at = (row: number, column: number) =>
      (scatter * fit.covariance[(2 * k - 1 + row) * terms + 2 * k - 1 + column]!) / (per * per);
    const { cosine, sine } = fit.waves[k - 1]!;
    return {
      cosine: cosine / per,
      sine: sine / per,
      cc: at(0, 0) + FLOOR ** 2,
      cs: at(0, 1),
      ss: at(1, 1) + FLOOR ** 2,
    };
  };
  const ovalWave = pairs ? 1 : 2;
  const oval = order >= ovalWave ? wave(ovalWave) : null;
  // A wave of a four-lobed shape in three pairs, of an oval in three or four uneven places, is no answer.
  const first = pairs || mixes(theta, order) ? null : wave(1);
  const third = pairs || order < 3 ? null : wave(3);
  const plain = (w: ReturnType<typeof wave> | null): OvalAt | null =>
    w && { z, a: w.cosine, b: w.sine, aa: w.cc, ab: w.cs, bb: w.ss };
  return {
    z,
    instrument,
    setup,
    sightings,
    centre: first && {
      z,
      x: first.sine,
      y: first.cosine,
      xx: first.ss,
      xy: first.cs,
      yy: first.cc,
    },
    oval: plain(oval),
    third: plain(third),
  };
}

/** True where an oval that is not fitted would pass for a shift of the centre. */
function mixes(theta: readonly number[], order: number): boolean {
  if (order >= 2) return false;
  return lobeAliases(theta, order, 2).some(({ seenAs }) => seenAs.some(({ n }) => n === 1));
}
