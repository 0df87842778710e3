/** The current cell in words: what was typed, what it means, and what can be done about it. */
import { written } from '../../figures/written.ts';
import { setLeftOut } from '../../job/edits.ts';
import { readingSd } from '../../job/gauges.ts';
import { repeatSpread } from '../../job/repeats.ts';
import type { Instrument } from '../../job/schema.ts';
import { gaugeOf } from '../../job/sizes.ts';
import type { TableCell, TableReading } from '../../job/table.ts';
import { temperatureFactor } from '../../job/temperature.ts';
import { formatDeviation, formatLength } from '../../job/units.ts';
import { sentence } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import type { Laid } from '../../store/tables.ts';
import { currentCell } from '../../store/typing.ts';
import { useJob } from '../../store/useJob.ts';
import { Figure } from '../parts/Figure.tsx';
import { Words } from '../parts/Words.tsx';
import { deviationOf } from './cellMarks.ts';

export interface CellLineProps {
  readonly bench: Bench;
  readonly laid: Laid;
}

export function CellLine({ bench, laid }: CellLineProps) {
  // The session's cell is read through `currentCell`; this line must follow it.
  useSession((session) => session.cell);
  const { row, column } = currentCell(laid);
  const shownRow = laid.table.rows[row];
  const clock = laid.table.clocks[column];
  const cell = shownRow?.cells[column];
  if (shownRow === undefined || clock === undefined || cell === undefined) return null;
  const where = `${clock.text} at ${shownRow.depthText} deep`;
  return (
    <div className="cell-line" role="status">
      {cell.readings.length === 0 && (
        <p>
          <b>
            <Words text={where} />
          </b>{' '}
          <span className="soft">nothing read yet</span>
        </p>
      )}
      {cell.readings.map((reading, at) => (
        <ReadingLine
          key={reading.id}
          where={at === 0 ? where : ''}
          bench={bench}
          reading={reading}
          kind={laid.table.kind}
        />
      ))}
      <Tries bench={bench} cell={cell} />
    </div>
  );
}

/** How far apart the tries at one place lie, where there are several, and whether the gauge repeats so. */
function Tries({ bench, cell }: { readonly bench: Bench; readonly cell: TableCell }) {
  const { job, survey } = bench;
  const counted = cell.readings.filter(({ ok, leftOut }) => ok && !leftOut);
  if (counted.length < 2) return null;
  const sds = counted.map(({ row }) => {
    const reading = survey.readings[row];
    const gauge = reading && gaugeOf(job.gauges, reading.gauge);
    return gauge === undefined ? Number.NaN : readingSd(gauge, reading).mm;
  });
  const values = counted.map(({ mm }) => mm);
  const { count, range, limit } = repeatSpread(values, Math.max(...sds));
  const mean = values.reduce((sum, mm) => sum + mm, 0) / count;
  const said = `${count} tries within ${formatLength(range, job.units)}, mean ${formatLength(mean, job.units)}`;
  const usual = `with this gauge ${count} tries may lie up to ${formatLength(limit, job.units)} apart`;
  return range > limit ? (
    <p className="fault">
      {said}: {usual}. Wipe, rock the gauge, and read again.
    </p>
  ) : (
    <p className="soft">
      {said}; {usual}.
    </p>
  );
}

interface ReadingLineProps {
  readonly where: string;
  readonly bench: Bench;
  readonly reading: TableReading;
  readonly kind: Instrument;
}

function ReadingLine({ where, bench, reading, kind }: ReadingLineProps) {
  const { bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const { leftOut } = reading;
  if (!reading.ok) {
    return (
      <p>
        <b>
          <Words text={where} />
        </b>{' '}
        <span className="fault">{sentence(reading.why)}</span>
      </p>
    );
  }
  return (
    <p>
      <b>
        <Words text={where} />
      </b>{' '}
      {leftOut ? (
        <s>
          <Figure text={reading.echo} />
        </s>
      ) : (
        <Figure text={reading.echo} />
      )}
      <AtTwenty bench={bench} mm={reading.mm} />
      <Meaning bench={bench} reading={reading} kind={kind} />{' '}
      <button
        type="button"
        className="link-button"
        onClick={() => edit((now) => setLeftOut(now, bore.id, survey.id, reading.id, !leftOut))}
      >
        {leftOut ? 'put it back' : 'leave it out'}
      </button>
    </p>
  );
}

/** What the reading is at 20 °C, where it was read warmer or colder and that shows. */
function AtTwenty({ bench, mm }: { readonly bench: Bench; readonly mm: number }) {
  const { job, bore, survey } = bench;
  const at = (value: number) => formatLength(value, job.units);
  const asRead = mm / temperatureFactor(bore, survey);
  if (Number.isNaN(mm) || at(asRead) === at(mm)) return null;
  return <> ({at(mm)} at 20 °C)</>;
}

/** What a reading that counts says against the target. */
function Meaning({ bench, reading, kind }: Omit<ReadingLineProps, 'where'>) {
  const { job, surveySeen } = bench;
  const across = kind === 'two-point' || kind === 'three-leg';
  const unit = across ? ' across' : kind === 'radius' ? ' per side' : '';
  if (reading.leftOut) return <>{unit}, left out of the fit</>;
  const target = surveySeen?.target?.diameter ?? Number.NaN;
  const e = deviationOf(kind, reading.mm, target);
  if (Number.isNaN(e)) return <>{unit}</>;
  const sighting = surveySeen?.sightings.find(({ row }) => row === reading.row);
  const { perSide } = written(job.units, sighting?.sd ?? Number.NaN);
  const thou = formatDeviation(e, job.units);
  if (Number.parseFloat(thou.replace('−', '-')) === 0) return <>{unit}: on the target</>;
  return (
    <>
      {unit}:{' '}
      <Figure
        text={`${perSide(Math.abs(e))} ${e < 0 ? 'proud' : 'short'}`}
        tone={e < 0 ? 'take-off' : 'short'}
      />{' '}
      of the target{across ? ', if both sides are alike' : ''}
    </>
  );
}
