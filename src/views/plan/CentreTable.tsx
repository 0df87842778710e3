/** The rules for the centre as a table: what each costs, one chosen by its button. */
import { type CentreOffer, type CentreRow, centreHeads } from '../../figures/centreWords.ts';
import type { Units } from '../../job/schema.ts';
import { TableRoom } from '../parts/TableRoom.tsx';
import { CentrePick } from './CentrePick.tsx';

export interface CentreListProps {
  readonly offers: readonly CentreOffer[];
  readonly chosen: CentreOffer['rule'];
  readonly units: Units;
  onChoose(rule: CentreOffer['rule']): void;
}

export function CentreTable({ offers, chosen, units, onChoose }: CentreListProps) {
  const heads = centreHeads(units);
  return (
    <TableRoom label="What each centre costs">
      <table className="sections centre-table">
        <thead>
          <tr>
            {heads.map(({ column, text }) => (
              <th key={column} scope="col">
                {text}
              </th>
            ))}
          </tr>
        </thead>
        {offers.map((offer) => (
          <tbody key={offer.rule} data-chosen={offer.rule === chosen}>
            <tr className="centre-head">
              <th scope="rowgroup" colSpan={heads.length}>
                <CentrePick {...{ offer, chosen, onChoose }} />
              </th>
            </tr>
            {offer.row !== null && (
              <tr>
                {heads.map(({ column }) => (
                  <td key={column}>
                    <CentreCell row={offer.row!} column={column} />
                  </td>
                ))}
              </tr>
            )}
          </tbody>
        ))}
      </table>
    </TableRoom>
  );
}

interface CentreCellProps {
  readonly row: CentreRow;
  readonly column: ReturnType<typeof centreHeads>[number]['column'];
}

export function CentreCell({ row, column }: CentreCellProps) {
  const note = { off: row.volume, cut: '', held: '', lean: row.ofLimit, moves: row.ofAside }[
    column
  ];
  return (
    <>
      {row[column]}
      {note !== '' && <small>{note}</small>}
    </>
  );
}
