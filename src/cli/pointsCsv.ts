/** Points to be fitted, from CSV. */
import { pointsFromRadii } from '../geometry/polar.ts';
import { headerOf, LAYOUTS, layoutToFit } from '../job/pointsCells.ts';
import { readTable } from '../job/pointsTable.ts';

/** Points read from CSV. */
export interface Points {
  /** as in the file, blanks left out: `x,y`, `x,y,z`, `clock,radius` or `clock,depth,radius` */
  header: string;
  /** x and y, or x, y and z, whatever the header */
  names: string[];
  /** one for each name, of one length, every number finite */
  columns: Float64Array[];
}

/**
 * Reads CSV with the header `x,y` or `x,y,z`, or with radii about a datum axis: `clock,radius` or
 * `clock,depth,radius`, the clock as in readings, seen from face A, and turned to x, y and z here.
 *
 * @param csv the bytes of the file in UTF-8; a short text will do
 * @returns the points, or one sentence without a full stop that names line, row (from 0) and column
 *   of what is wrong
 */
export function readPoints(csv: Uint8Array | string): Points | { error: string } {
  const bytes = typeof csv === 'string' ? new TextEncoder().encode(csv) : csv;
  const table = readTable(bytes, layoutToFit, LAYOUTS.map(headerOf).join(' or '));
  if ('error' in table) return table;
  const { layout, columns } = table;
  const header = headerOf(layout);
  const radii = columns[layout.findIndex(({ name }) => name === 'radius')];
  if (radii === undefined) return { header, names: header.split(','), columns: [...columns] };
  const flat = pointsFromRadii(columns[0]!, radii);
  return layout.length === 2
    ? { header, names: ['x', 'y'], columns: flat }
    : { header, names: ['x', 'y', 'z'], columns: [...flat, columns[1]!] };
}
