/**
 * A pin's surface about a turning axis: the job of a bore with the sign turned. What is missing is positive, what stands
 * proud of the finished size negative, so that the sign stays the action.
 */
import { freeAxis } from './centre.ts';
import type { LandPlaces } from './lands.ts';
import { SEATED } from './removal.ts';
import { deviationFrom } from './target.ts';
import type { Axis, Field, WearSurface } from './types.ts';

export interface About {
  /** Distance of the surface from the axis, mm. */
  readonly far: Field;
  /** Angle about the axis that goes with one radian about the surface's own: 1 where both are the same. */
  readonly turn: Field;
}

export function outsideAbout(surface: WearSurface, axis: Axis): About {
  const { grid, mean } = surface;
  const far = deviationFrom(surface, 0, axis);
  const turn = far.map((distance, k) => {
    const z = grid.z[Math.floor(k / grid.theta.length)]!;
    const off = (axis.x + axis.leanX * z) ** 2 + (axis.y + axis.leanY * z) ** 2;
    // Exact on a round surface, however far its centre lies off; the slope of an oval adds its product with the offset.
    return (mean[k]! ** 2 + distance ** 2 - off) / (2 * distance ** 2);
  });
  return { far, turn };
}

/** Per side, mm: what is missing to the radius; below zero where metal stands proud of it. */
export function shortOf(far: Field, radius: number): Field {
  return far.map((distance) => radius - distance);
}

/** mm3 between two radii about the axis at each place, where the outer lies farther out. */
export function volumeBetween(
  turn: Field,
  share: Float64Array,
  inner: (k: number) => number,
  outer: (k: number) => number,
): number {
  let sum = 0;
  for (let k = 0; k < turn.length; k++) {
    const layer = outer(k) ** 2 - inner(k) ** 2;
    if (share[k]! > 0 && layer > 0) sum += (layer / 2) * turn[k]! * share[k]!;
  }
  return sum;
}

/** A cylinder of which nothing is missing: the largest that cleans up about its axis. */
export interface CleansUp {
  readonly axis: Axis;
  /** Across, mm, at the mean, and where every place is two standard deviations lower; NaN without any place. */
  readonly diameter: number;
  readonly sure: number;
  /** The place that holds it at the mean, and two standard deviations there, per side. */
  readonly theta: number;
  readonly z: number;
  readonly give: number;
}

export function cleansUp(
  { grid: { theta, z } }: WearSurface,
  far: Field,
  sd: Field,
  { places }: LandPlaces,
  axis: Axis,
): CleansUp {
  let [least, sure] = [-1, Number.POSITIVE_INFINITY];
  for (let k = 0; k < far.length; k++) {
    if (places[k] !== SEATED) continue;
    if (least < 0 || far[k]! < far[least]!) least = k;
    sure = Math.min(sure, far[k]! - 2 * sd[k]!);
  }
  const none = Number.NaN;
  if (least < 0) return { axis, diameter: none, sure: none, theta: none, z: none, give: none };
  return {
    axis,
    diameter: 2 * far[least]!,
    sure: 2 * sure,
    theta: theta[least % theta.length]!,
    z: z[Math.floor(least / theta.length)]!,
    give: 2 * sd[least]!,
  };
}

/**
 * The axis about which the largest cylinder cleans up: the one of the bore's smallest clean-up with the sign turned. With a
 * radius beyond every place, the least greatest cut is the greatest least distance.
 */
export function bestAxis(surface: WearSurface, { places }: LandPlaces): Axis {
  const beyond = surface.mean.reduce((most, r) => Math.max(most, r), 0);
  return freeAxis(surface, beyond, places, 'least-cut');
}
