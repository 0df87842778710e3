/** The plan on paper for the bench, black on white: the map and its zones, then how it is done. */
import { useId } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import type { BuildUp } from '../../evaluate/buildUp.ts';
import type { Passes } from '../../evaluate/passes.ts';
import { mapFigure } from '../../figures/map.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { PAPERS, type Paper } from '../../figures/paper.ts';
import {
  finishWords,
  GRINDING_CAUTIONS,
  isFinished,
  LATER,
  leftWords,
  noPassWords,
  passTitle,
} from '../../figures/passWords.ts';
import { NO_PASS_YET } from '../../figures/waitWords.ts';
import { WAY_TITLES } from '../../figures/wayNames.ts';
import { sayZone } from '../../figures/zoneWords.ts';
import { formatAcross } from '../../job/units.ts';
import { PageHead } from './PageHead.tsx';
import { OnTheBench, PassGate, PassZones } from './PassText.tsx';
import { WayOnPaper } from './WayOnPaper.tsx';
import type { Worked } from './worked.ts';
import './passPage.css';

interface Props {
  readonly bench: Worked;
  readonly passes: Passes;
  /** Null: the way of mending neither moves metal nor adds any, and no rim is worn. */
  readonly found: BuildUp | null;
  readonly paper: Paper;
}

/** What is ground is told by the survey that comes after heat; the passes of the bore before it would mislead. */
const FIRST = {
  squeeze:
    'Then it is ground: when it is cold, measure it as the stage after squeezing, and print the passes that are worked out from that.',
  weld: 'Then it is cut: when it is cold, measure it as the stage after build-up, and print what is worked out from that.',
} as const;

const MAP = { width: 720, height: 330 } as const;

export function BenchPages({ bench, passes, found, paper }: Props) {
  const { job, bore, survey, boreSeen, surveySeen } = bench;
  const { units } = job;
  const { way = 'undecided' } = bore.decisions;
  const decided = way !== 'undecided';
  const hot = way === 'squeeze' || way === 'weld';
  const first = hot && survey.stage === 'as-found' ? FIRST[way] : null;
  const { target, zones } = surveySeen;
  const id = useId();
  const map = mapFigure(surveySeen, boreSeen.facts, units);
  const length = boreSeen.facts.length.mm;
  const waits = passes.plan.waits !== null;
  const { width, height } = PAPERS[paper];
  return (
    <>
      <article
        className="pass-page mapped"
        style={{ width: `${width}mm`, height: `${height - 1}mm` }}
      >
        <PageHead
          bench={bench}
          title={target === null ? 'The map' : `The map to ${formatAcross(target.diameter, units)}`}
        />
        {map !== null && (
          <FlatMap
            map={map}
            frame={mapFrame(map, MAP.width, MAP.height)}
            theme="sunlight"
            id={id}
          />
        )}
        {target?.assumed != null && <p>Assumed: {target.assumed}.</p>}
        {waits && <p>{NO_PASS_YET}</p>}
        <ul>
          {zones.map((zone, i) => (
            <li key={i}>{sayZone(zone, length, units, surveySeen, waits)}</li>
          ))}
        </ul>
        <Cautions />
      </article>
      <article className="pass-page flowing" style={{ width: `${width}mm` }}>
        <PageHead
          bench={bench}
          title={decided ? `How it is done: ${WAY_TITLES[way].toLowerCase()}` : 'How it is done'}
        />
        {found !== null && <WayOnPaper bench={bench} found={found} />}
        {first === null ? <PassesOnPaper bench={bench} passes={passes} /> : <p>{first}</p>}
      </article>
    </>
  );
}

function Cautions() {
  return (
    <ul className="pass-page-cautions">
      {GRINDING_CAUTIONS.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}

/** The next pass in full, those after it by their amounts: each is worked out anew from the gate before it. */
function PassesOnPaper({ bench, passes }: { readonly bench: Worked; readonly passes: Passes }) {
  const { units } = bench.job;
  const { plan, done } = passes;
  const [next, ...later] = plan.passes;
  const none = noPassWords(plan);
  return (
    <>
      {next !== undefined && (
        <section>
          <h2>{passTitle(next, done + 1, units)}</h2>
          <OnTheBench passes={passes} />
          <PassZones pass={next} length={bench.boreSeen.facts.length.mm} units={units} />
          {next.gate.length > 0 && <PassGate pass={next} units={units} />}
        </section>
      )}
      {later.length > 0 && (
        <>
          <ul>
            {later.map((pass, at) => (
              <li key={at}>{passTitle(pass, done + at + 2, units)}</li>
            ))}
          </ul>
          <p>{LATER}</p>
        </>
      )}
      {none !== '' && <p>{none}</p>}
      {plan.left.map((one, at) => (
        <p key={at}>{leftWords(one, passes, units)}</p>
      ))}
      {isFinished(passes) && <p>{finishWords(passes, units)}</p>}
      <Cautions />
    </>
  );
}
