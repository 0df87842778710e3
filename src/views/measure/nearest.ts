/** Which cell of the table speaks of a place on the wall. */
import { angleApart } from '../../job/clock.ts';
import { clockPeriod, type ReadingTable } from '../../job/table.ts';
import type { Place } from '../../store/session.ts';

/**
 * The cell nearest to a place, as `row-column`; '' where there is none. One text, so that a cursor moving within
 * the same cell changes nothing.
 */
export function nearestCell(table: ReadingTable, place: Place | null): string {
  if (place === null) return '';
  const period = clockPeriod(table.kind);
  const row = leastAt(table.rows, ({ z }) => Math.abs(z - place.z));
  const column = leastAt(table.clocks, ({ theta }) => angleApart(theta, place.theta, period));
  return row < 0 || column < 0 ? '' : `${row}-${column}`;
}

function leastAt<T>(list: readonly T[], far: (one: T) => number): number {
  let at = -1;
  let least = Number.POSITIVE_INFINITY;
  list.forEach((one, index) => {
    const distance = far(one);
    if (!(distance < least)) return;
    least = distance;
    at = index;
  });
  return at;
}
