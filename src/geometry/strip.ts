import { triangulated } from './inscribedCircles.ts';

/** Width of the narrowest strip between two parallel lines that holds all points; 0 on a line. */
export function narrowestStrip(x: Float64Array, y: Float64Array): number {
  const hull = triangulated(x, y).hull;
  const count = hull.length;
  if (count < 3) return 0;
  let least = Number.POSITIVE_INFINITY;
  let opposite = 1;
  for (let i = 0; i < count; i++) {
    const a = hull[i]!;
    const b = hull[(i + 1) % count]!;
    const [eu, ev] = [x[b]! - x[a]!, y[b]! - y[a]!];
    const length = Math.hypot(eu, ev);
    if (!(length > 0)) continue;
    const off = (k: number) => {
      const row = hull[k % count]!;
      return Math.abs(eu * (y[row]! - y[a]!) - ev * (x[row]! - x[a]!)) / length;
    };
    if (opposite <= i) opposite = i + 1;
    while (opposite < i + count && off(opposite + 1) >= off(opposite)) opposite++;
    least = Math.min(least, off(opposite));
  }
  return least;
}
