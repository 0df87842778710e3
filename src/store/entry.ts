/** Going from cell to cell of the reading table. */
import type { Cell, Order } from './session.ts';

export interface TableSize {
  readonly rows: number;
  readonly columns: number;
}

/** The cell that Enter goes to; null after the last. */
export function nextCell(cell: Cell, order: Order, size: TableSize): Cell | null {
  return stepped(cell, order, size, 1);
}

/** The cell before; null before the first. */
export function cellBefore(cell: Cell, order: Order, size: TableSize): Cell | null {
  return stepped(cell, order, size, -1);
}

function stepped(cell: Cell, order: Order, size: TableSize, by: 1 | -1): Cell | null {
  const { rows, columns } = size;
  const at = order === 'round' ? cell.row * columns + cell.column : cell.column * rows + cell.row;
  const to = at + by;
  if (to < 0 || to >= rows * columns) return null;
  return order === 'round'
    ? { row: Math.floor(to / columns), column: to % columns }
    : { row: to % rows, column: Math.floor(to / rows) };
}

/** The cell one over, staying at the edge: what an arrow key does. */
export function cellBeside(cell: Cell, down: number, right: number, size: TableSize): Cell {
  return inside({ row: cell.row + down, column: cell.column + right }, size);
}

/** A cell of a larger table brought into this one. */
export function inside(cell: Cell, size: TableSize): Cell {
  const clamp = (at: number, count: number) => Math.max(0, Math.min(at, count - 1));
  return { row: clamp(cell.row, size.rows), column: clamp(cell.column, size.columns) };
}

/** The first cell in the given order for which `empty` holds; the first cell where none does. */
export function firstCell(order: Order, size: TableSize, empty: (cell: Cell) => boolean): Cell {
  let cell: Cell | null = { row: 0, column: 0 };
  while (cell !== null && !empty(cell)) cell = nextCell(cell, order, size);
  return cell ?? { row: 0, column: 0 };
}
