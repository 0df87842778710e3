/** How the drawing's parts share the room that there is. */
import type { Size } from '../useSize.ts';

export interface Room {
  /** tall: flat sheets under the scene; wide: beside it; small: either of them at a time; low: so too, keys beside it. */
  readonly kind: 'tall' | 'wide' | 'small' | 'low';
  readonly legendWidth: number;
}

const TALL = 720;
const WIDE = 700;
const LOW = 330;
const BESIDE = 500;
const EDGE = 16;
/** Narrower than this the pane is not laid out yet, or is about to be folded: the key alone would not go in. */
const LEAST = 160;

/** @returns null before anything is laid out */
export function roomFor({ width, height }: Size): Room | null {
  if (!(width >= LEAST && height > 0)) return null;
  const inner = width - 2 * EDGE;
  const legendWidth = Math.min(380, inner);
  if (height < LOW && width >= BESIDE) {
    return { kind: 'low', legendWidth: Math.min(380, Math.floor(inner / 2)) };
  }
  if (width >= WIDE) return { kind: height >= TALL ? 'tall' : 'wide', legendWidth };
  return { kind: height >= TALL ? 'tall' : 'small', legendWidth };
}
