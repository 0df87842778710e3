/** The target diameter: bushing less press fit, or wherever the handle is put; and what that size costs and leaves. */
import { lazy, Suspense } from 'react';
import type { Target } from '../../bore/types.ts';
import { setDecision } from '../../job/edits.ts';
import type { Typed } from '../../job/schema.ts';
import { formatAcross, inUnits, lengthMm } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { Figure } from '../parts/Figure.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Words } from '../parts/Words.tsx';
import type { Worked } from './worked.ts';

const TradeOff = lazy(() => import('./TradeOff.tsx'));

export interface TargetChoiceProps {
  readonly bench: Worked;
  /** Null: neither a size is chosen nor a bushing known. */
  readonly target: Target | null;
}

export function TargetChoice({ bench, target }: TargetChoiceProps) {
  const { job, bore, boreSeen } = bench;
  const { units } = job;
  const edit = useJob((state) => state.edit);
  const set = (typed: Typed | undefined, mark?: string) =>
    edit((now) => setDecision(now, bore.id, { target: typed }), mark);
  const { bushingOutside, pressFit } = boreSeen.facts;
  const usual = bushingOutside.mm - pressFit.mm;
  const decided = lengthMm(bore.decisions.target);
  const now = decided > 0 ? decided : (target?.diameter ?? Number.NaN);
  const text = (mm: number) => inUnits(mm, units).toFixed(units === 'in' ? 4 : 3);
  return (
    <div className="target-choice">
      <p>
        <Words text="Target" />{' '}
        <LengthField
          label="Target diameter, across"
          typed={bore.decisions.target}
          usual={target === null ? undefined : { text: text(target.diameter), unit: units }}
          units={units}
          least="above none"
          onEnter={(typed) => set(typed)}
        />{' '}
        <Words text="across" />
        {now > 0 && <PressFitThere bushing={bushingOutside.mm} target={now} units={units} />}
      </p>
      <Suspense fallback={<div style={{ minHeight: '34rem' }} />}>
        <TradeOff
          bench={bench}
          onChoose={(mm) => set({ text: text(mm), unit: units }, 'target slider')}
        />
      </Suspense>
      {decided > 0 && usual > 0 && (
        <button type="button" className="link-button" onClick={() => set(undefined)}>
          back to bushing less press fit, {formatAcross(usual, units)}
        </button>
      )}
    </div>
  );
}

interface PressFitThereProps {
  readonly bushing: number;
  readonly target: number;
  readonly units: 'in' | 'mm';
}

function PressFitThere({ bushing, target, units }: PressFitThereProps) {
  const fit = bushing - target;
  if (Number.isNaN(fit)) return <>, set by hand.</>;
  const size = <Figure text={formatAcross(Math.abs(fit), units)} />;
  if (fit > 0)
    return (
      <>
        <Words text=": the bushing goes in with a press fit of " />
        {size}.
      </>
    );
  return <span className="fault">: the bushing would be loose by {size}.</span>;
}
