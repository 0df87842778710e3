/** What the bushing measured at its other places, and a second bushing: all that counts towards the target. */
import { setBushingOutside } from '../../job/edits.ts';
import { type Bushing, type Feature, type Job, MOST } from '../../job/schema.ts';
import { bushingOutsideMm } from '../../job/sizes.ts';
import { formatLength } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';

export interface BushingPlacesProps {
  readonly job: Job;
  readonly bore: Feature;
}

/** Beside the first place, where it is not all that counts: ` (mean of 3 places 2.0061 in)`. */
export function outsideThatCounts({ job, bore }: BushingPlacesProps): string {
  const known = bore.bushings.filter((one) => bushingOutsideMm(one) > 0);
  const sizes = known.map((one) => bushingOutsideMm(one));
  const counts = formatLength(Math.min(...sizes), job.units);
  if (known.length > 1) return ` (of two bushings the smaller counts, ${counts})`;
  const places = known[0]?.outside.length ?? 0;
  return places > 1 ? ` (mean of ${places} places ${counts})` : '';
}

/** Nothing until a first place is given: a new job asks for one only. */
export function BushingPlaces({ job, bore }: BushingPlacesProps) {
  const [first, second] = bore.bushings;
  if (first === undefined || first.outside.length === 0) return null;
  return (
    <p className="facts">
      At other places along it the bushing measured{' '}
      <Places job={job} bore={bore} bushing={first} from={1} name="bushing" />
      {second !== undefined && (
        <>
          ; the second bushing measured{' '}
          <Places job={job} bore={bore} bushing={second} from={0} name="second bushing" />
        </>
      )}
      , across.
    </p>
  );
}

interface PlacesProps extends BushingPlacesProps {
  readonly bushing: Bushing;
  /** First place shown, counted from 0. */
  readonly from: number;
  readonly name: string;
}

/** The places given, and one more to give. */
function Places({ job, bore, bushing, from, name }: PlacesProps) {
  const edit = useJob((state) => state.edit);
  const shown = Math.min(bushing.outside.length + 1, MOST.outside);
  return Array.from({ length: shown - from }, (_, index) => {
    const place = from + index;
    return (
      <span key={place}>
        {index > 0 && ', '}
        <LengthField
          label={`Place ${place + 1} of the ${name}, outside, across`}
          typed={bushing.outside[place]}
          placeholder="not read"
          units={job.units}
          onEnter={(typed) =>
            edit((now) => setBushingOutside(now, bore.id, bushing.id, place, typed))
          }
        />
      </span>
    );
  });
}
