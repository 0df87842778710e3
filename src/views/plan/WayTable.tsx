/** The ways of mending as a table: one a row, chosen by its button; pointing at one shows its outcome in the drawing. */
import { columnHeads, type WayColumn, type WayRow } from '../../figures/wayTable.ts';
import type { Decisions, Units } from '../../job/schema.ts';
import { TableRoom } from '../parts/TableRoom.tsx';
import { usePointedWay } from './usePointedWay.ts';
import { WayPick } from './WayPick.tsx';

export interface WayListProps {
  readonly rows: readonly WayRow[];
  readonly chosen: NonNullable<Decisions['way']>;
  readonly units: Units;
  onChoose(row: WayRow): void;
}

const COLUMNS: readonly WayColumn[] = ['target', 'off', 'on', 'pressFit', 'seated', 'gap', 'wall'];

export function WayTable({ rows, chosen, units, onChoose }: WayListProps) {
  const heads = columnHeads(units);
  return (
    <TableRoom label="Ways of mending side by side">
      <table className="sections way-table">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {heads[column]}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map((row) => (
          <Way key={row.name} {...{ row, chosen, units, onChoose }} />
        ))}
      </table>
    </TableRoom>
  );
}

function Way({ row, chosen, onChoose }: Omit<WayListProps, 'rows'> & { readonly row: WayRow }) {
  const { pointed, pointing } = usePointedWay(row.name);
  return (
    <tbody
      data-verdict={row.verdict}
      data-chosen={row.name === chosen}
      data-shown={pointed}
      {...pointing}
    >
      <tr className="way-head">
        <th scope="rowgroup" colSpan={COLUMNS.length}>
          <WayPick row={row} chosen={row.name === chosen} onChoose={onChoose} />
        </th>
      </tr>
      <tr>
        {COLUMNS.map((column) => {
          const { text, note } = row.cells[column];
          return (
            <td key={column}>
              {text}
              {note !== '' && column !== 'gap' && <small>{note}</small>}
            </td>
          );
        })}
      </tr>
      <tr className="way-why">
        <td colSpan={COLUMNS.length}>
          <b>{row.says}:</b> {row.why} {row.work}
        </td>
      </tr>
    </tbody>
  );
}
