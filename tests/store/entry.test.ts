import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellBefore, cellBeside, firstCell, inside, nextCell } from '../../src/store/entry.ts';
import type { Cell, Order } from '../../src/store/session.ts';

const SIZE = { rows: 3, columns: 2 };
function walk(order: Order): string[] {
  const seen: string[] = [];
  let cell: Cell | null = { row: 0, column: 0 };
  while (cell !== null) {
    seen.push(`${cell.row}${cell.column}`);
    cell = nextCell(cell, order, SIZE);
  }
  return seen;
}

describe('where Enter goes', () => {
  test('round each depth: along the row, then the next row', () => {
    expect(walk('round')).toEqual(['00', '01', '10', '11', '20', '21']);
  });
  test('down each clock position: along the column, then the next column', () => {
    expect(walk('down')).toEqual(['00', '10', '20', '01', '11', '21']);
  });
  test('back is the way there, for any table', () => {
    const side = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(
        side,
        side,
        fc.nat(),
        fc.constantFrom<Order>('round', 'down'),
        (rows, columns, n, order) => {
          const size = { rows, columns };
          const cell = { row: n % rows, column: Math.floor(n / rows) % columns };
          const on = nextCell(cell, order, size);
          if (on !== null) expect(cellBefore(on, order, size)).toEqual(cell);
          else expect(cell).toEqual({ row: rows - 1, column: columns - 1 });
        },
      ),
    );
  });
});

test('arrow keys stay in the table', () => {
  expect(cellBeside({ row: 0, column: 1 }, -1, 0, SIZE)).toEqual({ row: 0, column: 1 });
  expect(cellBeside({ row: 0, column: 0 }, 1, 1, SIZE)).toEqual({ row: 1, column: 1 });
  expect(inside({ row: 9, column: 9 }, SIZE)).toEqual({ row: 2, column: 1 });
});

test('the next reading goes into the first empty cell of the chosen order', () => {
  const filled = new Set(['00', '01', '10']);
  const empty = ({ row, column }: Cell) => !filled.has(`${row}${column}`);
  expect(firstCell('round', SIZE, empty)).toEqual({ row: 1, column: 1 });
  expect(firstCell('down', SIZE, empty)).toEqual({ row: 2, column: 0 });
  expect(firstCell('down', SIZE, () => false)).toEqual({ row: 0, column: 0 });
});
