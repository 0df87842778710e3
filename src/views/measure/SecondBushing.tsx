/** A second bushing in the same bore: added, said where it sits, taken out again. */
import { useState } from 'react';
import { addBushing, removeBushing, setBushing, setBushingFace } from '../../job/edits.ts';
import { attempt } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';

const FACES = [
  { value: 'A', text: 'face A' },
  { value: 'B', text: 'face B' },
] as const;

export function SecondBushing({ bench: { job, bore } }: { readonly bench: Bench }) {
  const edit = useJob((state) => state.edit);
  const [why, setWhy] = useState<string | null>(null);
  const [first, second] = bore.bushings;
  if (first === undefined || first.outside.length === 0) return null;
  if (second === undefined) {
    return (
      <p className="facts">
        <button
          type="button"
          className="link-button"
          onClick={() => setWhy(attempt((now) => addBushing(now, bore.id, 'B', 'Second bushing')))}
        >
          a second bushing sits in this bore
        </button>
        {why !== null && <span className="fault">{why}</span>}
      </p>
    );
  }
  const remove = () => {
    edit((now) => removeBushing(now, bore.id, second.id));
    tellTakenOut('The second bushing is out of the job.');
  };
  const length = (of: typeof first, name: string) => (
    <LengthField
      label={`Length of the ${name}`}
      typed={of.length}
      placeholder="not given"
      units={job.units}
      onEnter={(typed) => edit((now) => setBushing(now, bore.id, of.id, 'length', typed))}
    />
  );
  return (
    <p className="facts">
      The first bushing is {length(first, 'first bushing')} long from face {first.seat.face}, the
      second {length(second, 'second bushing')} long from{' '}
      <Choice
        label="Face that the second bushing sits at"
        value={second.seat.face}
        options={FACES}
        onChoose={(face) => edit((now) => setBushingFace(now, bore.id, second.id, face))}
      />
      ; only where they sit is the bore ground.{' '}
      <button type="button" className="link-button" onClick={remove}>
        take the second out
      </button>
    </p>
  );
}
