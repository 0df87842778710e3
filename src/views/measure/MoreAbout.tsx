/** What is seldom said of a survey, folded away until it is asked for; what it holds stands on the fold. */
import type { ReactNode } from 'react';
import { gaugeOf } from '../../job/sizes.ts';
import type { Bench } from '../../store/bench.ts';
import { usePage } from '../../store/page.ts';
import { BushingPlaces } from './BushingPlaces.tsx';
import { MoreFacts } from './Facts.tsx';
import { GaugeFigures } from './GaugeFigures.tsx';
import { KeepOff } from './KeepOff.tsx';
import { PrintSheet } from './PrintSheet.tsx';
import { SecondBushing } from './SecondBushing.tsx';
import { StageLine } from './StageLine.tsx';

export function MoreAbout({ bench }: { readonly bench: Bench }) {
  const open = usePage((page) => page.moreAbout);
  const change = usePage((page) => page.change);
  return (
    <details
      className="more-about"
      open={open}
      onToggle={({ currentTarget }) => change({ moreAbout: currentTarget.open })}
    >
      <summary>
        More about this survey <span className="soft">{held(bench)}</span>
      </summary>
      {open && <Told bench={bench} />}
    </details>
  );
}

function Told({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  const isBore = bore.kind === 'bore';
  return (
    <>
      {isBore && (
        <Part head="Bushing and boss">
          <BushingPlaces job={job} bore={bore} />
          <SecondBushing bench={bench} />
          <MoreFacts job={job} bore={bore} />
        </Part>
      )}
      {isBore && (
        <Part head="Places to keep off">
          <KeepOff bench={bench} />
        </Part>
      )}
      {gauge !== undefined && (
        <Part head="The gauge">
          <GaugeFigures key={gauge.id} bench={bench} gauge={gauge} />
        </Part>
      )}
      <Part head="This stage">
        <StageLine bench={bench} />
        {isBore && <PrintSheet bench={bench} />}
      </Part>
    </>
  );
}

function Part({ head, children }: { readonly head: string; readonly children: ReactNode }) {
  return (
    <div className="more-part">
      <h3>{head}</h3>
      {children}
    </div>
  );
}

/** What there is behind the fold. */
function held({ bore, survey }: Bench): string {
  const off = bore.keepouts.length;
  const kept =
    off === 0 ? 'places to keep off' : `${off} ${off === 1 ? 'place' : 'places'} kept off`;
  const ofBore = bore.kind === 'bore' ? `bushing and boss, ${kept}, ` : '';
  const sheet = bore.kind === 'bore' ? ', a sheet to print' : '';
  return `${ofBore}the gauge’s figures, “${survey.name}” itself${sheet}`;
}
