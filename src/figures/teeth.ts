/** Short strokes off a line, all to one side of it: they say which side the line speaks of. */
import type { Point } from './contours.ts';

/** A way from the line outwards. */
export type Tooth = readonly [from: Point, to: Point];

/**
 * Teeth at even distances along a line, half a distance from its beginning on.
 *
 * @param points in pixels, x to the right and y down
 * @param size length of a tooth, px: to the left of the way that the line runs; negative: to the right
 * @returns none on a line shorter than half of `every`
 */
export function teethOf(points: readonly Point[], every: number, size: number): Tooth[] {
  const teeth: Tooth[] = [];
  let left = every / 2;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const run = Math.hypot(dx, dy);
    for (; left <= run; left += every) {
      const from: Point = [a[0] + (dx * left) / run, a[1] + (dy * left) / run];
      teeth.push([from, [from[0] + (size * dy) / run, from[1] - (size * dx) / run]]);
    }
    left -= run;
  }
  return teeth;
}
