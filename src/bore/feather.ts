/** Blending a ground place out to nothing: the largest removal whose slope is bounded. */
import type { Field, Grid } from './types.ts';

/**
 * The largest field g <= limit with |g(p) - g(q)| <= slope * distance(p, q) for every two places: the least over all
 * q of limit(q) + slope * distance(p, q). Distance is the straight line on the wall rolled flat at `radius`, the
 * shorter way round. Exact: a place is compared with every other that is near enough to matter.
 *
 * @param limit mm, >= 0; Infinity where nothing bounds it
 * @param slope mm of depth a mm along the wall; not above 0: nothing may be taken beside what may not
 * @returns as long as limit; Infinity only where every limit is
 */
export function feather(limit: Field, grid: Grid, radius: number, slope: number): Field {
  return envelope(limit, grid, radius, slope, () => true);
}

/** The same at the places asked for; elsewhere the limit stands as it is. */
function envelope(
  limit: Field,
  { theta, z }: Grid,
  radius: number,
  slope: number,
  asked: (k: number) => boolean,
): Field {
  const columns = theta.length;
  const arc = (2 * Math.PI * radius) / columns;
  const steep = slope > 0 ? slope : 0;
  const out = limit.slice();
  for (let iz = 0, k = 0; iz < z.length; iz++) {
    const above = iz > 0 ? steep * (z[iz]! - z[iz - 1]!) : 0;
    for (let it = 0; it < columns; it++, k++) {
      let most = limit[k]!;
      if (most === 0 || !asked(k)) continue;
      // What the neighbours came to bounds this place too, and spares most of the search.
      if (it > 0) most = Math.min(most, out[k - 1]! + steep * arc);
      if (iz > 0) most = Math.min(most, out[k - columns]! + above);
      out[k] = search({ limit, z, columns, arc, steep }, iz, it, most);
    }
  }
  return out;
}

interface Wall {
  readonly limit: Field;
  readonly z: Float64Array;
  readonly columns: number;
  /** mm from column to column. */
  readonly arc: number;
  readonly steep: number;
}

/** The least of `most` and of every cone that stands on another place. */
function search(wall: Wall, iz: number, it: number, most: number): number {
  const { z, steep } = wall;
  let best = alongRow(wall, iz, 0, it, most);
  for (let row = iz - 1; row >= 0; row--) {
    const away = z[iz]! - z[row]!;
    if (steep * away >= best) break;
    best = alongRow(wall, row, away, it, best);
  }
  for (let row = iz + 1; row < z.length; row++) {
    const away = z[row]! - z[iz]!;
    if (steep * away >= best) break;
    best = alongRow(wall, row, away, it, best);
  }
  return best;
}

/** The same over the places of one row, `away` mm along the bore. */
function alongRow(wall: Wall, row: number, away: number, it: number, most: number): number {
  const { limit, columns, arc, steep } = wall;
  const start = row * columns;
  let best = Math.min(most, limit[start + it]! + steep * away);
  for (let j = 1; j <= columns / 2; j++) {
    const rise = steep * Math.sqrt(away * away + arc * arc * j * j);
    if (rise >= best) break;
    const ahead = it + j < columns ? it + j : it + j - columns;
    const back = it - j >= 0 ? it - j : it - j + columns;
    best = Math.min(best, limit[start + ahead]! + rise, limit[start + back]! + rise);
  }
  return best;
}

/**
 * The least field that is `kept` on the marked places and nowhere steeper than `slope`: what blending out past their
 * edge takes at least.
 *
 * @param kept mm, >= 0, itself nowhere steeper than `slope`
 * @param marked 1: as it is; else: as little as the slope allows
 */
export function leastBeyond(
  kept: Field,
  marked: Uint8Array,
  grid: Grid,
  radius: number,
  slope: number,
): Field {
  if (marked.every((mark) => mark === 1)) return kept.slice();
  let top = 0;
  for (let k = 0; k < kept.length; k++) if (marked[k] === 1 && kept[k]! > top) top = kept[k]!;
  const below = kept.map((g, k) => (marked[k] === 1 ? top - g : top));
  const cones = envelope(below, grid, radius, slope, (k) => marked[k] !== 1);
  return kept.map((g, k) => (marked[k] === 1 ? g : Math.max(0, top - cones[k]!)));
}
