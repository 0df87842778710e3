/** The joint side by side: every bore, pin and bushing of the job, play now, walls, and whether the pin mirrors. */
import { memo } from 'react';
import type { Evaluation } from '../../evaluate.ts';
import {
  type Cell,
  type JointRow,
  jointSentences,
  SIZE_HEADS,
  sizeRows,
  WEAR_HEADS,
  wallRows,
  wearRows,
} from '../../figures/jointWords.ts';
import type { Units } from '../../job/schema.ts';
import { Words } from '../parts/Words.tsx';
import './joint.css';
import { TableRoom } from '../parts/TableRoom.tsx';

const WALL_HEADS = ['new wall', 'left, mean', 'left, least'] as const;

interface JointProps {
  /** Null until it has been worked out. */
  readonly joint: Evaluation['joint'] | null;
  readonly units: Units;
}

export const JointTable = memo(function JointTable({ joint, units }: JointProps) {
  if (joint === null || joint.parts.length === 0) return null;
  const walls = wallRows(joint, units);
  const long = units === 'in' ? 'inches' : 'millimetres';
  return (
    <>
      <h3>The joint, side by side</h3>
      <Table
        caption={`Sizes, in ${long} across; ± is the give-or-take`}
        heads={SIZE_HEADS}
        rows={sizeRows(joint, units)}
      />
      <Table
        caption={`Wear, in ${long}: worn against new, half of it on each side unless one side is known; the others across`}
        heads={WEAR_HEADS}
        rows={wearRows(joint, units)}
      />
      {walls.length > 0 && (
        <Table caption={`Wall of the old bushing, in ${long}`} heads={WALL_HEADS} rows={walls} />
      )}
      {jointSentences(joint, units).map((text) => (
        <p key={text} className="finding">
          <Words text={text} />
        </p>
      ))}
    </>
  );
});

interface TableProps {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly JointRow[];
}

function Table({ caption, heads, rows }: TableProps) {
  return (
    <>
      <p className="soft joint-caption">
        <Words text={caption} />
      </p>
      <TableRoom label={caption}>
        <table className="joint">
          <thead>
            <tr>
              <th scope="col">part</th>
              {heads.map((head) => (
                <th key={head} scope="col">
                  <Words text={head} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ id, name, of, cells }) => (
              <tr key={id}>
                <th scope="row">
                  {name} {of !== '' && <small>{of}</small>}
                </th>
                {cells.map((cell, at) => (
                  <Figures key={heads[at]} cell={cell} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
    </>
  );
}

function Figures({ cell: { figure, give, where } }: { readonly cell: Cell }) {
  return (
    <td>
      {figure}
      {give !== '' && <small>{give}</small>}
      {where.map((text) => (
        <small key={text} className="joint-where">
          {text}
        </small>
      ))}
    </td>
  );
}
