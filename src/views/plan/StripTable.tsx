/** Strips to cut, one a row. */
import type { ShimWords } from '../../figures/shimWords.ts';
import { TableRoom } from '../parts/TableRoom.tsx';

export function Strips({ strips }: Pick<ShimWords, 'strips'>) {
  return (
    <TableRoom label="Strips to cut">
      <table className="sections">
        <caption>Strips to cut, seen from face A</caption>
        <thead>
          <tr>
            <th scope="col">layer</th>
            <th scope="col">thick</th>
            <th scope="col">cut length</th>
            <th scope="col">ends butt at</th>
            <th scope="col">hole: middle, depth, size</th>
          </tr>
        </thead>
        <tbody>
          {strips.map(({ layer, thickness, length, butt, hole }) => (
            <tr key={layer}>
              <th scope="row">{layer}</th>
              <td>{thickness}</td>
              <td>{length}</td>
              <td>{butt}</td>
              <td>{hole}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
