/** Worn rim faces: readings by clock position, and the washers that bring a face back. */
import { rimWords } from '../../figures/rimWords.ts';
import { addFaceReading, setFaceReading } from '../../job/edits.ts';
import type { FaceReading } from '../../job/schema.ts';
import { attempt } from '../../store/attempt.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { PartProps } from './partProps.ts';
import { Said } from './Said.tsx';

const FACES = [
  { value: 'A', text: 'face A' },
  { value: 'B', text: 'face B' },
] as const;
/** Asked for in this order, so that four readings lie evenly. */
const NEXT = ['12', '3', '6', '9'];

export function RimPart({ bench, found }: PartProps) {
  const { job, bore } = bench;
  const readings = bore.rim ?? [];
  const add = () => {
    const face = readings.at(-1)?.face ?? 'A';
    const count = readings.filter((one) => one.face === face).length;
    const clock = NEXT[count] ?? '';
    attempt((now) =>
      addFaceReading(now, bore.id, { face, clock, below: { text: '', unit: now.units } }),
    );
  };
  return (
    <>
      <p>
        Lay a straight edge on unworn metal, or measure from the far face, and read how far the rim
        lies below where it was: at 12, 3, 6 and 9 at least.
      </p>
      {readings.length > 0 && (
        <ul className="rim-readings">
          {readings.map((reading, place) => (
            <li key={place}>
              <OneReading reading={reading} place={place} bench={bench} />
            </li>
          ))}
        </ul>
      )}
      <button type="button" className="plain-button" onClick={add}>
        Add a face reading
      </button>
      {found.rims.length > 0 && (
        <Said lines={found.rims.flatMap((rim) => rimWords(rim, job.units))} />
      )}
    </>
  );
}

interface OneProps {
  readonly bench: PartProps['bench'];
  readonly reading: FaceReading;
  readonly place: number;
}

function OneReading({ bench: { job, bore }, reading, place }: OneProps) {
  const edit = useJob((state) => state.edit);
  const set = (next: FaceReading | null) =>
    edit((now) => setFaceReading(now, bore.id, place, next));
  return (
    <>
      <Choice
        label={`Face of reading ${place + 1}`}
        value={reading.face}
        options={FACES}
        onChoose={(face) => set({ ...reading, face })}
      />{' '}
      at{' '}
      <Field
        label={`Clock position of face reading ${place + 1}`}
        value={reading.clock}
        placeholder="12"
        onEnter={(clock) => set({ ...reading, clock })}
      />{' '}
      o’clock:{' '}
      <LengthField
        label={`Below flush at face reading ${place + 1}`}
        typed={reading.below}
        units={job.units}
        onEnter={(below) => set({ ...reading, below: below ?? { text: '', unit: job.units } })}
      />{' '}
      below flush{' '}
      <button type="button" className="link-button" onClick={() => set(null)}>
        take out
      </button>
    </>
  );
}
