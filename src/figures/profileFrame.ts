/** Where the size along the depth is plotted, px: depth to the right, size up. */
import { type ScaleLinear, scaleLinear } from 'd3';
import type { ProfileFigure } from './profileFigure.ts';

export const PROFILE_MARGIN = { left: 58, right: 66, top: 18, bottom: 24 } as const;

/** Depth in the job's units to px from the drawing's left edge. */
export function depthScale(profile: ProfileFigure, width: number): ScaleLinear<number, number> {
  const { left, right } = PROFILE_MARGIN;
  return scaleLinear([0, profile.length], [left, Math.max(left + 40, width - right)]).clamp(true);
}

/** Diameter in the job's units to px from its top edge. */
export function sizeScale(profile: ProfileFigure, height: number): ScaleLinear<number, number> {
  const { top, bottom } = PROFILE_MARGIN;
  const { least, greatest } = profile.range;
  const room = Math.max(0.08 * (greatest - least), 1e-3);
  return scaleLinear([least - room, greatest + room], [Math.max(top + 30, height - bottom), top]);
}

/** Heights of words beside lines, moved apart so that none covers another; the order is kept. */
export function spread(wanted: readonly number[], apart: number, top: number, bottom: number) {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const out = [...wanted];
  let least = top;
  for (const i of order) {
    out[i] = Math.max(wanted[i]!, least);
    least = out[i]! + apart;
  }
  let most = bottom;
  for (const i of order.reverse()) {
    out[i] = Math.min(out[i]!, most);
    most = out[i]! - apart;
  }
  return out;
}
