/** How freely the pin runs once the bushing is in: limits, clearance round the clock, and what to open. */
import { useMemo } from 'react';
import { RunningRound } from '../../drawings/RunningRound.tsx';
import { clearanceRows } from '../../figures/clearanceTable.ts';
import { ROOM_UNIT, runningRound } from '../../figures/runningRound.ts';
import { runningWords } from '../../figures/runningWords.ts';
import { setFit, setWanted } from '../../job/edits.ts';
import type { Known } from '../../job/facts.ts';
import { inUnits } from '../../job/units.ts';
import { useTheme } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Said } from '../plan/Said.tsx';
import type { FitProps } from './fitProps.ts';
import './fitRound.css';

interface Props extends Pick<FitProps, 'bench'> {
  readonly one: Pick<FitProps['one'], 'running'>;
}

export function RunningPart({ bench, one }: Props) {
  const { running } = one;
  const { job } = bench;
  const theme = useTheme((state) => state.shown);
  const words = runningWords(running, job.units);
  const { installed, pin, limits } = running;
  const drawn = useMemo(
    () => installed && pin && runningRound(installed, pin, limits.least.mm, job.units),
    [installed, pin, limits.least.mm, job.units],
  );
  return (
    <div className="fit-part">
      <Limits bench={bench} one={one} />
      <Said lines={words.said} />
      <Said lines={words.open} steps />
      {drawn && (
        <figure>
          <RunningRound round={drawn} theme={theme} units={job.units} />
          <figcaption className="soft">
            The pin in the middle, looking in at face A, {drawn.depth} deep where it is tightest;
            clearance drawn {drawn.factor} times as large. The figures: least room over all depths,{' '}
            {ROOM_UNIT[job.units]} per side; underlined where it is less than half of the least
            wanted.
          </figcaption>
        </figure>
      )}
      <Ranges bench={bench} />
    </div>
  );
}

/** Least wanted, most when new, worn out: each as typed, else the usual figure. */
function Limits({ bench: { job, bore }, one: { running } }: Props) {
  const edit = useJob((state) => state.edit);
  const { least, most, worn } = running.limits;
  const { units } = job;
  const { fit = {} } = bore.decisions;
  const usual = ({ mm, from }: Known) =>
    from === 'default'
      ? { text: inUnits(mm, units).toFixed(units === 'in' ? 4 : 3), unit: units }
      : undefined;
  return (
    <p className="facts">
      Running clearance wanted, across: at the tightest at least{' '}
      <LengthField
        label="Least running clearance wanted, across"
        typed={bore.wanted.clearance}
        usual={usual(least)}
        units={units}
        onEnter={(typed) => edit((now) => setWanted(now, bore.id, 'clearance', typed))}
      />
      ; when new at most{' '}
      <LengthField
        label="Most running clearance when new, across"
        typed={fit.clearanceMost}
        usual={usual(most)}
        units={units}
        onEnter={(typed) => edit((now) => setFit(now, bore.id, 'clearanceMost', typed))}
      />
      ; worn out from{' '}
      <LengthField
        label="Running clearance from which it is worn out, across"
        typed={fit.clearanceWorn}
        usual={usual(worn)}
        units={units}
        onEnter={(typed) => edit((now) => setFit(now, bore.id, 'clearanceWorn', typed))}
      />
      . What is not typed is usual for a greased pin of this size; the machine maker’s figure wins.
    </p>
  );
}

function Ranges({ bench: { job } }: Pick<FitProps, 'bench'>) {
  return (
    <details className="way-fold">
      <summary>Running clearances as published, by class of machine</summary>
      <FiguresTable
        label="Running clearances as published"
        caption={`${job.units} across`}
        className="running-table"
        corner="joint"
        heads={['new', 'worn out from', 'from']}
        rows={clearanceRows(job.units).map(({ of, fresh, worn, from }) => ({
          key: of,
          head: of,
          cells: [fresh, worn, from],
        }))}
      />
    </details>
  );
}
