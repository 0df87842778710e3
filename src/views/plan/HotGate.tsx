/** Steps with heat, once every question on heat is answered; until then, where they are asked and what stops. */
import type { ReactNode } from 'react';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly way: 'squeeze' | 'weld';
  readonly children: ReactNode;
}

export function HotGate({ bench: { job, bore }, way, children }: Props) {
  const { open, stops } = hotWork(job.safety);
  const chosen = bore.decisions.way === way;
  if (!open) {
    return (
      <>
        {!chosen &&
          stops.map(({ question, says, whom }) => (
            <p key={question} className="stop">
              {says} Ask {whom}.
            </p>
          ))}
        <p className="soft">
          No step with heat is shown before the questions on it are answered
          {chosen ? ' above' : ': choose this way of mending above, and they are asked there'}.
        </p>
      </>
    );
  }
  return (
    <>
      {children}
      {!chosen && (
        <>
          <ul className="cautions">
            {heatCautions(job.safety).map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
          <p className="soft">{HEAT_RULES}</p>
        </>
      )}
    </>
  );
}
