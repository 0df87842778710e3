/** What a point of the map's sheet means: a place on the wall, or one of the two ways along the strips. */
import { middleOf } from '../../figures/bend.ts';
import { placeAt } from '../../figures/mapFrame.ts';
import type { MapSheet } from '../../figures/mapSheet.ts';
import type { Place } from '../../store/session.ts';

export type Region = 'map' | 'below' | 'beside';

interface Wall {
  readonly cut: number;
  /** Depth of the wall, mm. */
  readonly height: number;
}

/** Which part of the sheet holds a point, px from its corner. */
export function regionAt({ frame, below, beside }: MapSheet, x: number, y: number): Region {
  if (beside !== null && x > frame.width) return 'beside';
  if (below !== null && y > below.top) return 'below';
  return 'map';
}

/**
 * The place that a pointer in a region means: the strip round the clock keeps the depth, the one along the depth
 * keeps the clock position. Where there was no place before, its other half is the middle of the map.
 */
export function pointed(
  sheet: MapSheet,
  region: Region,
  wall: Wall,
  before: Place | null,
  x: number,
  y: number,
): Place {
  const at = placeAt(sheet.frame, wall, x, y);
  if (region === 'below') return { theta: at.theta, z: before?.z ?? wall.height / 2 };
  if (region === 'beside') return { theta: before?.theta ?? middleOf(wall.cut), z: at.z };
  return at;
}

const QUARTER = Math.PI / 24;

/** A clock position to the nearest quarter of an hour, in [0, 2 pi): where the map may be cut open. */
export function nearestQuarter(theta: number): number {
  const full = 2 * Math.PI;
  const quarters = Math.round(theta / QUARTER) % 48;
  return ((quarters + 48) % 48) * (full / 48);
}
