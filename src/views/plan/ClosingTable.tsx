/** How far each measured depth of a squeezed bore is to close, and between which sizes it can end. */
import type { DepthWords } from '../../figures/squeezeWords.ts';
import { TableRoom } from '../parts/TableRoom.tsx';

interface ClosingProps {
  readonly depths: readonly DepthWords[];
  readonly units: string;
}

export function Closing({ depths, units }: ClosingProps) {
  return (
    <TableRoom label="What each depth closes by, and where it can end">
      <table className="sections">
        <caption>Largest / least at each measured depth, {units} across</caption>
        <thead>
          <tr>
            <th scope="col">depth</th>
            <th scope="col">now</th>
            <th scope="col">close by</th>
            <th scope="col">by bending alone</th>
            <th scope="col">drawn in as well</th>
          </tr>
        </thead>
        <tbody>
          {depths.map(({ depth, before, close, bent, upset }) => (
            <tr key={depth}>
              <th scope="row">{depth}</th>
              <td>{before}</td>
              <td>{close}</td>
              <td>{bent}</td>
              <td>{upset}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
