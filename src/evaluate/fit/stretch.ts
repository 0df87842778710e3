/** A stretch of a measured surface as a hole or a shaft of its own. */
import type { Hole } from '../../assembly/running.ts';
import type { Span } from '../../bore/removal.ts';
import type { WearSurface } from '../../bore/types.ts';

/**
 * @returns radii about the axis that it was read from, and two standard deviations of a diameter, mean of the stretch, mm;
 *   null where the surface has no row within
 */
export function stretchOf(
  { grid, mean, sdSeen }: WearSurface,
  { from, to }: Span,
): { readonly hole: Hole; readonly give: number } | null {
  const columns = grid.theta.length;
  const rows = [...grid.z.keys()].filter((row) => grid.z[row]! >= from && grid.z[row]! <= to);
  if (rows.length === 0) return null;
  const [first, end] = [rows[0]! * columns, (rows.at(-1)! + 1) * columns];
  const z = rows.map((row) => grid.z[row]!);
  // Both ends of a diameter may be off together.
  const seen = sdSeen.slice(first, end).filter(Number.isFinite);
  const give = (4 * seen.reduce((sum, one) => sum + one, 0)) / seen.length;
  return { hole: { radius: mean.slice(first, end), z, columns }, give };
}
