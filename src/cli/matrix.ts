/** A field as rows by depth; what is not known is null. */
import type { Field, Grid } from '../bore/types.ts';

export function matrix(field: Field, grid: Grid): (number | null)[][] {
  const columns = grid.theta.length;
  return Array.from(grid.z, (_, iz) =>
    Array.from(field.subarray(iz * columns, (iz + 1) * columns), (value) =>
      Number.isFinite(value) ? value : null,
    ),
  );
}
