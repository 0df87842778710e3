/**
 * Where a pass takes most and nobody has read: farthest from all marks. A hollow that lies there unread is not in the map,
 * and its give-or-take counts only what dents this wall has on average; so it is felt for before the first pass.
 */
import type { PassMatter } from './passes.ts';
import type { BetweenPlace } from './passTypes.ts';
import { SEATED } from './removal.ts';
import type { Field, Sighting } from './types.ts';
import { NARROW_GAP, TOUCHED } from './unseen.ts';

/** Few enough to be felt one by one. */
const MOST = 4;
/** Places that are worked less than this share of the most are left to the gate. */
const WORKED = 0.5;
/** Places nearer than this on the wall are one and the same to a hand, as a share of the radius. */
const APART = 0.5;

/**
 * @param removal of the first pass after the survey, per side, mm
 * @returns the farthest from every mark first; none where marks stand so near that nothing that matters lies between
 */
export function betweenMarks(
  { surface, places, radius }: PassMatter,
  removal: Field,
  sightings: readonly Sighting[],
): BetweenPlace[] {
  const { theta, z } = surface.grid;
  const columns = theta.length;
  const marks = sightings.flatMap((one) =>
    Array.from({ length: TOUCHED[one.instrument] }, (_, k) => ({
      theta: one.theta + (2 * Math.PI * k) / TOUCHED[one.instrument],
      z: one.z,
    })),
  );
  const far = (a: Place, b: Place) => {
    const turn = Math.abs(a.theta - b.theta) % (2 * Math.PI);
    return Math.hypot(radius * Math.min(turn, 2 * Math.PI - turn), a.z - b.z);
  };
  const least = WORKED * greatest(removal);
  const found: { readonly at: BetweenPlace; readonly off: number }[] = [];
  // Every second place of the grid: marks stand much farther apart than that.
  for (let row = 0; row < z.length; row += 2) {
    for (let it = 0; it < columns; it += 2) {
      const k = row * columns + it;
      if (places[k] !== SEATED || !(removal[k]! >= least && removal[k]! > 0)) continue;
      const at = { theta: theta[it]!, z: z[row]!, takes: removal[k]! };
      const off = marks.reduce(
        (nearest, mark) => Math.min(nearest, far(at, mark)),
        Number.POSITIVE_INFINITY,
      );
      if (off > (NARROW_GAP / 2) * radius) found.push({ at, off });
    }
  }
  found.sort((a, b) => b.off - a.off || b.at.takes - a.at.takes);
  const chosen: BetweenPlace[] = [];
  for (const { at } of found) {
    if (chosen.length === MOST) break;
    if (chosen.every((one) => far(one, at) > APART * radius)) chosen.push(at);
  }
  return chosen;
}

interface Place {
  readonly theta: number;
  readonly z: number;
}

function greatest(field: Field): number {
  return field.reduce((most, one) => (one > most ? one : most), 0);
}
