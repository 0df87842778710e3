/** How far each measured depth of a squeezed bore is to close, and between which sizes it can end. */
import type { DepthWords } from '../../figures/squeezeWords.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';

interface ClosingProps {
  readonly depths: readonly DepthWords[];
  readonly units: string;
}

export function Closing({ depths, units }: ClosingProps) {
  return (
    <FiguresTable
      label="What each depth closes by, and where it can end"
      caption={`Largest / least at each measured depth, ${units} across`}
      corner="depth"
      heads={['now', 'close by', 'by bending alone', 'drawn in as well']}
      rows={depths.map(({ depth, before, close, bent, upset }) => ({
        key: depth,
        head: depth,
        cells: [before, close, bent, upset],
      }))}
    />
  );
}
