/** One line a depth: mean, greatest and least diameter and where, out-of-round. All across. */
import type { Section } from '../../bore/types.ts';
import { nearPair } from '../../figures/nearClock.ts';
import { written } from '../../figures/written.ts';
import type { Units } from '../../job/schema.ts';
import { formatDepth } from '../../job/units.ts';
import { useSession } from '../../store/session.ts';
import { TableRoom } from '../parts/TableRoom.tsx';
import { Words } from '../parts/Words.tsx';

export interface SectionTableProps {
  readonly sections: readonly Section[];
  readonly units: Units;
}

export function SectionTable({ sections, units }: SectionTableProps) {
  const give = Math.max(...sections.map((section) => section.give));
  const worst = Math.max(...sections.map(({ outOfRound }) => outOfRound || 0));
  return (
    <TableRoom label="Sizes at each depth">
      <table className="sections">
        <caption>
          <Words
            text={`Each depth, in ${units === 'in' ? 'inches' : 'millimetres'} across; good to about `}
          />
          <span className="number">{written(units, give).bare(give)}</span>. A tap on a size shows
          its place in the drawing.
        </caption>
        <thead>
          <tr>
            <th scope="col">depth</th>
            <th scope="col">mean</th>
            <th scope="col">greatest</th>
            <th scope="col">least</th>
            <th scope="col">
              <Words text="out-of-round" />
            </th>
          </tr>
        </thead>
        <tbody>
          {sections.map((section) => (
            <SectionRow
              key={section.z}
              section={section}
              units={units}
              worst={section.outOfRound === worst && worst > section.give}
            />
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}

interface SectionRowProps {
  readonly section: Section;
  readonly units: Units;
  readonly worst: boolean;
}

function SectionRow({ section, units, worst }: SectionRowProps) {
  const look = useSession((session) => session.look);
  const { z, meanDiameter, greatest, least, outOfRound, give } = section;
  const { bare } = written(units, give);
  const point = (theta: number) => look({ cursor: { theta: Number.isNaN(theta) ? 0 : theta, z } });
  const depth = formatDepth(z, units).replace(/ \w+$/, '');
  return (
    <tr data-worst={worst}>
      <th scope="row">{depth}</th>
      <td>{bare(meanDiameter)}</td>
      {[greatest, least].map(({ diameter, theta }, at) => (
        <td key={at === 0 ? 'greatest' : 'least'}>
          {Number.isNaN(diameter) ? (
            '–'
          ) : (
            <button type="button" className="place-button" onClick={() => point(theta)}>
              {bare(diameter)} <small>{nearPair(theta)}</small>
            </button>
          )}
        </td>
      ))}
      <td>{bare(outOfRound)}</td>
    </tr>
  );
}
