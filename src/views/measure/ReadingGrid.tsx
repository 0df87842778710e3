/** The reading table: clock positions across, depths down, one reading (or repeats of it) in a cell. */
import { memo, type ReactNode, useEffect, useRef } from 'react';
import type { SurveyEvaluation } from '../../evaluate.ts';
import { placeInTable } from '../../job/offerPlace.ts';
import type { ReadingTable, TableRow } from '../../job/table.ts';
import { inside } from '../../store/entry.ts';
import { usePage } from '../../store/page.ts';
import { useSession } from '../../store/session.ts';
import { cellMark } from './cellMarks.ts';
import { GridCell } from './GridCell.tsx';
import { nearestCell } from './nearest.ts';
import type { Picked } from './picked.ts';

export interface ReadingGridProps {
  readonly table: ReadingTable;
  readonly seen: SurveyEvaluation | null;
  /** Unit and face, for those who hear the table. */
  readonly says: string;
  readonly depthHead: ReactNode;
  /** Null: a cell again, no head. */
  onPick(picked: Picked | null): void;
}

export function ReadingGrid({ table, seen, says, depthHead, onPick }: ReadingGridProps) {
  const room = useRef<HTMLDivElement>(null);
  useFocusOnCell(room, { rows: table.rows.length, columns: table.clocks.length });
  const change = usePage((page) => page.change);
  const near = useSession(({ cursor }) => nearestCell(table, cursor));
  const [nearRow, nearColumn] = near.split('-').map(Number);
  const wanted = wantedCell(table, seen);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only notes that the focus has left the table
    <div
      className="table-room readings-room"
      ref={room}
      onFocus={({ target }) => target instanceof HTMLInputElement && onPick(null)}
      onBlur={(event) => {
        const to = event.relatedTarget;
        const within = room.current?.contains(to) === true || to?.closest('.keypad') != null;
        if (!within) change({ keypad: false });
      }}
    >
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table in which arrow keys move, as the role says */}
      <table className="readings" role="grid" aria-label={says}>
        <thead>
          <tr>
            <th scope="col">{depthHead}</th>
            {table.clocks.map((clock, column) => (
              <th key={clock.text} scope="col">
                <button
                  type="button"
                  className="head-button"
                  onClick={() => onPick({ kind: 'clock', column })}
                >
                  {clock.text}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, index) => (
            <GridRow
              key={row.seenZ}
              table={table}
              row={row}
              index={index}
              seen={seen}
              nearColumn={index === nearRow ? (nearColumn ?? -1) : -1}
              nextColumn={index === wanted?.row ? wanted.column : -1}
              onPick={onPick}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The cell of the next reading, where the table has it and shows that kind of gauge. */
function wantedCell(table: ReadingTable, seen: SurveyEvaluation | null) {
  const [next] = seen?.next.readings ?? [];
  if (next === undefined || next.instrument !== table.kind) return null;
  return placeInTable(table, { theta: next.clocks[0]!, z: next.depths[0]! });
}

/** Where the session goes, the focus follows, as long as it was in the table. */
function useFocusOnCell(
  room: React.RefObject<HTMLDivElement | null>,
  { rows, columns }: { readonly rows: number; readonly columns: number },
): void {
  const cell = useSession((session) => session.cell);
  useEffect(() => {
    const { row, column } = inside(cell, { rows, columns });
    const here = room.current;
    if (here?.contains(document.activeElement) !== true) return;
    const input = here.querySelector<HTMLInputElement>(`[data-cell="${row}-${column}"]`);
    if (input === null || input === document.activeElement) return;
    input.focus({ preventScroll: true });
    input.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [cell, rows, columns, room]);
}

interface GridRowProps {
  readonly table: ReadingTable;
  readonly row: TableRow;
  readonly index: number;
  readonly seen: SurveyEvaluation | null;
  readonly nearColumn: number;
  readonly nextColumn: number;
  onPick(picked: Picked): void;
}

const GridRow = memo(function GridRow(props: GridRowProps) {
  const { table, row, index, seen, nearColumn, nextColumn, onPick } = props;
  const size = { rows: table.rows.length, columns: table.clocks.length };
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          className="head-button"
          onClick={() => onPick({ kind: 'depth', row: index })}
        >
          {row.depthText}
        </button>
      </th>
      {row.cells.map((cell, column) => {
        const clock = table.clocks[column]!;
        return (
          <GridCell
            key={clock.text}
            row={index}
            column={column}
            size={size}
            label={`${clock.text} at ${row.depthText} deep`}
            text={cell.text}
            place={{ theta: clock.theta, z: row.z }}
            mark={cellMark(cell, table.kind, seen)}
            near={column === nearColumn}
            next={column === nextColumn}
          />
        );
      })}
    </tr>
  );
});
