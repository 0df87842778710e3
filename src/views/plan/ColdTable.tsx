/** What a squeezed bore should read when it is cold. */
import { COLD, type ColdWords } from '../../figures/squeezeWords.ts';
import { TableRoom } from '../parts/TableRoom.tsx';

interface ColdProps {
  readonly words: readonly ColdWords[];
  readonly units: string;
}

/** One row a depth, one column a pair of clock positions. */
export function Cold({ words, units }: ColdProps) {
  const pairs = [...new Set(words.map(({ pair }) => pair))];
  const depths = [...new Set(words.map(({ depth }) => depth))];
  return (
    <TableRoom label="What it should read when it is cold">
      <table className="sections">
        <caption>
          {COLD}, {units} across
        </caption>
        <thead>
          <tr>
            <th scope="col">depth</th>
            {pairs.map((pair) => (
              <th key={pair} scope="col">
                {pair}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {depths.map((depth) => (
            <tr key={depth}>
              <th scope="row">{depth}</th>
              {pairs.map((pair) => (
                <td key={pair}>
                  {words.find((one) => one.depth === depth && one.pair === pair)?.range ?? '–'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
