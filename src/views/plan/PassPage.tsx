/** One pass on one sheet of paper for the bench, black on white: map, zones, gate with room to write, cautions. */
import { useId } from 'react';
import type { Pass } from '../../bore/passTypes.ts';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import type { Passes } from '../../evaluate/passes.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { PAPERS, type Paper } from '../../figures/paper.ts';
import { passMap } from '../../figures/passMap.ts';
import { GRINDING_CAUTIONS, passTitle } from '../../figures/passWords.ts';
import { PageHead } from './PageHead.tsx';
import { OnTheBench, PassGate, PassZones } from './PassText.tsx';
import type { Worked } from './worked.ts';
import './passPage.css';

interface Props {
  readonly bench: Worked;
  readonly pass: Pass;
  readonly number: number;
  /** The plan that it is the next pass of; null: it is a later one. */
  readonly nextOf: Passes | null;
  readonly paper: Paper;
}

/** Room for the map on the page, px of its own drawing; the page scales it. */
const MAP = { width: 720, height: 280 } as const;

export function PassPage({ bench, pass, number, nextOf, paper }: Props) {
  const { job, boreSeen, surveySeen } = bench;
  const { units } = job;
  const { width, height } = PAPERS[paper];
  const id = useId();
  const map = passMap(surveySeen, boreSeen.facts, pass, units);
  return (
    // One sheet; a pass of many zones runs on to the next rather than losing its foot.
    <article className="pass-page" style={{ width: `${width}mm`, minHeight: `${height - 1}mm` }}>
      <PageHead bench={bench} title={passTitle(pass, number, units)} />
      {nextOf !== null && <OnTheBench passes={nextOf} />}
      {map !== null && (
        <FlatMap map={map} frame={mapFrame(map, MAP.width, MAP.height)} theme="sunlight" id={id} />
      )}
      <PassZones pass={pass} length={boreSeen.facts.length.mm} units={units} />
      {surveySeen.target?.assumed != null && <p>Assumed: {surveySeen.target.assumed}.</p>}
      <PassGate pass={pass} units={units} />
      <ul className="pass-page-cautions">
        {GRINDING_CAUTIONS.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </article>
  );
}
