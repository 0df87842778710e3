/** A line of fewer points that keeps to the same way (Douglas and Peucker 1973: the farthest point stays). */
import type { Point } from './contours.ts';

/**
 * @param most how far a point that is left out may lie off the line that stays, in the unit of x
 * @param deep what of y counts as much as one of x
 * @returns its first and last point and what is needed between; a closed line begins and ends in the same point
 */
export function simplified(points: readonly Point[], most: number, deep: number): readonly Point[] {
  const last = points.length - 1;
  if (last < 2) return points;
  const kept = new Uint8Array(points.length);
  kept[0] = kept[last] = 1;
  const spans: [number, number][] = [[0, last]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const far = farthest(points, from, to, deep);
    if (!(far.off > most)) continue;
    kept[far.at] = 1;
    spans.push([from, far.at], [far.at, to]);
  }
  return points.filter((_, i) => kept[i] === 1);
}

/** Of the points between two: which is farthest from the straight line, and how far. */
function farthest(points: readonly Point[], from: number, to: number, deep: number) {
  const [ax, ay] = points[from]!;
  const [dx, dy] = [points[to]![0] - ax, (points[to]![1] - ay) / deep];
  const long = dx * dx + dy * dy;
  let [off, at] = [0, from];
  for (let i = from + 1; i < to; i++) {
    const [px, py] = [points[i]![0] - ax, (points[i]![1] - ay) / deep];
    const t = long > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / long)) : 0;
    const far = Math.hypot(px - t * dx, py - t * dy);
    if (far > off) [off, at] = [far, i];
  }
  return { off, at };
}
