/** The bores that share this one's pin, and where each sits: what "line up with the partner" goes by. */
import { setWanted } from '../../job/edits.ts';
import { shareThePin } from '../../job/partnerEdits.ts';
import { inUnits } from '../../job/units.ts';
import { attempt } from '../../store/attempt.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { PinPlace } from './PinPlace.tsx';
import type { Worked } from './worked.ts';

export function PinLine({ bench: { job, bore, boreSeen } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const bores = job.features.filter(({ kind }) => kind === 'bore');
  const others = bores.filter(({ id }) => id !== bore.id);
  const { clearance } = boreSeen.facts;
  const usual =
    clearance.from === 'missing'
      ? undefined
      : {
          text: inUnits(clearance.mm, job.units).toFixed(job.units === 'in' ? 4 : 3),
          unit: job.units,
        };
  return (
    <details className="pin-line">
      <summary>Bores on this pin, and where they sit</summary>
      <p className="soft">
        Counted along the pin the way depth grows in this bore, and beside one straight line, by the
        clock seen from face A. A bore’s own place is where its readings are counted from.
      </p>
      {[bore, ...others].map((one) => (
        <PinPlace key={one.id} one={one} own={bore} units={job.units} />
      ))}
      <p className="facts">
        The pin’s running clearance is{' '}
        <LengthField
          label="Running clearance of the pin, across"
          typed={bore.wanted.clearance}
          usual={usual}
          units={job.units}
          onEnter={(typed) => edit((now) => setWanted(now, bore.id, 'clearance', typed))}
        />{' '}
        across. Half of it is how far two bores may stand off one line (common practice); the figure
        of the machine’s maker comes before that.
      </p>
      <button
        type="button"
        className="plain-button"
        onClick={() => attempt((now) => shareThePin(now, bore.id))}
      >
        Add a bore on this pin
      </button>
    </details>
  );
}
