/** The trade-off chart as a table, folded until it is wanted. */
import { type TradeOffFigure, tableRows } from '../../figures/tradeOff.ts';
import { TableRoom } from '../parts/TableRoom.tsx';

export function SizesTable({ figure }: { readonly figure: TradeOffFigure }) {
  return (
    <details className="sizes-fold">
      <summary>The same as a table</summary>
      <TableRoom label="What each size of target costs and leaves">
        <table className="sections">
          <thead>
            <tr>
              <th scope="col">target, {figure.units} across</th>
              {figure.panels.map(({ kind, title }) => (
                <th key={kind} scope="col">
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {tableRows(figure).map(({ size, name, cells }, at) => (
              <tr key={at}>
                <th scope="row">
                  {size} {name !== '' && <small>{name}</small>}
                </th>
                {cells.map((cell, i) => (
                  <td key={figure.panels[i]!.kind}>{cell === '' ? '–' : cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
    </details>
  );
}
