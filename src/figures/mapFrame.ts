/** Where the parts of the flat map go on a page or a screen of a given width, px. */
import type { Frame } from './contours.ts';

export interface MapFrame {
  readonly width: number;
  readonly height: number;
  /** The wall itself. */
  readonly left: number;
  readonly top: number;
  readonly across: number;
  readonly down: number;
  /** px per mm. */
  readonly scaleX: number;
  readonly scaleY: number;
  /** How much larger depth is drawn than the way round; 1 is true proportion. */
  readonly stretch: number;
}

const MARGIN = { left: 46, right: 18, top: 24, bottom: 26 } as const;
/** A map lower than this cannot be read, and has its depth stretched. */
const LEAST_DOWN = 150;
/** A map narrower than this cannot either; a very deep bore has its depth pressed. */
const LEAST_ACROSS = 280;

/**
 * In true proportion where that can be read, else with the depth stretched or pressed, which `stretch` states.
 * @param width room across, px; a deep bore may leave some of it
 * @param most greatest height of the whole drawing, px
 * @param press share of its true height that depth may be pressed to, so that a low room is used in its width
 */
export function mapFrame(
  { width: wide, height: deep }: Frame,
  width: number,
  most: number = Number.POSITIVE_INFINITY,
  press = 1,
): MapFrame {
  const room = {
    across: Math.max(40, width - MARGIN.left - MARGIN.right),
    down: Math.max(40, most - MARGIN.top - MARGIN.bottom),
  };
  const asTrue = (room.down * wide) / deep / press;
  const across = Math.min(room.across, Math.max(asTrue, LEAST_ACROSS));
  const scaleX = across / wide;
  const down = Math.min(Math.max(deep * scaleX, LEAST_DOWN), room.down);
  return {
    width: across + MARGIN.left + MARGIN.right,
    height: down + MARGIN.top + MARGIN.bottom,
    left: MARGIN.left,
    top: MARGIN.top,
    across,
    down,
    scaleX,
    scaleY: down / deep,
    stretch: down / deep / scaleX,
  };
}

/** The place on the wall under a point of the drawing, held to the wall. x, y in px from its top left corner. */
export function placeAt(
  frame: MapFrame,
  map: { readonly cut: number; readonly height: number },
  x: number,
  y: number,
): { theta: number; z: number } {
  const share = (v: number) => Math.min(1, Math.max(0, v));
  const turn = share((x - frame.left) / frame.across) * 2 * Math.PI;
  const full = 2 * Math.PI;
  const theta = (map.cut + turn) % full;
  return { theta, z: share((y - frame.top) / frame.down) * map.height };
}

/** Where a place on the wall is in the drawing, px. */
export function pointAt(
  frame: MapFrame,
  map: { readonly cut: number; readonly height: number },
  place: { readonly theta: number; readonly z: number },
): { x: number; y: number } {
  const turns = (place.theta - map.cut) / (2 * Math.PI);
  return {
    x: frame.left + (turns - Math.floor(turns)) * frame.across,
    y: frame.top + place.z * frame.scaleY,
  };
}
