/** Readings from a straight bar through the bores: where each bore sits, and the figures at its faces by clock position. */
import { barClocks } from '../../job/alignFacts.ts';
import { sameClock, setBarBy, setBarReading } from '../../job/edits.ts';
import { placeStation } from '../../job/partnerEdits.ts';
import type { Face, Feature } from '../../job/schema.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from '../plan/worked.ts';

const BY = [
  { value: 'feelers', text: 'feelers between bar and wall' },
  { value: 'larger-farther', text: 'an indicator on the bar, larger where the wall is farther' },
  { value: 'smaller-farther', text: 'an indicator on the bar, smaller where the wall is farther' },
] as const;

export function BarReadings({ bench }: { readonly bench: Worked }) {
  const { job, bore } = bench;
  const edit = useJob((state) => state.edit);
  const bores = job.features.filter(({ kind }) => kind === 'bore');
  const clocks = barClocks(bores);
  return (
    <>
      <p>
        Lay one straight bar through all bores and read at 12, 3, 6 and 9 o’clock, at both faces of
        each bore. A bore is off centre by half the difference of opposite readings. Read with{' '}
        <Choice
          label="What is read from the bar"
          value={job.barBy ?? 'feelers'}
          options={BY}
          onChoose={(by) => edit((now) => setBarBy(now, by))}
        />
        .
      </p>
      {bores.map((one) => (
        <div key={one.id} className="rod-bore">
          <p>
            <b>{one.name}</b>: its face A sits{' '}
            <LengthField
              label={`Station of ${one.name}`}
              typed={one.place?.station}
              units={job.units}
              onEnter={(typed) => edit((now) => placeStation(now, bore.id, one.id, typed))}
            />{' '}
            along the pin.
          </p>
          <Row one={one} face="A" clocks={clocks} units={job.units} />
          <Row one={one} face="B" clocks={clocks} units={job.units} />
        </div>
      ))}
      <p className="soft">
        Clock positions as seen looking in at the face that is read. Stations are counted the way in
        which depth grows, from face A.
      </p>
    </>
  );
}

interface RowProps {
  readonly one: Feature;
  readonly face: Face;
  readonly clocks: readonly string[];
  readonly units: 'in' | 'mm';
}

function Row({ one, face, clocks, units }: RowProps) {
  const edit = useJob((state) => state.edit);
  return (
    <p className="rod-row">
      Face {face}:{' '}
      {clocks.map((clock) => (
        <span key={clock} className="rod-reading">
          at <b>{clock}</b>{' '}
          <LengthField
            label={`${one.name}, face ${face}, bar reading at ${clock} o’clock`}
            typed={
              one.bar?.find((reading) => reading.face === face && sameClock(reading, clock))?.value
            }
            units={units}
            onEnter={(typed) => edit((now) => setBarReading(now, one.id, { face, clock }, typed))}
          />
        </span>
      ))}
    </p>
  );
}
