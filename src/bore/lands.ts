/** The stretches of a pin that run in bores, as places of its surface. */
import { cellShares, type Keepout, SEATED, type Span, wallPlaces } from './removal.ts';
import type { WearSurface } from './types.ts';

export interface LandPlaces {
  /** As `wallPlaces` gives them: 1 on a running stretch, 2 where it is to be left alone, 0 elsewhere. */
  readonly places: Uint8Array;
  /** Which stretch, by its place in the list; -1: none. */
  readonly land: Int8Array;
  /** Angle times depth of each place of a stretch, rad mm: over a whole one 2 pi times its length; 0 elsewhere. */
  readonly share: Float64Array;
}

/** @param lands depths from face A; where two overlap the first counts */
export function landPlaces(
  surface: WearSurface,
  lands: readonly Span[],
  keepouts: readonly Keepout[],
): LandPlaces {
  const { theta, z } = surface.grid;
  const rows = lands.map((land) => rowsOf(z, land));
  const spans = rows.map(([first, last]) => ({ from: z[first]!, to: z[last]! }));
  const places = wallPlaces(surface, spans, keepouts);
  const land = new Int8Array(places.length).fill(-1);
  const share = new Float64Array(places.length);
  const heights = cellShares(surface.grid);
  const turn = (2 * Math.PI) / theta.length;
  lands.forEach(({ from, to }, which) => {
    const [first, last] = rows[which]!;
    let all = 0;
    for (let iz = first; iz <= last; iz++) all += heights[iz]!;
    // The rows of the surface begin and end elsewhere than the stretch does.
    const scale = (turn * (to - from)) / all;
    for (let k = first * theta.length; k < (last + 1) * theta.length; k++) {
      if (land[k]! >= 0) continue;
      land[k] = which;
      if (places[k] === SEATED) share[k] = heights[Math.floor(k / theta.length)]! * scale;
    }
  });
  return { places, land, share };
}

/** First and last row within a stretch; of one between two rows, the row nearest to its middle. */
function rowsOf(z: Float64Array, { from, to }: Span): [first: number, last: number] {
  const inside = (depth: number) => depth >= from - 1e-9 && depth <= to + 1e-9;
  const first = z.findIndex(inside);
  if (first >= 0) return [first, z.findLastIndex(inside)];
  const off = z.map((depth) => Math.abs(depth - (from + to) / 2));
  const nearest = off.indexOf(Math.min(...off));
  return [nearest, nearest];
}
