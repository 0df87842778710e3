/** The target diameter: bushing less press fit, or wherever the slider is put. */
import type { Section, Target } from '../../bore/types.ts';
import { setDecision } from '../../job/edits.ts';
import type { Typed } from '../../job/schema.ts';
import { formatAcross, inUnits, lengthMm, MM_PER_INCH } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { Figure } from '../parts/Figure.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

export interface TargetChoiceProps {
  readonly bench: Worked;
  readonly target: Target;
}

export function TargetChoice({ bench, target }: TargetChoiceProps) {
  const { job, bore, boreSeen, surveySeen } = bench;
  const { units } = job;
  const edit = useJob((state) => state.edit);
  const set = (typed: Typed | undefined, mark?: string) =>
    edit((now) => setDecision(now, bore.id, { target: typed }), mark);
  const { bushingOutside, pressFit } = boreSeen.facts;
  const usual = bushingOutside.mm - pressFit.mm;
  const decided = lengthMm(bore.decisions.target);
  const now = decided > 0 ? decided : target.diameter;
  const range = sliderRange(surveySeen.sections, usual > 0 ? usual : now, now, units);
  const text = (mm: number) => inUnits(mm, units).toFixed(units === 'in' ? 4 : 3);
  return (
    <div className="target-choice">
      <p>
        Target{' '}
        <LengthField
          label="Target diameter, across"
          typed={bore.decisions.target}
          usual={{ text: text(target.diameter), unit: units }}
          units={units}
          onEnter={(typed) => set(typed)}
        />{' '}
        across
        <PressFitThere bushing={bushingOutside.mm} target={now} units={units} />
      </p>
      <input
        type="range"
        aria-label="Target diameter, across"
        aria-valuetext={formatAcross(now, units)}
        min={range.min}
        max={range.max}
        step={range.step}
        value={inUnits(now, units)}
        onChange={(event) => {
          const typed = { text: text(mmOf(Number(event.target.value), units)), unit: units };
          set(typed, 'target slider');
        }}
      />
      <p className="range-ends" aria-hidden="true">
        <span>{text(mmOf(range.min, units))} less metal off</span>
        <span>more metal off {text(mmOf(range.max, units))}</span>
      </p>
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
  if (fit > 0) return <>: the bushing goes in with a press fit of {size}.</>;
  return <span className="fault">: the bushing would be loose by {size}.</span>;
}

function mmOf(value: number, units: 'in' | 'mm'): number {
  return units === 'in' ? value * MM_PER_INCH : value;
}

/**
 * From a little under the smallest place to a little over the largest, and always round the usual target; in the
 * job's units, on round steps of 0.0001 in or 0.002 mm.
 */
function sliderRange(
  sections: readonly Section[],
  usual: number,
  now: number,
  units: 'in' | 'mm',
): { min: number; max: number; step: number } {
  const step = units === 'in' ? 0.0001 : 0.002;
  const room = units === 'in' ? 0.001 : 0.025;
  const sizes = sections
    .flatMap(({ least, greatest, meanDiameter }) => [
      least.diameter,
      greatest.diameter,
      meanDiameter,
    ])
    .concat(usual, now)
    .filter((mm) => Number.isFinite(mm))
    .map((mm) => inUnits(mm, units));
  const round = (value: number) => Number((Math.round(value / step) * step).toFixed(4));
  return {
    min: round(Math.min(...sizes) - room),
    max: round(Math.max(...sizes) + room),
    step,
  };
}
