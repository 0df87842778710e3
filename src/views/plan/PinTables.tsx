/** Stretches side by side, and the ways of a worn pin. */
import type { PinPlan } from '../../evaluate/pinTypes.ts';
import { LAND_HEADS, landRows } from '../../figures/pinWords.ts';
import { pinWayRows } from '../../figures/pinWork.ts';
import type { Units } from '../../job/schema.ts';
import { TableRoom } from '../parts/TableRoom.tsx';

interface Props {
  readonly plan: PinPlan;
  readonly units: Units;
}

export function PinTables({ plan, units }: Props) {
  const ways = pinWayRows(plan, units);
  return (
    <>
      <LandTable plan={plan} units={units} />
      {ways.length > 0 && (
        <>
          <h3>Ways of mending</h3>
          <ul className="pin-ways">
            {ways.map(({ name, title, advised, figures, cautions }) => (
              <li key={name}>
                <b>
                  {title}
                  {advised && ' · advised'}
                </b>
                <span>{figures.join('; ')}.</span>
                <small>{cautions.join(' ')}</small>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

export function LandTable({ plan, units }: Props) {
  const caption = `Against the finished size, in ${units === 'in' ? 'inches' : 'millimetres'} per side: + is short, − is to come off`;
  return (
    <TableRoom label={caption}>
      <table className="pin-lands">
        <caption className="soft">{caption}</caption>
        <thead>
          <tr>
            {LAND_HEADS.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {landRows(plan, units).map(({ key, name, place, worst, edges, low }) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              <td>{place}</td>
              <td>{worst}</td>
              <td>{edges[0]}</td>
              <td>{edges[1]}</td>
              <td>{low}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
