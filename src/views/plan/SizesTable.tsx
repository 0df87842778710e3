/** The trade-off chart as a table, folded until it is wanted. */
import { type TradeOffFigure, tableRows } from '../../figures/tradeOff.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';

export function SizesTable({ figure }: { readonly figure: TradeOffFigure }) {
  return (
    <details className="sizes-fold">
      <summary>The same as a table</summary>
      <FiguresTable
        label="What each size of target costs and leaves"
        corner={`target, ${figure.units} across`}
        heads={figure.panels.map(({ title }) => title)}
        rows={tableRows(figure).map(({ size, name, cells }, at) => ({
          key: at,
          head: (
            <>
              {size} {name !== '' && <small>{name}</small>}
            </>
          ),
          cells: cells.map((cell) => (cell === '' ? '–' : cell)),
        }))}
      />
    </details>
  );
}
