/** Loose parts beside the boss: flanges, thrust washers, shims that are there now or will be. */
import { addSidePart, setSidePart } from '../../job/edits.ts';
import type { Feature } from '../../job/schema.ts';
import { attempt } from '../../store/attempt.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from '../plan/worked.ts';

type SidePart = NonNullable<NonNullable<Feature['sideGap']>['parts']>[number];

const FACES = [
  { value: 'A', text: 'face A' },
  { value: 'B', text: 'face B' },
] as const;
const WHEN = [
  { value: 'both', text: 'now and after the work' },
  { value: 'now', text: 'now only' },
  { value: 'after', text: 'after the work only' },
] as const;

export function SideParts({ bench: { job, bore } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const parts = bore.sideGap?.parts ?? [];
  const add = () => {
    const thickness = { text: '', unit: job.units };
    attempt((now) =>
      addSidePart(now, bore.id, { name: 'Thrust washer', thickness, face: 'A', when: 'both' }),
    );
  };
  return (
    <>
      {parts.length > 0 && (
        <ul className="side-parts">
          {parts.map((part, place) => (
            <li key={place}>
              <OnePart
                part={part}
                place={place}
                units={job.units}
                onSet={(next) => edit((now) => setSidePart(now, bore.id, place, next))}
              />
            </li>
          ))}
        </ul>
      )}
      <button type="button" className="plain-button" onClick={add}>
        Add a flange, washer or shim
      </button>
    </>
  );
}

interface OneProps {
  readonly part: SidePart;
  readonly place: number;
  readonly units: 'in' | 'mm';
  onSet(next: SidePart | null): void;
}

function OnePart({ part, place, units, onSet }: OneProps) {
  const which = `loose part ${place + 1}`;
  return (
    <>
      <Field
        label={`Name of ${which}`}
        value={part.name}
        kind="words"
        onEnter={(name) => onSet({ ...part, name })}
      />{' '}
      <LengthField
        label={`Thickness of ${which}`}
        typed={part.thickness}
        units={units}
        onEnter={(typed) => onSet({ ...part, thickness: typed ?? { text: '', unit: units } })}
      />{' '}
      thick, beside{' '}
      <Choice
        label={`Face of ${which}`}
        value={part.face}
        options={FACES}
        onChoose={(face) => onSet({ ...part, face })}
      />
      ,{' '}
      <Choice
        label={`When ${which} is there`}
        value={part.when}
        options={WHEN}
        onChoose={(when) => onSet({ ...part, when })}
      />{' '}
      <button type="button" className="link-button" onClick={() => onSet(null)}>
        take out
      </button>
    </>
  );
}
