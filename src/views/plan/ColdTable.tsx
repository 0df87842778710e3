/** What a squeezed bore should read when it is cold. */
import { COLD, type ColdWords } from '../../figures/squeezeWords.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';

interface ColdProps {
  readonly words: readonly ColdWords[];
  readonly units: string;
}

/** One row a depth, one column a pair of clock positions. */
export function Cold({ words, units }: ColdProps) {
  const pairs = [...new Set(words.map(({ pair }) => pair))];
  const depths = [...new Set(words.map(({ depth }) => depth))];
  return (
    <FiguresTable
      label="What it should read when it is cold"
      caption={`${COLD}, ${units} across`}
      corner="depth"
      heads={pairs}
      rows={depths.map((depth) => ({
        key: depth,
        head: depth,
        cells: pairs.map(
          (pair) => words.find((one) => one.depth === depth && one.pair === pair)?.range ?? '–',
        ),
      }))}
    />
  );
}
