/** A pin's plan on one sheet of paper, black on white: map, stretches, what to do and what to guard. */
import { useId } from 'react';
import { PinMap } from '../../drawings/PinMap.tsx';
import type { PinPlan } from '../../evaluate/pinTypes.ts';
import { PAPERS, type Paper } from '../../figures/paper.ts';
import { pinMap } from '../../figures/pinMap.ts';
import { pinWordGroups } from '../../figures/pinWords.ts';
import { guardList, pinAdvised, TURNING_CAUTIONS } from '../../figures/pinWork.ts';
import { today } from '../today.ts';
import { LandTable } from './PinTables.tsx';
import type { Worked } from './worked.ts';
import './passPage.css';

interface Props {
  readonly bench: Worked;
  readonly plan: PinPlan;
  readonly paper: Paper;
}

export function PinPage({ bench, plan, paper }: Props) {
  const { job, bore, boreSeen, surveySeen } = bench;
  const { width } = PAPERS[paper];
  const id = useId();
  const map = pinMap(surveySeen, boreSeen, plan, job.units);
  const where = [job.title, job.machine].filter((text) => (text ?? '') !== '');
  const advised = pinAdvised(plan, job.units);
  return (
    <article className="pass-page flowing pin-page" style={{ width: `${width}mm` }}>
      <header>
        <h1>{bore.name}</h1>
        <p>
          {where.join(' · ')}, from “{surveySeen.name}” <time>{today()}</time>
        </p>
        <p>
          <b>Clock as seen looking at face A.</b> Depths from face A. Figures of the map are per
          side: plus is short, minus comes off.
        </p>
      </header>
      {map !== null && <PinMap map={map} theme="sunlight" width={720} height={250} id={id} />}
      <LandTable plan={plan} units={job.units} />
      {advised !== null && <p>{advised}</p>}
      {pinWordGroups(plan, job.units).map(({ head, lines }) => (
        <ul key={head}>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      ))}
      <ul className="pass-page-cautions">
        {guardList(bore.keepouts, job.units).map(({ id: one, what, how, done }) => (
          <li key={one}>
            {done ? '☑' : '☐'} {what}: {how}.
          </li>
        ))}
        {TURNING_CAUTIONS.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </article>
  );
}
