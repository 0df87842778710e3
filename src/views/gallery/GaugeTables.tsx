/** The made-up bore as each kind of gauge would read it: a small table each, and what it tells. */
import { useMemo } from 'react';
import { type GaugeTable, gaugeTable } from '../../figures/gaugeTable.ts';
import type { Units } from '../../job/schema.ts';
import { patternReadings, toBeSeen } from '../../practice/patternReadings.ts';
import type { MadePattern, Scale } from '../../practice/patterns.ts';
import { TableRoom } from '../parts/TableRoom.tsx';

export interface GaugeTablesProps {
  readonly pattern: MadePattern;
  readonly scale: Scale;
  readonly units: Units;
}

export function GaugeTables({ pattern, scale, units }: GaugeTablesProps) {
  const tables = useMemo(() => {
    const depths = pattern.depths.map((share) => share * scale.length);
    const there = toBeSeen(pattern.truth(scale), scale.radius, depths);
    return patternReadings(pattern, scale).map((one) => gaugeTable(one, there, units));
  }, [pattern, scale, units]);
  return (
    <div className="gauge-tables">
      {tables.map((table) => (
        <OneTable key={table.gauge} table={table} />
      ))}
    </div>
  );
}

function OneTable({
  table: { gauge, counts, heads, rows, tells },
}: {
  readonly table: GaugeTable;
}) {
  return (
    <TableRoom label={`Readings with the ${gauge}`}>
      <table className="sections">
        <caption>
          <b>{gauge}</b>
          <br />
          {counts}
        </caption>
        <thead>
          <tr>
            <th scope="col">depth</th>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ depth, cells }) => (
            <tr key={depth}>
              <th scope="row">{depth}</th>
              {cells.map((cell, i) => (
                <td key={heads[i]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p>{tells}</p>
    </TableRoom>
  );
}
