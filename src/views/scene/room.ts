/** How the drawing's parts share the room that there is. */
import type { Size } from '../useSize.ts';

export interface Room {
  /** tall: map under the scene; wide: beside it; small: either of them at a time; low: so too, keys beside it. */
  readonly kind: 'tall' | 'wide' | 'small' | 'low';
  readonly mapWidth: number;
  /** Most height that the map may take, CSS pixels. */
  readonly mapHeight: number;
  readonly legendWidth: number;
}

const TALL = 600;
const WIDE = 700;
const LOW = 330;
const BESIDE = 500;
const EDGE = 16;
/** What stands around the scene or the map where there is little room. */
const AROUND = 172;

/** @returns null before anything is laid out */
export function roomFor({ width, height }: Size): Room | null {
  if (!(width > 0 && height > 0)) return null;
  const inner = width - 2 * EDGE;
  const legendWidth = Math.min(380, inner);
  if (height >= TALL) {
    return { kind: 'tall', mapWidth: inner, mapHeight: 0.34 * height, legendWidth };
  }
  if (height < LOW && width >= BESIDE) {
    const keys = Math.min(380, Math.floor(inner / 2));
    return { kind: 'low', mapWidth: inner - keys, mapHeight: height - 4, legendWidth: keys };
  }
  if (width >= WIDE) {
    const mapWidth = Math.floor(inner / 2) - EDGE;
    return { kind: 'wide', mapWidth, mapHeight: height - 230, legendWidth };
  }
  return {
    kind: 'small',
    mapWidth: inner + 8,
    mapHeight: height - AROUND,
    legendWidth: inner,
  };
}
