/** About which centre the bore is made round again. */
import { setDecision } from '../../job/edits.ts';
import type { Decisions, Typed } from '../../job/schema.ts';
import { inUnits } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

/** Taken as unworn where nothing is said, as a share of the length: what the evaluation takes too. */
const USUAL_UNWORN = 0.75;

export function CentreChoice({ bench }: { readonly bench: Worked }) {
  const { job, bore, boreSeen } = bench;
  const edit = useJob((state) => state.edit);
  const centre: NonNullable<Decisions['centre']> = bore.decisions.centre ?? { rule: 'free' };
  const set = (next: Decisions['centre']) =>
    edit((now) => setDecision(now, bore.id, { centre: next }));
  const length = boreSeen.facts.length.mm;
  const usual = (mm: number): Typed => ({
    text: inUnits(mm, job.units).toFixed(job.units === 'in' ? 2 : 1),
    unit: job.units,
  });
  const setDepth = (key: 'unwornFrom' | 'unwornTo', typed: Typed | undefined) => {
    const { [key]: _, ...rest } = centre;
    set(typed === undefined ? rest : { ...rest, [key]: typed });
  };
  return (
    <fieldset className="centre-choice">
      <legend>Centre</legend>
      <label>
        <input
          type="radio"
          name="centre"
          checked={centre.rule === 'free'}
          onChange={() => set({ ...centre, rule: 'free' })}
        />
        <span>
          <b>Let it move:</b> the least metal off. Right where the bore stands alone.
        </span>
      </label>
      <label>
        <input
          type="radio"
          name="centre"
          checked={centre.rule === 'least-cut'}
          onChange={() => set({ ...centre, rule: 'least-cut' })}
        />
        <span>
          <b>Let it move for the shallowest cut:</b> the deepest place to grind is as shallow as it
          can be, at the price of a little more metal in all.
        </span>
      </label>
      <label>
        <input
          type="radio"
          name="centre"
          checked={centre.rule === 'keep'}
          onChange={() => set({ ...centre, rule: 'keep' })}
        />
        <span>
          <b>Keep the old one:</b> for a bore that must line up with another. Wear on one side then
          costs twice its depth across.
        </span>
      </label>
      {centre.rule === 'keep' && (
        <p className="facts">
          The metal is unworn from{' '}
          <LengthField
            label="Unworn metal begins at this depth"
            typed={centre.unwornFrom}
            usual={usual(USUAL_UNWORN * length)}
            units={job.units}
            onEnter={(typed) => setDepth('unwornFrom', typed)}
          />{' '}
          to{' '}
          <LengthField
            label="Unworn metal ends at this depth"
            typed={centre.unwornTo}
            usual={usual(length)}
            units={job.units}
            onEnter={(typed) => setDepth('unwornTo', typed)}
          />{' '}
          deep.
        </p>
      )}
    </fieldset>
  );
}
