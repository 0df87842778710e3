/** The press fit of one bushing: what the wall holds, what it presses with, and what others call for. */
import { useRef } from 'react';
import { FitRanges } from '../../drawings/FitRanges.tsx';
import { fitRangesFigure, rangeWords } from '../../figures/fitRanges.ts';
import {
  PRESS_CAUTIONS,
  type PressRow,
  pressWords,
  roughnessWords,
} from '../../figures/pressWords.ts';
import { setFit } from '../../job/edits.ts';
import { frictionFault, USUAL_FRICTION } from '../../job/pressFacts.ts';
import { useTheme } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Words } from '../parts/Words.tsx';
import { PlainNumber } from '../plan/mendingFields.tsx';
import { Said } from '../plan/Said.tsx';
import { useSize } from '../useSize.ts';
import type { FitProps } from './fitProps.ts';
import { MetalLine } from './MetalLine.tsx';
import '../plan/buildUp.css';
import './press.css';

export function PressPart({ bench, found, one }: FitProps) {
  const { units } = bench.job;
  const { alarms, local, metals, missing, rows, holds } = pressWords(one.press, units);
  return (
    <div className="press-part">
      {alarms.length > 0 && (
        <ul className="press-alarms">
          {alarms.map((text) => (
            <li key={text}>
              <Words text={text} />
            </li>
          ))}
        </ul>
      )}
      <Said lines={local} />
      <MetalLine bench={bench} found={found} one={one} />
      <Said lines={metals} />
      {missing !== null && <p className="soft">{missing}</p>}
      <PressTable rows={rows} />
      <Said lines={holds} />
      <Given bench={bench} />
      <Ranges bench={bench} one={one} />
      <ul className="cautions">
        {PRESS_CAUTIONS.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  );
}

function PressTable({ rows }: { readonly rows: readonly PressRow[] }) {
  if (rows.length === 0) return null;
  return (
    <FiguresTable
      label="Pressures, stresses and movements of the press fit"
      caption="At the least, mean and greatest local press fit, as if it were so all round"
      className="press-table"
      corner=""
      heads={['least', 'mean', 'most']}
      rows={rows.map(({ what, least, mean, greatest }) => ({
        key: what,
        head: what,
        cells: [least, mean, greatest],
      }))}
    />
  );
}

/** What is taken for friction and roughness, usual until it is typed over. */
function Given({ bench: { job, bore } }: Pick<FitProps, 'bench'>) {
  const edit = useJob((state) => state.edit);
  const { frictionLow, frictionHigh, roughnessLoss } = bore.decisions.fit ?? {};
  return (
    <>
      <p className="facts">
        Friction in the seat from{' '}
        <PlainNumber
          label="Least friction in the seat"
          text={frictionLow}
          usual={USUAL_FRICTION.low}
          fault={frictionFault(frictionLow, USUAL_FRICTION.low)}
          onEnter={(text) => edit((now) => setFit(now, bore.id, 'frictionLow', text))}
        />{' '}
        to{' '}
        <PlainNumber
          label="Greatest friction in the seat"
          text={frictionHigh}
          usual={USUAL_FRICTION.high}
          fault={frictionFault(frictionHigh, USUAL_FRICTION.high)}
          onEnter={(text) => edit((now) => setFit(now, bore.id, 'frictionHigh', text))}
        />{' '}
        (usual for steel in steel: oiled to dry); roughness takes{' '}
        <LengthField
          label="What roughness takes off the press fit, across"
          typed={roughnessLoss}
          usual={{ text: '0', unit: job.units }}
          units={job.units}
          least="none"
          onEnter={(typed) => edit((now) => setFit(now, bore.id, 'roughnessLoss', typed))}
        />{' '}
        across off the press fit.
      </p>
      <p className="soft">{roughnessWords(job.units)}</p>
    </>
  );
}

/** What others call for at this size, as a picture and in words. */
function Ranges({ bench, one }: Pick<FitProps, 'bench' | 'one'>) {
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLDivElement>(null);
  const { width } = useSize(root);
  const { units } = bench.job;
  const figure = fitRangesFigure(one.press, units);
  return (
    <>
      <p>Press fits that are called for at this size, across:</p>
      <div className="press-ranges" ref={root}>
        {figure !== null && width > 0 && <FitRanges figure={figure} width={width} theme={theme} />}
      </div>
      <details className="way-fold">
        <summary>The same in figures</summary>
        <Said lines={rangeWords(one.press, units)} />
      </details>
    </>
  );
}
