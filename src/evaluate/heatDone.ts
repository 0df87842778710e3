/**
 * What a squeeze brought: the bore cold before it against cold after it, from the survey that follows it or from two
 * readings. This is what the shop's log is written from.
 */
import type { WearSurface } from '../bore/types.ts';
import type { Squeeze } from './squeeze.ts';
import type { WithTarget } from './withTarget.ts';

export interface HeatDone {
  /** Names of the surveys; `after` null: told by two readings. */
  readonly before: string;
  readonly after: string | null;
  /** Clock position of the jaws, and the depth that was to close most, mm. */
  readonly jaws: number;
  readonly z: number;
  /** Sizes before along the jaws and straight across from them, across, mm. */
  readonly along: number;
  readonly between: number;
  /** Null while nothing was measured after it. */
  readonly brought: Brought | null;
}

/** All across, mm; NaN: not known. */
export interface Brought {
  /** How far the jaws moved in while it was hot, as said. */
  readonly moved: number;
  /** How much of it stayed, cold. */
  readonly came: number;
  readonly meanBefore: number;
  readonly meanAfter: number;
  /** Share of the movement that sprang back, and of the size that the mean drew in. */
  readonly springShare: number;
  readonly upsetShare: number;
  /** At the six pairs of clock hours; none where two readings tell it. */
  readonly across: readonly {
    readonly theta: number;
    readonly before: number;
    readonly after: number;
  }[];
}

/**
 * @param worked the survey before the squeeze, and what was planned of it
 * @param after the wall after it; null: the job's two readings tell, where there are any
 */
export function heatDone(
  { survey, surface, facts }: WithTarget,
  { plan }: Squeeze,
  after: { readonly name: string; readonly surface: WearSurface } | null,
): HeatDone {
  const { jaws, most } = plan;
  const old = sizesAt(surface, most.z);
  const [along, between] = [old(jaws), old(jaws + Math.PI / 2)];
  const { moved } = facts.squeeze.done;
  const head = { before: survey.name, jaws, z: most.z, along, between };
  if (after !== null) {
    const now = sizesAt(after.surface, most.z);
    const across = Array.from({ length: 6 }, (_, hour) => {
      const theta = (hour * Math.PI) / 6;
      return { theta, before: old(theta), after: now(theta) };
    });
    const mean = (size: (theta: number) => number) =>
      WAYS.reduce((sum, theta) => sum + size(theta), 0) / WAYS.length;
    const brought = told(moved, along - now(jaws), mean(old), mean(now));
    return { ...head, after: after.name, brought: { ...brought, across } };
  }
  const read = facts.squeeze.done;
  // Two ways at right angles: what bending adds to one it takes from the other, and their mean is the bore's.
  const brought = told(
    moved,
    along - read.along,
    (along + between) / 2,
    (read.along + read.between) / 2,
  );
  const any = read.along > 0;
  return { ...head, after: null, brought: any ? { ...brought, across: [] } : null };
}

/** Half a turn, evenly. */
const WAYS = Array.from({ length: 36 }, (_, i) => (i * Math.PI) / 36);

function told(moved: number, came: number, meanBefore: number, meanAfter: number) {
  return {
    moved,
    came,
    meanBefore,
    meanAfter,
    springShare: moved > 0 ? 1 - came / moved : Number.NaN,
    upsetShare: (meanBefore - meanAfter) / meanBefore,
  };
}

/** Diameters at the depth of the grid nearest to z, straight between its columns. */
function sizesAt({ grid, mean }: WearSurface, z: number): (theta: number) => number {
  const columns = grid.theta.length;
  let iz = 0;
  grid.z.forEach((depth, i) => {
    if (Math.abs(depth - z) < Math.abs(grid.z[iz]! - z)) iz = i;
  });
  const radius = (theta: number) => {
    const at = ((theta / (2 * Math.PI)) % 1) * columns;
    const place = at < 0 ? at + columns : at;
    const low = Math.floor(place) % columns;
    const way = place - Math.floor(place);
    const row = iz * columns;
    return (1 - way) * mean[row + low]! + way * mean[row + ((low + 1) % columns)]!;
  };
  return (theta) => radius(theta) + radius(theta + Math.PI);
}
