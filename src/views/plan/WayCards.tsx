/** The ways of mending as cards, where there is no room for a table. */
import { columnHeads, type WayColumn, type WayRow } from '../../figures/wayTable.ts';
import { usePointedWay } from './usePointedWay.ts';
import { WayPick } from './WayPick.tsx';
import type { WayListProps } from './WayTable.tsx';

const COLUMNS: readonly WayColumn[] = ['target', 'off', 'on', 'pressFit', 'seated', 'gap', 'wall'];

export function WayCards({ rows, ...rest }: WayListProps) {
  return (
    <ul className="way-cards">
      {rows.map((row) => (
        <Card key={row.name} row={row} {...rest} />
      ))}
    </ul>
  );
}

function Card({
  row,
  chosen,
  units,
  onChoose,
}: Omit<WayListProps, 'rows'> & { readonly row: WayRow }) {
  const { pointed, pointing } = usePointedWay(row.name);
  const heads = columnHeads(units);
  return (
    <li
      data-verdict={row.verdict}
      data-chosen={row.name === chosen}
      data-shown={pointed}
      {...pointing}
    >
      <WayPick row={row} chosen={row.name === chosen} onChoose={onChoose} />
      <p>
        <b>{row.says}:</b> {row.why} {row.work}
      </p>
      <dl>
        {COLUMNS.map((column) => {
          const { text, note } = row.cells[column];
          return (
            <div key={column}>
              <dt>{heads[column]}</dt>
              <dd>
                {text}
                {note !== '' && <small>{note}</small>}
              </dd>
            </div>
          );
        })}
      </dl>
    </li>
  );
}
