import { type Arc, arcThrough } from './arc.ts';
import { type Cloud, scaledColumns } from './cloud.ts';
import { narrowestRings } from './nearAndFar.ts';
import { narrowestStrip } from './strip.ts';
import { ROUNDING } from './tighten.ts';
import type { Held } from './tightenAll.ts';

/** Places worked out by hand as starts of the last search; equally narrow ones may be among them. */
const STARTS = 4;

/** The narrowest rings through two inner and two outer points, as circles to start from. */
export function ringStarts(cloud: Cloud): Arc[] {
  const [x, y] = scaledColumns(cloud) as [Float64Array, Float64Array];
  return narrowestRings(x, y, STARTS).map(({ cx, cy, r, width }) =>
    arcThrough([0, 0], { cx, cy, r: r - width / 2 }),
  );
}

/** Width, in scaled units, of the narrowest strip that holds all points. */
export function straightStrip(cloud: Cloud): number {
  const [x, y] = scaledColumns(cloud) as [Float64Array, Float64Array];
  return narrowestStrip(x, y);
}

/**
 * Whether no other ring can be narrower than a found one, by two bounds on every other center.
 *
 * About the found center the width grows at least by s d - d^2 / (2 r) over a distance d: s is how
 * steeply the contacts let it grow in the direction where they do so least, and the rest is how
 * much the distance of an inner contact, r, can bend. So no center nearer than 2 s r is better.
 *
 * Farther off: with S the width of the narrowest strip that holds the points, the squares of the
 * outer and the inner radius differ by at least 2 S d - w (R + r), w = R - r, while their sum is at
 * most R + r + 2 d. So no center is better from w (R + r) / (S - w) on. A strip that holds some of
 * the points is never wider than one that holds all.
 */
export function isLeastRing(cloud: Cloud, ring: Held<Arc>): boolean {
  const { state, few, low, high } = ring;
  const width = high - low;
  if (!(state.k > 0)) return false;
  // Nothing can be narrower by more than rounding.
  if (width <= 4 * ROUNDING) return true;
  const inner = 1 / state.k + low;
  const outer = 1 / state.k + high;
  const [x, y] = scaledColumns({
    ...cloud,
    columns: cloud.columns.map((c) => Float64Array.from(few, (row) => c[row]!)),
  }) as [Float64Array, Float64Array];
  const strip = narrowestStrip(x, y);
  const reach = 2 * leastSlope(ring) * inner;
  return strip > width && reach > (width * (outer + inner)) / (strip - width);
}

/** How fast the width of a ring grows, at the least, as its center moves off; 0 when it may not. */
function leastSlope({ task, tight, state }: Held<Arc>): number {
  const { problem, room } = task;
  problem.rows(state, 0, problem.residuals, room);
  const sides = tight.held.map((at) => {
    const row = at % problem.residuals;
    // The first two columns are the direction from the center to the point, but for its sign.
    const unit = [-room.columns[0]![row]!, room.columns[1]![row]!] as const;
    return { unit, outer: at < problem.residuals };
  });
  const slopes: [number, number][] = [];
  for (const a of sides) {
    for (const b of sides) {
      if (!a.outer || b.outer) continue;
      slopes.push([a.unit[0] - b.unit[0], a.unit[1] - b.unit[1]]);
    }
  }
  return distanceOutside(slopes);
}

/** Distance from the origin to the nearest side of the hull of some vectors; 0 when outside. */
function distanceOutside(vectors: readonly (readonly [number, number])[]): number {
  let least = Number.POSITIVE_INFINITY;
  let sides = 0;
  for (const a of vectors) {
    for (const b of vectors) {
      const [u, v] = [b[1] - a[1], a[0] - b[0]];
      const length = Math.hypot(u, v);
      if (!(length > 0)) continue;
      const height = (u * a[0] + v * a[1]) / length;
      const beyond = vectors.some((c) => (u * c[0] + v * c[1]) / length > height + 1e-12);
      if (beyond) continue;
      sides++;
      least = Math.min(least, height);
    }
  }
  return sides > 2 ? Math.max(least, 0) : 0;
}
