/** Rows of figures that people compare: a table where it has the room it needs, a card a row where it has not. */
import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { useSize } from '../useSize.ts';
import { TableRoom } from './TableRoom.tsx';

export interface FiguresRow {
  readonly key: string | number;
  readonly head: ReactNode;
  readonly cells: readonly ReactNode[];
}

interface Props {
  readonly label: string;
  readonly caption?: string;
  readonly className?: string;
  /** Of the first column; '' where the rows need none. */
  readonly corner: string;
  readonly heads: readonly string[];
  readonly rows: readonly FiguresRow[];
}

export function FiguresTable(props: Props) {
  const root = useRef<HTMLDivElement>(null);
  const { width } = useSize(root);
  const [needs, setNeeds] = useState(0);
  const narrow = width > 0 && width < needs;
  useLayoutEffect(() => {
    const table = root.current?.querySelector('table');
    // What does not fit stands wider than its room.
    if (table && width > 0 && table.offsetWidth > width) setNeeds(table.offsetWidth);
  }, [width, props.rows, props.heads]);
  return <div ref={root}>{narrow ? <Cards {...props} /> : <Table {...props} />}</div>;
}

function Table({ label, caption, className = '', corner, heads, rows }: Props) {
  return (
    <TableRoom label={label}>
      <table className={`sections ${className}`}>
        {caption !== undefined && <caption>{caption}</caption>}
        <thead>
          <tr>
            {corner === '' ? <td /> : <th scope="col">{corner}</th>}
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, head, cells }) => (
            <tr key={key}>
              <th scope="row">{head}</th>
              {cells.map((cell, at) => (
                <td key={heads[at]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}

function Cards({ label, caption, corner, heads, rows }: Props) {
  return (
    <>
      {caption !== undefined && <p className="soft">{caption}</p>}
      <ul className="row-cards" aria-label={label}>
        {rows.map(({ key, head, cells }) => (
          <li key={key}>
            <p>
              {corner !== '' && <span className="soft">{corner} </span>}
              <b>{head}</b>
            </p>
            <dl>
              {cells.map((cell, at) => (
                <div key={heads[at]}>
                  <dt>{heads[at]}</dt>
                  <dd>{cell}</dd>
                </div>
              ))}
            </dl>
          </li>
        ))}
      </ul>
    </>
  );
}
