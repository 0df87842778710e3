/** The sizes that a fit needs besides the bore's own, typed where it is read. */
import { addBushing, setBushing, setDimension, setPinDiameter } from '../../job/edits.ts';
import { type Job, MOST, type Typed } from '../../job/schema.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';
import type { FitProps } from './fitProps.ts';
import { sizeId } from './goTo.ts';

export function SizesLine({ bench: { job, bore }, found, one }: FitProps) {
  const edit = useJob((state) => state.edit);
  const { units } = job;
  const { id, name } = one.seated;
  const first = found.bushings[0] === one;
  const bushing = bore.bushings.find((other) => other.id === id);
  return (
    <p className="facts">
      <span id={sizeId(bore.id, id, 'inside')}>
        Inside the bushing measures{' '}
        <LengthField
          label={`Inside of “${name}”, across`}
          typed={bushing?.inside}
          placeholder="not given"
          units={units}
          onEnter={(typed) => edit((now) => withInside(now, bore.id, id, typed))}
        />{' '}
        across
      </span>
      {first && (
        <>
          ;{' '}
          <span id={sizeId(bore.id, id, 'boss')}>
            the boss outside{' '}
            <LengthField
              label="Boss outside, across"
              typed={bore.boss?.outside}
              placeholder="not given"
              units={units}
              onEnter={(typed) => edit((now) => setDimension(now, bore.id, 'bossOutside', typed))}
            />{' '}
            across
          </span>
          {one.running.pin?.from !== 'surveyed' && <PinSizes {...{ job, bore, id }} />}
        </>
      )}
      .
    </p>
  );
}

interface PinProps extends Pick<FitProps['bench'], 'job' | 'bore'> {
  /** Of the bushing that it is asked for at. */
  readonly id: string;
}

/** A pin that is not surveyed: its sizes as a list, with an empty field for the next. */
function PinSizes({ job, bore, id }: PinProps) {
  const edit = useJob((state) => state.edit);
  const sizes = bore.pin?.diameters ?? [];
  const shown = sizes.length < MOST.pinPlaces ? [...sizes, undefined] : sizes;
  return (
    <span id={sizeId(bore.id, id, 'pin')}>
      ; the pin{' '}
      {shown.map((typed, place) => (
        <span key={place}>
          {place > 0 && ', '}
          <LengthField
            label={`The pin that runs here, place ${place + 1}, across`}
            typed={typed}
            placeholder={place === 0 ? 'not given' : 'next'}
            units={job.units}
            onEnter={(next) => edit((now) => setPinDiameter(now, bore.id, place, next))}
          />
        </span>
      ))}{' '}
      across
    </span>
  );
}

/** A bushing made to suit has none in the job yet. */
function withInside(job: Job, bore: string, bushing: string, typed: Typed | undefined): Job {
  if (bushing !== '') return setBushing(job, bore, bushing, 'inside', typed);
  const added = addBushing(job, bore);
  if (!added.ok) return job;
  const fresh = added.job.features.find(({ id }) => id === bore)?.bushings.at(-1);
  return fresh === undefined ? job : setBushing(added.job, bore, fresh.id, 'inside', typed);
}
