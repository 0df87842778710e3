/** Strips to cut, one a row. */
import type { ShimWords } from '../../figures/shimWords.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';

export function Strips({ strips }: Pick<ShimWords, 'strips'>) {
  return (
    <FiguresTable
      label="Strips to cut"
      caption="Strips to cut, seen from face A"
      corner="layer"
      heads={['thick', 'cut length', 'ends butt at', 'hole: middle, depth, size']}
      rows={strips.map(({ layer, thickness, length, butt, hole }) => ({
        key: layer,
        head: layer,
        cells: [thickness, length, butt, hole],
      }))}
    />
  );
}
