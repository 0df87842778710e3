/** Where one bore sits on the pin, edited in a sentence. */
import { setDimension } from '../../job/edits.ts';
import { placeBeside, placeStation } from '../../job/partnerEdits.ts';
import type { Feature, Units } from '../../job/schema.ts';
import { lengthMm } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { Toward } from './Toward.tsx';

interface Props {
  readonly one: Feature;
  /** The bore on the bench. */
  readonly own: Feature;
  readonly units: Units;
}

export function PinPlace({ one, own, units }: Props) {
  const edit = useJob((state) => state.edit);
  const { id, name, place, length } = one;
  const mm = (key: 'x' | 'y' | 'leanX' | 'leanY') => lengthMm(place?.[key]) || 0;
  return (
    <p className="facts">
      <b>
        {name}
        {one === own ? ' (this bore)' : ''}:
      </b>{' '}
      face A{' '}
      <LengthField
        label={`${name}: face A, along the pin`}
        typed={place?.station}
        units={units}
        onEnter={(typed) => edit((now) => placeStation(now, own.id, id, typed))}
      />{' '}
      along the pin
      {one !== own && (
        <>
          ,{' '}
          <LengthField
            label={`${name}: its length`}
            typed={length}
            units={units}
            onEnter={(typed) => edit((now) => setDimension(now, id, 'length', typed))}
          />{' '}
          long
        </>
      )}
      ; beside the line by{' '}
      <Toward
        label={`${name}: beside the line`}
        x={mm('x')}
        y={mm('y')}
        units={units}
        onEnter={(x, y) => edit((now) => placeBeside(now, id, { x, y }))}
      />
      , running off by{' '}
      <Toward
        label={`${name}: run-off over its length`}
        x={mm('leanX')}
        y={mm('leanY')}
        units={units}
        onEnter={(leanX, leanY) => edit((now) => placeBeside(now, id, { leanX, leanY }))}
      />{' '}
      over its length.
    </p>
  );
}
