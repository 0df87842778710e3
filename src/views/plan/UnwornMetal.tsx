/** Which metal is taken as unworn, where the old centre is kept. */
import { setDecision } from '../../job/edits.ts';
import type { Decisions, Typed } from '../../job/schema.ts';
import { inUnits } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

/** Taken as unworn where nothing is said, as a share of the length: what the evaluation takes too. */
const USUAL_UNWORN = 0.75;

export function UnwornMetal({ bench }: { readonly bench: Worked }) {
  const { job, bore, boreSeen } = bench;
  const { units } = job;
  const edit = useJob((state) => state.edit);
  const centre: NonNullable<Decisions['centre']> = bore.decisions.centre ?? { rule: 'keep' };
  const length = boreSeen.facts.length.mm;
  const usual = (mm: number): Typed => ({
    text: inUnits(mm, units).toFixed(units === 'in' ? 2 : 1),
    unit: units,
  });
  const setDepth = (key: 'unwornFrom' | 'unwornTo', typed: Typed | undefined) => {
    const { [key]: _, ...rest } = centre;
    const next = typed === undefined ? rest : { ...rest, [key]: typed };
    edit((now) => setDecision(now, bore.id, { centre: next }));
  };
  return (
    <p className="facts">
      The metal is unworn from{' '}
      <LengthField
        label="Unworn metal begins at this depth"
        typed={centre.unwornFrom}
        usual={usual(USUAL_UNWORN * length)}
        units={units}
        onEnter={(typed) => setDepth('unwornFrom', typed)}
      />{' '}
      to{' '}
      <LengthField
        label="Unworn metal ends at this depth"
        typed={centre.unwornTo}
        usual={usual(length)}
        units={units}
        onEnter={(typed) => setDepth('unwornTo', typed)}
      />{' '}
      deep.
    </p>
  );
}
