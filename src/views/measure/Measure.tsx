/** Measure: the bore's sizes, how it is measured, and the reading table. */
import { setupInHand } from '../../job/setups.ts';
import type { ReadingTable, TableReading } from '../../job/table.ts';
import { sentence } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import { useTable } from '../../store/useTable.ts';
import { Later } from '../parts/Later.tsx';
import { Words } from '../parts/Words.tsx';
import { AddPlaces } from './AddPlaces.tsx';
import { ComparatorLine } from './ComparatorLine.tsx';
import { Facts } from './Facts.tsx';
import { GaugesAtHand } from './GaugesAtHand.tsx';
import { MeasuredWith } from './MeasuredWith.tsx';
import { MoreAbout } from './MoreAbout.tsx';
import { NextLine } from './NextLine.tsx';
import { PartFacts } from './PartFacts.tsx';
import { PlanLine } from './PlanLine.tsx';
import { Readings } from './Readings.tsx';
import { SetupLine } from './SetupLine.tsx';
import { TemperatureLine } from './TemperatureLine.tsx';
import { TypedHow } from './TypedHow.tsx';

export function Measure({ bench }: { readonly bench: Bench }) {
  const laid = useTable();
  if (laid === null) return null;
  const { job, bore, survey } = bench;
  const { table } = laid;
  return (
    <>
      <h2 id="measure-head">
        Measure{' '}
        <small>
          <Words text={counted(table, setupName(bench))} />
        </small>
      </h2>
      {bore.kind === 'bore' ? <Facts job={job} bore={bore} /> : <PartFacts job={job} part={bore} />}
      <Readings bench={bench} laid={laid} setup={setupName(bench)} />
      <Later>
        <NextLine bench={bench} />
        {survey.readings.length > 0 && <GaugesAtHand bench={bench} />}
        <Unread table={table} />
        <Others readings={table.others} />
        <div className="settings">
          <TypedHow units={job.units} laid={laid} />
          <MeasuredWith bench={bench} />
          <ComparatorLine key={survey.plan.gauge} bench={bench} />
          <SetupLine bench={bench} />
          <TemperatureLine bench={bench} />
          <AddPlaces bench={bench} />
          {bore.kind === 'bore' && <PlanLine bench={bench} />}
          <MoreAbout bench={bench} />
        </div>
      </Later>
    </>
  );
}

/** Of several set-ups of the gauge in hand, the one whose readings the table shows; '' where there is but one. */
function setupName({ survey }: Bench): string {
  const { gauge } = survey.plan;
  const several = survey.setups.filter((one) => one.gauge === gauge).length > 1;
  return several ? (setupInHand(survey, gauge)?.name ?? '') : '';
}

function counted({ rows, clocks, kind }: ReadingTable, setup: string): string {
  const readings = rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.readings));
  const places = kind === 'two-point' ? 'clock pairs' : 'clock positions';
  const n = readings.filter(({ ok, leftOut }) => ok && !leftOut).length;
  const of = setup === '' ? '' : ` · ${setup}`;
  return `${n} ${n === 1 ? 'reading' : 'readings'} · ${clocks.length} ${places} × ${rows.length} ${rows.length === 1 ? 'depth' : 'depths'}${of}`;
}

/** Every cell whose text cannot be read, with the reason; the text stays as it was typed. */
function Unread({ table }: { readonly table: ReadingTable }) {
  const lines = table.rows.flatMap((row) =>
    row.cells.flatMap((cell, column) =>
      cell.readings
        .filter(({ ok, why }) => !ok && why !== '')
        .map(({ id, why }) => ({
          id,
          text: `${table.clocks[column]?.text} at ${row.depthText} deep: ${sentence(why)}`,
        })),
    ),
  );
  if (lines.length === 0) return null;
  return (
    <ul className="unread">
      {lines.map(({ id, text }) => (
        <li key={id} className="fault">
          {text}
        </li>
      ))}
    </ul>
  );
}

function Others({ readings }: { readonly readings: readonly TableReading[] }) {
  const counting = readings.filter(({ ok }) => ok).length;
  if (counting === 0) return null;
  return (
    <p className="soft">
      {counting} more {counting === 1 ? 'reading' : 'readings'} of other gauges or set-ups count in
      this survey as well; choose their gauge above to see them.
    </p>
  );
}
