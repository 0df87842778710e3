/** One pass: its title always, and once chosen its map, its zones, its gate and its page. */
import { useMemo } from 'react';
import type { Pass } from '../../bore/passTypes.ts';
import type { Passes } from '../../evaluate/passes.ts';
import { passMap } from '../../figures/passMap.ts';
import { GATE, gateLines, passAmount, passConditions, passZone } from '../../figures/passWords.ts';
import { PrintOn } from '../parts/PrintOn.tsx';
import { Words } from '../parts/Words.tsx';
import { MapFigure } from './MapFigure.tsx';
import { PassGiven } from './PassGiven.tsx';
import { PassPage } from './PassPage.tsx';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly pass: Pass;
  readonly number: number;
  readonly chosen: boolean;
  onChoose(): void;
  /** The plan that it is the next pass of, so that it can be given to the bench; null: it is a later one. */
  readonly nextOf: Passes | null;
}

export function PassLine({ bench, pass, number, chosen, onChoose, nextOf }: Props) {
  const { units } = bench.job;
  return (
    <li className="pass" data-chosen={chosen}>
      <button type="button" className="pass-title" aria-expanded={chosen} onClick={onChoose}>
        <b>Pass {number}</b> <span>{passAmount(pass, units)}</span>
      </button>
      {chosen && <Whole {...{ bench, pass, number, nextOf }} />}
    </li>
  );
}

function Whole({ bench, pass, number, nextOf }: Omit<Props, 'chosen' | 'onChoose'>) {
  const { job, boreSeen } = bench;
  const { units } = job;
  const length = boreSeen.facts.length.mm;
  return (
    <div className="pass-whole">
      <PassMap bench={bench} pass={pass} />
      {passConditions(pass, units).map((text) => (
        <p key={text} className="pass-condition">
          <Words text={text} />
        </p>
      ))}
      <ul className="zones">
        {pass.zones.map((zone, i) => {
          const { where, what } = passZone(zone, length, units);
          return (
            <li key={i} data-kind="high">
              <b>{where}</b>: <Words text={what} />
            </li>
          );
        })}
      </ul>
      {pass.gate.length > 0 && (
        <>
          <p className="pass-gate">
            <Words text={GATE} />
          </p>
          <ul className="cautions">
            {gateLines(pass, units).map((text) => (
              <li key={text}>
                <Words text={text} />
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="facts">
        Print this pass for the bench{' '}
        <PrintOn units={units}>
          {(paper) => <PassPage {...{ bench, pass, number, nextOf, paper }} />}
        </PrintOn>
      </p>
      {nextOf !== null && <PassGiven bench={bench} passes={nextOf} />}
    </div>
  );
}

function PassMap({ bench, pass }: Pick<Props, 'bench' | 'pass'>) {
  const { job, boreSeen, surveySeen } = bench;
  const map = useMemo(
    () => passMap(surveySeen, boreSeen.facts, pass, job.units),
    [surveySeen, boreSeen, pass, job.units],
  );
  return (
    <MapFigure map={map}>
      What this pass takes off, per side, {job.units === 'in' ? 'in thou' : 'in 0.01 mm'}; seen from
      face A, rim on top. Marks: the places of the gate.
    </MapFigure>
  );
}
