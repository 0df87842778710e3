/** How the flat map shares its room with the two profile strips: one under it, one at its right. Pixels. */
import type { Frame } from './contours.ts';
import { type MapFrame, mapFrame } from './mapFrame.ts';

/** Where a strip's own plot lies, from the sheet's top left corner. */
export interface StripBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface MapSheet {
  /** The map with its scales, in the sheet's top left corner. */
  readonly frame: MapFrame;
  /** Round the clock, in line with the map's clock scale; null where there is no room. */
  readonly below: StripBox | null;
  /** Down the depth, in line with its depth scale. */
  readonly beside: StripBox | null;
  readonly width: number;
  readonly height: number;
}

/** Heights and widths that a strip can be read in, and the line of words under the lower one. */
const LEAST_BELOW = 50;
const USUAL_BELOW = 0.2;
const MOST_USUAL = 110;
const MOST_BELOW = 0.8;
const WORDS = 20;
const LEAST_BESIDE = 92;
const MOST_BESIDE = 0.36;
const GAP = 6;
/** Depth is drawn no lower than this share of its true proportion. */
const PRESS = 0.7;
/** Room that the map itself wants before it gives some away. */
const BELOW_FROM = 176;
const BESIDE_FROM = 470;

/** @param width, height all the room that there is */
export function mapSheet(map: Frame, width: number, height: number): MapSheet {
  const hasBelow = height >= BELOW_FROM;
  const hasBeside = width >= BESIDE_FROM;
  const least = held(USUAL_BELOW * height, LEAST_BELOW, MOST_USUAL);
  const frame = mapFrame(
    map,
    width - (hasBeside ? LEAST_BESIDE + GAP : 0),
    height - (hasBelow ? least + WORDS : 0),
    PRESS,
  );
  const low = held(height - frame.height - WORDS, least, MOST_BELOW * frame.down);
  const side = held(width - frame.width - GAP, LEAST_BESIDE, MOST_BESIDE * frame.across);
  return {
    frame,
    below: hasBelow
      ? { left: frame.left, top: frame.height, width: frame.across, height: low }
      : null,
    beside: hasBeside
      ? { left: frame.width, top: frame.top, width: side, height: frame.down }
      : null,
    width: frame.width + (hasBeside ? side + GAP : 0),
    height: frame.height + (hasBelow ? low + WORDS : 0),
  };
}

/** Between two bounds; the lower one wins. */
function held(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}
