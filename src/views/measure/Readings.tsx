/** The reading table and the line under it; of a scanner's points folded, as nothing is typed into it. */
import { useCallback, useState } from 'react';
import { standForMany } from '../../job/gauges.ts';
import { gaugeOf } from '../../job/sizes.ts';
import type { Bench } from '../../store/bench.ts';
import { usePage } from '../../store/page.ts';
import type { Laid } from '../../store/tables.ts';
import { answerByKey } from './answers.ts';
import { CellLine } from './CellLine.tsx';
import { Doubts } from './Doubts.tsx';
import { Echo } from './Echo.tsx';
import { PlaceLine } from './PlaceLine.tsx';
import type { Picked } from './picked.ts';
import { ReadingGrid } from './ReadingGrid.tsx';
import { newestDoubt, useDoubts } from './useDoubts.ts';
import { useSpokenEcho } from './useSpokenEcho.ts';

export interface ReadingsProps {
  readonly bench: Bench;
  readonly laid: Laid;
  /** Of several set-ups of the gauge in hand, the one that the table shows; else ''. */
  readonly setup: string;
}

export function Readings(props: ReadingsProps) {
  const open = usePage((page) => page.pointsTable);
  const change = usePage((page) => page.change);
  const { bench } = props;
  if (!ofPoints(bench)) return <Table {...props} />;
  return (
    <>
      <p className="facts">
        {bench.survey.readings.length} readings, each drawn together from many points: there is
        nothing to type.{' '}
        <button
          type="button"
          className="link-button"
          aria-expanded={open}
          onClick={() => change({ pointsTable: !open })}
        >
          {open ? 'fold the table' : 'show the table'}
        </button>
      </p>
      {open ? <Table {...props} /> : <DoubtsOfPoints bench={bench} />}
    </>
  );
}

/** With the table folded there is no cell in which a key could answer. */
function DoubtsOfPoints({ bench }: { readonly bench: Bench }) {
  return <Doubts bench={bench} doubts={useDoubts(bench)} newest={null} />;
}

/** With another gauge in hand the table is one to type into, whatever was read before. */
function ofPoints({ job, survey }: Bench): boolean {
  if (gaugeOf(job.gauges, survey.plan.gauge)?.type !== 'points') return false;
  return survey.readings.length > 0 && standForMany(job.gauges, survey.readings);
}

function Table({ bench, laid, setup }: ReadingsProps) {
  const [picked, setPicked] = useState<Picked | null>(null);
  const pick = useCallback((chosen: Picked | null) => setPicked(chosen), []);
  const done = useCallback(() => setPicked(null), []);
  const { job, survey, surveySeen } = bench;
  const doubts = useDoubts(bench);
  const doubt = newestDoubt(doubts);
  useSpokenEcho(laid, doubt);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: hears the keys that answer a doubt, from cells inside
    <div
      onKeyDown={(event) => {
        if (answerByKey(event, bench, doubt)) event.preventDefault();
      }}
    >
      <ReadingGrid
        table={laid.table}
        seen={surveySeen}
        says={['Readings', survey.name, setup].filter((one) => one !== '').join(', ')}
        depthHead={
          <>
            <span className="head-word">{survey.plan.face === 'A' ? 'depth' : 'from B'}, </span>
            {job.units}
          </>
        }
        onPick={pick}
      />
      <Echo laid={laid} />
      <Doubts bench={bench} doubts={doubts} newest={doubt} />
      {picked === null ? (
        <CellLine bench={bench} laid={laid} />
      ) : (
        <PlaceLine
          key={JSON.stringify(picked)}
          bench={bench}
          laid={laid}
          picked={picked}
          onDone={done}
        />
      )}
    </div>
  );
}
